/**
 * Advice on beads, played on parts of a simulator that shares no code with it. What such parts do is common practice, not published;
 * `npm run proof:true` plays 2,000 of them.
 */
import { describe, expect, test } from 'vitest';
import { play } from './compare.ts';
import { newPart, oracle, STATED, tirOf, WIDER, weld } from './simulator.ts';

const COUNT = 120;

describe.each([
  ['the stated spread', STATED],
  ['half as much spread more', WIDER],
])('extra beads, %s', (_, spread) => {
  const told = play('told', spread, 1, COUNT);
  const advice = play('advice', spread, 1, COUNT);

  test('advice brings at least 95 % as many parts within 3 thou as one who is told the hidden habits, in a round more at most', () => {
    expect(advice.within).toBeGreaterThanOrEqual(0.95 * told.within);
    expect(advice.median).toBeLessThanOrEqual(told.median + 1);
  });

  test('it brings in many more than the same bead each time, or a larger one each time', () => {
    for (const rule of ['same', 'larger'] as const)
      expect(advice.within - play(rule, spread, 1, COUNT).within).toBeGreaterThan(0.15);
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
