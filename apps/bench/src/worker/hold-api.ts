/** Changes that make a finding hold, as the page asks for them. */
import type { Hold, HoldProgress } from '@oddwheel/build/hold/types';

export interface HoldApi {
  /**
   * Looks for the smallest changes that make a finding hold; others are answered in between.
   * @param tell is told now and then how far it is
   * @returns null when the build changed meanwhile, it was stopped, another one was asked for, or there is no such finding
   */
  readonly hold: (finding: string, tell: (progress: HoldProgress) => void) => Promise<Hold | null>;
  /** Gives up looking. */
  readonly stopHold: () => void;
}
