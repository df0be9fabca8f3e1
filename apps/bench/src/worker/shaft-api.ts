/** The diagrams of the shafts, as the page asks for them. */
import type { ShaftLine } from '@oddwheel/build/assess/strength/shaft-lines';
import type { Link } from '@oddwheel/build/assess/strength/thrust-links';
import type { Missing } from '@oddwheel/build/assess/types';

/** What sits on a shaft, for marking it on the outline; null for a size that the build does not say. */
export interface DrawnSeat {
  readonly address: string;
  readonly name: string;
  readonly kind: 'sprocket' | 'pulley' | 'gear' | 'joint' | 'wheel' | 'bearing';
  readonly station: number;
  readonly width: number | null;
  /** Outside diameter of a bearing. */
  readonly outside: number | null;
}

/** What a push along a shaft passes through one way, part by part. */
export interface DrawnPush {
  readonly way: 'start' | 'end';
  /** Greatest over all cases, N. */
  readonly push: number;
  readonly links: readonly Pick<Link, 'name' | 'demand' | 'state' | 'capacity' | 'missing'>[];
}

export interface ShaftDrawn {
  readonly line: ShaftLine;
  readonly seats: readonly DrawnSeat[];
  /** Both ways, or what must be known first. */
  readonly pushes: readonly DrawnPush[] | { readonly missing: readonly Missing[] };
}

export interface ShaftApi {
  /**
   * Moments, forces and movements along every shaft, worked out when asked for.
   * @param caseId load case, or 'here'; null for each shaft's own case, in which it is nearest to yield
   * @returns null when there is no such case
   */
  readonly shaftLines: (caseId: string | null) => readonly ShaftDrawn[] | null;
}
