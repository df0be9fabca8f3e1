import { describe, expect, it } from 'vitest';
import { METHODS } from './catalogue.ts';

describe('list of methods', () => {
  it('every id is its own, "element.quantity"', () => {
    const ids = METHODS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+\.[a-zA-Z]+$/);
  });

  it('every method says where it comes from, and no symbol stands for two values of one method', () => {
    for (const { id, sources, inputs, outputs } of METHODS) {
      expect(sources.length, id).toBeGreaterThan(0);
      const symbols = [...Object.values(inputs), ...Object.values(outputs)].map(({ symbol }) => symbol);
      expect(
        symbols.filter((symbol, k) => symbols.indexOf(symbol) !== k),
        id,
      ).toEqual([]);
    }
  });
});
