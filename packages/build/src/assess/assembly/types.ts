import type { Missing } from '../types.ts';

/** How one shaft goes together. */
export interface ShaftAssembly {
  /** Shaft. */
  readonly address: string;
  readonly name: string;
  /** What is done, in order; empty where it cannot be done or is not known. */
  readonly steps: readonly string[];
  /** What is missing to tell. */
  readonly missing: readonly Missing[];
}

/** What comes off, in order, to change one part. */
export interface Service {
  /** Seat of a sprocket, pulley or bearing, or stage of a chain or belt. */
  readonly address: string;
  /** "sprocket 15 on Shaft B". */
  readonly name: string;
  readonly changes: 'sprocket' | 'chain' | 'bearing';
  /** What is done, in order; the last step frees the part. Empty where it cannot be done or is not known. */
  readonly steps: readonly string[];
  readonly missing: readonly Missing[];
}

/** How the drive goes together, and how parts that wear are changed. */
export interface Assembly {
  readonly shafts: readonly ShaftAssembly[];
  readonly services: readonly Service[];
}
