import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cross, dot, minus, norm, plus, times } from '../numerics/vector.ts';
import { bevelForces } from './forces.ts';
import { bevelSpiralForces } from './spiral-forces.ts';

const DEGREE = Math.PI / 180;
const HANDS = ['right', 'left'] as const;
const TURNS = ['clockwise', 'counter-clockwise'] as const;
const FLOWS = ['drive', 'coast'] as const;

/** gear-spiral-forces-signs: 16 and 48 teeth at 90°, 20° and 35°, 1000 N. */
const PAIR = {
  torqueDriver: 50,
  meanDiameterDriver: 0.1,
  pitchAngleDriver: Math.atan2(16, 48),
  pitchAngleDriven: Math.atan2(48, 16),
  pressureAngle: 20 * DEGREE,
  spiralAngle: 35 * DEGREE,
} as const;

describe('gear-spiral-forces-signs — Shigley’s equations and the rule of hand and turning (memory, derived anew by vectors)', () => {
  it('left clockwise and right counter-clockwise: 804.8 N outward, 200.1 N inward; the other two −523.8 and 642.9 N', () => {
    for (const hand of HANDS) {
      for (const turning of TURNS) {
        const found = bevelSpiralForces.run({ ...PAIR, hand, turning, flow: 'drive' });
        const outward = (hand === 'left') === (turning === 'clockwise');
        expect(Math.abs(found.axialDriver - (outward ? 804.8 : -523.8))).toBeLessThan(0.8);
        expect(Math.abs(found.radialDriver - (outward ? 200.1 : 642.9))).toBeLessThan(0.6);
        expect(found.axialDriven).toBeCloseTo(found.radialDriver, 9);
        expect(found.radialDriven).toBeCloseTo(found.axialDriver, 9);
      }
    }
  });
});

/** Force on the driver at a shaft along z with its apex at the origin, in space: tooth, motion and flank as drawn. */
function forceOnDriver(hand: string, turning: string, flow: string, delta: number, psi: number, alpha: number): Vec3 {
  const radial: Vec3 = [1, 0, 0];
  const back: Vec3 = [0, 0, 1];
  const alongCone = plus(times(Math.sin(delta), radial), times(Math.cos(delta), back));
  const inward = minus(times(Math.sin(delta), back), times(Math.cos(delta), radial));
  // Seen from the apex, looking along the axis to the back, a right-hand turn about the axis is clockwise.
  const clockwise = cross(back, radial);
  const tooth = plus(times(Math.cos(psi), alongCone), times((hand === 'right' ? 1 : -1) * Math.sin(psi), clockwise));
  // Seen from the back it is the other way about.
  const motion = times(turning === 'clockwise' ? -1 : 1, clockwise);
  const square = cross(tooth, inward);
  const push = times(flow === 'drive' ? -1 : 1, motion);
  const flank = times(Math.sign(dot(square, push)), square);
  // One newton along the motion; the flank leans inward by the pressure angle.
  const inPlane = times(1 / Math.abs(dot(flank, motion)), flank);
  return plus(inPlane, times(norm(inPlane) * Math.tan(alpha), inward));
}

describe('against vectors of a tooth in space', () => {
  it('all four cases, driving and coasting', () => {
    for (const hand of HANDS) {
      for (const turning of TURNS) {
        for (const flow of FLOWS) {
          const found = bevelSpiralForces.run({ ...PAIR, hand, turning, flow });
          const force = forceOnDriver(hand, turning, flow, PAIR.pitchAngleDriver, 35 * DEGREE, 20 * DEGREE);
          expect(1000 * force[2]).toBeCloseTo(found.axialDriver, 8);
          expect(-1000 * force[0]).toBeCloseTo(found.radialDriver, 8);
        }
      }
    }
  });

  it('at any shaft angle the forces on both gears cancel along the cone and square to it', () => {
    for (const [one, other] of [
      [20, 50],
      [30, 90],
      [45, 45],
    ] as const) {
      const pair = { ...PAIR, pitchAngleDriver: one * DEGREE, pitchAngleDriven: other * DEGREE };
      const found = bevelSpiralForces.run({ ...pair, hand: 'left', turning: 'clockwise', flow: 'drive' });
      const along = (axial: number, radial: number, angle: number): number =>
        axial * Math.cos(angle) - radial * Math.sin(angle);
      const apart = (axial: number, radial: number, angle: number): number =>
        axial * Math.sin(angle) + radial * Math.cos(angle);
      const { axialDriver, radialDriver, axialDriven, radialDriven } = found;
      expect(along(axialDriver, radialDriver, one * DEGREE)).toBeCloseTo(
        -along(axialDriven, radialDriven, other * DEGREE),
        9,
      );
      expect(apart(axialDriver, radialDriver, one * DEGREE)).toBeCloseTo(
        apart(axialDriven, radialDriven, other * DEGREE),
        9,
      );
    }
  });

  it('without a spiral: the forces of straight teeth', () => {
    const { spiralAngle, ...straight } = PAIR;
    const found = bevelSpiralForces.run({
      ...PAIR,
      spiralAngle: 0 * spiralAngle,
      hand: 'left',
      turning: 'clockwise',
      flow: 'coast',
    });
    const { axialDriver, radialDriver, axialDriven, radialDriven, tangential } = bevelForces.run(straight);
    expect(found).toMatchObject({ tangential });
    expect(found.axialDriver).toBeCloseTo(axialDriver, 9);
    expect(found.radialDriver).toBeCloseTo(radialDriver, 9);
    expect(found.axialDriven).toBeCloseTo(axialDriven, 9);
    expect(found.radialDriven).toBeCloseTo(radialDriven, 9);
  });

  it('coasting turns the push of the spiral round; every formula shown gives the value returned', () => {
    const input = { ...PAIR, hand: 'right', turning: 'clockwise' } as const;
    expect(bevelSpiralForces.run({ ...input, flow: 'coast' }).axialDriver).toBeCloseTo(804.8, 0);
    expect(checkMethod(bevelSpiralForces, { ...input, flow: 'coast' })).toEqual([]);
    expect(checkMethod(bevelSpiralForces, { ...input, flow: 'drive' })).toEqual([]);
  });
});
