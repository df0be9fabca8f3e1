import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import type { Body } from '../../model/model.ts';
import type { Named, UnknownSize } from './types.ts';

/** What a part is to its neighbours. */
export type Role =
  | 'shaft'
  | 'bearing'
  | 'sprocket'
  | 'pulley'
  | 'gear'
  | 'wheel'
  | 'idler'
  | 'chain'
  | 'belt'
  | 'tube'
  | 'solid'
  | 'access';

/** A part of the vehicle within convex envelopes. */
export interface Part extends Named {
  readonly role: Role;
  /** Element of the path that it belongs to; null for what stands still. */
  readonly element: string | null;
  /** Bodies that carry it: both ends of a chain; none where the build does not say. */
  readonly bodies: readonly Body[];
  /** Lines of shafts, by number, on which it sits, runs or, a bearing, holds. */
  readonly lines: readonly number[];
  /** Stage that it belongs to. */
  readonly stage: number | null;
  /** Envelopes as drawn, at one angle of the swinging arm, up from where it is drawn. */
  readonly at: (arm: number) => readonly Solid[];
  /** The same with the largest sprockets that shall go on; null where there are none larger. */
  readonly largest: ((arm: number) => readonly Solid[]) | null;
  /** Whether the angle of the arm changes its envelopes. */
  readonly swings: boolean;
  /** What speed adds to its radius, m. */
  readonly growth: number;
}

/** Parts of one element, and sizes that are not known. */
export interface Envelopes {
  readonly parts: readonly Part[];
  readonly unknown: readonly UnknownSize[];
}

export const still = (solids: readonly Solid[]): Part['at'] => {
  return () => solids;
};
