import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainLength } from '../chain/length.ts';
import { checkMethod } from '../method/proof.ts';
import { findMaximum } from '../numerics/maximum.ts';
import { findRoot } from '../numerics/root.ts';
import { armCentreDistance } from './centre-distance.ts';
import { chainOnArm } from './chain-on-arm.ts';
import { armChainTravel } from './chain-travel.ts';
import { segmentGap } from './segment-gap.ts';
import { armSlackToSet } from './slack-to-set.ts';

const DEGREE = Math.PI / 180;
const mm = (metres: number): number => metres * 1000;

/** chain-suspension-a: sprocket 70 mm off the pivot at 8°, arm 560 mm, 15 and 45 teeth, p 15.875. */
const CASE_A = {
  pivot: [0, 0, 0],
  sprocket: [0.07 * Math.cos(8 * DEGREE), 0, 0.07 * Math.sin(8 * DEGREE)],
  armLength: 0.56,
} as const;
const DRIVE_A = { pitch: 0.015875, teethDriver: 15, teethDriven: 45, linksFitted: 110 } as const;
const TRAVEL_A = [-18, -8, 0, 12].map((angle) => angle * DEGREE);

describe('chain-suspension-a — the centres are farthest apart with sprocket, pivot and axle in line (rule read, numbers computed)', () => {
  it('centre distance at −18°, −8°, 0° and 12°, and the greatest at −8°', () => {
    const found = TRAVEL_A.map((armAngle) => armCentreDistance.run({ ...CASE_A, armAngle }));
    [629.054, 630, 629.394, 626.236].forEach((centre, k) => {
      expect(Math.abs(mm(found[k]?.centreDistance ?? 0) - centre)).toBeLessThan(0.01);
    });
    for (const { centreMost, inLineAngle } of found) {
      expect(mm(centreMost)).toBeCloseTo(630, 9);
      expect(inLineAngle / DEGREE).toBeCloseTo(-8, 9);
    }
    expect(found[3]?.fromInLine).toBeCloseTo(20 * DEGREE, 12);
  });

  it('links needed, the tightest place, and 1.88 mm of slack at −18°', () => {
    const found = armChainTravel.run({ ...CASE_A, ...DRIVE_A, armAngles: TRAVEL_A });
    [109.8269, 109.9452, 109.8695, 109.4745].forEach((links, k) => {
      expect(Math.abs((found.linksNeeded[k] ?? 0) - links)).toBeLessThan(0.001);
    });
    expect(found.tightestAt).toBe('in line');
    expect(found.tightestAngle / DEGREE).toBeCloseTo(-8, 9);
    expect(Math.abs(found.linksTightest - 109.945)).toBeLessThan(0.001);
    expect(Math.abs(mm((found.excesses[0] ?? 0) - found.excessTightest) - 1.87825)).toBeLessThan(0.05);
    expect(found.slackSwing).toBeCloseTo((found.excesses[3] ?? 0) - found.excessTightest, 12);
  });

  it('near the in-line angle the centres lose e S φ² / 2 (e + S)', () => {
    const phi = 2 * DEGREE;
    const { shortOfMost } = armCentreDistance.run({ ...CASE_A, armAngle: -8 * DEGREE + phi });
    expect(shortOfMost / ((0.07 * 0.56 * phi ** 2) / (2 * 0.63))).toBeCloseTo(1, 3);
  });
});

describe('a triangle worked by hand', () => {
  it('sprocket 60 mm ahead of the pivot and level, arm 0.45 m hanging 90° down: 0.06² + 0.45² → 453.982 mm', () => {
    const found = armCentreDistance.run({
      pivot: [0, 0, 0],
      sprocket: [0.06, 0, 0],
      armLength: 0.45,
      armAngle: -Math.PI / 2,
    });
    expect(mm(found.centreDistance)).toBeCloseTo(Math.hypot(60, 450), 9);
    expect(found.inLineAngle).toBe(0);
    expect([found.axleX, found.axleZ]).toEqual([expect.closeTo(0, 12), -0.45]);
  });

  it('a sprocket on the pivot: the same chain at every angle', () => {
    const found = armChainTravel.run({
      pivot: [0.1, 0, 0.3],
      sprocket: [0.1, 0.2, 0.3],
      armLength: 0.5,
      ...DRIVE_A,
      armAngles: [-0.3, 0.3],
    });
    expect(found.tightestAt).toBe('everywhere alike');
    expect(found.slackSwing).toBeCloseTo(0, 12);
    expect(found.centres[1]).toBeCloseTo(0.5, 12);
  });
});

