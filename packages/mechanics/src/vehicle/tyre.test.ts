import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { parseTyreCode } from './parse-tyre-code.ts';
import { rollingCircumference } from './rolling-circumference.ts';
import { tyreDiameter } from './tyre-diameter.ts';

/** U.S. alphanumeric motorcycle sizes (read). */
const WIDTHS = { MH: 0.08, MJ: 0.09, ML: 0.11, MM: 0.1, MN: 0.11, MP: 0.11, MR: 0.12, MT: 0.13, MU: 0.14, MV: 0.15 };

function size(code: string) {
  const parsed = parseTyreCode(code, WIDTHS);
  if (!parsed.ok) throw new Error(`${code}: ${parsed.problem}`);
  const { sectionWidth, aspect, rimDiameter } = parsed;
  return { ...parsed, mm: tyreDiameter.run({ sectionWidth, aspect, rimDiameter }).outsideDiameter * 1000 };
}

function problem(code: string): string {
  const parsed = parseTyreCode(code, WIDTHS);
  if (parsed.ok) throw new Error(`${code} was read as ${JSON.stringify(parsed)}`);
  expect(parsed.read).toBe(code);
  expect(parsed.accepted).toMatch(/^a metric size such as 120\/70ZR17/);
  return parsed.problem;
}

describe('outside diameter from the tyre code', () => {
  it.each([
    ['veh-tyre-120-100-18', '120/100-18', 697.2, 0.05, 'a tyre maker’s sidewall page (read)'],
    ['veh-tyre-120-90-18', '120/90-18', 673.2, 0.05, 'a tyre maker’s sidewall page (read)'],
    ['veh-tyre-alpha-mt90-16', 'MT90B16', 640.4, 0.05, 'alphanumeric size table (code read)'],
    ['veh-tyre-inch-350-18', '3.50-18', 635, 0.5, 'a tyre maker’s sidewall page: 3.50 wide, 3.50 high (read)'],
    ['veh-tyre-215-60r15', '215/60R15', 639, 0.5, 'Jazar, Vehicle Dynamics, ch. 1 (memory)'],
    ['veh-tyre-ag-230-95r32', '230/95R32', 1249.8, 1, 'UN R106 rule on a row-crop size (computed)'],
    ['veh-rollcirc-205-55r16', '205/55R16', 631.9, 0.2, 'ETRTO rule (memory)'],
  ])('%s — %s is %d mm within %d, %s', (_id, code, wanted, within) => {
    expect(Math.abs(size(code).mm - wanted)).toBeLessThanOrEqual(within);
  });

  it('section height of 215/60R15 is 129 mm (Jazar, ch. 1; memory)', () => {
    const tyre = { sectionWidth: 0.215, aspect: 0.6, rimDiameter: 15 * 0.0254 };
    expect(tyreDiameter.run(tyre).sectionHeight).toBeCloseTo(0.129, 12);
    expect(checkMethod(tyreDiameter, tyre)).toEqual([]);
  });

  it.each([
    ['110/85R36', 'metric', 36 * 25.4 + 187, 'radial'],
    ['120/70ZR17', 'metric', 599.8, 'radial'],
    ['130/90VB16', 'metric', 640.4, 'bias-belted'],
    ['165R15', 'metric', 15 * 25.4 + 2 * 0.82 * 165, 'radial'],
    ['2.75-21', 'inch', 21 * 25.4 + 2 * 2.75 * 25.4, 'cross-ply'],
    ['4.10-19', 'inch', 19 * 25.4 + 2 * 0.9 * 4.1 * 25.4, 'cross-ply'],
    ['3.60-18', 'inch', 18 * 25.4 + 2 * 0.9 * 3.6 * 25.4, 'cross-ply'],
    ['4.25/85-18', 'inch', 18 * 25.4 + 2 * 0.85 * 4.25 * 25.4, 'cross-ply'],
    ['MT90-16', 'alphanumeric', 640.4, 'cross-ply'],
    ['31x10.50R15', 'flotation', 31 * 25.4, 'radial'],
    ['25x8-12', 'flotation', 25 * 25.4, 'cross-ply'],
    ['37-622', 'ISO 5775', 622 + 74, 'cross-ply'],
  ])('%s is %s, %d mm, %s', (code, system, mm, construction) => {
    const found = size(code);
    expect(found).toMatchObject({ system, construction });
    expect(found.mm).toBeCloseTo(mm, 9);
  });

  it.each([
    ['205/55R16 91V', 91, 'V'],
    ['120/70 ZR 17 M/C (58W)', 58, 'W'],
    ['130/90-16 M/C 67H TL', 67, 'H'],
    ['460/85R38 149A8/146B', 149, 'A8'],
    ['215/75R17.5 126/124M', 126, 'M'],
    ['2.75-21 45P TT', 45, 'P'],
    ['3.50-10 4PR TL', null, null],
    ['mt90b16 74h', 74, 'H'],
    ['P205/55R16', null, null],
    ['31x10.50R15LT', null, null],
  ])('%s carries load index %s and speed symbol %s', (code, loadIndex, speedSymbol) => {
    expect(size(code)).toMatchObject({ loadIndex, speedSymbol });
  });

  it('reads the same size however it is typed', () => {
    for (const code of ['3,50 - 18', '3.50–18', ' 3.50-18 ']) expect(size(code).mm).toBeCloseTo(635, 9);
    expect(size('31 × 10,5 R 15').mm).toBeCloseTo(787.4, 9);
  });

  it('says what it took from practice', () => {
    expect(size('3.50-18').assumed).toHaveLength(2);
    expect(size('165R15').assumed[0]).toMatch(/82 % is taken/);
    expect(size('120/90-18').assumed).toEqual([]);
  });
});

