import type { Vec3 } from '@oddwheel/quantity/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cross, dot, norm, plus, times, unit } from '../numerics/vector.ts';
import { bevelForces } from './forces.ts';
import { bevelGeometry } from './geometry.ts';
import { bevelPitchAngles } from './pitch-angles.ts';
import { bevelVirtualTeeth } from './virtual-teeth.ts';

const DEGREE = Math.PI / 180;
const INCH = 0.0254;
const near = (value: number, wanted: number, relative: number): void =>
  expect(Math.abs(value / wanted - 1), `${value} against ${wanted}`).toBeLessThan(relative);

describe('cones of a bevel pair', () => {
  it('gear-bevel-geom-mott-8-6 — Mott, 4th ed., Example Problem 8-6 (read)', () => {
    const pair = { teethDriver: 16, teethDriven: 48, shaftAngle: 90 * DEGREE, module: INCH / 8, faceWidth: INCH };
    const found = bevelGeometry.run(pair);
    near(found.pitchDiameterDriver, 2 * INCH, 1e-3);
    near(found.pitchDiameterDriven, 6 * INCH, 1e-3);
    near(found.pitchAngleDriver, 18.43 * DEGREE, 1e-3);
    near(found.pitchAngleDriven, 71.57 * DEGREE, 1e-3);
    near(found.outerConeDistance, 3.162 * INCH, 1e-3);
    near(found.meanConeDistance, 2.662 * INCH, 1e-3);
    near(found.meanDiameterDriver / found.pitchDiameterDriver, 0.842, 1e-3);
    near(found.faceWidthGuide, 0.949 * INCH, 1e-3);
    expect(checkMethod(bevelGeometry, pair)).toEqual([]);
  });

  it('gear-bevel-geom-30-45 — textbook ch. 27, Example 27-3 (read)', () => {
    const found = bevelGeometry.run({
      teethDriver: 30,
      teethDriven: 45,
      shaftAngle: 90 * DEGREE,
      module: 0.006,
      faceWidth: 0.04,
    });
    near(found.pitchAngleDriver, 33.69 * DEGREE, 5e-4);
    near(found.pitchAngleDriven, 56.31 * DEGREE, 5e-4);
    near(found.outerConeDistance, 0.16225, 5e-4);
  });

  it('gear-bevel-crown-24-48 — crown gear of 48 teeth, pinion of 24: pitch angles 90° and 30° (statement read)', () => {
    const pair = { teethDriver: 24, teethDriven: 48, shaftAngle: 120 * DEGREE, module: 0.00212, faceWidth: 0.012 };
    const found = bevelGeometry.run(pair);
    near(found.pitchAngleDriven, 90 * DEGREE, 1e-9);
    near(found.pitchAngleDriver, 30 * DEGREE, 1e-9);
    near(found.outerConeDistance, 0.05088, 1e-3);
    expect(checkMethod(bevelGeometry, pair)).toEqual([]);
  });

  it('gear-bevel-geom-110deg — general shaft angle, Machinery’s Handbook (memory)', () => {
    const found = bevelGeometry.run({
      teethDriver: 15,
      teethDriven: 40,
      shaftAngle: 110 * DEGREE,
      module: 0.003,
      faceWidth: 0.015,
    });
    near(found.pitchAngleDriver, 22.0101 * DEGREE, 5e-4);
    near(found.pitchAngleDriven, 87.9899 * DEGREE, 5e-4);
    near(found.outerConeDistance, 0.060037, 5e-4);
  });

  it('the two cones fill the shaft angle and share the cone distance; driver and driven swapped change places', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 60 }),
        fc.integer({ min: 8, max: 60 }),
        fc.double({ min: 20, max: 100, noNaN: true }),
        (teethDriver, teethDriven, degrees) => {
          const shaftAngle = degrees * DEGREE;
          fc.pre(
            Math.min(teethDriver, teethDriven) / Math.max(teethDriver, teethDriven) > -Math.cos(shaftAngle) + 0.01,
          );
          const pair = { teethDriver, teethDriven, shaftAngle, module: 0.004, faceWidth: 0.005 };
          const one = bevelGeometry.run(pair);
          expect(one.pitchAngleDriver + one.pitchAngleDriven).toBeCloseTo(shaftAngle, 12);
          const fromDriven = one.pitchDiameterDriven / (2 * Math.sin(one.pitchAngleDriven));
          expect(fromDriven / one.outerConeDistance).toBeCloseTo(1, 11);
          const other = bevelGeometry.run({ ...pair, teethDriver: teethDriven, teethDriven: teethDriver });
          expect(other.pitchAngleDriver).toBeCloseTo(one.pitchAngleDriven, 13);
          expect(other.meanDiameterDriven).toBeCloseTo(one.meanDiameterDriver, 13);
          expect(checkMethod(bevelPitchAngles, { teethDriver, teethDriven, shaftAngle })).toEqual([]);
        },
      ),
      { seed: 51, numRuns: 200 },
    );
  });

  it('virtual teeth of 16 against 48: 16/cos 18.43° = 16.87, 48/cos 71.57° = 151.8', () => {
    const { pitchAngleDriver, pitchAngleDriven } = bevelPitchAngles.run({
      teethDriver: 16,
      teethDriven: 48,
      shaftAngle: 90 * DEGREE,
    });
    const small = bevelVirtualTeeth.run({ teeth: 16, pitchAngle: pitchAngleDriver }).virtualTeeth;
    const large = bevelVirtualTeeth.run({ teeth: 48, pitchAngle: pitchAngleDriven }).virtualTeeth;
    near(small, 16.865, 1e-4);
    near(large, 151.79, 1e-4);
    // At right angles the virtual ratio is the square of the ratio (Machinery's Handbook, memory).
    expect(large / small).toBeCloseTo(9, 10);
    expect(checkMethod(bevelVirtualTeeth, { teeth: 16, pitchAngle: pitchAngleDriver })).toEqual([]);
  });

  it('refuses an internal bevel gear, a face wider than the cone, a crown gear’s virtual teeth', () => {
    expect(() => bevelPitchAngles.run({ teethDriver: 24, teethDriven: 48, shaftAngle: 121 * DEGREE })).toThrow(
      /the driven gear with 48 teeth against 24 would be an internal bevel gear/,
    );
    expect(() => bevelPitchAngles.run({ teethDriver: 48, teethDriven: 24, shaftAngle: 121 * DEGREE })).toThrow(
      /the driver with 48 teeth against 24 would be an internal bevel gear/,
    );
    const wide = { teethDriver: 16, teethDriven: 48, shaftAngle: 90 * DEGREE, module: 0.003, faceWidth: 0.08 };
    expect(() => bevelGeometry.run(wide)).toThrow(/Face width must be less than the outer cone distance, 0\.0758\d* m/);
    expect(() => bevelVirtualTeeth.run({ teeth: 48, pitchAngle: Math.PI / 2 })).toThrow(/is out of range/);
    expect(() => bevelPitchAngles.run({ teethDriver: 16, teethDriven: 48, shaftAngle: 0 })).toThrow(/is out of range/);
  });
});