describe('where the chain is tightest', () => {
  it('the travel’s nearer end when the in-line angle lies outside it', () => {
    const at = (...armAngles: number[]) =>
      armChainTravel.run({ ...CASE_A, ...DRIVE_A, armAngles: armAngles.map((angle) => angle * DEGREE) });
    expect(at(-5, 4, 15)).toMatchObject({ tightestAt: 'full rebound', tightestAngle: -5 * DEGREE });
    expect(at(-30, -20, -12)).toMatchObject({ tightestAt: 'full bump', tightestAngle: -12 * DEGREE });
  });

  it('agrees with a blind search for the most links over the travel', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.5, max: 0.4, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        (rebound, stroke, sprocketAngle) => {
          const sprocket = [0.08 * Math.cos(sprocketAngle), 0, 0.08 * Math.sin(sprocketAngle)] as const;
          const arm = { pivot: [0, 0, 0], sprocket, armLength: 0.5 } as const;
          const links = (armAngle: number): number =>
            chainLength.run({
              ...{ pitch: 0.0127, teethDriver: 14, teethDriven: 42 },
              centreDistance: armCentreDistance.run({ ...arm, armAngle }).centreDistance,
            }).links;
          const found = armChainTravel.run({
            ...arm,
            ...{ pitch: 0.0127, teethDriver: 14, teethDriven: 42, linksFitted: 120 },
            armAngles: [rebound, rebound + stroke],
          });
          expect(found.linksTightest).toBeCloseTo(links(findMaximum(links, rebound, rebound + stroke)), 8);
        },
      ),
      { seed: 31, numRuns: 60 },
    );
  });

  it('refuses angles out of order, and names sprockets that meet in the travel', () => {
    expect(() => armChainTravel.run({ ...CASE_A, ...DRIVE_A, armAngles: [0, 0.2, 0.1] })).toThrow(
      'Arm angles must rise or fall throughout, from full rebound to full bump; read 0, 0.2, 0.1 rad.',
    );
    expect(() => armChainTravel.run({ ...CASE_A, armLength: 0.2, ...DRIVE_A, armAngles: [0, 3] })).toThrow(
      /The sprockets overlap/,
    );
  });
});

describe('slack to set', () => {
  const set = (measureAngle: number, movementTightest = 0.02) =>
    armSlackToSet.run({
      ...CASE_A,
      ...DRIVE_A,
      reboundAngle: -18 * DEGREE,
      bumpAngle: 12 * DEGREE,
      measureAngle,
      movementTightest,
    });

  it('set so, the travel shows the wanted movement at the tightest place and the told one where it is measured', () => {
    for (const measureAngle of [-18 * DEGREE, 3 * DEGREE]) {
      const { armLengthSet, movementToMeasure } = set(measureAngle);
      const check = armChainTravel.run({
        ...CASE_A,
        armLength: armLengthSet,
        ...DRIVE_A,
        armAngles: [-0.4, measureAngle],
      });
      expect(check.movements[1]).toBeCloseTo(movementToMeasure, 9);
      expect(movementToMeasure).toBeGreaterThan(0.02);
      const tight = armChainTravel.run({ ...CASE_A, armLength: armLengthSet, ...DRIVE_A, armAngles: TRAVEL_A });
      expect(tight.movementTightest).toBeCloseTo(0.02, 9);
    }
  });

  it('measured at the tightest angle itself nothing is added; no slack wanted gives a taut chain', () => {
    expect(set(-8 * DEGREE).movementToMeasure).toBeCloseTo(0.02, 9);
    expect(set(0, 0).excessMeasured).toBeGreaterThan(0);
    expect(set(0).adjustment).toBeLessThan(set(0, 0).adjustment);
  });

  it('refuses a chain too short for its sprockets', () => {
    expect(() =>
      armSlackToSet.run({
        ...CASE_A,
        ...DRIVE_A,
        linksFitted: 40,
        reboundAngle: -0.3,
        bumpAngle: 0.2,
        measureAngle: 0,
        movementTightest: 0.02,
      }),
    ).toThrow(/40 links are too few/);
  });
});

const ON_ARM = {
  ...CASE_A,
  pitch: 0.015875,
  teethDriver: 15,
  teethDriven: 45,
  armAngle: -5 * DEGREE,
  pull: 3000,
  tightSpan: 'upper',
  tyreRadius: 0.3,
  armHalfHeight: 0.02,
  chainHalfHeight: 0.008,
  slackDeflection: 0.01,
} as const;

