import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { universalRatio } from './universal-ratio.ts';

const DEGREE = Math.PI / 180;

describe('universal joint', () => {
  it('uj-ratio-30 — stored question and answer on a 30° joint: 1.1547 and 0.86603 (read)', () => {
    const found = universalRatio.run({ angle: 30 * DEGREE, turn: 0 });
    expect(found.highest).toBeCloseTo(1.1547, 4);
    expect(found.lowest).toBeCloseTo(0.86603, 5);
    expect(found.ratioAtTurn).toBeCloseTo(found.highest, 12);
    expect(universalRatio.run({ angle: 30 * DEGREE, turn: 90 * DEGREE }).ratioAtTurn).toBeCloseTo(found.lowest, 12);
  });

  it('uj-angle-for-fluctuation-1200 — theory-of-machines problem: 1251 and 1151 rpm at 16.42° (read)', () => {
    const { highest, lowest, unevenness } = universalRatio.run({ angle: 16.423 * DEGREE, turn: 0 });
    expect(Math.abs(1200 * highest - 1251)).toBeLessThan(0.6);
    expect(Math.abs(1200 * lowest - 1151)).toBeLessThan(0.6);
    expect(1200 * unevenness).toBeCloseTo(100, 1);
  });

  it('uj-equal-speed-20 — engineering-services examination, 2013: tan θ = √cos β, 44.11° from the fork in the plane (read)', () => {
    const { equalTurn } = universalRatio.run({ angle: 20 * DEGREE, turn: 0 });
    expect(equalTurn / DEGREE).toBeCloseTo(44.1092, 3);
    expect(universalRatio.run({ angle: 20 * DEGREE, turn: equalTurn }).ratioAtTurn).toBeCloseTo(1, 12);
  });

  it('follows tan θ₂ = tan θ₁ / cos β, differentiated numerically', () => {
    const angle = 25 * DEGREE;
    const out = (turn: number): number => Math.atan(Math.tan(turn) / Math.cos(angle));
    for (const turn of [0.1, 0.4, 0.8, 1.2]) {
      const slope = (out(turn + 1e-5) - out(turn - 1e-5)) / 2e-5;
      expect(universalRatio.run({ angle, turn }).ratioAtTurn).toBeCloseTo(slope, 8);
    }
  });

  it('a straight joint runs evenly; every formula shown gives the value returned', () => {
    expect(universalRatio.run({ angle: 0, turn: 1 })).toMatchObject({
      highest: 1,
      lowest: 1,
      unevenness: 0,
      ratioAtTurn: 1,
    });
    expect(checkMethod(universalRatio, { angle: 0.3, turn: 0.7 })).toEqual([]);
    expect(() => universalRatio.run({ angle: 1.5, turn: 0 })).toThrow(
      /is out of range; it must be at least 0 rad and at most/,
    );
  });
});
