import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity } from './parse.ts';
import { convertTyped, snapStep } from './step.ts';

const IN = 0.0254;

describe('snapStep: a drag keeps unit and style', () => {
  it.each([
    ['12 mm', 'length', 0.00034, '12.5 mm'],
    ['12mm', 'length', 0.00034, '12.5mm'],
    ['12,5 mm', 'length', 0.001, '13,5 mm'],
    ['6.35 mm', 'length', 0.0002, '6.5 mm'],
    ['1 mm', 'length', -0.0022, '-1 mm'],
    ['0.030 in', 'length', 0.011 * IN, '0.04 in'],
    ['1 1/4 in', 'length', IN / 60, '1 17/64 in'],
    ['1-1/4"', 'length', IN / 4, '1-1/2"'],
    ['3/4"', 'length', IN / 4, '1"'],
    ['1/4 in', 'length', -IN / 2, '-1/4 in'],
    ['5 ft 11.9 in', 'length', IN * 0.2, '6 ft 0.1 in'],
    ['5\' 3 1/2"', 'length', IN, '5\' 4 1/2"'],
    ['30 thou', 'length', 0.00003, '31 thou'],
    ['23°', 'angle', 0.02, '24°'],
    ['9500 rpm', 'angularSpeed', 11, '9600 rpm'],
    ['54 N·m', 'torque', 0.6, '54.5 N·m'],
    ['17', 'count', 1.2, '18'],
    ['2.90', 'ratio', 0.013, '2.91'],
    ['64:22', 'ratio', 0.1, '66:22'],
    ['0.97', 'fraction', -0.014, '0.96'],
    ['97 %', 'fraction', -0.014, '96 %'],
    ['0,25 kg', 'mass', 0.07, '0,3 kg'],
    ['80 degC', 'temperature', 2.2, '82 degC'],
  ] as const)('%s (%s) moved by %d becomes %s', (text, kind, delta, after) => {
    const result = snapStep(text, kind, delta);
    expect(result).toMatchObject({ ok: true, text: after });
    const read = parseQuantity(after, kind);
    expect(result.ok && read.ok && result.si === read.si).toBe(true);
  });

  it('leaves the text alone where nothing moved', () => {
    expect(snapStep('6.35 mm', 'length', 0)).toMatchObject({ ok: true, text: '6.35 mm', si: 0.00635 });
  });

  it('writes a point where a decimal comma would look like a thousands mark', () => {
    expect(snapStep('1,2345 N/mm', 'stiffness', 0.5)).toMatchObject({ ok: true, text: '1.235 N/mm' });
  });

  it('refuses what is no value', () => {
    expect(snapStep('12', 'length', 0.001)).toMatchObject({ ok: false, code: 'unit-missing' });
    expect(snapStep('3..5 mm', 'length', 0.001)).toMatchObject({ ok: false, code: 'range-unexpected' });
    expect(() => snapStep('12 mm', 'length', Number.NaN)).toThrow(RangeError);
  });

  it('lands within half a step of where it was dragged to', () => {
    const steps = { '12 mm': 0.0005, '0.5 in': 0.01 * IN, '1 1/4 in': IN / 64, '5 ft 3 in': 0.01 * IN } as const;
    const texts = fc.constantFrom(...(Object.keys(steps) as (keyof typeof steps)[]));
    fc.assert(
      fc.property(texts, fc.double({ min: -10, max: 10, noNaN: true }), (text, delta) => {
        const [before, after] = [parseQuantity(text, 'length'), snapStep(text, 'length', delta)];
        if (!before.ok || !after.ok) throw new Error('refused');
        if (delta !== 0) expect(Math.abs(after.si - before.si - delta)).toBeLessThanOrEqual(steps[text] / 2 + 1e-12);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });
});

describe('convertTyped: a unit is tapped', () => {
  it.each([
    ['0.75', 'length', 'in', '0.75 in'],
    [' 1 1/4 ', 'length', 'in', '1 1/4 in'],
    ['3..5', 'length', 'mm', '3..5 mm'],
    ['97', 'fraction', '%', '97 %'],
    ['54', 'torque', 'N·m', '54 N.m'],
    ['58', 'hardness', 'HRC', '58 HRC'],
    ['6.35 mm', 'length', 'in', '0.25 in'],
    ['0.25 in', 'length', 'mm', '6.35 mm'],
    ['1..2 in', 'length', 'mm', '25.4 mm..50.8 mm'],
    ['97 %', 'fraction', '', '0.97'],
    ['58 HRC', 'hardness', 'HRC', '58 HRC'],
  ] as const)('%s (%s) with %s is %s', (text, kind, unit, after) => {
    expect(convertTyped(text, kind, unit)).toMatchObject({ ok: true, text: after });
  });

  it('keeps the value bit for bit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom('in', 'mm', 'thou', 'ft', 'µm'), (thou, unit) => {
        const before = parseQuantity(`${thou} thou`, 'length');
        const after = convertTyped(`${thou} thou`, 'length', unit);
        expect(before.ok && after.ok && after.si === before.si).toBe(true);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('never turns one hardness scale into another', () => {
    expect(convertTyped('58 HRC', 'hardness', 'HV')).toMatchObject({
      ok: false,
      problem: 'A hardness in HRC cannot be turned into HV: the scales have no exact relation.',
    });
  });

  it('refuses what cannot be read', () => {
    expect(convertTyped('1,250', 'length', 'mm')).toMatchObject({ ok: false, code: 'comma-ambiguous' });
    expect(convertTyped('5 N', 'length', 'mm')).toMatchObject({ ok: false, code: 'unit-wrong-kind' });
    expect(() => convertTyped('5', 'length', 'kg')).toThrow(RangeError);
  });
});
