import { dimensionOf } from '@oddwheel/quantity/kinds';
import { describe, expect, it } from 'vitest';
import { dimensionOfExpr, sameDimension } from './dimension.ts';
import {
  add,
  branch,
  choose,
  cross,
  div,
  dot,
  fn,
  mul,
  norm,
  num,
  PI,
  pow,
  product,
  sub,
  sum,
  sym,
  when,
} from './expr.ts';
import type { Params } from './method.ts';

const params: Params = {
  L: { form: 'value', kind: 'length', symbol: 'L', meaning: 'length' },
  d: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter' },
  F: { form: 'value', kind: 'force', symbol: 'F', meaning: 'force' },
  m: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass' },
  k: { form: 'value', kind: 'stiffness', symbol: 'k', meaning: 'stiffness' },
  a: { form: 'value', kind: 'angle', symbol: 'α', meaning: 'angle' },
  z: { form: 'integer', symbol: 'z', meaning: 'teeth' },
  r: { form: 'vector', kind: 'length', symbol: 'r', meaning: 'arm' },
  Q: { form: 'vector', kind: 'force', symbol: 'Q', meaning: 'force' },
  i: { form: 'list', kind: 'ratio', symbol: 'i', meaning: 'ratios' },
  s: { form: 'list', kind: 'length', symbol: 's', meaning: 'spans' },
  side: { form: 'choice', choices: ['left'], symbol: 'q', meaning: 'side' },
};

describe('the dimension of a tree', () => {
  it.each([
    ['force times length is a torque', mul('F', 'L'), dimensionOf('torque')],
    ['force over area is a pressure', div(mul(4, 'F'), mul(PI, pow('d', 2))), dimensionOf('pressure')],
    ['root of stiffness over mass is an angular speed', fn('sqrt', div('k', 'm')), dimensionOf('angularSpeed')],
    ['cube root of a volume is a length', pow(mul('L', 'd', 'd'), num(1 / 3, '1/3')), dimensionOf('length')],
    ['an exponent may be worked out from numbers', pow(mul('L', 'd', 'd'), div(2, 3)), dimensionOf('area')],
    ['plain numbers may have any exponent', pow('z', 'a'), dimensionOf('number')],
    ['angles are plain numbers', mul('L', add(fn('sin', 'a'), 'a', 1)), dimensionOf('length')],
    ['arm cross force', cross('r', 'Q'), dimensionOf('torque')],
    ['arm dot force', dot('r', 'Q'), dimensionOf('energy')],
    ['size of a vector', norm('Q'), dimensionOf('force')],
    ['entry of a vector', sym('r', 1), dimensionOf('length')],
    ['product of ratios', product('i'), dimensionOf('number')],
    ['sum of spans', sum('s'), dimensionOf('length')],
    ['zero goes with everything', fn('max', sub('L', 'd'), 0), dimensionOf('length')],
    ['direction of two lengths', fn('atan2', 'L', 'd'), dimensionOf('angle')],
    ['sign of a force', fn('sign', 'F'), dimensionOf('number')],
    ['cases', choose([branch(when('F', '>', 0), 'L')], 'd'), dimensionOf('length')],
  ] as const)('%s', (_, expr, expected) => {
    expect(sameDimension(dimensionOfExpr(expr, params), expected)).toBe(true);
  });

  it.each([
    ['unlike terms', add('L', 'F'), 'L (m) and F (kg·m·s^-2) cannot be added.'],
    ['a length less an area', sub('L', mul('L', 'd')), 'L (m) and L·d (m^2) cannot be subtracted.'],
    ['a length and a plain number', add('L', 1), 'L (m) and 1 (plain number) cannot be added.'],
    ['sine of a length', fn('sin', 'L'), '"sin" wants a plain number; L is m.'],
    ['logarithm of a force', fn('ln', 'F'), '"ln" wants a plain number; F is kg·m·s^-2.'],
    ['an exponent with a dimension', pow(2, 'L'), 'An exponent wants a plain number; L is m.'],
    [
      'an exponent that is not fixed',
      pow('L', 'z'),
      'L (m) is raised to z; only a fixed number keeps the dimension known.',
    ],
    ['greatest of unlike values', fn('max', 'L', 'F'), 'cannot be arguments of one "max".'],
    ['direction of unlike values', fn('atan2', 'L', 'm'), 'cannot be arguments of one "atan2".'],
    [
      'comparison of unlike values',
      choose([branch(when('L', '<', 'm'), 1)], 2),
      'L (m) and m (kg) cannot be compared.',
    ],
    ['cases of unlike values', choose([branch(when('L', '<', 'd'), 'L')], 'm'), 'cannot be cases of one value.'],
    ['product of lengths', product('s'), 'The product over "s" (m) has no dimension of its own'],
    ['a word', add('side', 1), 'The value "side" is a word; a formula cannot use it.'],
    ['a value that is not declared', sym('missing'), 'There is no value "missing".'],
  ] as const)('refuses %s', (_, expr, message) => {
    expect(() => dimensionOfExpr(expr, params)).toThrow(message);
  });
});
