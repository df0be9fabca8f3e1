import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkUnitChoice,
  DEFAULT_UNITS,
  formatFor,
  formatFraction,
  formatPercent,
  formatQuantity,
  printExact,
  type UnitUse,
  unitsForUse,
} from './format.ts';
import { KINDS, type Kind } from './kinds.ts';
import { parseQuantity } from './parse.ts';
import { toSi, unitsOf } from './units.ts';

const kinds = Object.keys(KINDS) as Kind[];
const allUnits = kinds.flatMap((kind) => unitsOf(kind).map((unit) => [kind, unit.symbol] as const));
const everyDouble = fc.double({ noNaN: true, noDefaultInfinity: true });

function back(text: string, kind: Kind): number {
  const result = parseQuantity(text, kind);
  if (!result.ok) throw new Error(`${text}: ${result.problem}`);
  return result.si;
}

describe('printExact: the text reads back to the same double', () => {
  it.each(allUnits)('%s in %s', (kind, unit) => {
    const shop = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const values = kind === 'count' ? fc.maxSafeInteger() : fc.oneof(shop, everyDouble);
    fc.assert(
      fc.property(values, (si) => {
        expect(Object.is(back(printExact(si, kind, unit), kind), si)).toBe(true);
      }),
      {
        seed: 2,
        numRuns: 150,
        examples: [[0], [-0], [1], [3]],
      },
    );
  });

  it.each(allUnits.filter(([kind]) => kind !== 'count'))(
    '%s typed in %s with up to 12 figures prints as typed',
    (kind, unit) => {
      fc.assert(
        fc.property(fc.integer({ min: 1, max: 10 ** 12 }), fc.integer({ min: -6, max: 3 }), (digits, power) => {
          const typed = Number(`${digits}e${power}`);
          const text = printExact(toSi(kind, unit, typed), kind, unit);
          // A thermometer's zero eats figures of small readings, so a shorter text may mean the same double.
          const zero = unitsOf(kind).find((u) => u.symbol === unit)?.zero.n ?? 0n;
          if (zero === 0n) expect(Number(text.split(' ')[0])).toBe(typed);
          else expect(Math.abs(Number(text.split(' ')[0]) - typed)).toBeLessThan(1e-12 * (typed + 500));
        }),
        { seed: 2, numRuns: 40 },
      );
    },
  );

  it.each([
    [0.000762, 'length', 'thou', '30 thou'],
    [0.000762, 'length', 'in', '0.03 in'],
    [54.23271793325602, 'torque', 'lbf·ft', '40 lbf.ft'],
    [994.8376736367678, 'angularSpeed', 'rpm', '9500 rpm'],
    [353.15, 'temperature', '°C', '80 degC'],
    [0.97, 'fraction', '%', '97 %'],
    [64 / 22, 'ratio', '', '2.909090909090909'],
    [58, 'hardness', 'HRC', '58 HRC'],
    [17, 'count', '', '17'],
    [1e-7, 'length', 'm', '1e-7 m'],
    [1e300, 'length', 'µm', '1e306 um'],
  ] as const)('%d (%s in %s) is %s', (si, kind, unit, text) => {
    expect(printExact(si, kind, unit)).toBe(text);
  });

  it('takes the SI unit where the wanted unit has no short exact text', () => {
    expect(printExact(1e-30, 'temperature', 'degC')).toBe('1e-30 K');
  });

  it('refuses what has no text', () => {
    expect(() => printExact(Number.NaN, 'angle', 'deg')).toThrow('Cannot print an angle that is NaN.');
    expect(() => printExact(2.5, 'count', '')).toThrow('A count must be a whole number, not 2.5.');
    expect(() => printExact(1, 'length', 'kg')).toThrow('"kg" is not a unit of length');
  });
});

describe('formatQuantity: for reading', () => {
  it.each([
    [0.00635, 'length', 'mm', '6.35\u2009mm'],
    [-0.003, 'length', 'mm', '−3\u2009mm'],
    [12345.6, 'force', 'N', '12\u2009350\u2009N'],
    [994.8376736367678, 'angularSpeed', 'rpm', '9\u2009500\u2009rpm'],
    [0.4014257279586958, 'angle', '°', '23°'],
    [353.15, 'temperature', '°C', '80\u2009°C'],
    [2 / 3, 'ratio', '', '0.6667'],
    [0.97, 'fraction', '%', '97\u2009%'],
    [123456, 'count', '', '123\u2009456'],
    [0, 'length', 'mm', '0\u2009mm'],
    [-0, 'length', 'mm', '0\u2009mm'],
    [1.5e-9, 'length', 'm', '1.5e−9\u2009m'],
    [9.9996, 'number', '', '10'],
  ] as const)('%d (%s in %s) is %s', (si, kind, unit, text) => {
    expect(formatQuantity(si, kind, unit)).toBe(text);
  });

  it.each([
    [0.659_23, '66'],
    [1.582, '158'],
    [12.345_6, '1\u2009235'],
    [0.065_92, '6.59'],
    [0.005_678, '0.568'],
    // Beside a limit of 2 %.
    [0.0204, '2.04'],
    [-0.345_67, '−35'],
    [0, '0'],
    // Beside the limit, and as typed or in a table.
    [0.996_54, '99.7'],
    [1.003_21, '100.3'],
    [0.125, '12.5'],
    [0.0225, '2.25'],
  ])('percent in a sentence: %d is %s %%', (part, text) => {
    expect(formatPercent(part)).toBe(`${text}\u2009%`);
  });

  it('gives the figures asked for', () => {
    expect(() => formatPercent(Number.NaN)).toThrow(RangeError);
    expect(formatQuantity(Math.PI, 'number', '', { digits: 6 })).toBe('3.14159');
    expect(() => formatQuantity(1, 'number', '', { digits: 0 })).toThrow(/from 1 to 17, not 0/);
    expect(() => formatQuantity(Infinity, 'force', 'N')).toThrow('Cannot print a force that is Infinity.');
  });

  it('reads back within half of the last figure', () => {
    const values = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    const units = allUnits.filter(([kind]) => kind !== 'count' && kind !== 'temperature');
    fc.assert(
      fc.property(
        values,
        fc.boolean(),
        fc.constantFrom(...units),
        fc.integer({ min: 1, max: 12 }),
        (size, negative, [kind, unit], digits) => {
          const si = negative ? -size : size;
          const read = back(formatQuantity(si, kind, unit, { digits }), kind);
          expect(Math.abs(read - si)).toBeLessThanOrEqual(0.5000001 * 10 ** (1 - digits) * size);
        },
      ),
      { seed: 2, numRuns: 3000 },
    );
  });
});

