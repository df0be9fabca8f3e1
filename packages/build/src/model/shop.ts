/** What the builder has: machines, lathes, and parts on the shelf. */
import type { Value } from './model.ts';

export interface Lathe {
  readonly address: string;
  readonly name: string;
  readonly swing: Value | null;
  readonly centres: Value | null;
}

export type ShelfItem =
  | {
      readonly kind: 'sprocket';
      readonly chain: string;
      readonly teeth: number;
      readonly count: number;
      /** Of one, in the builder's money; null where not said. */
      readonly price: number | null;
    }
  | { readonly kind: 'chain'; readonly chain: string; readonly links: number }
  | {
      readonly kind: 'bevel pair';
      readonly teeth: readonly [number, number];
      readonly count: number;
      readonly price: number | null;
    };

export interface Shop {
  readonly machines: readonly string[];
  readonly lathes: readonly Lathe[] | null;
  readonly shelf: readonly ShelfItem[];
}
