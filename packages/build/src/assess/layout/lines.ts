import type { Body, Model, Seat, Shaft } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';

/** Consecutive shafts joined by rigid couplings. */
export interface Line {
  /** Index of its first shaft. */
  readonly first: number;
  readonly shafts: readonly Shaft[];
  readonly bearings: readonly Seat[];
  readonly bodies: readonly Body[];
}

const LINES: Within<readonly Line[]> = new WeakMap();

/** Shaft lines in the order of power. */
export function linesOf(model: Model): readonly Line[] {
  return within(LINES, [model], () => linesAnew(model));
}

function linesAnew(model: Model): readonly Line[] {
  const groups: { first: number; shafts: Shaft[] }[] = [];
  model.shafts.forEach((shaft, k) => {
    const before = model.stages[k - 1];
    const last = groups.at(-1);
    if (last && before?.kind === 'coupling' && before.joint === 'rigid') last.shafts.push(shaft);
    else groups.push({ first: k, shafts: [shaft] });
  });
  return groups.map(({ first, shafts }): Line => {
    const bearings = shafts.flatMap(({ seats }) => seats.filter(({ kind }) => kind === 'bearing'));
    const named = bearings.flatMap(({ body }) => (body === null ? [] : [body]));
    // The output turns in the gearbox, so the engine carries it in any case.
    const bodies = first === 0 ? (['engine', ...named] as const) : named;
    return { first, shafts, bearings, bodies: [...new Set(bodies)] };
  });
}

/** Line that a shaft belongs to. */
export function lineOf(lines: readonly Line[], shaft: number): Line | null {
  return lines.find(({ first, shafts }) => shaft >= first && shaft < first + shafts.length) ?? null;
}

export const nameOf = (line: Line): string => line.shafts.map(({ name }) => name).join(' with ');

/**
 * Radial supports that hold a line. The bearings of the output in the engine's own case are bored together and count as one, and so does an
 * outboard bearing that the engine carries.
 */
export function supportsOf({ first, shafts, bearings }: Line): number {
  if (first > 0) return bearings.length;
  const inCase = new Set(shafts[0]?.seats.filter(({ body }) => body === 'engine').map(({ address }) => address));
  return 1 + bearings.filter(({ address }) => !inCase.has(address)).length;
}
