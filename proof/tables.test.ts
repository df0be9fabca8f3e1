import { tableRow } from '@oddwheel/tables/catalogue';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { describe, expect, test } from 'vitest';

/**
 * A second source for the rows of the chain table: the roller-chain pages of a maker's drive catalogue (SATI), read as text in the
 * public repository ArtemFilin1990/Mar, commit 7b871a5. Minimum tensile strength in N and mass in kg/m, one strand.
 */
const CATALOGUE: Readonly<Record<string, { readonly minTensile?: number; readonly mass?: number }>> = {
  '06B': { minTensile: 9000 },
  '08B': { minTensile: 18000, mass: 0.69 },
  '10B': { minTensile: 22400, mass: 0.93 },
  '12B': { minTensile: 29000, mass: 1.15 },
  '16B': { minTensile: 60000, mass: 2.71 },
  '20B': { minTensile: 95000 },
  '24B': { minTensile: 160000 },
  '35': { minTensile: 7900 },
  '40': { minTensile: 14100, mass: 0.62 },
  '50': { minTensile: 22200, mass: 1.02 },
  '60': { minTensile: 31800, mass: 1.5 },
  '80': { minTensile: 56700, mass: 2.6 },
  '100': { minTensile: 88500 },
  '120': { minTensile: 127000 },
};

/** Catalogues round strength, and the standard and its national editions differ in the last figure. */
const STRENGTH_APART = 0.025;
const MASS_APART = 0.04;

describe('chain table against a second source', () => {
  for (const [size, { minTensile, mass }] of Object.entries(CATALOGUE)) {
    if (minTensile !== undefined)
      test(`${size}: minimum tensile strength`, () => {
        const own = tableRow(`chain-sizes/${size}`).minTensile ?? Number.NaN;
        expect(Math.abs(own / minTensile - 1)).toBeLessThanOrEqual(STRENGTH_APART);
      });
    if (mass !== undefined)
      test(`${size}: mass`, () => {
        const own = tableRow(`chain-sizes/${size}`).mass ?? Number.NaN;
        expect(Math.abs(own / mass - 1)).toBeLessThanOrEqual(MASS_APART);
      });
  }
});

describe('chain table against the rules of the standards', () => {
  // ASME B29.1 names a size by its pitch in eighths of an inch; 41 and the motorcycle sizes keep the rule for the pitch.
  test.each(['25', '35', '40', '41', '50', '60', '80', '100', '120', '415', '420', '428', '520', '525', '530', '630'])(
    '%s: pitch in eighths of an inch is the number but its last digits',
    (size) => {
      const eighths = Number(size[0] === '1' ? size.slice(0, 2) : size[0]);
      expect(tableRow(`chain-sizes/${size}`).pitch).toBeCloseTo((eighths * 0.0254) / 8, 9);
    },
  );

  // ISO 606 names a size by its pitch in sixteenths of an inch; 05B, 8 mm, stands outside the rule.
  test.each(['06B', '08B', '10B', '12B', '16B', '20B', '24B'])('%s: pitch in sixteenths of an inch', (size) => {
    expect(tableRow(`chain-sizes/${size}`).pitch).toBeCloseTo((Number.parseInt(size, 10) * 0.0254) / 16, 9);
  });

  // ASME B29.1: at least 12 500 p² lbf, p in inches; 41 is the light chain with 1500 lbf (read in a public encyclopedia's restatement).
  test.each(['25', '35', '40', '50', '60', '80', '100', '120'])('%s: strength is 12 500 p² lbf', (size) => {
    const { pitch = Number.NaN, minTensile = Number.NaN } = tableRow(`chain-sizes/${size}`);
    const rule = 12500 * (pitch / 0.0254) ** 2 * 4.4482216152605;
    expect(Math.abs(minTensile / rule - 1)).toBeLessThanOrEqual(0.025);
  });

  test('every row has a pitch, a roller narrower than the pitch and a strength', () => {
    const odd = Object.keys(CHAIN_SIZES.rows).filter((size) => {
      const { pitch = 0, rollerDiameter = 0, minTensile = 0 } = tableRow(`chain-sizes/${size}`);
      return !(rollerDiameter > 0 && rollerDiameter < pitch && minTensile > 0);
    });
    expect(odd).toEqual([]);
  });
});

describe('load index of tyres', () => {
  // UN Regulations No. 75 and No. 30, as two tyre pages restate them (read).
  test.each([
    ['62', 265],
    ['71', 345],
    ['112', 1120],
  ])('%s is %d kg', (index, mass) => {
    expect(tableRow(`tyre-load-indices/${index}`).mass).toBe(mass);
  });
});