describe('formatFraction: shop inches', () => {
  it.each([
    [0.03175, '1 1/4\u2009in'],
    [0.01905, '3/4\u2009in'],
    [0.0508, '2\u2009in'],
    [-0.03175, '−1 1/4\u2009in'],
    [0.0254 / 64, '1/64\u2009in'],
    [0.03, '≈\u20091 3/16\u2009in'],
    [0.0001, '≈\u20090\u2009in'],
    [0, '0\u2009in'],
  ])('%d m is %s', (si, text) => {
    expect(formatFraction(si)).toBe(text);
  });

  it('is exact without ≈, and within 1/128 in with it', () => {
    const values = fc.oneof(
      fc.integer({ min: -6400, max: 6400 }).map((parts) => toSi('length', 'in', parts / 64)),
      fc.double({ min: -100, max: 100, noNaN: true }),
    );
    fc.assert(
      fc.property(values, (si) => {
        const text = formatFraction(si);
        const read = back(text.replace('≈\u2009', ''), 'length');
        if (text.startsWith('≈')) expect(Math.abs(read - si)).toBeLessThanOrEqual(0.0254 / 128 + 1e-14);
        else expect(read).toBe(si + 0);
        expect(text.startsWith('≈')).toBe(read !== si + 0);
      }),
      { seed: 2, numRuns: 1000 },
    );
  });
});

describe('units chosen for each use', () => {
  it.each([
    ['length', 0.25, '250\u2009mm'],
    ['shopLength', 0.03175, '31.75\u2009mm'],
    ['runOut', 0.000762, '30\u2009thou'],
    ['speed', 25, '90\u2009km/h'],
    ['torque', 54, '54\u2009N·m'],
    ['force', 1500, '1\u2009500\u2009N'],
    ['power', 12000, '12\u2009kW'],
    ['mass', 81.6466266, '81.65\u2009kg'],
    ['pressure', 355e6, '355\u2009MPa'],
    ['angularSpeed', 994.8376736367678, '9\u2009500\u2009rpm'],
    ['angle', Math.PI / 8, '22.5°'],
    ['temperature', 353.15, '80\u2009°C'],
    ['stiffness', 150000, '150\u2009N/mm'],
  ] as const)('%s by default', (use, si, text) => {
    expect(formatFor(DEFAULT_UNITS, use, si)).toBe(text);
  });

  it('prints in the units of the choice', () => {
    const result = checkUnitChoice({ shopLength: 'in 1/64', runOut: 'µm', torque: 'lbf·ft' });
    if (!result.ok) throw new Error('refused');
    expect(formatFor(result.choice, 'shopLength', 0.03175)).toBe('1 1/4\u2009in');
    expect(formatFor(result.choice, 'runOut', 0.0000254)).toBe('25.4\u2009µm');
    expect(formatFor(result.choice, 'torque', 54.23271793325602)).toBe('40\u2009lbf·ft');
    expect(formatFor(result.choice, 'speed', 25)).toBe('90\u2009km/h');
  });

  it('offers only units that print, the default among them', () => {
    for (const use of Object.keys(DEFAULT_UNITS) as UnitUse[]) {
      expect(unitsForUse(use)).toContain(DEFAULT_UNITS[use]);
      for (const unit of unitsForUse(use)) expect(formatFor({ ...DEFAULT_UNITS, [use]: unit }, use, 1)).not.toBe('');
    }
  });

  it('lists all faults of a choice at once', () => {
    const result = checkUnitChoice({ torque: 'kg', runOut: 'mm', colour: 'red', mass: 3 });
    expect(result).toMatchObject({
      ok: false,
      faults: [
        { key: 'torque', read: 'kg', problem: '"kg" is not a unit that a torque is shown in here.' },
        { key: 'runOut', read: 'mm', accepted: 'one of thou, µm' },
        { key: 'colour', problem: '"colour" is not a use of units.' },
        { key: 'mass', read: '3' },
      ],
    });
    expect(checkUnitChoice(null)).toMatchObject({ ok: false, faults: [{ key: '', read: 'null' }] });
    expect(checkUnitChoice({})).toEqual({ ok: true, choice: DEFAULT_UNITS });
  });
});
