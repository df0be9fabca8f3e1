import type { StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { Seat, Shaft, Stage } from '@oddwheel/build/model/model';
import { pitchAngle } from '@oddwheel/mechanics/bevel/cone';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, unit } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { inMm, MM, ring, widthOf } from './shaft-solids.ts';
import type { Solid, Turned } from './solids.ts';

/** Tooth height over and under the pitch line in modules (ISO 53: 1 and 1.25). */
const [ADDENDUM, DEDENDUM] = [1, 1.25];
/** Hub over seat diameter, for drawing. Common practice. */
const HUB = 1.6;

type Gear = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** Any direction square to an axis, always the same one. */
export function squareTo(along: Vec3): Vec3 {
  return unit(cross(along, Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
}

const of = (seat: Seat, shaft: Shaft) =>
  ({ of: seat.address, name: `${seat.name} on ${shaft.name}`, moves: shaft.address }) as const;

/** A gear whose size is not known: the seat alone, thin. */
function unsizedGear(shaft: Shaft, seat: Seat): Solid {
  const radius = seat.diameter === null ? 30 : seat.diameter * MM;
  return {
    ...of(seat, shaft),
    role: 'gear',
    sized: false,
    shape: ring(shaft, seat.station * MM, widthOf(seat), radius, 0),
  };
}

/** Both gears of a spur pair, straight over the face width. */
export function spurSolids(geometry: StageGeometry, stage: Gear, at: (v: { si: number }) => number): readonly Solid[] {
  const pair = [
    { shaft: geometry.from, ref: stage.from, teeth: stage.teeth.driver },
    { shaft: geometry.to, ref: stage.to, teeth: stage.teeth.driven },
  ];
  return pair.flatMap(({ shaft, ref, teeth }, k): Solid[] => {
    const seat = shaft.seats.find(({ id }) => id === ref.seat);
    const other = pair[1 - k]?.shaft.seats.find(({ id }) => id === pair[1 - k]?.ref.seat);
    if (!seat) return [];
    if (!stage.module) return [unsizedGear(shaft, seat)];
    const module = at(stage.module) * MM;
    const width = stage.faceWidth ? at(stage.faceWidth) * MM : widthOf(seat);
    const pitch = (module * teeth) / 2;
    const [tip, root] = [pitch + ADDENDUM * module, pitch - DEDENDUM * module];
    const station = seat.station * MM;
    const towards = other ? minus(other.at, seat.at) : squareTo(shaft.direction);
    const inPlane = minus(towards, timesDot(towards, shaft.direction));
    // The driver has a gap where the two meet, the driven gear a tooth.
    const gap = k === 0 ? unit(inPlane) : turnAbout(shaft.direction, unit(inPlane), Math.PI / teeth);
    return [
      {
        ...of(seat, shaft),
        role: 'gear',
        sized: stage.faceWidth !== null,
        shape: {
          ...ring(shaft, station, width, root, 0),
          teeth: {
            form: 'gear',
            count: teeth,
            from: station - width / 2,
            to: station + width / 2,
            pitch,
            tip,
            root,
            gap,
          },
        },
      },
    ];
  });
}

const timesDot = (a: Vec3, along: Vec3): Vec3 => {
  const part = dot(a, along);
  return [part * along[0], part * along[1], part * along[2]];
};

/** Turns a direction square to an axis about it. */
export function turnAbout(along: Vec3, direction: Vec3, angle: number): Vec3 {
  const side = cross(along, direction);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c * direction[0] + s * side[0], c * direction[1] + s * side[1], c * direction[2] + s * side[2]];
}

/**
 * Both gears of a bevel pair as their blanks: face cone, back cone square to it, and a hub behind.
 * Distances along the axis count from the apex toward the gear.
 */
export function bevelSolids(geometry: StageGeometry, stage: Gear, at: (v: { si: number }) => number): readonly Solid[] {
  const { bevel, from, to } = geometry;
  const ends = [
    { shaft: from, ref: stage.from, own: stage.teeth.driver, mate: stage.teeth.driven },
    { shaft: to, ref: stage.to, own: stage.teeth.driven, mate: stage.teeth.driver },
  ] as const;
  return ends.flatMap(({ shaft, ref, own, mate }, k): Solid[] => {
    const seat = shaft.seats.find(({ id }) => id === ref.seat);
    if (!seat) return [];
    if (!bevel || bevel.coneDistance === null || !stage.module || !stage.faceWidth) return [unsizedGear(shaft, seat)];
    try {
      const angle = pitchAngle('sheets', k === 0 ? 'driver' : 'driven gear', own, mate, bevel.shaftAngle);
      const sizes = { module: at(stage.module) * MM, face: at(stage.faceWidth) * MM, outer: bevel.coneDistance * MM };
      return [
        {
          ...of(seat, shaft),
          role: 'gear',
          sized: true,
          shape: bevelBlank(shaft, seat, inMm(bevel.apex), angle, own, sizes),
        },
      ];
    } catch (error) {
      if (!(error instanceof MethodError)) throw error;
      return [unsizedGear(shaft, seat)];
    }
  });
}

function bevelBlank(
  shaft: Shaft,
  seat: Seat,
  apex: Vec3,
  angle: number,
  count: number,
  { module, face, outer }: { readonly module: number; readonly face: number; readonly outer: number },
): Turned {
  const away = dot(minus(inMm(seat.at), apex), shaft.direction) >= 0 ? 1 : -1;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  // A point so far along the pitch cone, and so far square to it, outward.
  const point = (along: number, out: number): readonly [number, number] => [along * c - out * s, along * s + out * c];
  const inner = outer - face;
  const scale = inner / outer;
  const tipInner = point(inner, ADDENDUM * module * scale);
  const tipOuter = point(outer, ADDENDUM * module);
  const rootOuter = point(outer, -DEDENDUM * module);
  const hub = Math.min(rootOuter[1], seat.diameter === null ? rootOuter[1] / 2 : (HUB * seat.diameter * MM) / 2);
  const seatAt = dot(minus(inMm(seat.at), apex), shaft.direction) * away;
  const back = Math.max(rootOuter[0] + 2, seatAt + widthOf(seat) / 2);
  const apexStation = dot(minus(apex, inMm(shaft.origin)), shaft.direction);
  const outline = (
    [
      tipInner,
      tipOuter,
      [Math.max(rootOuter[0], tipOuter[0]), rootOuter[1]],
      [rootOuter[0] + 0.01, hub],
      [back, hub],
    ] as const
  ).map(([along, radius]): readonly [number, number] => [apexStation + away * along, radius]);
  return {
    shape: 'turned',
    at: inMm(shaft.origin),
    along: shaft.direction,
    outline: away > 0 ? outline : [...outline].reverse(),
    bore: 0,
    teeth: {
      form: 'gear',
      count,
      from: apexStation + away * tipInner[0],
      to: apexStation + away * tipOuter[0],
      pitch: outer * s,
      tip: tipOuter[1],
      root: rootOuter[1],
      gap: squareTo(shaft.direction),
    },
  };
}
