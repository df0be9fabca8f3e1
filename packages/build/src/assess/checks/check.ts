import { MethodError } from '@oddwheel/mechanics/method/method';
import type { Kind } from '@oddwheel/quantity/kinds';
import type { Model, Override, Value } from '../../model/model.ts';
import type { EngineCurve } from '../cases.ts';
import type { CheckId } from '../check-ids.ts';
import type { At, StageGeometry, Used } from '../geometry/types.ts';
import type { CaseLoads } from '../loads.ts';
import type { RoadParts } from '../road/parts.ts';
import type { DutyAnswer } from '../strength/duty.ts';
import type { Strength } from '../strength/strength.ts';
import type { Consequence, Missing, Use } from '../types.ts';

/** The build at one corner of its uncertain inputs: geometry, train and loads as plain numbers. */
export interface Scene {
  readonly model: Model;
  readonly at: At;
  readonly engine: EngineCurve | null;
  /** Crank speed over output speed, gear by gear. */
  readonly boxRatios: readonly number[];
  /** Crank speed over wheel speed, gear by gear. */
  readonly overall: readonly number[];
  readonly rollOut: number | null;
  readonly stages: readonly StageGeometry[];
  readonly senses: readonly (1 | -1 | null)[];
  /** Shafts on their bearings. */
  readonly strength: Strength;
  /** Standing cases, then the rare ones; empty without a torque curve. */
  readonly cases: readonly CaseLoads[];
  /** What the vehicle does on the road, worked out as it is asked for. */
  readonly road: RoadParts;
  /** How it is driven over its life, worked out when asked for. It may read inputs that only the road reads. */
  readonly duty: () => DutyAnswer;
  /** Prints an SI number in the units of the build. */
  readonly show: (use: Use, si: number) => string;
}

/** What a check stands on. */
export interface Subject {
  readonly address: string;
  readonly element: string;
  /** Index of the stage, where it is one. */
  readonly stage: number | null;
}

export interface Amount {
  readonly name: string;
  readonly value: number;
  readonly kind: Kind;
  readonly use: Use;
}

/** What a check found for one subject, one case, one corner. */
export type Outcome =
  | {
      readonly kind: 'measured';
      readonly demand: Amount;
      readonly capacity: Amount;
      /** Capacity over demand, or as the last method of `used` gives it. */
      readonly reserve: number;
      /** One sentence with the numbers. */
      readonly says: () => string;
      readonly uses: readonly Value[];
      readonly used: () => readonly Used[];
    }
  | {
      readonly kind: 'plain';
      readonly holds: boolean;
      readonly says: () => string;
      readonly uses: readonly Value[];
      readonly used: () => readonly Used[];
    }
  | { readonly kind: 'unknown'; readonly missing: readonly Missing[] };

export interface Check {
  readonly id: CheckId;
  readonly title: string;
  readonly consequence: Consequence;
  /** Design reserve when the build does not override it, and its ground. */
  readonly wanted: { readonly reserve: number; readonly from: string };
  /** A published recommendation that proven drives break: never worse than thin. */
  readonly atWorst: 'fails' | 'thin';
  readonly perCase: boolean;
  /** Also for the peaks that come rarely; else for steady driving only. */
  readonly rare?: true;
  /** Reads inputs that only the road reads; a check without it must not. */
  readonly onRoad?: true;
  readonly subjects: (model: Model) => readonly Subject[];
  /**
   * For a check whose capacity is the same in every case: its demand, or what goes in proportion to it, at little cost. Where it is greatest
   * the reserve is least, and the check runs there alone. Null: this case must be run.
   */
  readonly demand?: (scene: Scene, subject: Subject, load: CaseLoads) => number | null;
  /** Null: the check does not apply. `load` is null unless `perCase`. */
  readonly run: (scene: Scene, subject: Subject, load: CaseLoads | null) => Outcome | null;
}

/**
 * Runs a check on one subject. Numbers that a method does not cover leave it unknown and are named; they stop nothing else.
 * @param load null unless the check goes by load cases
 */
export function outcomeOf(check: Check, scene: Scene, subject: Subject, load: CaseLoads | null): Outcome | null {
  try {
    return check.run(scene, subject, load);
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    const says = `numbers that this check covers (${error.message})`;
    return { kind: 'unknown', missing: [{ address: subject.address, says }] };
  }
}

/** Design reserve in force for a finding. */
export function wantedReserve(check: Check, override: Override | undefined): { reserve: number; from: string } {
  return override
    ? { reserve: override.reserve, from: `set in the build: ${override.why} (${override.who}, ${override.when})` }
    : { reserve: check.wanted.reserve, from: check.wanted.from };
}

/** Subjects of a check that stands on one kind of stage. */
export function stagesOfKind(...kinds: readonly string[]): (model: Model) => readonly Subject[] {
  return (model) =>
    model.stages.flatMap((stage, index) =>
      kinds.includes(stage.kind) ? [{ address: stage.address, element: stage.name, stage: index }] : [],
    );
}

/** One subject that is no stage. */
export function oneSubject(address: string, element: string): (model: Model) => readonly Subject[] {
  return () => [{ address, element, stage: null }];
}

/** Whether a check by load cases looks at this one. */
export function looksAt(check: Check, load: CaseLoads): boolean {
  return load.point.kind === 'steady' || check.rare === true;
}
