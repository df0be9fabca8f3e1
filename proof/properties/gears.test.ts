import { bevelGeometryFactors } from '@oddwheel/mechanics/bevel/geometry-factors';
import { bevelSpiralForces } from '@oddwheel/mechanics/bevel/spiral-forces';
import { bevelStress } from '@oddwheel/mechanics/bevel/stress';
import { gearDutyReserve } from '@oddwheel/mechanics/gear/duty-reserve';
import { spurStress } from '@oddwheel/mechanics/spur/stress';
import { LEWIS_FORM } from '@oddwheel/tables/gear-factors';
import { rowInSi } from '@oddwheel/tables/table';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RUNS } from './build.ts';

const bevelCase = fc.record({
  torque: fc.double({ min: 1, max: 2000, noNaN: true }),
  speed: fc.double({ min: 1, max: 600, noNaN: true }),
  teethPinion: fc.integer({ min: 12, max: 40 }),
  module: fc.double({ min: 0.001, max: 0.01, noNaN: true }),
  faceWidth: fc.double({ min: 0.008, max: 0.06, noNaN: true }),
  quality: fc.integer({ min: 5, max: 11 }),
  bendingPinion: fc.double({ min: 0.15, max: 0.4, noNaN: true }),
  bendingGear: fc.double({ min: 0.15, max: 0.4, noNaN: true }),
  contact: fc.double({ min: 0.04, max: 0.15, noNaN: true }),
});
const FIXED = { overload: 1, mounting: 1.25, crowning: 2 };

test('stress of a bevel pair grows with torque, and falls with better teeth', () => {
  fc.assert(
    fc.property(bevelCase, fc.double({ min: 1.01, max: 3, noNaN: true }), (input, more) => {
      const before = bevelStress.run({ ...FIXED, ...input });
      const after = bevelStress.run({ ...FIXED, ...input, torque: input.torque * more });
      expect(after.stressPinion / before.stressPinion).toBeCloseTo(more, 9);
      expect(after.stressContact / before.stressContact).toBeCloseTo(Math.sqrt(more), 9);
      const ground = bevelStress.run({ ...FIXED, ...input, quality: 11 });
      expect(ground.stressPinion).toBeLessThanOrEqual(before.stressPinion * (1 + 1e-12));
    }),
    RUNS,
  );
});

test('swapping the bending factors of the two gears swaps their stresses', () => {
  fc.assert(
    fc.property(bevelCase, (input) => {
      const one = bevelStress.run({ ...FIXED, ...input });
      const other = bevelStress.run({
        ...FIXED,
        ...input,
        bendingPinion: input.bendingGear,
        bendingGear: input.bendingPinion,
      });
      expect(other.stressPinion).toBe(one.stressGear);
      expect(other.stressGear).toBe(one.stressPinion);
      expect(other.stressContact).toBe(one.stressContact);
    }),
    RUNS,
  );
});

test('geometry factors hang on shape alone, and two gears alike have one factor', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 16, max: 40 }),
      fc.double({ min: 0.001, max: 0.01, noNaN: true }),
      fc.double({ min: 4, max: 8, noNaN: true }),
      (teeth, module, face) => {
        const shared = { shaftAngle: Math.PI / 2, spiralAngle: 0, pressureAngle: Math.PI / 9 };
        const pair = { teethPinion: teeth, teethGear: teeth, ...shared };
        const small = bevelGeometryFactors.run({ ...pair, module, faceWidth: face * module * (teeth / 40) });
        const large = bevelGeometryFactors.run({ ...pair, module: 0.02, faceWidth: face * 0.02 * (teeth / 40) });
        expect(small.contact).toBeCloseTo(large.contact, 6);
        expect(small.bendingPinion).toBeCloseTo(large.bendingPinion, 6);
        expect(small.bendingPinion).toBeCloseTo(small.bendingGear, 6);
      },
    ),
    { ...RUNS, numRuns: 20 },
  );
});

test('the duty’s reserve falls as its loads grow, and does not care for the order of its parts', () => {
  const parts = fc.array(
    fc.record({
      stress: fc.double({ min: 1e6, max: 5e8, noNaN: true }),
      turns: fc.double({ min: 1e3, max: 1e8, noNaN: true }),
    }),
    { minLength: 1, maxLength: 8 },
  );
  const curves = fc.constantFrom('bevel bending', 'bevel contact', 'spur bending', 'spur contact');
  fc.assert(
    fc.property(parts, curves, fc.double({ min: 1.05, max: 3, noNaN: true }), (list, curve, more) => {
      const run = (of: typeof list, by: number) =>
        gearDutyReserve.run({
          stresses: of.map(({ stress }) => stress * by),
          turns: of.map(({ turns }) => turns),
          allowed: 1e8,
          curve,
        }).reserve;
      const before = run(list, 1);
      // Contact stress grows with the root of the load.
      const load = curve.endsWith('contact') ? more ** 2 : more;
      expect(run(list, more) * load).toBeCloseTo(before, 6);
      expect(run([...list].reverse(), 1) / before).toBeCloseTo(1, 9);
    }),
    RUNS,
  );
});

