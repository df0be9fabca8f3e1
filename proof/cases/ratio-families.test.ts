import { countsAsOutside } from '@oddwheel/mechanics/method/cases';
import { expect, test } from 'vitest';
import { ALL_CASES } from './all.ts';

test('ratios have at least 20 cases from outside, each formula and source counted once', () => {
  const counted = ALL_CASES.filter(countsAsOutside)
    .filter(({ method }) => method.startsWith('ratio.'))
    .map(({ method, source }) => `${method} from ${source.title}`);
  expect(new Set(counted).size).toBeGreaterThanOrEqual(20);
});
