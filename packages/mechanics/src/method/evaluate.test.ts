import { describe, expect, it } from 'vitest';
import { evaluate } from './evaluate.ts';
import { add, branch, choose, cross, div, dot, fn, mul, norm, product, sub, sum, sym, when } from './expr.ts';

describe('evaluating a tree', () => {
  it('knows vectors: i × j = k, and i·(j × k) = 1', () => {
    const axes = { i: [1, 0, 0], j: [0, 1, 0], k: [0, 0, 1] };
    expect(evaluate(cross('i', 'j'), axes)).toEqual([0, 0, 1]);
    expect(evaluate(dot('i', cross('j', 'k')), axes)).toBe(1);
    expect(evaluate(norm(add(mul(3, 'i'), mul('j', 4))), axes)).toBe(5);
    expect(evaluate(div(sub('i', 'k'), 2), axes)).toEqual([0.5, 0, -0.5]);
    expect(evaluate(sym('k', 2), axes)).toBe(1);
  });
  it('adds and multiplies the entries of a list', () => {
    expect(evaluate(product('i'), { i: [2, 3, 4] })).toBe(24);
    expect(evaluate(sum('i'), { i: [2, 3, 4] })).toBe(9);
    expect(evaluate(product('i'), { i: [] })).toBe(1);
  });
  it('takes the first case whose condition holds', () => {
    const grade = choose([branch(when('x', '<', 1), 10), branch(when('x', '<=', 2), 20)], 30);
    expect([0, 1, 2, 3].map((x) => evaluate(grade, { x }))).toEqual([10, 20, 20, 30]);
  });
  it.each([
    [add('x', 'missing'), 'There is no value "missing".'],
    [sym('toString'), 'There is no value "toString".'],
    [sym('word'), 'The value "word" is "left"; a number, a vector or a list of numbers is wanted.'],
    [sym('v', 5), 'The value "v" has 3 entries; entry 6 is wanted.'],
    [product('x'), 'The value "x" is one number; a list is wanted.'],
    [add('x', 'v'), 'A number and a vector cannot be added.'],
    [sub('v', 'w'), 'Vectors of 3 and 2 entries cannot be subtracted.'],
    [mul('v', 'v'), 'Two vectors are multiplied by "dot" or "cross".'],
    [fn('sin', 'v'), 'A number is wanted where a vector of 3 entries stands.'],
    [norm('x'), 'A vector is wanted where a number stands.'],
    [cross('v', 'w'), 'A vector product wants three entries each, not 3 and 2.'],
    [fn('atan2', 'x'), '"atan2" wants 2 arguments, not 1.'],
    [fn('min'), '"min" wants at least 1 argument, not 0.'],
  ])('refuses %#: %s', (expr, message) => {
    expect(() => evaluate(expr, { x: 1, v: [1, 2, 3], w: [1, 2], word: 'left' })).toThrow(message);
  });
});
