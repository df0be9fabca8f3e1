import { describe, expect, it } from 'vitest';
import { placeNames } from './seat-names.ts';
import { governingPlace, greatestAt, lengthText, planesOf, shortLength, valuesAt } from './shaft-rows.ts';

describe('values along a shaft', () => {
  const points = [
    [0, 0],
    [0.1, 10],
    [0.1, -30],
    [0.2, -10],
  ] as const;

  it('are read between points, and on both sides of a jump', () => {
    expect(valuesAt(points, 0.05)).toEqual([5]);
    expect(valuesAt(points, 0.1)).toEqual([10, -30]);
    expect(valuesAt(points, 0.3)).toEqual([]);
    expect(greatestAt(points, 0.1)).toBe(-30);
    expect(greatestAt(points, 0.3)).toBeNull();
  });

  it('are told in planes as a builder sees them, with up and forward positive', () => {
    const level = planesOf({
      directions: [
        [0, 0, -1],
        [-1, 0, 0],
      ],
    });
    expect(level).toEqual([
      { name: 'up and down', sign: -1 },
      { name: 'fore and aft', sign: -1 },
    ]);
    const [first] = planesOf({
      directions: [
        [0, 0.6, 0.8],
        [1, 0, 0],
      ],
    });
    expect(first).toEqual({ name: 'first plane', sign: 1 });
  });

  it('stand at lengths without idle zeros', () => {
    expect(shortLength(0.04, {})).toBe('40');
    expect(shortLength(0.1, {})).toBe('100');
    expect(lengthText(0.0765, {})).toBe('76.5\u2009mm');
    expect(shortLength(0, {})).toBe('0');
    expect(shortLength(0.0254, { length: 'in' })).toBe('1');
  });
});

describe('the place that governs', () => {
  const place = (station: number, diameter: number, least: number | null) => {
    return { name: String(station), station, diameter, yieldReserve: null, fatigueReserve: null, least };
  };

  it('is the one that asks for most of the diameter that it has', () => {
    const places = [place(0, 0.03, 0.02), place(0.1, 0.05, 0.045), place(0.2, 0.02, null)];
    expect(governingPlace({ places })?.station).toBe(0.1);
  });

  it('is none where nothing loads the shaft', () => {
    expect(governingPlace({ places: [place(0, 0.03, null)] })).toBeNull();
    expect(governingPlace({ places: [] })).toBeNull();
  });
});

describe('names under the outline', () => {
  const width = (text: string): number => text.length * 6;

  it('all find a place, however near their marks lie, and none covers another', () => {
    const named = [10, 14, 30, 33, 290].map((at, k) => ({ key: String(k), text: `part with name ${k}`, at }));
    const placed = placeNames(named, width, 0, 300, 8);
    expect(placed).toHaveLength(named.length);
    const boxes = placed.map(({ anchor, x, row, text, at }) => {
      const wide = width(text);
      const from = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
      return { from, to: from + wide, row, at };
    });
    for (const a of boxes)
      for (const b of boxes) {
        if (a === b) continue;
        if (a.row === b.row) expect(a.to <= b.from || b.to <= a.from).toBe(true);
        // A line to a lower name does not run through a higher one.
        else if (a.row < b.row) expect(b.at < a.from || b.at > a.to).toBe(true);
      }
  });

  it('stand on one line where there is room', () => {
    const named = [50, 150, 250].map((at) => ({ key: String(at), text: 'part', at }));
    expect(placeNames(named, width, 0, 300, 8).map(({ row, x }) => [row, x])).toEqual([
      [0, 50],
      [0, 150],
      [0, 250],
    ]);
  });
});