test('seen in a mirror, a spiral pushes the same way along its shafts', () => {
  const angle = fc.double({ min: 0.2, max: 1.3, noNaN: true });
  fc.assert(
    fc.property(
      angle,
      fc.double({ min: 0.05, max: 0.8, noNaN: true }),
      fc.constantFrom('left' as const, 'right' as const),
      fc.constantFrom('clockwise' as const, 'counter-clockwise' as const),
      fc.constantFrom('drive' as const, 'coast' as const),
      (pitch, spiralAngle, hand, turning, flow) => {
        const shared = {
          torqueDriver: 100,
          meanDiameterDriver: 0.08,
          pitchAngleDriver: pitch,
          pitchAngleDriven: Math.PI / 2 - pitch * 0.999,
          pressureAngle: Math.PI / 9,
          spiralAngle,
          flow,
        };
        const here = bevelSpiralForces.run({ ...shared, hand, turning });
        const mirrored = bevelSpiralForces.run({
          ...shared,
          hand: hand === 'left' ? 'right' : 'left',
          turning: turning === 'clockwise' ? 'counter-clockwise' : 'clockwise',
        });
        expect(mirrored.axialDriver).toBe(here.axialDriver);
        expect(mirrored.axialDriven).toBe(here.axialDriven);
        const reversed = bevelSpiralForces.run({
          ...shared,
          hand,
          turning: turning === 'clockwise' ? 'counter-clockwise' : 'clockwise',
        });
        expect(Math.sign(reversed.sense)).toBe(-Math.sign(here.sense));
      },
    ),
    RUNS,
  );
});

test('stress of a spur pair grows with torque and falls with a wider face', () => {
  const input = {
    torque: 20,
    speed: 150,
    teethPinion: 18,
    teethGear: 42,
    module: 0.004,
    faceWidth: 0.02,
    quality: 6,
    overload: 1,
    shapePinion: 0.309,
    shapeGear: 0.394,
    bendingPinion: 0.29,
    bendingGear: 0.37,
    mesh: 0.15,
    pressureAngle: Math.PI / 9,
  };
  fc.assert(
    fc.property(fc.double({ min: 1.05, max: 3, noNaN: true }), (more) => {
      const before = spurStress.run(input);
      expect(spurStress.run({ ...input, torque: 20 * more }).stressGear / before.stressGear).toBeCloseTo(more, 9);
      expect(spurStress.run({ ...input, faceWidth: 0.02 * more }).stressGear).toBeLessThan(before.stressGear);
    }),
    RUNS,
  );
});

/** AGMA 908-B89, 20°, load at the highest point of single contact, as Norton's Table 12-9 gives it (memory): pinion, gear, J of each. */
const AGMA_908 = [
  [21, 21, 0.33, 0.33],
  [21, 26, 0.33, 0.35],
  [26, 26, 0.35, 0.35],
  [21, 35, 0.34, 0.37],
  [26, 35, 0.36, 0.38],
  [35, 35, 0.39, 0.39],
  [21, 55, 0.34, 0.4],
  [26, 55, 0.37, 0.41],
  [35, 55, 0.4, 0.42],
  [55, 55, 0.43, 0.43],
  [21, 135, 0.35, 0.43],
  [26, 135, 0.38, 0.44],
  [35, 135, 0.41, 0.45],
  [55, 135, 0.45, 0.47],
  [135, 135, 0.49, 0.49],
] as const;

/** Lewis form factor on the line between two rows. */
function form(teeth: number): number {
  const keys = Object.keys(LEWIS_FORM.rows).map(Number);
  const [low, high] = [Math.max(...keys.filter((k) => k <= teeth)), Math.min(...keys.filter((k) => k >= teeth))];
  const at = (k: number): number => rowInSi(LEWIS_FORM, String(k)).form ?? Number.NaN;
  return low === high ? at(low) : at(low) + ((at(high) - at(low)) * (teeth - low)) / (high - low);
}

test('0.95 of the form factor lies on or under the bending factors of AGMA 908, within their rounding', () => {
  for (const [pinion, gear, ofPinion, ofGear] of AGMA_908) {
    expect(0.95 * form(pinion)).toBeLessThanOrEqual(ofPinion + 0.005);
    expect(0.95 * form(gear)).toBeLessThanOrEqual(ofGear + 0.005);
    expect(0.95 * form(pinion)).toBeGreaterThan(ofPinion * 0.85);
  }
});
