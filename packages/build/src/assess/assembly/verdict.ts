import type { Missing } from '../types.ts';

/** Answer to a question that may lack an input: with the reasons why not, or what is missing to tell. */
export type Verdict =
  | { readonly is: 'yes' }
  | { readonly is: 'no'; readonly why: readonly string[] }
  | { readonly is: 'open'; readonly missing: readonly Missing[] };

export const YES: Verdict = { is: 'yes' };

/** All must hold: one no is a no, whatever else is open. */
export function allOf(verdicts: readonly Verdict[]): Verdict {
  const why = verdicts.flatMap((v) => (v.is === 'no' ? v.why : []));
  if (why.length > 0) return { is: 'no', why: [...new Set(why)] };
  const missing = new Map(verdicts.flatMap((v) => (v.is === 'open' ? v.missing : [])).map((m) => [m.address, m]));
  return missing.size > 0 ? { is: 'open', missing: [...missing.values()] } : YES;
}

/** A size with the input it comes from, for when it is missing. */
export interface Size {
  readonly value: number | null;
  readonly missing: Missing;
}

/** Tells whether `small` goes through `large`; equal sizes do. */
export function passes(small: Size, large: Size, why: () => string): Verdict {
  const missing = [small, large].flatMap((size) => (size.value === null ? [size.missing] : []));
  if (small.value === null || large.value === null) return { is: 'open', missing };
  // Sizes typed in different units differ by rounding only.
  return small.value <= large.value + 1e-9 ? YES : { is: 'no', why: [why()] };
}
