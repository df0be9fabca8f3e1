import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { type Cache, reuse } from '../../model/cache.ts';
import type { Body, Model, SeatRef } from '../../model/model.ts';
import { seatOf } from '../geometry/place.ts';
import type { StageGeometry } from '../geometry/types.ts';
import { lineOf, linesOf } from '../layout/lines.ts';
import { beltParts, chainParts, type StageEnd } from './chain-parts.ts';
import { gearParts } from './gear-parts.ts';
import { type Envelopes, type Part, still } from './part.ts';
import { type Arm, armOf, turned } from './pose.ts';
import { type OnLine, shaftParts } from './shaft-parts.ts';
import { spaceParts } from './space-parts.ts';
import type { UnknownSize } from './types.ts';
import { wheelParts, wheelSolid } from './wheel-part.ts';

export interface AllParts extends Envelopes {
  readonly arm: Arm | null;
}

const ARM: Body = 'swinging arm';

/**
 * Envelopes of everything in the build, in the order of the path, then what stands still.
 * @param place slot of the cache for the place of the axle that this is
 */
export function allParts(
  model: Model,
  stages: readonly StageGeometry[],
  topSpeed: number | null,
  cache: Cache | null = null,
  place = 'drawn',
): AllParts {
  const lines = linesOf(model);
  const axle = model.shafts.at(-1)?.seats.find(({ kind }) => kind === 'wheel');
  const { suspension } = model;
  const arm =
    suspension && axle
      ? reuse(cache, `arm:${place}`, [suspension, ...axle.at], () => armOf(suspension, axle.at))
      : null;
  const swung = (solids: readonly Solid[]): Part['at'] =>
    arm === null ? still(solids) : (angle) => solids.map((solid) => turned(solid, angle, arm));
  const on = model.shafts.map((shaft, k): OnLine => {
    const line = lineOf(lines, k);
    return { shaft, line: line === null ? -1 : lines.indexOf(line), bodies: line?.bodies ?? [] };
  });
  // A line that stands on two bodies is a fault of its own; here it goes with the first.
  const swings = ({ bodies }: OnLine): boolean => arm !== null && bodies[0] === ARM;
  const carry = (at: OnLine) => (swings(at) ? swung : still);
  const endOf = (k: number, ref: SeatRef): StageEnd | null => {
    const at = on[k];
    if (!at) return null;
    const seat = seatOf(at.shaft, ref);
    const moves = swings(at);
    return {
      seat,
      line: at.line,
      bodies: at.bodies,
      place: (angle) => (arm && moves ? arm.turn(angle, seat.at) : seat.at),
      carry: carry(at),
      swings: moves,
    };
  };
  const stageParts = (geometry: StageGeometry, index: number): Envelopes => {
    const { stage } = geometry;
    const [from, to] = [endOf(index, stage.from), endOf(index + 1, stage.to)];
    if (!from || !to) return { parts: [], unknown: [] };
    const drive = { index, from, to, normal: geometry.from.direction };
    const open = (address: string, says: string): UnknownSize => ({
      name: stage.name,
      element: stage.address,
      address,
      says,
    });
    switch (stage.kind) {
      case 'chain':
        return chainParts(stage, geometry, drive);
      case 'belt':
        return beltParts(stage, geometry, drive);
      case 'bevel':
      case 'spur':
        return gearParts(stage, geometry, index, [from, to]);
      case 'coupling':
        return { parts: [], unknown: [open(stage.address, `the outside size of ${stage.name}: give it a keep-out`)] };
      case 'unit':
        return { parts: [], unknown: [open(stage.address, `the case of ${stage.name}: give it a keep-out`)] };
    }
  };
  // What the parts on a shaft hang on, beside the shaft.
  const hangs = ({ line, bodies }: OnLine): readonly unknown[] => [line, ...bodies];
  const wheel = (at: OnLine): Envelopes => {
    const solids = reuse(cache, `wheel:${place}`, [model.wheel, at.shaft, arm, ...hangs(at)], () => {
      const tyre = wheelSolid(model, at);
      return tyre && carry(at)([tyre]);
    });
    return wheelParts(model, at, swings(at), solids, topSpeed);
  };
  const found: readonly Envelopes[] = [
    ...on.flatMap((at, k) => {
      const [geometry, next] = [stages[k], on[k + 1]];
      const { address } = at.shaft;
      return [
        reuse(cache, `parts:${place}:${address}`, [at.shaft, arm, ...hangs(at)], () =>
          shaftParts(at, swings(at), arm ? swung : still),
        ),
        ...(geometry
          ? [
              reuse(
                cache,
                `parts:${place}:${geometry.stage.address}`,
                [geometry, at.shaft, next?.shaft, arm, k, ...hangs(at), ...(next ? hangs(next) : [])],
                () => stageParts(geometry, k),
              ),
            ]
          : []),
        ...(k === on.length - 1 ? [wheel(at)] : []),
      ];
    }),
    reuse(cache, `parts:${place}:space`, [model.space, arm], () => ({
      parts: spaceParts(model.space, (body, solids) => (arm && body === ARM ? swung(solids) : null)),
      unknown: [],
    })),
  ];
  const parts = found.flatMap((one) => one.parts);
  const armUnsaid = model.suspension === null && parts.some(({ bodies }) => bodies.includes(ARM));
  return {
    arm,
    parts,
    unknown: [
      ...found.flatMap((one) => one.unknown),
      ...(armUnsaid
        ? [
            {
              name: 'swinging arm',
              element: null,
              address: '/brief/suspension',
              says: 'pivot, bump and rebound of the swinging arm: all is taken as drawn',
            },
          ]
        : []),
    ],
  };
}
