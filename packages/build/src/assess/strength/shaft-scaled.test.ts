/** Loads that are alike but for their size. */
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import type { SeatLoad } from './seat-loads.ts';
import { timesAsLarge } from './shaft-scaled.ts';

describe('how many times as large', () => {
  const load = (force: Vec3, turns = false): SeatLoad => ({
    seat: 'a',
    at: [0, 0, 0],
    force,
    moment: [0, 0, 0],
    turns,
  });

  it('is told of loads that are alike but for the size', () => {
    expect(timesAsLarge([load([2, 4, 0]), load([0, 0, -6])], [load([1, 2, 0]), load([0, 0, -3])])).toBe(2);
  });

  it.each([
    ['the other way round', [load([-1, 0, 0])], [load([1, 0, 0])]],
    ['in another direction', [load([1, 1, 0])], [load([1, 0, 0])]],
    ['of another size at one seat', [load([2, 0, 0]), load([1, 0, 0])], [load([1, 0, 0]), load([1, 0, 0])]],
    ['one more of them', [load([1, 0, 0]), load([0, 1, 0])], [load([1, 0, 0])]],
    ['turning with the shaft', [load([1, 0, 0], true)], [load([1, 0, 0])]],
    ['nothing', [load([0, 0, 0])], [load([0, 0, 0])]],
  ])('is not told of loads %s', (_, loads, one) => {
    expect(timesAsLarge(loads, one)).toBeNull();
  });
});