describe('chain on the arm', () => {
  it('equal sprockets, all in line and level: span R above the pivot, torque F R, worked by hand', () => {
    const found = chainOnArm.run({ ...ON_ARM, sprocket: [0.07, 0, 0], armAngle: 0, teethDriven: 15 });
    const radius = 0.015875 / (2 * Math.sin(Math.PI / 15));
    expect(found.heightTight).toBeCloseTo(radius, 12);
    expect(found.heightSlack).toBeCloseTo(-radius, 12);
    expect(found.torqueChain).toBeCloseTo(3000 * radius, 9);
    expect(found.thrust).toBeCloseTo((3000 * radius) / 0.3, 9);
    expect(found.torqueThrust).toBeCloseTo(-3000 * radius, 9);
    expect(found.chainSense).toBe('squats');
    expect(found.clearanceTight).toBeCloseTo(radius - 0.028, 12);
    expect(found.clearanceSlack).toBeCloseTo(radius - 0.038, 12);
  });

  it('torque is the pull times the shortening of a string between marks on both sprockets as arm and wheel turn as one', () => {
    // The string from a mark on the held sprocket over the span to a mark on the wheel, which turns with the arm.
    const string = (armAngle: number, side: 1 | -1): number => {
      const [r1, r2] = [15, 45].map((teeth) => 0.015875 / (2 * Math.sin(Math.PI / teeth))) as [number, number];
      const axle = [-0.56 * Math.cos(armAngle), 0.56 * Math.sin(armAngle)];
      const [dx, dz] = [(axle[0] ?? 0) - CASE_A.sprocket[0], (axle[1] ?? 0) - CASE_A.sprocket[2]];
      const off = (psi: number): number => Math.cos(psi) * dx + Math.sin(psi) * dz - (r1 - r2);
      const up = (side * Math.PI) / 2;
      const psi = findRoot(off, up - 1, up + 1);
      return Math.sqrt(dx ** 2 + dz ** 2 - (r2 - r1) ** 2) - side * ((r2 - r1) * psi + r2 * armAngle);
    };
    for (const tightSpan of ['upper', 'lower'] as const) {
      const side = tightSpan === 'upper' ? 1 : -1;
      for (const armAngle of [-0.3, -0.1, 0.15]) {
        const slope = (string(armAngle + 1e-5, side) - string(armAngle - 1e-5, side)) / 2e-5;
        const { torqueChain } = chainOnArm.run({ ...ON_ARM, armAngle, tightSpan });
        expect(torqueChain / (-3000 * slope)).toBeCloseTo(1, 6);
      }
    }
  });

  it('seen in a mirror, fore and aft, lifts and presses alike', () => {
    const one = chainOnArm.run(ON_ARM);
    const [x, , z] = ON_ARM.sprocket;
    const other = chainOnArm.run({
      ...ON_ARM,
      sprocket: [-x, 0, z],
      armAngle: Math.PI - ON_ARM.armAngle - 2 * Math.PI,
    });
    expect(other.torqueChain).toBeCloseTo(one.torqueChain, 9);
    expect(other.thrust).toBeCloseTo(-one.thrust, 9);
    expect(other.torqueThrust).toBeCloseTo(one.torqueThrust, 9);
    expect(other.clearanceSlack).toBeCloseTo(one.clearanceSlack, 12);
  });

  it('on overrun the lower span pulls, and the tyre holds back', () => {
    const found = chainOnArm.run({ ...ON_ARM, tightSpan: 'lower' });
    expect(found.thrust).toBeLessThan(0);
    expect(found.chainSense).toBe('rises');
    expect(found.clearanceTight).toBeCloseTo(chainOnArm.run({ ...ON_ARM, slackDeflection: 0 }).clearanceSlack, 12);
  });

  it('a steep arm under a low sprocket rubs its chain', () => {
    const found = chainOnArm.run({ ...ON_ARM, sprocket: [0.07, 0, -0.07], armAngle: 0 });
    expect(found.clearanceTight).toBeLessThan(0);
  });

  it('refuses an upright arm', () => {
    expect(() => chainOnArm.run({ ...ON_ARM, armAngle: Math.PI / 2 })).toThrow(/The arm stands upright/);
  });
});

describe('two straight pieces in a plane', () => {
  it('crossing, touching, parallel and apart', () => {
    expect(
      segmentGap(
        [
          [0, 0],
          [2, 2],
        ],
        [
          [0, 2],
          [2, 0],
        ],
      ),
    ).toBe(0);
    expect(
      segmentGap(
        [
          [0, 0],
          [2, 0],
        ],
        [
          [1, 0],
          [1, 5],
        ],
      ),
    ).toBe(0);
    expect(
      segmentGap(
        [
          [0, 0],
          [2, 0],
        ],
        [
          [1, 3],
          [9, 3],
        ],
      ),
    ).toBe(3);
    expect(
      segmentGap(
        [
          [0, 0],
          [1, 0],
        ],
        [
          [4, 4],
          [4, 9],
        ],
      ),
    ).toBe(5);
  });
});

describe('every formula shown gives the value returned', () => {
  it('suspension.centreDistance, chainTravel, slackToSet and chainOnArm', () => {
    expect(checkMethod(armCentreDistance, { ...CASE_A, armAngle: 0.2 })).toEqual([]);
    expect(checkMethod(armChainTravel, { ...CASE_A, ...DRIVE_A, armAngles: TRAVEL_A })).toEqual([]);
    expect(checkMethod(armChainTravel, { ...CASE_A, ...DRIVE_A, linksFitted: 108, armAngles: TRAVEL_A })).toEqual([]);
    const travel = { reboundAngle: -0.3, bumpAngle: 0.2, measureAngle: -0.3, movementTightest: 0.02 };
    expect(checkMethod(armSlackToSet, { ...CASE_A, ...DRIVE_A, ...travel })).toEqual([]);
    expect(checkMethod(chainOnArm, ON_ARM)).toEqual([]);
    expect(checkMethod(chainOnArm, { ...ON_ARM, tightSpan: 'lower', armAngle: 3 })).toEqual([]);
  });
});
