import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from './accepted.ts';
import { KINDS, type Kind } from './kinds.ts';
import { parseQuantity } from './parse.ts';

const kinds = Object.keys(KINDS) as Kind[];
const dimensional = kinds.filter((kind) => !['number', 'ratio', 'fraction', 'count'].includes(kind));

function read(text: string, kind: Kind): [number, string] {
  const result = parseQuantity(text, kind);
  if (!result.ok) throw new Error(`${text}: ${result.problem}`);
  return [result.si, result.unit];
}

function refuse(text: string, kind: Kind): { code: string; problem: string; read: string; accepted: string } {
  const result = parseQuantity(text, kind);
  if (result.ok) throw new Error(`"${text}" was read as ${result.si} ${result.unit}`);
  return result;
}

// SI values are worked out by hand from the exact definitions: 1 in = 0.0254 m, 1 lb = 0.45359237 kg, g = 9.80665 m/s².
describe('what a shop writes', () => {
  it.each([
    ['1 1/4 in', 'length', 0.03175, 'in'],
    ['3/4"', 'length', 0.01905, 'in'],
    ['30 thou', 'length', 0.000762, 'thou'],
    ['0.030 in', 'length', 0.000762, 'in'],
    ['6.35 mm', 'length', 0.00635, 'mm'],
    ['5 ft 3 in', 'length', 1.6002, 'in'],
    ['40 lbf.ft', 'torque', 54.23271793325602, 'lbf·ft'],
    ['54 N.m', 'torque', 54, 'N·m'],
    ['9500 rpm', 'angularSpeed', (9500 * Math.PI) / 30, 'rpm'],
    ['12 kW', 'power', 12000, 'kW'],
    ['16 hp', 'power', 11931.197945316324, 'hp'],
    ['180 lb', 'mass', 81.6466266, 'lb'],
    ['55 mph', 'speed', 24.5872, 'mph'],
    ['23 deg', 'angle', 0.4014257279586958, '°'],
    ['2.1 bar', 'pressure', 210000, 'bar'],
    ['150 N/mm', 'stiffness', 150000, 'N/mm'],
    ['80 degC', 'temperature', 353.15, '°C'],
  ] as const)('%s', (text, kind, si, unit) => {
    const [value, symbol] = read(text, kind);
    expect(symbol).toBe(unit);
    expect(Math.abs(value - si)).toBeLessThanOrEqual(Math.abs(si) * 2 ** -52);
  });

  it.each([
    ['½ in', 'length', 0.0127],
    ['1½ in', 'length', 0.0381],
    ['1 ½"', 'length', 0.0381],
    ['1⁄4 in', 'length', 0.00635],
    ['1-1/4"', 'length', 0.03175],
    ['1 1/4 in.', 'length', 0.03175],
    ['-1 1/4 in', 'length', -0.03175],
    ['5\' 3 1/2"', 'length', 1.6129],
    ['5′3½″', 'length', 1.6129],
    ['-5 ft 3 in', 'length', -1.6002],
    ['2 lb 8 oz', 'mass', 1.133980925],
    ['1 h 30 min', 'time', 5400],
    ["22° 30'", 'angle', Math.PI / 8],
    ['23°', 'angle', 0.4014257279586958],
    ['-3 mm', 'length', -0.003],
    ['−3 mm', 'length', -0.003],
    ['+3 mm', 'length', 0.003],
    ['1e-3 m', 'length', 0.001],
    ['.030 in', 'length', 0.000762],
    ['12 500 N', 'force', 12500],
    ['12\u2009500\u00a0N', 'force', 12500],
    ['12\u202f500,5\u202fN', 'force', 12500.5],
    ['500 cc', 'volume', 0.0005],
    ['68 lb.in2', 'inertia', 0.0198994964331856],
    ['7.85 g/cm3', 'density', 7850],
    ['9500 1/min', 'angularSpeed', 994.8376736367678],
  ] as const)('%s', (text, kind, si) => {
    expect(read(text, kind)[0]).toBe(si);
  });

  it.each([
    ['2.909', 'ratio', 2.909],
    ['64:22', 'ratio', 64 / 22],
    ['64/22', 'ratio', 64 / 22],
    ['2.5 : 1', 'ratio', 2.5],
    ['0.97', 'fraction', 0.97],
    ['97 %', 'fraction', 0.97],
    ['97%', 'fraction', 0.97],
    ['17', 'count', 17],
    ['1.5', 'number', 1.5],
    ['3/4', 'number', 0.75],
  ] as const)('%s as %s has no unit', (text, kind, si) => {
    expect(read(text, kind)[0]).toBe(si);
  });

  it('keeps the sign of a zero and the text as given', () => {
    expect(read('-0 mm', 'length')[0]).toBe(-0);
    expect(parseQuantity(' 6.35 mm ', 'length')).toMatchObject({ ok: true, kind: 'length', text: ' 6.35 mm ' });
  });

  it('reads every right example that errors give', () => {
    for (const kind of kinds)
      for (const example of EXAMPLES[kind]) expect(parseQuantity(example, kind), example).toMatchObject({ ok: true });
  });
});

