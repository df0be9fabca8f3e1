/** Ladders of changes: steps of one sort, the smallest first. A way to make a check hold gives ladders; the search finds the step. */
import { parseInput } from '@oddwheel/quantity/range';
import type { Scene } from '../assess/checks/check.ts';
import type { Finding, Use } from '../assess/types.ts';
import type { Json } from '../document/json.ts';
import type { Patch } from '../document/patch.ts';
import { setPatch } from '../edit/place.ts';
import type { Model } from '../model/model.ts';
import { writeLike } from '../placing/length-text.ts';
import { valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import type { Effort } from './types.ts';

/** What the shop must be able to do for a step. SI. */
export interface Needs {
  /** A part of this diameter is turned. */
  readonly swing?: number;
  /** A shaft of this length is turned. */
  readonly turned?: number;
  /** A bar of this diameter and length is turned down. */
  readonly bar?: { readonly diameter: number; readonly length: number; readonly given: number | null };
  /** A plate of this thickness is welded. */
  readonly weld?: number;
  /** A plate of this size is cut from a sheet. */
  readonly sheet?: { readonly width: number; readonly length: number; readonly thickness: number };
  /** A bearing is pressed on a shaft of this length, which stands in the press. */
  readonly pressed?: number;
}

export interface Step {
  readonly what: string;
  readonly patches: readonly Patch[];
  /** Relative change. */
  readonly size: number;
  readonly needs?: Needs;
  /** It cannot be done, whatever the shop. */
  readonly never?: string;
}

/** Steps in one direction; the search takes the first that does. */
export interface Ladder {
  readonly effort: Effort;
  readonly steps: readonly Step[];
}

/** What a way looks at: the finding, and the build that it stands in. */
export interface Ground {
  readonly session: Session;
  readonly model: Model;
  readonly finding: Finding;
  /** At the middle of all ranges. */
  readonly scene: Scene;
  readonly show: (use: Use, si: number) => string;
}

/** Changes that may make a check hold. */
export type Way = (ground: Ground) => readonly Ladder[];

/** Puts a value at an address. */
export const put = ({ session }: Ground, address: string, value: Json): Patch => setPatch(session, address, value);

/** Puts several values into one group of a part, which is made where it is missing. */
export const putIn = (ground: Ground, group: string, values: Readonly<Record<string, Json>>): readonly Patch[] =>
  valueAt(ground.session.build, group) === undefined
    ? [put(ground, group, values)]
    : Object.entries(values).map(([key, value]) => put(ground, `${group}/${key}`, value));

/** What is typed at an address; undefined for a blank. */
export const typedAt = ({ session }: Ground, address: string): string | undefined => {
  const value = valueAt(session.build, address);
  return typeof value === 'string' ? value : undefined;
};

/** A length in the unit that is typed at the address, or in millimetres. */
export const lengthText = (ground: Ground, address: string, si: number): string =>
  writeLike(si, typedAt(ground, address) ?? 'mm');

/** Whether a length is typed in inches at an address. */
export const inInches = (ground: Ground, address: string): boolean => {
  const parsed = parseInput(typedAt(ground, address) ?? '', 'length');
  return parsed.ok && ['in', 'thou', 'ft'].includes(parsed.unit);
};

/** A size that is bought or cut as usual: a fraction where the address is typed in inches. */
export const tradeText = (ground: Ground, address: string, si: number): string =>
  inInches(ground, address) ? writeLike(si, '1/8 in') : lengthText(ground, address, si);

/** A ladder, unless it has no steps. */
export const ladder = (effort: Effort, steps: readonly Step[]): readonly Ladder[] =>
  steps.length > 0 ? [{ effort, steps }] : [];

/** A change that stands by itself. */
export const single = (effort: Effort, step: Step): readonly Ladder[] => ladder(effort, [step]);

/** Relative change from one positive number to another. */
export const change = (from: number, to: number): number => Math.abs(to - from) / Math.max(Math.abs(from), 1e-9);

/** Numbers from one to another, both counted, in even steps. */
export const range = (from: number, to: number, by: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / by + 1e-9) + 1) }, (_, k) => from + k * by);
