import type { StageGeometry } from '@oddwheel/build/assess/geometry/types';
import type { KeepOut, Model, Seat, Shaft, Stage, Tube } from '@oddwheel/build/model/model';
import { minus, norm } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { OnArm } from './arm.ts';
import { inMm, MM, ring, widthOf } from './shaft-solids.ts';
import type { Solid } from './solids.ts';

/** Sizes for drawing of what the build gives no size of. */
const JOINT_RADIUS = 32;
const MIDDLE_SHAFT = 22;
const PIVOT = { radius: 14, length: 60 } as const;

const carried = (body: KeepOut['body'], onArm: OnArm | null): OnArm =>
  onArm && body === 'swinging arm' ? onArm : (at) => at;

/** Keep-outs, room to work, and tubes; what the arm carries stands where the arm stands. */
export function spaceSolids(model: Model, onArm: OnArm | null): readonly Solid[] {
  const boxes = model.space.keepOuts.map((box): Solid => {
    const place = carried(box.body, onArm);
    const ends = [box.least, box.most];
    const corners = [0, 1].flatMap((x) =>
      [0, 1].flatMap((y) => [0, 1].map((z) => inMm(place([ends[x]?.[0] ?? 0, ends[y]?.[1] ?? 0, ends[z]?.[2] ?? 0])))),
    );
    return {
      of: box.address,
      name: box.name,
      role: box.kind === 'solid' ? 'keep-out' : 'access',
      moves: null,
      sized: true,
      shape: { shape: 'block', corners },
    };
  });
  return [...boxes, ...model.space.tubes.map((tube) => tubeSolid(tube, carried(tube.body, onArm)))];
}

const tubeSolid = (tube: Tube, place: OnArm): Solid => ({
  of: tube.address,
  name: tube.name,
  role: 'tube',
  moves: null,
  sized: true,
  shape: { shape: 'bar', from: inMm(place(tube.from)), to: inMm(place(tube.to)), size: tube.size * MM },
});

/** The swinging arm as a bar from pivot to axle, with its pivot. */
export function armSolids(model: Model, axle: Vec3): readonly Solid[] {
  const { suspension } = model;
  if (!suspension) return [];
  const pivot = inMm(suspension.pivot);
  const end: Vec3 = [axle[0] * MM, pivot[1], axle[2] * MM];
  const about = { of: suspension.address, role: 'arm', moves: null, sized: false } as const;
  const half: Vec3 = [0, PIVOT.length / 2, 0];
  return [
    ...(norm(minus(end, pivot)) > 1
      ? [
          {
            ...about,
            name: 'swinging arm',
            sized: suspension.armHeight !== null,
            shape: { shape: 'bar' as const, from: pivot, to: end, size: (suspension.armHeight ?? 0.04) * MM },
          },
        ]
      : []),
    {
      ...about,
      name: 'pivot of the swinging arm',
      shape: {
        shape: 'turned',
        at: minus(pivot, half),
        along: [0, 1, 0],
        outline: [
          [0, PIVOT.radius],
          [PIVOT.length, PIVOT.radius],
        ],
        bore: PIVOT.radius / 2,
        teeth: null,
      },
    },
  ];
}

const seatIn = (shaft: Shaft, id: string): Seat | undefined => shaft.seats.find((seat) => seat.id === id);

/** A coupling, universal joints with their middle shaft, or the housing of a bought-in unit: marks, of no stated size. */
export function jointSolids(
  geometry: StageGeometry,
  stage: Extract<Stage, { readonly kind: 'coupling' | 'unit' }>,
): readonly Solid[] {
  const { from, to } = geometry;
  const [one, two] = [seatIn(from, stage.from.seat), seatIn(to, stage.to.seat)];
  if (!one || !two) return [];
  const about = { of: stage.address, moves: null, sized: false } as const;
  const [a, b] = [inMm(one.at), inMm(two.at)];
  const fork = (shaft: Shaft, seat: Seat): Solid => ({
    of: seat.address,
    name: `${seat.name} on ${shaft.name}`,
    role: 'joint',
    moves: shaft.address,
    sized: seat.diameter !== null && seat.width !== null,
    shape: ring(shaft, seat.station * MM, widthOf(seat), seat.diameter === null ? JOINT_RADIUS : seat.diameter * MM, 0),
  });
  const apart = norm(minus(b, a));
  const between = (size: number, name: string, role: 'joint' | 'unit'): Solid[] =>
    apart > 1 ? [{ ...about, name, role, shape: { shape: 'bar', from: a, to: b, size } }] : [];
  if (stage.kind === 'unit')
    return [...between(2.4 * JOINT_RADIUS, stage.name, 'unit'), fork(from, one), fork(to, two)];
  const middle =
    stage.joint === 'two universal joints'
      ? between(MIDDLE_SHAFT, `middle shaft of ${stage.name}`, 'joint')
      : between(JOINT_RADIUS, stage.name, 'joint');
  return [...middle, fork(from, one), fork(to, two)];
}
