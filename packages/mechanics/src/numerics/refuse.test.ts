import { describe, expect, it } from 'vitest';
import { MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from './refuse.ts';

const PARAMS = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'chain pitch', range: ABOVE_ZERO },
  teeth: { form: 'integer', symbol: 'N', meaning: 'teeth', range: { min: 6, max: 300 } },
  place: { form: 'vector', kind: 'length', symbol: 'q', meaning: 'place of the gear' },
  parts: {
    form: 'list',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiencies',
    range: { min: 0, max: 1 },
    atLeast: 2,
  },
  make: { form: 'choice', choices: ['radial', 'cross-ply'], symbol: 'k', meaning: 'construction' },
  code: { form: 'text', example: '3.50-18', symbol: 'c', meaning: 'tyre size' },
} as const satisfies Params;

const good = { pitch: 0.0127, teeth: 17, place: [0, 1, 2], parts: [0.9, 1], make: 'radial', code: '3.50-18' };

describe('inputs that a declaration does not accept', () => {
  it('lets good input pass', () => {
    expect(() => refuseOutside('m', PARAMS, good)).not.toThrow();
  });

  it.each([
    ['pitch', 0, 'Chain pitch: 0 m is out of range; it must be more than 0 m.'],
    ['pitch', Number.POSITIVE_INFINITY, 'Chain pitch: Infinity m is not a finite number.'],
    ['pitch', undefined, 'Chain pitch: undefined m is not a number.'],
    ['teeth', 17.5, 'Teeth: 17.5 is not a whole number; it must be at least 6 and at most 300.'],
    ['teeth', 5, 'Teeth: 5 is out of range; it must be at least 6 and at most 300.'],
    ['place', [0, 1], 'Place of the gear: 2 entries read; three are accepted.'],
    ['place', [0, Number.NaN, 1], 'Place of the gear, entry 2: NaN m is not a finite number.'],
    ['parts', [0.9], 'Efficiencies: 1 entries read; at least 2 are accepted.'],
    ['parts', [0.9, 1.2], 'Efficiencies, entry 2: 1.2 is out of range; it must be at least 0 and at most 1.'],
    ['parts', 0.9, 'Efficiencies: 0.9 is not a list of numbers.'],
    ['make', 'bias', 'Construction: bias is none of radial, cross-ply.'],
    ['code', '', 'Tyre size: "" is not a text such as "3.50-18".'],
  ])('%s = %j', (key, value, message) => {
    const attempt = () => refuseOutside('m', PARAMS, { ...good, [key]: value });
    expect(attempt).toThrow(message);
    try {
      attempt();
    } catch (error) {
      expect(error).toBeInstanceOf(MethodError);
      expect(error).toMatchObject({ method: 'm', input: key });
    }
  });
});
