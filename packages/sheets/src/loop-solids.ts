import type { StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { Seat, Shaft, Stage } from '@oddwheel/build/model/model';
import { beltLength } from '@oddwheel/mechanics/belt/length';
import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Point } from './drawing.ts';
import { squareTo } from './gear-solids.ts';
import { type Hang, type LoopWheel, layLoop } from './loop.ts';
import { inMm, MM, ring, widthOf } from './shaft-solids.ts';
import type { Solid, Teeth } from './solids.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;
type BeltStage = Extract<Stage, { readonly kind: 'belt' }>;

/** Plate height over pitch; width over the pins and width of a tooth over the inner width: for drawing. Common practice. */
const PLATE_HEIGHT = 0.8;
const OVER_PLATES = 1.9;
const TOOTH_WIDTH = 0.93;
/** Hub over seat diameter, and belt thickness over its pitch, for drawing. Common practice. */
const HUB = 1.5;
const BELT_HEIGHT = 0.45;

const find = (shaft: Shaft, id: string): Seat | undefined => shaft.seats.find((seat) => seat.id === id);

/** The plane of a loop: the driver's centre, along the line of centres, across it. */
interface LoopPlane {
  readonly at: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

const inSpace = ({ at, u, v }: LoopPlane, [x, y]: Point): Vec3 => plus(at, plus(times(x, u), times(y, v)));

const squared = (a: Vec3, along: Vec3): Vec3 => minus(a, times(dot(a, along), along));

function planeOf(
  driver: Seat,
  driven: Seat,
  along: Vec3,
  v: Vec3 | null,
): { readonly plane: LoopPlane; readonly apart: number } | null {
  const between = squared(minus(inMm(driven.at), inMm(driver.at)), along);
  const apart = norm(between);
  if (!(apart > 0)) return null;
  const u = times(1 / apart, between);
  return { apart, plane: { at: inMm(driver.at), u, v: v ?? cross(along, u) } };
}

/** The slack hangs in the span that the driver pays out, down where it can, else inward. */
function hangOf(plane: LoopPlane, turning: Vec3 | null): Hang {
  // Counterclockwise the loop leaves the driver on the −v side; the tight span lies on the side of ω × u.
  const tightOnV = turning ? dot(cross(turning, plane.u), plane.v) > 0 : plane.v[2] > 0;
  const down: Point = [-plane.u[2], -plane.v[2]];
  const level = Math.abs(plane.v[2]) < 0.05;
  return { after: tightOnV ? 0 : 1, towards: level ? [0, tightOnV ? 1 : -1] : down };
}

function sprocketTeeth(stage: ChainStage, count: number, station: number, gap: Vec3): Teeth {
  const { pitch, roller, innerWidth } = stage.size;
  const sizes = sprocketDiameters.run({ pitch, rollerDiameter: roller, teeth: count });
  const width = TOOTH_WIDTH * innerWidth * MM;
  return {
    form: 'sprocket',
    count,
    from: station - width / 2,
    to: station + width / 2,
    pitch: (sizes.pitchDiameter * MM) / 2,
    tip: (sizes.outsideDiameter * MM) / 2,
    root: (sizes.rootDiameter * MM) / 2,
    gap,
  };
}

function sprocketSolid(shaft: Shaft, seat: Seat, teeth: Teeth, role: 'sprocket' | 'pulley'): Solid {
  const [half, station] = [widthOf(seat) / 2, seat.station * MM];
  const hub = seat.diameter === null ? 0 : Math.min(teeth.root - 2, (HUB * seat.diameter * MM) / 2);
  const outline: (readonly [number, number])[] = [
    ...(hub > 0 && station - half < teeth.from - 0.5
      ? ([
          [station - half, hub],
          [teeth.from, hub],
        ] as const)
      : []),
    [teeth.from, teeth.tip],
    [teeth.to, teeth.tip],
    ...(hub > 0 && station + half > teeth.to + 0.5
      ? ([
          [teeth.to, hub],
          [station + half, hub],
        ] as const)
      : []),
  ];
  return {
    of: seat.address,
    name: `${seat.name} on ${shaft.name}`,
    role,
    moves: shaft.address,
    sized: true,
    shape: { ...ring(shaft, station, 1, teeth.tip, 0), outline, teeth },
  };
}

const direction = (plane: LoopPlane, angle: number): Vec3 =>
  plus(times(Math.cos(angle), plane.u), times(Math.sin(angle), plane.v));

/** A chain with its sprockets and idler. */
export function chainSolids(geometry: StageGeometry, stage: ChainStage, turning: Vec3 | null): readonly Solid[] {
  const { from, to, chain } = geometry;
  const [driver, driven] = [find(from, stage.from.seat), find(to, stage.to.seat)];
  if (!driver || !driven) return [];
  const found = chain ? planeOf(driver, driven, from.direction, chain.idler?.span ?? null) : null;
  if (!chain || !found) {
    const alone = (shaft: Shaft, seat: Seat, teeth: number): Solid =>
      sprocketSolid(shaft, seat, sprocketTeeth(stage, teeth, seat.station * MM, squareTo(shaft.direction)), 'sprocket');
    return [alone(from, driver, stage.teeth.driver), alone(to, driven, stage.teeth.driven)];
  }
  const { plane, apart } = found;
  const pitch = stage.size.pitch * MM;
  const wheels: LoopWheel[] = [
    { centre: [0, 0], radius: chain.pitchRadiusDriver * MM, teeth: stage.teeth.driver, turn: 1 },
    { centre: [apart, 0], radius: chain.pitchRadiusDriven * MM, teeth: stage.teeth.driven, turn: 1 },
  ];
  const { idler } = stage;
  if (idler && chain.idler) {
    const out = squared(minus(inMm(idler.at), plane.at), from.direction);
    wheels.push({
      centre: [dot(out, plane.u), dot(out, plane.v)],
      radius: (stage.size.pitch * MM) / (2 * Math.sin(Math.PI / idler.teeth)),
      teeth: idler.teeth,
      turn: idler.runs === 'inside the chain' ? 1 : -1,
    });
  }
  const path = layLoop(wheels, pitch, stage.links, idler ? null : hangOf(plane, turning));
  const gap = (k: number): Vec3 => direction(plane, path?.gaps[k] ?? 0);
  const solids = [
    sprocketSolid(from, driver, sprocketTeeth(stage, stage.teeth.driver, driver.station * MM, gap(0)), 'sprocket'),
    sprocketSolid(to, driven, sprocketTeeth(stage, stage.teeth.driven, driven.station * MM, gap(1)), 'sprocket'),
    ...(idler ? [idlerSolid(stage, idler.at, from.direction, gap(2))] : []),
  ];
  if (!path) return solids;
  return [
    ...solids,
    {
      of: stage.address,
      name: stage.name,
      role: 'chain',
      moves: null,
      sized: true,
      shape: {
        shape: 'loop',
        pins: path.pins.map((pin) => inSpace(plane, pin)),
        across: from.direction,
        pitch,
        width: OVER_PLATES * stage.size.innerWidth * MM,
        height: PLATE_HEIGHT * pitch,
      },
    },
  ];
}

function idlerSolid(stage: ChainStage, at: Vec3, along: Vec3, gap: Vec3): Solid {
  const { idler } = stage;
  if (!idler) throw new Error(`${stage.address} has no idler.`);
  const teeth = sprocketTeeth(stage, idler.teeth, 0, gap);
  return {
    of: idler.address,
    name: `idler of ${stage.name}`,
    role: 'sprocket',
    moves: null,
    sized: true,
    shape: {
      shape: 'turned',
      at: inMm(at),
      along,
      outline: [
        [teeth.from, teeth.tip],
        [teeth.to, teeth.tip],
      ],
      bore: 0,
      teeth,
    },
  };
}

/** A toothed belt with its pulleys; the pulleys are drawn on their pitch circles. */
export function beltSolids(geometry: StageGeometry, stage: BeltStage): readonly Solid[] {
  const { from, to } = geometry;
  const [driver, driven] = [find(from, stage.from.seat), find(to, stage.to.seat)];
  if (!driver || !driven) return [];
  const pitch = stage.pitch * MM;
  const radius = (teeth: number): number => (pitch * teeth) / (2 * Math.PI);
  const pulley = (shaft: Shaft, seat: Seat, teeth: number): Solid => {
    const half = widthOf(seat) / 2;
    return sprocketSolid(
      shaft,
      seat,
      {
        form: 'gear',
        count: teeth,
        from: seat.station * MM - half,
        to: seat.station * MM + half,
        pitch: radius(teeth),
        tip: radius(teeth) - 0.05 * pitch,
        root: radius(teeth) - BELT_HEIGHT * pitch,
        gap: squareTo(shaft.direction),
      },
      'pulley',
    );
  };
  const pulleys = [pulley(from, driver, stage.teeth.driver), pulley(to, driven, stage.teeth.driven)];
  const found = geometry.relation === null ? null : planeOf(driver, driven, from.direction, null);
  if (!found || !reaches(stage, found.apart / MM)) return pulleys;
  const wheels: LoopWheel[] = [
    { centre: [0, 0], radius: radius(stage.teeth.driver), teeth: stage.teeth.driver, turn: 1 },
    { centre: [found.apart, 0], radius: radius(stage.teeth.driven), teeth: stage.teeth.driven, turn: 1 },
  ];
  const path = layLoop(wheels, pitch, stage.beltTeeth, null);
  if (!path) return pulleys;
  return [
    ...pulleys,
    {
      of: stage.address,
      name: stage.name,
      role: 'belt',
      moves: null,
      sized: driver.width !== null,
      shape: {
        shape: 'loop',
        pins: path.pins.map((pin) => inSpace(found.plane, pin)),
        across: from.direction,
        pitch,
        width: widthOf(driver),
        height: BELT_HEIGHT * pitch,
      },
    },
  ];
}

function reaches(stage: BeltStage, centreDistance: number): boolean {
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  try {
    beltLength.run({ pitch: stage.pitch, teethDriver, teethDriven, centreDistance });
    return true;
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return false;
  }
}
