import { describe, expect, it } from 'vitest';
import { type Case, countsAsOutside, runCase } from './cases.ts';
import type { Method } from './method.ts';
import { cone, lever } from './testing/samples.ts';

/** Our own numbers: the right triangle 3, 4, 5 turned about its leg of 4. */
const triangle: Case = {
  id: 'cone-345',
  given: { radius: '3 m', slant: 5 },
  expect: {
    height: { value: '400 cm', within: { abs: '0.001 mm' } },
    volume: { value: 37.699, within: { rel: 1e-4 } },
    apexAngle: { value: '36.87 deg', within: { abs: '0.01 deg' } },
  },
  source: { title: 'Euclid, Elements, book I, proposition 47', how: 'memory' },
  kind: 'constructed',
};
const leverCase: Case = {
  id: 'lever',
  given: { arm: [1, 0, 0], force: [0, 2, 0], ratios: [3], name: 'lever' },
  expect: {
    moment: { value: [0, 0, '2 N.m'], within: { abs: 0 } },
    label: { value: 'left lever' },
    trainCount: { value: 1 },
  },
  source: { title: 'Definition of the moment', how: 'derived' },
  kind: 'constructed',
};

describe('running a case', () => {
  it('compares every expected value, in its unit', () => {
    const result = runCase(cone, triangle);
    expect(result).toMatchObject({ ok: true, faults: [], misses: [] });
    expect(result.compared.map(({ key }) => key)).toEqual(['height', 'volume', 'apexAngle']);
    expect(result.worst?.key).toBe('volume');
  });
  it('compares vectors by entry, words and whole numbers exactly', () => {
    expect(runCase(lever, leverCase)).toMatchObject({ ok: true });
    const wrong = { ...leverCase, expect: { label: { value: 'right lever' }, trainCount: { value: 2 } } };
    expect(runCase(lever, wrong).misses.map(({ key, expected, got }) => [key, expected, got])).toEqual([
      ['label', 'right lever', 'left lever'],
      ['trainCount', 2, 1],
    ]);
  });
  it('reports a miss with what was expected, got and allowed', () => {
    const result = runCase(cone, { ...triangle, expect: { height: { value: '4.1 m', within: { abs: '5 cm' } } } });
    expect(result.ok).toBe(false);
    expect(result.misses).toHaveLength(1);
    expect(result.misses[0]).toMatchObject({ key: 'height', expected: 4.1, got: 4, allowed: 0.05 });
    expect(result.misses[0]?.error).toBeCloseTo(0.1, 12);
    expect(result.worst).toEqual(result.misses[0]);
  });
  it('does not take a result that is not a number for a hit', () => {
    const result = runCase(cone, {
      ...triangle,
      given: { radius: 5, slant: 3 },
      expect: { height: { value: 4, within: { rel: 1 } } },
    });
    expect(result.ok).toBe(false);
    expect(result.misses).toHaveLength(1);
  });
  it('allows a difference of temperatures without a zero point', () => {
    const boiling: Method = {
      id: 'sample.boiling',
      gives: 'Boiling point of water',
      inputs: {},
      outputs: { boiling: { form: 'value', kind: 'temperature', symbol: 'T', meaning: 'boiling point' } },
      results: ['boiling'],
      steps: [],
      sources: [],
      run: () => ({ boiling: 373.15 }),
    };
    const near: Case = { ...triangle, given: {}, expect: { boiling: { value: '99 degC', within: { abs: '2 degC' } } } };
    expect(runCase(boiling, near).ok).toBe(true);
    expect(
      runCase(boiling, { ...near, expect: { boiling: { value: '99 degC', within: { abs: '0.5 degC' } } } }).ok,
    ).toBe(false);
  });
  it.each([
    ['an input that cannot be read', { given: { radius: '3', slant: 5 } }, 'radius: "3" has no unit.'],
    [
      'an expected value of the wrong kind',
      { expect: { height: { value: '3 kg', within: { rel: 1 } } } },
      'height: "kg" is a unit of mass',
    ],
    [
      'a key that the method does not give',
      { expect: { width: { value: 1 } } },
      'sample.cone gives no "width"; it gives volume, apexAngle, height.',
    ],
    ['no allowance', { expect: { height: { value: 4 } } }, 'height: "within" is missing'],
    ['a negative allowance', { expect: { height: { value: 4, within: { rel: -1 } } } }, 'height: "within" allows -4'],
    ['nothing expected', { expect: {} }, 'cone-345: nothing is expected.'],
    ['no source', { source: { title: ' ', how: 'read' } }, 'cone-345: the source has no title.'],
  ] as const)('is not ok with %s, and says why', (_, change, fault) => {
    const result = runCase(cone, { ...triangle, ...change } as Case);
    expect(result.ok).toBe(false);
    expect(result.faults.join(' ')).toContain(fault);
  });
  it('reports what run refuses', () => {
    const refusing: Method = {
      ...(cone as Method),
      run: () => {
        throw new Error('The slant is shorter than the radius.');
      },
    };
    expect(runCase(refusing, triangle).faults).toEqual(['The slant is shorter than the radius.']);
  });
});

describe('what counts as an outside check', () => {
  it.each([
    ['published-example', 'read', true],
    ['published-example', 'memory', true],
    ['table-spot', 'read', true],
    ['reference-library', 'read', true],
    ['published-example', 'derived', false],
    ['published-example', 'common practice', false],
    ['constructed', 'read', false],
  ] as const)('%s, %s: %s', (kind, how, counts) => {
    expect(countsAsOutside({ ...triangle, kind, source: { title: 'A handbook', how } })).toBe(counts);
  });
});
