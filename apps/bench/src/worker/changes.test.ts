import type { Assessment } from '@oddwheel/build/assess/types';
import { describe, expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { assessmentChange, withChange } from './changes.ts';
import { createModel } from './model.ts';

const opened = createModel().open(demo, []);
if (!opened.ok || !opened.change.here) throw new Error('The demo cannot be read.');
const WHOLE = opened.change as Assessment;

const assessment = (over: Partial<Assessment>): Assessment => ({
  ...WHOLE,
  reserves: new Float64Array([1.5, Number.NaN]),
  ...over,
});

describe('what the worker sends after an edit or a move of the slider', () => {
  const before = assessment({});

  it('is everything the first time', () => {
    expect(assessmentChange(null, before)).toBe(before);
  });

  it('is only the parts that differ, by content', () => {
    const next = assessment({ here: { gear: '2', roadSpeed: 6 } });
    expect(Object.keys(assessmentChange(before, next))).toEqual(['here']);
    expect(withChange(before, assessmentChange(before, next))).toEqual(next);
  });

  it('keeps the very objects that did not change, so that nothing is redrawn for them', () => {
    const next = withChange(before, assessmentChange(before, assessment({ name: 'another' })));
    expect(next.findings).toBe(before.findings);
    expect(next.reserves).toBe(before.reserves);
    expect(next.name).toBe('another');
  });

  it('tells reserves apart by every number, an unknown one counting as equal to itself', () => {
    expect(assessmentChange(before, assessment({ reserves: new Float64Array([1.5, Number.NaN]) }))).toEqual({});
    expect(assessmentChange(before, assessment({ reserves: new Float64Array([1.5, 1]) }))).toHaveProperty('reserves');
  });
});
