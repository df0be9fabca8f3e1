import type { RunoutAt } from '@oddwheel/mechanics/runout/axis';
import { dialSwing, formSeen, offsetShare } from '@oddwheel/mechanics/runout/dial-swing';
import type { SetMadeOut } from './section.ts';
import { dialText } from './spread.ts';

/** Run-out at the station that matters as a dial there shows it: the axis off its line, and the section out of round. */
export interface Swing {
  /** Highest less lowest in the part's own bearings, m. */
  readonly dial: number;
  /** From the axis alone, m: what beads, shims and clocking change. */
  readonly axis: number;
  /** From ovality and lobes alone, m. */
  readonly form: number;
  /** TIR that the axis may make so that the dial stays within the goal, m; 0 when form alone is beyond it. */
  readonly share: number;
}

/** Undefined where the readings show no form: then the dial shows the axis. */
export function swingAt(set: SetMadeOut | undefined, { offset, tir }: RunoutAt, goal: number): Swing | undefined {
  const told = set?.lobes
    ? set.lobes.flatMap((lobe) => (lobe.sees === 'blind' ? [] : [lobe.true]))
    : (set?.form?.harmonics ?? []);
  const form = formSeen(told);
  if (form.length === 0) return undefined;
  return {
    dial: dialSwing(offset, form),
    axis: tir,
    form: dialSwing({ x: 0, y: 0 }, form),
    share: offsetShare(goal, form),
  };
}

/** Both swings with their words. */
export function swingWords({ dial, axis, form }: Swing, unit: string): string {
  const text = (value: number) => `${dialText(value, unit)}\u2009${unit}`;
  return `Swing the dial will show: ${text(dial)}; from the axis alone ${text(axis)}, from the section out of round ${text(form)}.`;
}