describe('hardness keeps its scale', () => {
  it.each([
    ['58 HRC', 58, 'HRC'],
    ['HRC 58', 58, 'HRC'],
    ['70 Shore A', 70, 'Shore A'],
    ['70 shore a', 70, 'Shore A'],
    ['45 Shore D', 45, 'Shore D'],
    ['240 HB', 240, 'HB'],
    ['240 HBW', 240, 'HBW'],
    ['650 HV', 650, 'HV'],
  ])('%s', (text, value, scale) => {
    expect(parseQuantity(text, 'hardness')).toMatchObject({ ok: true, si: value, scale, unit: scale });
  });

  it('is not a scale that is wanted elsewhere', () => {
    expect(parseQuantity('58 HRC', 'number')).toMatchObject({ ok: false, code: 'unit-wrong-kind' });
    expect(parseQuantity('6 mm', 'length')).not.toHaveProperty('scale');
  });
});

describe('a decimal comma only where it cannot be a thousands mark', () => {
  it.each([
    ['25,4 mm', 'length', 0.0254],
    ['0,030 in', 'length', 0.000762],
    [',030 in', 'length', 0.000762],
    ['6,35 mm', 'length', 0.00635],
    ['1250,500 mm', 'length', 1.2505],
    ['1,2500 mm', 'length', 0.00125],
  ] as const)('%s is a decimal comma', (text, kind, si) => {
    expect(read(text, kind)[0]).toBe(si);
  });

  it.each(['1,250 mm', '12,500 mm', '-125,000 mm', '1 250,500 mm', '1,250e3 mm'])('%s may be either', (text) => {
    expect(refuse(text, 'length').code).toBe('comma-ambiguous');
  });

  it('shows both readings', () => {
    expect(refuse('12,500 N', 'force').problem).toContain('write 12.500 or 12500');
  });

  it.each([
    ['1,250,000 N', 1250000],
    ['12,500.5 N', 12500.5],
  ])('%s can only be a thousands mark', (text, si) => {
    expect(read(text, 'force')[0]).toBe(si);
  });

  it.each(['1.250,5 mm', '1,25,0 mm', '1.2.3 mm', '0,250,000 mm', '1,,2 mm'])('%s is no number', (text) => {
    expect(refuse(text, 'length').code).toBe('number-bad');
  });
});

