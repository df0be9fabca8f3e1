import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS, type Kind } from './kinds.ts';
import { parseInput } from './range.ts';

describe('a value or a range low..high', () => {
  it('reads a value as a range of no width', () => {
    expect(parseInput('6.35 mm', 'length')).toMatchObject({
      ok: true,
      lo: 0.00635,
      hi: 0.00635,
      si: 0.00635,
      isRange: false,
      unit: 'mm',
    });
  });

  it.each([
    ['3..5 mm', 'length', 0.003, 0.005, 0.004, 'mm'],
    ['3 mm .. 5 mm', 'length', 0.003, 0.005, 0.004, 'mm'],
    ['1/8..3/8 in', 'length', 0.003175, 0.009525, 0.00635, 'in'],
    ['1/8 in..5 mm', 'length', 0.003175, 0.005, 0.0040875, 'mm'],
    ['2..4"', 'length', 0.0508, 0.1016, 0.0762, 'in'],
    ['5 ft 3 in..5 ft 5 in', 'length', 1.6002, 1.651, 1.6256, 'in'],
    ['-20..80 degC', 'temperature', 253.15, 353.15, 303.15, '°C'],
    ['90..96 %', 'fraction', 0.9, 0.96, 0.93, '%'],
    ['0.9..0.96', 'fraction', 0.9, 0.96, 0.93, ''],
    ['42:21..44:11', 'ratio', 2, 4, 3, ''],
    ['20..21', 'count', 20, 21, 20, ''],
    ['5..5 mm', 'length', 0.005, 0.005, 0.005, 'mm'],
  ] as const)('%s', (text, kind, lo, hi, si, unit) => {
    const result = parseInput(text, kind);
    expect(result).toMatchObject({ ok: true, lo, hi, isRange: true, unit, text });
    if (result.ok) expect(result.si).toBeCloseTo(si, 12);
  });

  it('keeps the hardness scale', () => {
    expect(parseInput('58..62 HRC', 'hardness')).toMatchObject({ ok: true, lo: 58, hi: 62, si: 60, scale: 'HRC' });
  });

  it.each([
    ['5..3 mm', 'length', 'range-order', 'In "5..3 mm" the low end is above the high end.'],
    ['1 in..5 mm', 'length', 'range-order', 'In "1 in..5 mm" the low end is above the high end.'],
    ['3..5', 'length', 'unit-missing', '"5" has no unit.'],
    ['3 mm..5', 'length', 'unit-missing', '"5" has no unit.'],
    ['5..5 ft 6 in', 'length', 'unit-missing', '"5" has no unit.'],
    ['5 %..10', 'fraction', 'unit-missing', '"10" has no % where the low end has one.'],
    ['..5 mm', 'length', 'range-bad', '"..5 mm" lacks one end of the range.'],
    ['3 mm..', 'length', 'range-bad', '"3 mm.." lacks one end of the range.'],
    ['3...5 mm', 'length', 'range-bad', '"3...5 mm" is not a range; two points stand between low and high.'],
    ['1..2..3 mm', 'length', 'range-bad', '"1..2..3 mm" is not a range; two points stand between low and high.'],
    ['58 HRC..600 HV', 'hardness', 'range-bad', '"58 HRC..600 HV" mixes the scales HRC and HV.'],
    ['3..5 N', 'length', 'unit-wrong-kind', '"N" is a unit of force; here a length is wanted.'],
  ] as const)('%s is refused', (text, kind, code, problem) => {
    expect(parseInput(text, kind)).toMatchObject({ ok: false, code, problem, read: text });
  });

  it('never throws, and always has its ends in order and the value between them', () => {
    const kinds = Object.keys(KINDS) as Kind[];
    const scraps = fc.constantFrom('1', '2.5', '1/4', '..', '.', ' ', ' mm', ' %', ' HRC', '-', ',', 'e300', ':');
    fc.assert(
      fc.property(fc.array(scraps, { maxLength: 7 }), fc.constantFrom(...kinds), (parts, kind) => {
        const result = parseInput(parts.join(''), kind);
        if (!result.ok) return;
        expect(result.lo).toBeLessThanOrEqual(result.si);
        expect(result.si).toBeLessThanOrEqual(result.hi);
      }),
      { seed: 2, numRuns: 4000 },
    );
  });
});
