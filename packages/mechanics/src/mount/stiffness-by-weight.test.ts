import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { mountStiffnessByWeight } from './stiffness-by-weight.ts';

const given = { mass: 60, before: 0.0012, after: 0.0004, elsewhere: 0, mounts: 1, gauge: 0.00002, gravity: 9.80665 };

describe('stiffness of a mount by weight and dial gauge', () => {
  it('is the weight over the way, whichever way the gauge counts', () => {
    const { stiffness } = mountStiffnessByWeight.run(given);
    expect(stiffness).toBeCloseTo((60 * 9.80665) / 0.0008, 6);
    expect(mountStiffnessByWeight.run({ ...given, before: 0.0004, after: 0.0012 }).stiffness).toBeCloseTo(stiffness, 6);
    expect(checkMethod(mountStiffnessByWeight, given)).toEqual([]);
  });

  it('four equal mounts have a quarter each, and the frame’s own give is taken off', () => {
    const { stiffness } = mountStiffnessByWeight.run({ ...given, elsewhere: 0.0003, mounts: 4 });
    // Springs in a row: one over the sum of what each gives way.
    const frame = (60 * 9.80665) / 0.0003;
    const together = (60 * 9.80665) / 0.0008;
    expect(4 * stiffness).toBeCloseTo(1 / (1 / together - 1 / frame), 3);
  });

  it('the stated spread is what two readings so far off do', () => {
    const { stiffness, spread } = mountStiffnessByWeight.run({ ...given, gauge: 1e-8 });
    const off = mountStiffnessByWeight.run({ ...given, before: 0.0012 - 1e-8, after: 0.0004 + 1e-8 }).stiffness;
    expect((off - stiffness) / spread).toBeCloseTo(1, 3);
  });

  it('refuses a gauge that did not move further than the frame', () => {
    expect(() => mountStiffnessByWeight.run({ ...given, elsewhere: 0.001 })).toThrow(/bolted to, 0.001 m, is accepted/);
  });
});
