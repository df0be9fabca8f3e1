import type { CheckId } from '../assess/check-ids.ts';
import type { Hub } from '../model/hub.ts';

/** A failure seen in practice: how it announces itself, what it comes to, and how to catch it. */
export interface Sign {
  /** Last part of its link on the page of consequences. */
  readonly id: string;
  readonly name: string;
  /** What the builder sees, hears or feels before it goes. */
  readonly early: string;
  /** What happens when it goes. */
  readonly goes: string;
  /** Findings that judge it. */
  readonly checks: readonly CheckId[];
  /** Joints of a seat that it belongs to; without it all. */
  readonly joints?: readonly Hub['torqueBy'][];
  /** What no finding judges of it, where that is so. */
  readonly notJudged?: string;
  /** What to do, and how often. */
  readonly service: string;
  readonly every: string;
  /** Where this comes from. */
  readonly from: string;
}
