import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { chordalVariation } from './chordal-variation.ts';
import { chainSpeed } from './speed.ts';
import { sprocketDiameters } from './sprocket-diameters.ts';

const MM = 0.001;
const rpm = (n: number): number => (n * 2 * Math.PI) / 60;
const near = (value: number, wanted: number, relative: number): void =>
  expect(Math.abs(value / wanted - 1), `${value} against ${wanted}`).toBeLessThan(relative);

describe('sprocket diameters', () => {
  it('sprocket-ansi-50-17 — ANSI B29.1 formulas, odd teeth (memory; formulas read)', () => {
    const d = sprocketDiameters.run({ pitch: 15.875 * MM, teeth: 17, rollerDiameter: 10.16 * MM });
    near(d.pitchDiameter, 86.3948 * MM, 2e-4);
    near(d.outsideDiameter, 94.4487 * MM, 2e-4);
    near(d.rootDiameter, 76.2348 * MM, 2e-4);
    near(d.caliperDiameter, 75.8662 * MM, 2e-4);
    near(d.greatestHubDiameter, 68.2887 * MM, 2e-4);
  });

  it('sprocket-ansi-80-35 — ANSI B29.1 formulas, odd teeth (memory; formulas read)', () => {
    const d = sprocketDiameters.run({ pitch: 25.4 * MM, teeth: 35, rollerDiameter: 15.875 * MM });
    near(d.pitchDiameter, 283.358 * MM, 2e-4);
    near(d.outsideDiameter, 297.457 * MM, 2e-4);
    near(d.rootDiameter, 267.483 * MM, 2e-4);
    near(d.caliperDiameter, 267.198 * MM, 2e-4);
    near(d.greatestHubDiameter, 256.057 * MM, 2e-4);
  });

  it('sprocket-pd-08B-14, sprocket-pd-08B-16 — maker’s sprocket data sheets: 57.07 and 65.1 mm (read)', () => {
    const pitchDiameter = (teeth: number) =>
      sprocketDiameters.run({ pitch: 12.7 * MM, teeth, rollerDiameter: 8.51 * MM }).pitchDiameter / MM;
    expect(Math.abs(pitchDiameter(14) - 57.07)).toBeLessThan(0.03);
    expect(Math.abs(pitchDiameter(16) - 65.1)).toBeLessThan(0.03);
  });

  it('sprocket-toothform-S-28 — pitch diameter 226.858 mm of 28 teeth, 1 in pitch (read)', () => {
    near(sprocketDiameters.run({ pitch: 0.0254, teeth: 28, rollerDiameter: 0.015875 }).pitchDiameter, 0.226858, 1e-5);
  });

  it('sprocket-iso-12B-17 — pitch and root diameter; the ANSI tip lies between the ISO 606 limits (memory)', () => {
    const d = sprocketDiameters.run({ pitch: 19.05 * MM, teeth: 17, rollerDiameter: 12.07 * MM });
    near(d.pitchDiameter, 103.674 * MM, 1e-3);
    near(d.rootDiameter, 91.6037 * MM, 1e-3);
    expect(d.outsideDiameter).toBeGreaterThan(108.861 * MM);
    expect(d.outsideDiameter).toBeLessThan(115.416 * MM);
  });

  it('even teeth: the caliper reads the bottom diameter', () => {
    const d = sprocketDiameters.run({ pitch: 12.7 * MM, teeth: 16, rollerDiameter: 8.51 * MM });
    expect(d.caliperDiameter).toBe(d.rootDiameter);
  });

  it.each([9, 16, 17, 60, 113])('%i teeth: every formula shown gives the value returned', (teeth) => {
    expect(checkMethod(sprocketDiameters, { pitch: 0.01905, teeth, rollerDiameter: 0.01207 })).toEqual([]);
  });
});

describe('surge of the chain', () => {
  it.each([
    ['chain-chordal-11', 11, 4.1063, 0.959493, 0.0718891],
    ['chain-chordal-17', 17, 1.71242, 0.982973, 0.0463318],
  ])('%s — Shigley, Eqs 17-30, 17-31 (memory)', (_id, teeth, percent, lowest, rise) => {
    const found = chordalVariation.run({ pitch: 1, teeth, angularSpeed: 0 });
    expect(found.variation * 100).toBeCloseTo(percent, 3);
    expect(found.lowestOverHighest).toBeCloseTo(lowest, 5);
    expect(found.rise).toBeCloseTo(rise, 6);
  });

  it('the two speeds of a turning polygon, sampled, give the same variation', () => {
    const teeth = 13;
    const { variation, pitchRadius } = chordalVariation.run({ pitch: 0.0127, teeth, angularSpeed: 30 });
    const speeds = Array.from({ length: 2001 }, (_, k) => {
      const from = -Math.PI / teeth + ((2 * Math.PI) / teeth) * (k / 2000);
      return 30 * pitchRadius * Math.cos(from);
    });
    const mean = chainSpeed.run({ pitch: 0.0127, teeth, angularSpeed: 30 }).speed;
    expect((Math.max(...speeds) - Math.min(...speeds)) / mean).toBeCloseTo(variation, 6);
  });

  it('excitation of 17 teeth at 1500 rpm is 425 Hz', () => {
    expect(chordalVariation.run({ pitch: 0.0127, teeth: 17, angularSpeed: rpm(1500) }).frequency).toBeCloseTo(425, 9);
  });

  it('every formula shown gives the value returned', () => {
    expect(checkMethod(chordalVariation, { pitch: 0.0127, teeth: 17, angularSpeed: 150 })).toEqual([]);
  });
});

describe('chain speed', () => {
  it('chain-select-08B-pump — British chain designer guide: 5.79 m/s (read)', () => {
    near(chainSpeed.run({ pitch: 12.7 * MM, teeth: 19, angularSpeed: rpm(1440) }).speed, 5.7912, 2e-3);
  });

  it('chain-10B-power-tension — Bhandari, Example 14.7: 7.0379 m/s (read)', () => {
    near(chainSpeed.run({ pitch: 15.875 * MM, teeth: 19, angularSpeed: rpm(1400) }).speed, 7.0379, 1e-4);
  });

  it('chain-rating-40-4-life — Shigley, Problem 17-26: 1750 ft/min (read)', () => {
    near(chainSpeed.run({ pitch: 12.7 * MM, teeth: 21, angularSpeed: rpm(2000) }).speed, 8.89, 1e-6);
    expect(checkMethod(chainSpeed, { pitch: 0.0127, teeth: 21, angularSpeed: 200 })).toEqual([]);
  });
});
