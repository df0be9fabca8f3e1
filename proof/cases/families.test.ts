import { countsAsOutside } from '@oddwheel/mechanics/method/cases';
import { expect, test } from 'vitest';
import { ALL_CASES } from './all.ts';

/** Methods of layout and road: geometry of stages, what they do to each other and to the ground; ratios and strength belong elsewhere. */
const FAMILIES = {
  'chain geometry': ['chain.length', 'chain.centre', 'chain.rigidLinks', 'chain.sprocketDiameters'],
  'chain alignment, wear and idlers': ['chain.alignment', 'chain.wear', 'chain.idler'],
  'toothed belts': ['belt.'],
  'bevel pairs': ['bevel.'],
  'spur pairs': ['spur.'],
  'universal joints and couplings': ['coupling.'],
  'swinging arm': ['suspension.'],
  clearance: ['clearance.'],
  'vehicle on the road': ['vehicle.'],
} as const;

/** Formula and source of each case that counts, once each. */
const counted = (prefixes: readonly string[]): number =>
  new Set(
    ALL_CASES.filter(countsAsOutside)
      .filter(({ method }) => prefixes.some((prefix) => method.startsWith(prefix)))
      .map(({ method, source }) => `${method} from ${source.title}`),
  ).size;

test.each(Object.entries(FAMILIES))('%s has at least one case from outside', (_, prefixes) => {
  expect(counted(prefixes)).toBeGreaterThan(0);
});

test('layout and road have at least 45 of them, each formula and source counted once', () => {
  expect(counted(Object.values(FAMILIES).flat())).toBeGreaterThanOrEqual(45);
});
