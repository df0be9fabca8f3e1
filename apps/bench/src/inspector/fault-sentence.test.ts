import { describe, expect, it } from 'vitest';
import { faultSentence } from './fault-sentence.ts';

const fault = (read: string, problem: string, accepted: string) => ({
  code: 'x',
  address: '',
  read,
  problem,
  accepted,
});

describe('a fault under a field', () => {
  it('names what was read once', () => {
    expect(faultSentence(fault('58', '58 has no unit.', 'Write 58 HRC or 650 HV.'), 'Hardness')).toBe(
      '58 has no unit. Write 58 HRC or 650 HV.',
    );
    expect(faultSentence(fault('abc', 'This is no length.', 'For example 6.35 mm.'), 'Length')).toBe(
      'Read “abc”. This is no length. For example 6.35 mm.',
    );
  });
  it('leaves out the name of the field, and leads a bare phrase in', () => {
    expect(faultSentence(fault('58', 'Module: "58" has no unit.', 'a length, such as "6.35 mm".'), 'Module')).toBe(
      '"58" has no unit. Accepted: a length, such as "6.35 mm".',
    );
  });
  it('says nothing of what was read where nothing was', () => {
    expect(faultSentence(fault('', 'A value is missing.', 'For example 17.'), 'Teeth')).toBe(
      'A value is missing. For example 17.',
    );
  });
});