describe('tooth forces of a straight bevel pair', () => {
  it('gear-bevel-forces-27-1 — textbook ch. 27, Example 27-1: 1061, 386.18, 345.41, 172.71 N (read)', () => {
    const pitch = bevelPitchAngles.run({ teethDriver: 20, teethDriven: 40, shaftAngle: 90 * DEGREE });
    const mesh = {
      torqueDriver: (8000 * 60) / (2 * Math.PI * 400),
      meanDiameterDriver: 0.36,
      ...pitch,
      pressureAngle: 20 * DEGREE,
    };
    const found = bevelForces.run(mesh);
    near(found.tangential, 1061, 1e-3);
    near(found.separating, 386.18, 1e-3);
    near(found.radialDriver, 345.41, 1e-3);
    near(found.axialDriver, 172.71, 1e-3);
    expect(checkMethod(bevelForces, mesh)).toEqual([]);
  });

  it('gear-bevel-forces-shigley-13 — Shigley, 8th ed., Example 13-7: gear 406, 140, 46.6 lbf (memory)', () => {
    const pitch = bevelPitchAngles.run({ teethDriver: 15, teethDriven: 45, shaftAngle: 90 * DEGREE });
    const poundForce = 0.45359237 * 9.80665;
    const torqueDriver = (5 * 550 * 12 * 60 * INCH * poundForce) / (2 * Math.PI * 600);
    const found = bevelForces.run({
      torqueDriver,
      meanDiameterDriver: 2 * 1.293 * INCH,
      ...pitch,
      pressureAngle: 20 * DEGREE,
    });
    near(found.tangential / poundForce, 406, 5e-3);
    near(found.axialDriven / poundForce, 140, 5e-3);
    near(found.radialDriven / poundForce, 46.6, 1e-2);
  });

  it('at right angles the axial force of one gear is the radial force of the other (Shigley, section 13-15; memory)', () => {
    const pitch = bevelPitchAngles.run({ teethDriver: 14, teethDriven: 33, shaftAngle: 90 * DEGREE });
    const found = bevelForces.run({ torqueDriver: 60, meanDiameterDriver: 0.05, ...pitch, pressureAngle: 20 * DEGREE });
    expect(found.axialDriver).toBeCloseTo(found.radialDriven, 9);
    expect(found.radialDriver).toBeCloseTo(found.axialDriven, 9);
  });

  it('what one gear does to the other comes back: the vectors on both add up to nothing, and drive the torque ratio', () => {
    const direction = fc
      .tuple(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
      )
      .filter((v) => norm(v) > 0.2)
      .map((v): Vec3 => unit(v));
    fc.assert(
      fc.property(
        direction,
        direction,
        fc.integer({ min: 10, max: 40 }),
        fc.integer({ min: 10, max: 40 }),
        (a1, other, z1, z2) => {
          const square = cross(a1, other);
          fc.pre(norm(square) > 0.2);
          const normal = unit(square);
          const shaftAngle = 75 * DEGREE;
          // Axes point from the apex to the gears.
          const a2 = plus(times(Math.cos(shaftAngle), a1), times(Math.sin(shaftAngle), cross(normal, a1)));
          const pitch = bevelPitchAngles.run({ teethDriver: z1, teethDriven: z2, shaftAngle });
          const { pitchAngleDriver: d1, pitchAngleDriven: d2 } = pitch;
          const meanDiameterDriver = 0.06;
          const f = bevelForces.run({ torqueDriver: 40, meanDiameterDriver, ...pitch, pressureAngle: 20 * DEGREE });
          const coneDistance = meanDiameterDriver / (2 * Math.sin(d1));
          // Contact point, seen from the apex; from each axis it lies in direction e.
          const p = times(coneDistance, plus(times(Math.cos(d1), a1), times(Math.sin(d1), cross(normal, a1))));
          const e1 = unit(plus(p, times(-dot(p, a1), a1)));
          const e2 = unit(plus(p, times(-dot(p, a2), a2)));
          const onDriver = plus(
            times(-f.tangential, normal),
            plus(times(f.axialDriver, a1), times(-f.radialDriver, e1)),
          );
          const onDriven = plus(
            times(f.tangential, normal),
            plus(times(f.axialDriven, a2), times(-f.radialDriven, e2)),
          );
          expect(norm(plus(onDriver, onDriven))).toBeLessThan(1e-9 * f.tangential);
          const torque = (axis: Vec3, force: Vec3): number => Math.abs(dot(cross(p, force), axis));
          expect(torque(a1, onDriver)).toBeCloseTo(40, 9);
          expect(torque(a2, onDriven) / torque(a1, onDriver)).toBeCloseTo(z2 / z1, 9);
          expect(dot(p, a2)).toBeCloseTo(coneDistance * Math.cos(d2), 12);
        },
      ),
      { seed: 52, numRuns: 200 },
    );
  });
});
