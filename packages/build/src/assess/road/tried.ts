import { MethodError } from '@oddwheel/mechanics/method/method';
import type { Missing } from '../types.ts';

/** What a method was given and what it gave; or what it lacked, or why there is no answer. */
export type Tried<I, O> =
  | { readonly ok: true; readonly input: I; readonly output: O }
  | {
      readonly ok: false;
      /** Inputs that are blank; empty where all are known and the vehicle cannot do it. */
      readonly missing: readonly Missing[];
      /** Why not, where nothing is missing. */
      readonly says: string;
    };

/**
 * Runs a method.
 * @param says the reason, in a builder's words, where the method refuses its input
 */
export function attempt<I, O>(run: (input: I) => O, input: I, says: string): Tried<I, O> {
  try {
    return { ok: true, input, output: run(input) };
  } catch (error) {
    if (error instanceof MethodError) return refused(says);
    throw error;
  }
}

export const lacks = (...missing: readonly Missing[]) => ({ ok: false, missing, says: '' }) as const;
export const refused = (says: string) => ({ ok: false, missing: [], says }) as const;

/** Worked out at the first call and kept. */
export function once<T>(compute: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => {
    kept ??= { value: compute() };
    return kept.value;
  };
}
