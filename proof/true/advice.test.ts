/**
 * Advice on beads, played on parts of a simulator that shares no code with it. What such parts do is common practice, not published;
 * `npm run proof:true` plays 2,000 of them; its rates are in docs/true-proof.md.
 */
import { describe, expect, test } from 'vitest';
import { clockingGain } from './clocking-gain.ts';
import { play, TASKS } from './compare.ts';
import { newPart, oracle, STATED, tirOf, WIDER, weld } from './simulator.ts';

/** Parts that are played, and what share of the told one's the advice must reach: fewer parts, more chance in the share. */
const SAMPLES = {
  'extra beads': { count: 120, share: 0.95 },
  'weld up, twelve beyond it': { count: 60, share: 0.85 },
} as const;

describe.each([
  ['the stated spread', STATED],
  ['half as much spread more', WIDER],
])('%s', (_, spread) => {
  describe.each(Object.keys(SAMPLES) as (keyof typeof SAMPLES)[])('%s', (task) => {
    const parts = { spread, first: 1, count: SAMPLES[task].count };
    const told = play('told', TASKS[task], parts);
    const advice = play('advice', TASKS[task], parts);

    test('advice brings nearly as many parts within 3 thou as one who is told the hidden habits, in a round more at most', () => {
      expect(advice.within).toBeGreaterThanOrEqual(SAMPLES[task].share * told.within);
      expect(advice.median).toBeLessThanOrEqual(told.median + 1);
    });

    test('it brings in many more than the same bead each time, or a larger one each time', () => {
      for (const rule of ['same', 'larger'] as const)
        expect(advice.within - play(rule, TASKS[task], parts).within).toBeGreaterThan(0.15);
    });
  });
});

describe('re-clocking two parts that run out by 5 to 15 thou', () => {
  test('more positions never leave more, and in any position the worst is known: the sum and the difference of the two', () => {
    const gains = [1, 2, 4, 8, 16].map((positions) => clockingGain(positions, 200));
    for (const [k, { before, after }] of gains.entries()) {
      expect(after).toBeLessThanOrEqual(gains[k - 1]?.after ?? before);
      expect(before).toBe(gains[0]?.before);
    }
    // With very many positions the nearer of the two cancels whole: what is left is the difference of two even numbers from 5 to 15,
    // whose median is 10 times 1 less the root of a half.
    expect(clockingGain(720, 2000).after).toBeCloseTo(10 * (1 - Math.SQRT1_2), 0);
  });
});

test('the simulator: parts come in at 30 to 60 thou, and a bead without scatter by one who is told never makes it worse', () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const part = newPart(seed, STATED);
    expect(tirOf(part.centre)).toBeGreaterThanOrEqual(30);
    expect(tirOf(part.centre)).toBeLessThanOrEqual(60);
    const bead = oracle(part);
    if (bead === null) continue;
    const even = { ...part, habits: { ...part.habits, scatter: 0 } };
    expect(tirOf(weld(even, bead, () => 0.5).centre)).toBeLessThan(tirOf(part.centre));
  }
});
