import { formatQuantity } from '@oddwheel/quantity/format';
import { clockText } from './clock.ts';
import type { PartView } from './part-view.ts';
import { lengthOf } from './section.ts';
import type { NextSheet } from './sheet-types.ts';
import { lengthWords, nextWords, refusedUse } from './words.ts';

const SAME_STATION = 0.5e-3;
const COLD = 'Measure it cold: a bar 10 K warmer on one side reads thou that are not there.';

/** What comes next for a part: a measurement that is missing, a bead, waiting, an end, or a choice of other ways. */
export function nextSheet(view: PartView, unit: string): NextSheet {
  const { part, advice, goal, missing, sets, atGoal } = view;
  const refused = refusedUse(part);
  const measured = (text: string) => sets.some(({ station }) => Math.abs(station - lengthOf(text)) < SAME_STATION);
  const stop = `Stop when the TIR is ${lengthWords(goal, unit)} or less.`;
  const wanted = [part.seats.a, part.seats.b, part.goal.station].filter((text) => !measured(text));
  const plain = (kind: NextSheet['kind'], say: string, why: string, cautions: readonly string[] = []): NextSheet => ({
    kind,
    words: { say, why, expect: '', cautions, stopWhen: stop },
  });
  const [first] = wanted;
  if (first !== undefined) {
    const isSeat = first !== part.goal.station;
    const say = isSeat ? `Measure the bearing seat at ${first}.` : `Measure the station that matters, at ${first}.`;
    const why = isSeat
      ? 'Run-out is stated against the line through both bearing seats, whatever the chuck does.'
      : `Both seats are measured; here TIR ${lengthWords(goal, unit)} or less is wanted.`;
    return { ...plain('measure', say, why, [COLD]), station: first };
  }
  if (refused !== undefined)
    return plain('refused', refused, 'A part that steers, carries or stops the vehicle is no part to try this on.');
  if (advice) {
    const words = nextWords(advice, goal, unit);
    const { tir, low, high } = advice.expected;
    const expected = { tir, low, high };
    if (advice.do !== 'bead')
      return { kind: advice.do, words, expected, ...(advice.do === 'wait' ? { station: part.goal.station } : {}) };
    const { clock, length, segment } = advice.bead;
    const bead = { clock: clockText(clock), length: formatQuantity(length, 'length', 'mm', { digits: 3 }) };
    return { kind: 'bead', words, expected, bead: segment === undefined ? bead : { ...bead, segment } };
  }
  const [ask] = missing;
  if (ask !== undefined)
    return {
      ...plain('measure', ask, 'Each correction is judged by the reading after it.', [COLD]),
      station: part.goal.station,
    };
  if (atGoal && atGoal.tir <= goal)
    return plain(
      'stop',
      'Stop here. The part is good.',
      'Measure once more in its own bearings, bolted up, and again after running.',
    );
  return plain(
    'other way',
    'Choose a way to bring it down.',
    'The cheapest and most reversible comes first. Beads are told once the weld of the part is described.',
  );
}