describe('what is refused, and what the error says', () => {
  it.each([
    ['', 'length', 'empty', 'Nothing is written here.'],
    ['58', 'hardness', 'unit-missing', '"58" has no unit.'],
    ['0', 'length', 'unit-missing', '"0" has no unit.'],
    ['5 3/4', 'length', 'unit-missing', '"5 3/4" has no unit.'],
    ["5' 3", 'length', 'unit-missing', '"3" has no unit.'],
    ['180 lb', 'force', 'unit-wrong-kind', '"lb" is a unit of mass; here a force is wanted.'],
    ['54 N.m', 'length', 'unit-wrong-kind', '"N.m" is a unit of torque; here a length is wanted.'],
    ['3 mm', 'count', 'unit-wrong-kind', '"mm" is a unit of length; here a count is wanted.'],
    ['5 MM', 'length', 'unit-unknown', '"MM" is not a known unit of length. Is "mm" meant?'],
    ['5 furlongs', 'length', 'unit-unknown', '"furlongs" is not a known unit of length.'],
    ['inch', 'length', 'number-bad', '"inch" does not begin with a number.'],
    ['3-5 mm', 'length', 'number-bad', '"3-5 mm" is not one number; a range is written low..high.'],
    ['3..5 mm', 'length', 'range-unexpected', '"3..5 mm" is a range; one value is wanted.'],
    ['5 5 mm', 'length', 'number-bad', '"5 5 mm" is not one number.'],
    ['5 ft 300 mm', 'length', 'number-bad', '"5 ft 300 mm" is more than one value.'],
    ['3 in 5 ft', 'length', 'number-bad', '"3 in 5 ft" is more than one value.'],
    ['5.5 ft 3 in', 'length', 'number-bad', '"5.5 ft 3 in" is more than one value.'],
    ['5 ft -3 in', 'length', 'number-bad', '"5 ft -3 in" is more than one value.'],
    ['1 5/4 in', 'length', 'number-bad', 'In "1 5/4" the fraction after the whole number is not below one.'],
    ['3/0 in', 'length', 'number-bad', '"3/0" divides by zero.'],
    ['64:0', 'ratio', 'number-bad', '"64:0" divides by zero.'],
    ['64:22:11', 'ratio', 'number-bad', '"64:22:11" is not a ratio driven:driver.'],
    ['3.5', 'count', 'not-whole', '"3.5" is not a whole number.'],
    ['1e400 mm', 'length', 'not-finite', '"1e400 mm" is too large for a length.'],
    ['1e-400 mm', 'length', 'not-finite', '"1e-400 mm" is too small to tell from zero.'],
    ['1e99999 mm', 'length', 'number-bad', 'The power of ten in "1e99999" is out of range.'],
    ['Infinity mm', 'length', 'number-bad', '"Infinity mm" does not begin with a number.'],
  ] as const)('%s as %s', (text, kind, code, problem) => {
    expect(refuse(text, kind)).toMatchObject({ code, problem, read: text });
  });

  it('always shows a right example', () => {
    expect(refuse('58', 'length').accepted).toBe('a length, such as "6.35 mm", "1 1/4 in" or "30 thou"');
    expect(refuse('58', 'angle').accepted).toBe(`an angle, such as "23 deg", "23° 30'" or "0.4 rad"`);
  });

  it('does not read a text without end', () => {
    expect(refuse(`${'1'.repeat(300)} mm`, 'length').code).toBe('too-long');
  });
});

describe('any text at all', () => {
  const scraps = fc.constantFrom(
    ...[
      '1',
      '0',
      '250',
      '3/4',
      '½',
      '.',
      ',',
      '..',
      '-',
      '−',
      '+',
      'e',
      'e9',
      ' ',
      '\u2009',
      '/',
      ':',
      '%',
      "'",
      '"',
      '°',
    ],
    ...['mm', 'in', 'ft', 'N.m', 'Shore A', 'HRC', 'lb', 'µ', '(', '·', '\n', '\u0000', '😀', 'NaN', 'rpm'],
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 30 }),
    fc.array(scraps, { maxLength: 8 }).map((parts) => parts.join('')),
  );

  it('is read as a finite number or refused with a reason, and never throws', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...kinds), (garbage, kind) => {
        const result = parseQuantity(garbage, kind);
        if (result.ok) expect(Number.isFinite(result.si)).toBe(true);
        else expect([result.problem, result.accepted].every((sentence) => sentence.length > 5)).toBe(true);
      }),
      { seed: 2, numRuns: 4000 },
    );
  });

  it('without a unit is never a dimensional quantity', () => {
    const bare = fc.string({ unit: fc.constantFrom(...'0123456789 .,/-+½¼e\u2009−'), maxLength: 12 });
    fc.assert(
      fc.property(bare, fc.constantFrom(...dimensional), (number, kind) => {
        expect(parseQuantity(number, kind).ok).toBe(false);
      }),
      { seed: 2, numRuns: 4000 },
    );
  });
});
