import { parseInput } from '@oddwheel/quantity/range';
import { describe, expect, it } from 'vitest';
import { unitTaps, withTappedUnit } from './unit-taps.ts';

describe('a tapped unit', () => {
  it.each([
    ['0.75', 'in', '0.75 in'],
    [' 0.75 ', 'in', '0.75 in'],
    ['0.75 mm', 'in', '0.75 in'],
    ['0.75in', 'mm', '0.75 mm'],
    ['1 1/4', 'in', '1 1/4 in'],
    ['3/4"', 'mm', '3/4 mm'],
    ['½', 'in', '½ in'],
    ['12 500', 'N', '12 500 N'],
    ['25,4', 'mm', '25,4 mm'],
    ['1/8..3/16', 'in', '1/8..3/16 in'],
    ['3..5 mm', 'in', '3..5 in'],
    ['250 kg..330 kg', 'lb', '250..330 lb'],
    ['1.2 m2', 'ft2', '1.2 ft2'],
    ['-5', 'deg', '-5 deg'],
  ])('%j and %j make %j', (text, unit, made) => expect(withTappedUnit(text, unit)).toBe(made));

  it.each(['', '  ', 'about 3', '5 ft 3 in', '3..', '110/85R36'])('leaves %j as it is', (text) =>
    expect(withTappedUnit(text, 'mm')).toBe(text),
  );

  it('makes a text that is read as that number of that unit', () => {
    const read = parseInput(withTappedUnit('0.75', 'in'), 'length');
    expect(read.ok && read.si).toBe(0.01905);
  });

  it('shows which unit the text has, by any of its spellings', () => {
    const chosen = (text: string) =>
      unitTaps('torque', text)
        .filter((tap) => tap.chosen)
        .map((tap) => tap.label);
    expect(chosen('40 Nm')).toEqual(['N·m']);
    expect(chosen('40 lbf ft')).toEqual(['lbf·ft']);
    expect(chosen('30..40 N.m')).toEqual(['N·m']);
    expect(chosen('40')).toEqual([]);
    expect(unitTaps('ratio', '2.75')).toEqual([]);
    expect(unitTaps('length', '3.35 m', ['m', 'in']).map((tap) => tap.unit)).toEqual(['m', 'in']);
  });
});
