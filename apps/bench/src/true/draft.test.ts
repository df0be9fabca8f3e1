import { describe, expect, it } from 'vitest';
import {
  advanced,
  type Draft,
  dialOf,
  keyed,
  newDraft,
  placeDegrees,
  readDraft,
  readingsOf,
  setBody,
  withMarks,
  withValue,
} from './draft.ts';

const typed = (keys: readonly string[]): string => keys.reduce(keyed, '');
/** Keys one value after the other in, going on after each. */
const keyIn = (draft: Draft, values: readonly string[]): Draft =>
  values.reduce((now, value) => advanced(withValue(now, value)), draft);

describe('the keypad', () => {
  it('types halves, points and signs, and takes the last figure back', () => {
    expect(typed(['1', '2', '½', 'sign'])).toBe('−12.5');
    expect(typed(['½'])).toBe('0.5');
    expect(typed(['.', '0', '5'])).toBe('0.05');
    expect(typed(['4', 'sign', 'sign', '7', 'back'])).toBe('4');
    expect(dialOf('−12.5')).toBe(-12.5);
    expect(dialOf('−')).toBeUndefined();
  });
});

describe('a set that is keyed in', () => {
  it('goes on round the part by itself, past marks that are filled, and back to one that was left out', () => {
    let draft = keyIn(newDraft('shaft', '20 mm'), ['1', '2', '3']);
    expect(draft.at).toBe(3);
    draft = keyIn({ ...draft, at: 5 }, ['6', '7', '8', '9', '10', '11', '12']);
    expect(draft.at).toBe(3);
    draft = keyIn(draft, ['4', '5']);
    expect(readingsOf(draft)).toHaveLength(12);
    expect(readingsOf(draft)[3]).toEqual({ at: 90, value: 4 });
  });

  it('has the first mark twice when it was read again at the end', () => {
    const draft = withValue({ ...keyIn(newDraft('shaft', '20 mm'), Array(12).fill('1')), at: 12 }, '1.5');
    expect(readingsOf(draft).at(-1)).toEqual({ at: 0, value: 1.5 });
    const before = { ...setBody(draft, readingsOf(draft)) };
    expect(newDraft('shaft', '30 mm', before as never).marks).toBe(12);
  });

  it('keeps what is typed when the number of marks changes, and says highest and lowest with their places', () => {
    const four = withMarks(keyIn(newDraft('shaft', '20 mm'), ['1', '2', '3', '4', '5']), 4);
    expect(readingsOf(four).map(({ at }) => at)).toEqual([0, 90, 180, 270]);
    const ends = { ...keyIn(withMarks(four, 0), ['9', '−3']), highAt: '7:30', lowAt: '45°' };
    expect(setBody(ends, [])).toMatchObject({
      ends: { highest: { at: 225, value: 9 }, lowest: { at: 45, value: -3 } },
    });
    expect([placeDegrees('12'), placeDegrees('3:30'), placeDegrees('13')]).toEqual([0, 105, undefined]);
  });

  it('comes back for the build that it was kept for, and for no other', () => {
    const draft = keyIn(newDraft('shaft', '20 mm'), ['1']);
    const noted = { ...JSON.parse(JSON.stringify(draft)), build: 'Hauler' };
    expect(readDraft(noted, 'Hauler')).toEqual(draft);
    expect(readDraft(noted, 'Trike')).toBeNull();
    expect(readDraft(undefined, 'Hauler')).toBeNull();
  });
});