describe('tyre codes that are refused', () => {
  it.each(['9.5-24', '8.3-36', '11.2-28', '12.4R32', '7.50-16', '4.00-36', '6-14'])(
    '%s: agricultural or lorry size, measure the roll-out',
    (code) => {
      expect(problem(code)).toMatch(/agricultural or lorry size in inches.*Measure the roll-out/);
    },
  );

  it.each([
    ['', 'There is no tyre size here.'],
    ['205/55 16', 'The letter or dash between aspect ratio and rim diameter is missing.'],
    ['205/155R16', 'The aspect ratio of 155 % is not between 20 and 110 %.'],
    ['205/55R60', 'The rim diameter of 60 in is not between 4 and 54 in.'],
    ['20/55R16', 'The section width of 20 mm is not between 50 and 900 mm.'],
    ['MX90-16', 'The width letters MX are not known; known are MH, MJ, ML, MM, MN, MP, MR, MT, MU, MV.'],
    ['14x6-15', 'The outside diameter of 14 in is not larger than the rim of 15 in.'],
    ['3.33-18', 'The width 3.33 in belongs to no known series of inch sizes without a printed aspect ratio.'],
    ['205/55R16 fast', '“FAST” after the size is not understood.'],
    ['about 26 inches', 'This is not a tyre size of a known kind.'],
  ])('%j: %s', (code, message) => {
    expect(problem(code)).toBe(message);
  });
});

describe('rolling circumference', () => {
  it('veh-rollcirc-205-55r16 — 3.05 × 631.9 = 1927 mm (list value 1928), radius 306.7 mm (ETRTO rule; memory)', () => {
    const tyre = { outsideDiameter: 0.6319, construction: 'radial' } as const;
    const found = rollingCircumference.run(tyre);
    expect(Math.abs(found.rollOut * 1000 - 1927)).toBeLessThan(3);
    expect(Math.abs(found.rollingRadius * 1000 - 306.7)).toBeLessThan(0.5);
    expect(found.rollOutLow).toBe(found.rollOutHigh);
    expect(checkMethod(rollingCircumference, tyre)).toEqual([]);
  });

  it('195/65R15 — list value 1935 mm (memory)', () => {
    const { mm } = size('195/65R15');
    expect(
      Math.abs(rollingCircumference.run({ outsideDiameter: mm / 1000, construction: 'radial' }).rollOut - 1.935),
    ).toBeLessThan(0.003);
  });

  it('cross-ply 2.99; unknown construction gives both ends', () => {
    expect(rollingCircumference.run({ outsideDiameter: 1, construction: 'cross-ply' }).rollOut).toBeCloseTo(2.99, 12);
    const unknown = { outsideDiameter: 1, construction: 'unknown' } as const;
    const found = rollingCircumference.run(unknown);
    expect([found.rollOutLow, found.rollOutHigh]).toEqual([2.99, 3.05]);
    expect(found.rollOut).toBeCloseTo(3.02, 12);
    expect(checkMethod(rollingCircumference, unknown)).toEqual([]);
    expect(() => rollingCircumference.run({ outsideDiameter: 0, construction: 'radial' })).toThrow(
      'Outside diameter of the tyre: 0 m is out of range',
    );
  });
});
