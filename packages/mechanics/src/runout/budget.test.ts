import { describe, expect, it } from 'vitest';
import { runoutBudget } from './budget.ts';

const MM = 1e-3;
const FOUR = [
  { name: 'bearing seat', tir: 0.02 * MM, high: 0 },
  { name: 'bore clearance', tir: 0.05 * MM, high: 140 * (Math.PI / 180) },
  { name: 'sprocket', tir: 0.15 * MM, high: 60 * (Math.PI / 180) },
  { name: 'shaft bend', tir: 0.08 * MM, high: 200 * (Math.PI / 180) },
];
const SPROCKET = { rootDiameter: 0.15, made: 'turned' } as const;

describe('budget of run-out', () => {
  it('known angles count as they are, and the greatest contributor is worth fixing first', () => {
    const budget = runoutBudget(FOUR, { sprocket: SPROCKET, stiffness: 2e5 });
    expect(budget.byAngle).toBeCloseTo(0.13594 * MM, 7);
    expect(budget.worthFixing[0]?.name).toBe('sprocket');
    expect(budget.limits).toMatchObject([{ what: 'sprocket', verdict: 'holds' }]);
    expect(budget.effects.slackSwing).toBeCloseTo(0.13594 * MM, 7);
    expect(budget.effects.drag).toBeCloseTo((2e5 * 0.13594 * MM) / 2, 3);
    expect(budget.effects.imbalanceForce).toBeUndefined();
  });

  it('unknown angles: holds either way, fails either way, or depends on them', () => {
    const unknown = FOUR.map(({ name, tir }) => ({ name, tir }));
    expect(runoutBudget(unknown, { sprocket: SPROCKET }).limits[0]?.verdict).toBe('depends on the angles');
    expect(runoutBudget(unknown.slice(0, 2), { sprocket: SPROCKET }).limits[0]?.verdict).toBe('holds');
    const bad = [{ name: 'bend', tir: MM }, ...unknown.slice(0, 2)];
    expect(runoutBudget(bad, { sprocket: SPROCKET }).limits[0]?.verdict).toBe('fails either way');
  });

  it('balance: 0.05 mm at 1800 rpm and 6 kg is 10.66 N; a gear’s seat has half its class', () => {
    const speed = (1800 * 2 * Math.PI) / 60;
    const served = {
      balance: { mass: 6, speed, grade: 6.3e-3 },
      gear: { bevel: 1, diameter: 0.12, module: 0.003, grade: 8 },
    } as const;
    const budget = runoutBudget([{ name: 'all', tir: 0.1 * MM, high: 0 }], served);
    expect(budget.effects.imbalanceForce).toBeCloseTo(10.659, 2);
    expect(budget.limits.find(({ what }) => what === 'balance')?.tir).toBeCloseTo((2 * 6.3e-3) / speed, 9);
    expect(budget.limits.find(({ what }) => what === 'gear seat')?.tir).toBeCloseTo(0.03664 * MM, 6);
    expect(() => runoutBudget([], {})).toThrow('none read');
  });
});
