import type { Method, Params } from './method.ts';

/** What printing a tree needs to know of each value that it names. */
export type Names = Readonly<Record<string, { readonly symbol: string; readonly form: string }>>;

/** All named values of a method, inputs first. */
export function paramsOf(method: Method): Params {
  return { ...method.inputs, ...method.outputs };
}

/** A symbol as printed: letter, and subscripts from outer to inner. */
export interface SymbolParts {
  readonly base: string;
  /** Parts of the subscript, printed with commas between; may be empty. */
  readonly subs: readonly string[];
  readonly vector: boolean;
}

const AXES = ['x', 'y', 'z'];

/**
 * Takes a symbol apart: "d_1" is d with subscript 1. An entry of a vector gets the axis as one more subscript, an entry of a list its number
 * counted from 1.
 * @throws RangeError when the key is not among the names.
 */
export function symbolParts(names: Names, key: string, index?: number): SymbolParts {
  const named = Object.hasOwn(names, key) ? names[key] : undefined;
  if (named === undefined) throw new RangeError(`There is no symbol for "${key}".`);
  const [base = '', ...rest] = named.symbol.split('_');
  const subs = rest
    .join(',')
    .split(',')
    .filter((sub) => sub !== '');
  const isVector = named.form === 'vector';
  if (index === undefined) return { base, subs, vector: isVector };
  return { base, subs: [...subs, (isVector ? AXES[index] : undefined) ?? String(index + 1)], vector: false };
}

/** Letter that counts through a list in a sum or product: k, or j where the list itself is called k. */
export function countingLetter(parts: SymbolParts): string {
  return parts.base === 'k' ? 'j' : 'k';
}
