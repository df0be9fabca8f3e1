import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { spurForces } from './forces.ts';
import { spurGeometry } from './geometry.ts';

const INCH = 0.0254;
const POUND_FORCE = 0.45359237 * 9.80665;
const DEGREE = Math.PI / 180;

describe('spur pair', () => {
  it('veh-train-kh-13-3 — Khurmi & Gupta, example 13.3: 28/100 at m 3.125 and 36/124 at m 2.5 share 200 mm (read)', () => {
    const one = spurGeometry.run({ teethDriver: 28, teethDriven: 100, module: 0.003125 });
    const two = spurGeometry.run({ teethDriver: 36, teethDriven: 124, module: 0.0025 });
    expect(one.centreDistance).toBeCloseTo(0.2, 12);
    expect(two.centreDistance).toBeCloseTo(0.2, 12);
    expect(one.ratio * two.ratio).toBeCloseTo(12.3, 1);
  });

  it('gear-spur-agma-14-4 — Shigley, Example 14-4: pitch diameters 1.7 and 5.2 in at Pd 10 (memory)', () => {
    const pair = { teethDriver: 17, teethDriven: 52, module: INCH / 10 };
    const found = spurGeometry.run(pair);
    expect(found.pitchDiameterDriver / INCH).toBeCloseTo(1.7, 12);
    expect(found.pitchDiameterDriven / INCH).toBeCloseTo(5.2, 12);
    expect(found.outsideDiameterDriver / INCH).toBeCloseTo(1.9, 12);
    expect(checkMethod(spurGeometry, pair)).toEqual([]);
  });

  it('gear-spur-lewis-14-1 — Shigley, Problem 14-1: d 3.667 in, 429.7 lbf at 15 hp and 1200 rpm (read)', () => {
    const { pitchDiameterDriver } = spurGeometry.run({ teethDriver: 22, teethDriven: 60, module: INCH / 6 });
    expect(pitchDiameterDriver / INCH).toBeCloseTo(3.667, 3);
    const torque = (15 * 550 * 12 * 60 * INCH * POUND_FORCE) / (2 * Math.PI * 1200);
    const { tangential } = spurForces.run({ torque, pitchDiameter: pitchDiameterDriver, pressureAngle: 20 * DEGREE });
    expect(Math.abs(tangential / POUND_FORCE / 429.7 - 1)).toBeLessThan(2e-3);
  });

  it('gear-spur-lewis-14-3 — Shigley, Problem 14-3: 235.8 N at 0.5 kW and 1800 rpm (read)', () => {
    const torque = (500 * 60) / (2 * Math.PI * 1800);
    const found = spurForces.run({ torque, pitchDiameter: 18 * 0.00125, pressureAngle: 20 * DEGREE });
    expect(Math.abs(found.tangential / 235.8 - 1)).toBeLessThan(2e-3);
  });

  it('gear-spur-forces-13-31 — Shigley, Problem 13-31: 622, 226 and 662 lbf at 1120 lbf·in (read)', () => {
    const gear = { torque: 1120 * INCH * POUND_FORCE, pitchDiameter: (18 / 5) * INCH, pressureAngle: 20 * DEGREE };
    const found = spurForces.run(gear);
    expect(Math.abs(found.tangential / POUND_FORCE / 622 - 1)).toBeLessThan(3e-3);
    expect(Math.abs(found.radial / POUND_FORCE / 226 - 1)).toBeLessThan(3e-3);
    expect(Math.abs(found.whole / POUND_FORCE / 662 - 1)).toBeLessThan(3e-3);
    expect(checkMethod(spurForces, gear)).toEqual([]);
  });

  it('refuses a module of zero and a torque below zero', () => {
    expect(() => spurGeometry.run({ teethDriver: 17, teethDriven: 52, module: 0 })).toThrow(
      'Module: 0 m is out of range',
    );
    expect(() => spurForces.run({ torque: -1, pitchDiameter: 0.05, pressureAngle: 0.35 })).toThrow(
      'Torque on the gear: -1 N·m is out of range; it must be at least 0 N·m.',
    );
  });
});
