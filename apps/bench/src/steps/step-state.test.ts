import { CHECK_IDS } from '@oddwheel/build/assess/check-ids';
import type { Assessment, Assumed, Finding, PathElement, Severity } from '@oddwheel/build/assess/types';
import { describe, expect, it } from 'vitest';
import { stepOfCheck } from './belongs.ts';
import { stepState } from './step-state.ts';

const finding = (check: string, severity: Severity) => ({ check, severity }) as Finding;
const element = (kind: PathElement['kind'], ratio: number | null) =>
  ({ kind, ratio: ratio === null ? null : { value: ratio, lo: ratio, hi: ratio } }) as PathElement;
const assessment = (findings: readonly Finding[], assumed = 0) =>
  ({
    findings,
    assumed: Array.from({ length: assumed }, () => ({}) as Assumed),
    path: [
      element('engine', null),
      element('gearbox', 3.73),
      element('chain', 30 / 17),
      element('shaft', null),
      element('bevel', 33 / 14),
      element('chain', 48 / 15),
      element('ground', null),
    ],
  }) as unknown as Assessment;

describe('which step a finding belongs to', () => {
  it('is known for every check there is', () => {
    expect(CHECK_IDS.filter((id) => stepOfCheck(id) === null)).toEqual([]);
  });

  it('goes by the longest beginning that fits', () => {
    expect(stepOfCheck('chain.slack')).toBe('layout');
    expect(stepOfCheck('chain.pull')).toBe('strength');
    expect(stepOfCheck('something.else')).toBeNull();
  });
});

describe('how far a step is, in words', () => {
  it('Brief counts what is assumed', () => {
    expect(stepState('brief', assessment([], 7))).toMatchObject({ severity: null, words: '7 assumed' });
    expect(stepState('brief', assessment([]))).toMatchObject({ severity: 'holds', words: 'complete' });
  });

  it('Ratios gives the reduction that is built, without the gearbox, and what its findings say first', () => {
    expect(stepState('ratios', assessment([])).words).toBe('13.31 in all');
    expect(stepState('ratios', assessment([finding('target.pull', 'fails')]))).toEqual({
      severity: 'fails',
      words: '1 fails',
      more: '13.31 in all',
    });
  });

  it('Layout and Strength count by the worst severity, and say how many more do not hold', () => {
    const mixed = assessment([
      finding('chain.pull', 'fails'),
      finding('unit.torque', 'unknown'),
      finding('unit.speed', 'thin'),
      finding('chain.pull', 'holds'),
      finding('chain.slack', 'holds'),
    ]);
    expect(stepState('strength', mixed)).toEqual({ severity: 'fails', words: '1 fails', more: 'and 2 more' });
    expect(stepState('layout', mixed)).toEqual({ severity: 'holds', words: 'holds', more: '' });
    expect(stepState('strength', assessment([])).words).toBe('no checks yet');
  });

  it('a step that nothing is known of is not begun', () => {
    expect(stepState('book', assessment([]))).toEqual({ severity: null, words: 'not begun', more: '' });
  });
});
