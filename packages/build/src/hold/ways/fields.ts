/** Ladders over one typed field. */

import type { Kind } from '@oddwheel/quantity/kinds';
import { parseInput } from '@oddwheel/quantity/range';
import { fromSi, requireUnit } from '@oddwheel/quantity/units';
import { change, type Ground, type Ladder, ladder, lengthText, put, type Step, typedAt } from '../ladder.ts';
import type { Effort } from '../types.ts';

/** Digits that a changed quantity is written with. */
const tidy = (x: number): number => Number(x.toPrecision(4));

/** A typed quantity or range with every end changed by the same amount, in its own unit; null where nothing is typed. */
function shifted(text: string | undefined, kind: Kind, by: number): string | null {
  const parsed = text === undefined ? null : parseInput(text, kind);
  if (!parsed?.ok) return null;
  const { symbol, typed } = requireUnit(kind, parsed.unit);
  const at = (si: number): number => tidy(fromSi(kind, symbol, si + by));
  return `${parsed.lo < parsed.hi ? `${at(parsed.lo)}..${at(parsed.hi)}` : at(parsed.si)} ${typed}`.trim();
}

/** A typed quantity or range so many times as large, in its own unit and in two figures; null where nothing is typed. */
export function scaledText(ground: Ground, address: string, kind: Kind, times: number): string | null {
  const text = typedAt(ground, address);
  const parsed = text === undefined ? null : parseInput(text, kind);
  if (!parsed?.ok) return null;
  const { symbol, typed } = requireUnit(kind, parsed.unit);
  const at = (si: number): number => Number(fromSi(kind, symbol, si * times).toPrecision(2));
  return `${parsed.lo < parsed.hi ? `${at(parsed.lo)}..${at(parsed.hi)}` : at(parsed.si)} ${typed}`.trim();
}

/** A typed quantity raised or lowered; a range is moved whole. */
export function movedField(
  ground: Ground,
  address: string,
  {
    kind,
    by,
    says,
    effort,
  }: {
    readonly kind: Kind;
    /** SI, the smallest first. */
    readonly by: readonly number[];
    /** "Raise the idle to 1500 rpm", from the new text. */
    readonly says: (to: string, from: string) => string;
    readonly effort: Effort;
  },
): readonly Ladder[] {
  const from = typedAt(ground, address);
  const parsed = from === undefined ? null : parseInput(from, kind);
  if (from === undefined || !parsed?.ok) return [];
  return ladder(
    effort,
    by.flatMap((step): Step[] => {
      const to = shifted(from, kind, step);
      if (to === null || !(parsed.lo + step > 0)) return [];
      return [{ what: says(to, from), patches: [put(ground, address, to)], size: change(parsed.si, parsed.si + step) }];
    }),
  );
}

/** A length raised in parts of itself. */
export function longer(
  ground: Ground,
  address: string,
  from: number | null,
  {
    parts,
    says,
    effort,
  }: {
    readonly parts: readonly number[];
    readonly says: (to: string, from: string) => string;
    readonly effort: Effort;
  },
): readonly Ladder[] {
  const typed = typedAt(ground, address);
  if (from === null || typed === undefined) return [];
  return ladder(
    effort,
    parts.map((part): Step => {
      const to = lengthText(ground, address, Math.round(from * (1 + part) * 2000) / 2000);
      return { what: says(to, typed), patches: [put(ground, address, to)], size: Math.abs(part) };
    }),
  );
}
