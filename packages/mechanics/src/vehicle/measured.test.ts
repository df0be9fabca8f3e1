import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { ratioFromTurns } from '../ratio/from-turns.ts';
import { massFromScales } from './mass-from-scales.ts';
import { rollOutMeasured } from './roll-out-measured.ts';

describe('counting turns', () => {
  const given = { inputTurns: 57.7, outputTurns: 10, known: 65 / 31, reading: 0.1 };

  it('takes out the ratio that is known', () => {
    const { ratio, overall } = ratioFromTurns.run(given);
    expect(ratio * (65 / 31)).toBeCloseTo(5.77, 12);
    expect(overall).toBeCloseTo(5.77, 12);
    expect(checkMethod(ratioFromTurns, given)).toEqual([]);
  });

  it('the true ratio lies within the spread when each count is off by no more than stated', () => {
    const real = {
      ratio: fc.double({ min: 0.5, max: 8, noNaN: true }),
      off: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    };
    fc.assert(
      fc.property(fc.record(real), ({ ratio, off }) => {
        const found = ratioFromTurns.run({ ...given, known: 2.1, inputTurns: 10 * 2.1 * ratio + off });
        expect(Math.abs(found.ratio - ratio)).toBeLessThanOrEqual(found.spread * (1 + 1e-9));
      }),
    );
  });
});

describe('rolling', () => {
  it('gives back the wheel that was rolled', () => {
    const given = { distance: 7 * 2 * Math.PI * 0.3, turns: 7, tape: 0.014 };
    const { rollingRadius, spread } = rollOutMeasured.run(given);
    expect(rollingRadius).toBeCloseTo(0.3, 12);
    expect(spread).toBeCloseTo(0.002, 12);
    expect(checkMethod(rollOutMeasured, given)).toEqual([]);
  });
});

describe('bathroom scales', () => {
  const given = { readings: [96, 101], tare: 4, scaleArm: 1.2, loadArm: 0.6, scaleError: 0.5 };

  it('a plank in balance: moments of load, plank and scale about the edge are zero', () => {
    const [load, plank, a, b] = [412, 9, 0.45, 1.8];
    // The plank weighs at its middle; the scale carries its share of it, which is what it shows bare.
    const bare = (plank * (b / 2)) / b;
    const reading = (load * a + plank * (b / 2)) / b;
    const found = massFromScales.run({ ...given, readings: [reading], tare: bare, scaleArm: b, loadArm: a });
    expect(found.mass).toBeCloseTo(load, 9);
    expect(checkMethod(massFromScales, given)).toEqual([]);
  });

  it('without a plank it is the sum of the readings', () => {
    const found = massFromScales.run({ readings: [80, 85, 150], tare: 0, scaleArm: 1, loadArm: 1, scaleError: 0.5 });
    expect(found).toMatchObject({ mass: 315, spread: 1.5, count: 3 });
  });

  it('refuses readings that are no more than the bare plank', () => {
    expect(() => massFromScales.run({ ...given, readings: [4, 4] })).toThrow(/more than the bare plank, 8 kg/);
  });
});
