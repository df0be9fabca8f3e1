import { describe, expect, it } from 'vitest';
import { add, div, mul, norm, num, pow, product, sub, sym } from './expr.ts';
import type { Method, Step } from './method.ts';
import { checkMethod } from './proof.ts';
import { cone, lever, pulleys } from './testing/samples.ts';

const pulleyInput = { speed: 100, driver: 0.2, driven: 0.5, slip: 0.02 };
const coneInput = { radius: 3, slant: 5 };
const leverInput = {
  arm: [0.3, 0, 0.1],
  force: [0, 200, 0],
  ratios: [2, 1.5],
  trains: 1,
  side: 'left',
  name: 'brake lever',
} as const;

/** The pulleys with some steps replaced. */
const pulleysWith = (...steps: Step[]): typeof pulleys => ({ ...pulleys, steps });
const [beltStep, drivenStep] = pulleys.steps as [Step, Step];

describe('a true record', () => {
  it('has no misses', () => {
    expect(checkMethod(pulleys, pulleyInput)).toEqual([]);
    expect(checkMethod(cone, coneInput)).toEqual([]);
    expect(checkMethod(lever, leverInput)).toEqual([]);
  });
});

describe('a record that run does not bear out', () => {
  it('a wrong tree is caught', () => {
    const wrong = pulleysWith({ ...beltStep, key: 'beltSpeed', is: mul('speed', 'driver') }, drivenStep);
    expect(checkMethod(wrong, pulleyInput)).toEqual([
      { at: 'beltSpeed', problem: expect.stringContaining('v = ω₁·d₁: the left side is 10, the right side 20;') },
    ]);
  });
  it('a tree that is a millionth off is caught', () => {
    const wrong = pulleysWith(beltStep, { key: 'drivenSpeed', says: '', is: mul(1.000001, 'drivenSpeed') });
    expect(checkMethod(wrong, pulleyInput)).toHaveLength(1);
    expect(checkMethod(wrong, pulleyInput, { relative: 1e-5 })).toEqual([]);
  });
  it('a wrong dimension is caught even where the number agrees', () => {
    const unit = { speed: 2, driver: 1, driven: 1, slip: 0 };
    const wrong = pulleysWith({ ...beltStep, key: 'beltSpeed', is: div('speed', 2) }, drivenStep);
    expect(checkMethod(wrong, unit)).toEqual([
      { at: 'beltSpeed', problem: 'v = ω₁ / 2: the left side is m·s^-1, the right side s^-1.' },
    ]);
  });
  it('unlike terms are caught', () => {
    const wrong = pulleysWith({ ...beltStep, key: 'beltSpeed', is: add('speed', 'driver') }, drivenStep);
    expect(checkMethod(wrong, pulleyInput).map((miss) => miss.problem)).toContain(
      'ω₁ (s^-1) and d₁ (m) cannot be added.',
    );
  });
  it('both sides of a solved step are held to each other', () => {
    const wrong: typeof cone = {
      ...cone,
      steps: [{ key: 'height', left: pow('height', 2), right: pow('slant', 2), says: '' }, ...cone.steps.slice(1)],
    };
    expect(checkMethod(wrong, coneInput)).toEqual([
      { at: 'height', problem: expect.stringContaining('h² = s²: the left side is 16, the right side 25;') },
    ]);
  });
  it('a solved step may have zero on one side', () => {
    const zero: typeof cone = {
      ...cone,
      steps: [
        {
          key: 'height',
          left: sub(add(pow('radius', 2), pow('height', 2)), pow('slant', 2)),
          right: num(0),
          says: '',
        },
        ...cone.steps.slice(1),
      ],
    };
    expect(checkMethod(zero, { radius: 0.1, slant: 0.3 })).toEqual([]);
    const off: typeof cone = { ...zero, run: (input) => ({ ...cone.run(input), height: 0.29 }) };
    expect(checkMethod(off, { radius: 0.1, slant: 0.3 }).map((miss) => miss.at)).toContain('height');
  });
  it('a vector is compared entry by entry', () => {
    const wrong: typeof lever = {
      ...lever,
      steps: [{ key: 'moment', is: mul(-1, 'moment'), says: '' }, ...lever.steps.slice(1)],
    };
    expect(checkMethod(wrong, leverInput)).toHaveLength(1);
  });
  it('a step without its value, a key without a step, and values that are not declared are caught', () => {
    const lacking = {
      ...pulleysWith({ key: 'ratio', is: div('driver', 'driven'), says: '' }),
      run: () => ({ drivenSpeed: 39.2, extra: 1 }),
    } as unknown as Method;
    expect(checkMethod(lacking, pulleyInput)).toEqual([
      { at: 'beltSpeed', problem: 'The intermediate stands in no step.' },
      { at: 'ratio', problem: 'The step gives a value that is not a declared output.' },
      { at: 'extra', problem: 'The value is not declared.' },
      { at: 'beltSpeed', problem: 'The value is missing.' },
      { at: 'ratio', problem: 'There is no value "ratio".' },
      { at: 'ratio', problem: 'There is no value "ratio".' },
    ]);
  });
  it('values outside their range or form are caught', () => {
    expect(checkMethod(pulleys, { ...pulleyInput, slip: 0.2 })).toEqual([
      { at: 'slip', problem: 'The value 0.2 is out of range; it must be at least 0 and at most 0.1.' },
    ]);
    expect(checkMethod(pulleys, { ...pulleyInput, driver: 0 }).map((miss) => miss.at)).toEqual(['driver']);
    expect(checkMethod(cone, { radius: 5, slant: 3 }).map((miss) => miss.problem)).toContain(
      'The value NaN is not a finite number.',
    );
    const odd = { ...leverInput, trains: 1.5, ratios: [], side: 'middle' } as unknown as typeof leverInput;
    expect(checkMethod(lever, odd).map((miss) => miss.problem)).toEqual([
      'The value has 0 entries, not at least 1.',
      'The value 1.5 is not whole.',
      'The value "middle" is none of left, right.',
      'The value 1.5 is not whole.',
    ]);
  });
  it('a method without result or source is caught', () => {
    const bare: typeof lever = {
      ...lever,
      results: [],
      sources: [],
      steps: [{ key: 'size', is: mul(norm('moment'), product('ratios'), sym('trains')), says: '' }],
    };
    expect(checkMethod(bare, leverInput).map((miss) => miss.at)).toEqual([
      'label',
      'trainCount',
      'sample.lever',
      'sample.lever',
    ]);
  });
});
