import { describe, expect, it } from 'vitest';
import { lever, pulleys } from './testing/samples.ts';
import { stepText } from './text.ts';
import { namesOf, type Working, workingOf } from './working.ts';

const input = { speed: 100, driver: 0.1, driven: 0.3, slip: 0.02 };

describe('a working', () => {
  const output = pulleys.run(input);
  const working = workingOf(pulleys, input, output, { driver: '/path/stages/belt/driver', slip: 'assumed' });
  it('carries the very numbers of the run', () => {
    const value = (key: string) => working.symbols.find((symbol) => symbol.key === key)?.value;
    expect(value('drivenSpeed')).toBe(output.drivenSpeed);
    expect(working.steps.map((step) => [step.key, step.value])).toEqual([
      ['beltSpeed', output.beltSpeed],
      ['drivenSpeed', output.drivenSpeed],
    ]);
  });
  it('lists inputs, intermediates and results, with where they came from', () => {
    expect(working.symbols.map(({ key, role, origin }) => [key, role, origin])).toEqual([
      ['speed', 'input', undefined],
      ['driver', 'input', '/path/stages/belt/driver'],
      ['driven', 'input', undefined],
      ['slip', 'input', 'assumed'],
      ['beltSpeed', 'intermediate', undefined],
      ['drivenSpeed', 'result', undefined],
    ]);
  });
  it('is plain data, and its formulas print from it alone', () => {
    const copy: Working = JSON.parse(JSON.stringify(working));
    expect(copy).toEqual(working);
    expect(copy.steps.map((step) => stepText(step, namesOf(copy)))).toEqual([
      'v = ω₁·d₁ / 2',
      'ω₂ = (1 − s)·(2·v / d₂)',
    ]);
  });
  it('shows vectors, lists and words', () => {
    const given = {
      arm: [1, 0, 0],
      force: [0, 5, 0],
      ratios: [2],
      trains: 1,
      side: 'right',
      name: 'hand lever',
    } as const;
    const { symbols } = workingOf(lever, given, lever.run(given));
    expect(symbols.map(({ key, kind, value }) => [key, kind, value])).toEqual([
      ['arm', 'length', [1, 0, 0]],
      ['force', 'force', [0, 5, 0]],
      ['ratios', 'ratio', [2]],
      ['trains', 'count', 1],
      ['side', null, 'right'],
      ['name', null, 'hand lever'],
      ['moment', 'torque', [0, 0, 5]],
      ['size', 'torque', 10],
      ['label', null, 'right hand lever'],
      ['trainCount', 'count', 1],
    ]);
  });
  it('names the method and the key that is missing', () => {
    expect(() => workingOf(pulleys, input, { drivenSpeed: 1 })).toThrow(
      'sample.pulleys: the value "beltSpeed" of the working is missing.',
    );
  });
});
