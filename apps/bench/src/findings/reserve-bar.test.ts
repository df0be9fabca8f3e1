import { describe, expect, it } from 'vitest';
import { LIMIT_PLACE, reserveBar, reservePlace } from './reserve-bar.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

describe('reserve bar: log scale from 0.5 to 8 (face of the page, reserve bar)', () => {
  it('has four equal steps of a factor two, so the limit lies at a quarter', () => {
    expect([0.5, 1, 2, 4, 8].map(reservePlace)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(LIMIT_PLACE).toBe(0.25);
  });

  it('starts at the limit: rightward for reserve, leftward for shortfall', () => {
    expect(reserveBar(certain(2), 1.5)).toMatchObject({ from: 0.25, to: 0.5, past: null });
    expect(reserveBar(certain(Math.SQRT1_2), 1.5)).toMatchObject({ to: 0.25 });
    expect(reserveBar(certain(Math.SQRT1_2), 1.5)?.from).toBeCloseTo(0.125, 12);
  });

  it('marks a reserve past an end with that end', () => {
    expect(reserveBar(certain(8.38), 1.5)).toMatchObject({ to: 1, past: 'high' });
    expect(reserveBar(certain(0.3), 1.5)).toMatchObject({ from: 0, past: 'low' });
    expect(reserveBar(certain(8), 1.5)?.past).toBeNull();
    expect(reserveBar(certain(0), 1.5)).toMatchObject({ from: 0, past: 'low' });
  });

  it('puts the tick at the design reserve and the whisker at the ends of the uncertainty', () => {
    const bar = reserveBar({ value: 1.28, lo: 1.18, hi: 1.38 }, 2);
    expect(bar?.wanted).toBe(0.5);
    expect(bar?.whisker?.from).toBeCloseTo(0.25 + Math.log2(1.18) / 4, 12);
    expect(bar?.whisker?.to).toBeCloseTo(0.25 + Math.log2(1.38) / 4, 12);
    expect(reserveBar(certain(1.28), 2)?.whisker).toBeNull();
  });

  it('draws nothing for an unknown reserve', () => {
    expect(reserveBar(null, 1.5)).toBeNull();
    expect(reserveBar(certain(Number.NaN), 1.5)).toBeNull();
  });
});
