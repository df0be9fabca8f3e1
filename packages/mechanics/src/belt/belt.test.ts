import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { beltCentreDistance } from './centre-distance.ts';
import { beltLength } from './length.ts';

const mm = (metres: number): number => metres * 1000;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

describe('toothed belt', () => {
  it('belt-8M-28-80 — 150 teeth of 8 mm on 28 and 80 (geometry; ISO 13050 pitch, memory)', () => {
    const drive = { pitch: 0.008, teethDriver: 28, teethDriven: 80 };
    const found = beltCentreDistance.run({ ...drive, beltTeeth: 150 });
    expect(mm(2 * found.pitchRadiusDriver)).toBeCloseTo(71.3014, 2);
    expect(mm(2 * found.pitchRadiusDriven)).toBeCloseTo(203.718, 2);
    expect(mm(found.centreDistance)).toBeCloseTo(378.19, 2);
    expect(degrees(found.wrapDriver)).toBeCloseTo(159.835, 2);
    expect(Math.floor((28 * found.wrapDriver) / (2 * Math.PI))).toBe(12);
    expect(checkMethod(beltCentreDistance, { ...drive, beltTeeth: 150 })).toEqual([]);
  });

  it('belt-AT10-roll-table — roller table of a belt maker’s catalogue: 25 and 25 teeth at 625 mm take 1500 mm (read)', () => {
    const drive = { pitch: 0.01, teethDriver: 25, teethDriven: 25, centreDistance: 0.625 };
    expect(mm(beltLength.run(drive).length)).toBeCloseTo(1500, 9);
    expect(beltLength.run(drive).beltTeeth).toBeCloseTo(150, 9);
    expect(checkMethod(beltLength, drive)).toEqual([]);
  });

  it('belt-shaftload-3M — design handbook sheet: 312 teeth of 3 mm on 20 and 20, centres 438 mm (read)', () => {
    const found = beltCentreDistance.run({ pitch: 0.003, teethDriver: 20, teethDriven: 20, beltTeeth: 312 });
    expect(mm(found.centreDistance)).toBeCloseTo(438, 9);
    expect(mm(2 * found.pitchRadiusDriver)).toBeCloseTo(19.099, 3);
  });

  it('belt-pulley-XL-24, belt-pulley-T10-40 — pulley tables: pitch diameters 38.808 and 127.324 mm (read)', () => {
    const radius = (pitch: number, teeth: number) =>
      beltLength.run({ pitch, teethDriver: teeth, teethDriven: teeth, centreDistance: 1 }).pitchRadiusDriver;
    expect(mm(2 * radius(0.00508, 24))).toBeCloseTo(38.808, 2);
    expect(mm(2 * radius(0.01, 40))).toBeCloseTo(127.324, 2);
  });

  it('centre distance and length undo each other; swapping the pulleys changes nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 80 }),
        fc.integer({ min: 10, max: 120 }),
        fc.double({ min: 1.05, max: 8, noNaN: true }),
        (teethDriver, teethDriven, clear) => {
          const centreDistance = (clear * 0.008 * (teethDriver + teethDriven)) / (2 * Math.PI);
          const drive = { pitch: 0.008, teethDriver, teethDriven };
          const { beltTeeth, span } = beltLength.run({ ...drive, centreDistance });
          expect(beltCentreDistance.run({ ...drive, beltTeeth }).centreDistance / centreDistance).toBeCloseTo(1, 12);
          const other = beltLength.run({
            pitch: 0.008,
            teethDriver: teethDriven,
            teethDriven: teethDriver,
            centreDistance,
          });
          expect(other.beltTeeth).toBeCloseTo(beltTeeth, 9);
          expect(other.span).toBeCloseTo(span, 12);
          expect(checkMethod(beltLength, { ...drive, centreDistance })).toEqual([]);
          expect(checkMethod(beltCentreDistance, { ...drive, beltTeeth })).toEqual([]);
        },
      ),
      { seed: 31, numRuns: 150 },
    );
  });

  it('refuses pulleys that overlap and belts too short', () => {
    expect(() => beltLength.run({ pitch: 0.008, teethDriver: 28, teethDriven: 80, centreDistance: 0.1 })).toThrow(
      /The pulleys overlap: their pitch circles need a centre distance of more than 0\.1375\d* m; read 0\.1 m\./,
    );
    expect(() => beltCentreDistance.run({ pitch: 0.008, teethDriver: 28, teethDriven: 80, beltTeeth: 60 })).toThrow(
      /^Teeth of the belt must be more than \d+\.\d+, else the pulleys touch; read 60\.$/,
    );
  });
});
