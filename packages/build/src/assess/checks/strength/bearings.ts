import type { Seat, Shaft } from '../../../model/model.ts';
import type { BearingFacts, BearingSeat } from '../../../model/strength.ts';
import type { CaseLoads } from '../../loads.ts';
import { type BearingLoad, type BearingLoads, shareThrust } from '../../strength/bearing-loads.ts';
import type { ShaftSolution, ShaftStructure } from '../../strength/shaft-structure.ts';
import type { Missing } from '../../types.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { shaftIndex } from './shafts.ts';

/** Every bearing of every shaft. */
export const bearingSubjects: Check['subjects'] = (model) =>
  model.shafts.flatMap((shaft) =>
    shaft.seats
      .filter(({ kind }) => kind === 'bearing')
      .map((seat) => ({ address: seat.address, element: `${shaft.name}, ${seat.name}`, stage: null })),
  );

/** A bearing whose number or ratings are known, on its shaft. */
export interface BearingAt {
  /** Index of the shaft, and of the bearing among those of the shaft. */
  readonly k: number;
  readonly b: number;
  readonly shaft: Shaft;
  readonly structure: ShaftStructure;
  readonly seat: Seat;
  readonly fitted: BearingSeat;
  readonly facts: BearingFacts;
  /** "The 6207 in the front plates". */
  readonly name: string;
}

const unknown = (...missing: Missing[]): Outcome => ({ kind: 'unknown', missing });

/** Runs a check on a bearing; without a number or ratings the outcome is unknown. */
export const onBearing =
  (
    run: (at: BearingAt, scene: Scene, ...rest: readonly [Parameters<Check['run']>[2]]) => Outcome | null,
  ): Check['run'] =>
  (scene, subject, load) => {
    const at = bearingAt(scene, subject.address);
    if (!at) return null;
    if (at.kind === 'blank')
      return unknown({ address: `${at.seat.address}/row`, says: `the number of ${at.seat.name}, or its ratings` });
    return run(at.at, scene, load);
  };

/** The demand of a check on a bearing; null without a number or ratings. */
export const bearingDemand =
  (of: (at: BearingAt, scene: Scene, load: CaseLoads) => number | null): NonNullable<Check['demand']> =>
  (scene, subject, load) => {
    const found = bearingAt(scene, subject.address);
    return found?.kind === 'known' ? of(found.at, scene, load) : null;
  };

type Found = { readonly kind: 'blank'; readonly seat: Seat } | { readonly kind: 'known'; readonly at: BearingAt };

/** The bearing at an address; null where there is none. */
export function bearingAt(scene: Scene, address: string): Found | null {
  const k = shaftIndex(scene.model, { address });
  const structure = scene.strength.shafts[k];
  if (!structure) return null;
  const known = FOUND.get(structure);
  const before = known?.get(address);
  // A shaft keeps its bearings when another is put in before it, but not its number.
  if (before === null || before?.kind === 'blank' || (before && before.at.k === k)) return before;
  const found = bearingOf(structure, k, address);
  if (known) known.set(address, found);
  else FOUND.set(structure, new Map([[address, found]]));
  return found;
}

/** By the shaft that it holds: it is asked for in every case. */
const FOUND = new WeakMap<ShaftStructure, Map<string, Found | null>>();

function bearingOf(structure: ShaftStructure, k: number, address: string): Found | null {
  const b = structure.bearings.findIndex(({ seat }) => seat.address === address);
  const seat = structure.bearings[b]?.seat;
  const fitted = seat?.bearing;
  if (!seat || !fitted) return null;
  const { facts } = fitted;
  if (!facts) return { kind: 'blank', seat };
  const where = fitted.plate ? `in the ${fitted.plate.name}` : `at ${seat.name}`;
  const name = `The ${facts.row ?? `${facts.kind} bearing`} ${where}`;
  return { kind: 'known', at: { k, b, shaft: structure.shaft, structure, seat, fitted, facts, name } };
}

/** Shares of a solved case: a solution belongs to one shaft of one build. */
const SHARED = new WeakMap<ShaftSolution, BearingLoads>();

function shareOf({ bearings }: ShaftStructure, solution: ShaftSolution): BearingLoads {
  const reactions = bearings.flatMap((_, b) => solution.reactionAt(b) ?? []);
  return shareThrust(
    bearings.map(({ seat }) => seat),
    reactions.map(({ radial }) => radial),
    -reactions.reduce((sum, { axial }) => sum + axial, 0),
  );
}

/** What one bearing carries in a solved case, and whether the build says who takes the push along the shaft. */
export function loadOn(
  { structure, b }: Pick<BearingAt, 'structure' | 'b'>,
  solution: ShaftSolution,
): { readonly load: BearingLoad; readonly said: boolean } {
  const known = SHARED.get(solution);
  const shared = known ?? shareOf(structure, solution);
  if (!known) SHARED.set(solution, shared);
  const { loads, said } = shared;
  return { load: loads[b] ?? { radial: 0, axial: 0 }, said };
}

/** What the build must say before it is clear which bearing takes the push along the shaft. */
export function notSaid({ bearings }: ShaftStructure): Missing[] {
  return bearings.flatMap(({ seat }): Missing[] => {
    const { held, bearing } = seat;
    const shaftSide = held?.towardStart != null && held.towardEnd != null;
    const ring = bearing?.ring;
    const plateSide = ring?.towardStart != null && ring.towardEnd != null;
    return [
      ...(shaftSide
        ? []
        : [{ address: `${seat.address}/held`, says: `what stops ${seat.name} on its shaft, each way` }]),
      ...(plateSide
        ? []
        : [{ address: `${seat.address}/ring`, says: `what stops the outer ring of ${seat.name}, each way` }]),
    ];
  });
}
