import type { Datum, Placed } from '@oddwheel/build/placing/types';
import { describe, expect, test } from 'vitest';
import { datumCells, type PlaceRow, placeRows, typedPlace } from './positions.ts';

const DATUMS = {
  wheel: { id: 'wheel centre', name: 'the wheel’s centre', at: [0, 0, 0], from: '' },
  floor: { id: 'floor', name: 'the floor', at: [null, null, -0.5], from: '' },
  pivot: { id: 'pivot', name: 'the pivot', at: [0.44, 0, 0.4825], from: '' },
} as const satisfies Record<string, Datum>;
const ALL: readonly Datum[] = Object.values(DATUMS);

const at = (axis: string, text: string, si: number) => ({ address: `/path/shafts/b/origin/${axis}`, text, si });
const SHAFT: Placed = {
  address: '/path/shafts/b',
  name: 'Shaft B',
  kind: 'shaft',
  station: null,
  points: [{ name: '', coordinates: [at('x', '440 mm', 0.44), at('y', '-80 mm', -0.08), at('z', '19 in', 0.4826)] }],
};
const row = (placed: Placed, k: number): PlaceRow => {
  const found = placeRows(placed)[k];
  if (!found) throw new Error('no such row');
  return found;
};

describe('a place told from the datums of the shop', () => {
  test('each in the unit of the file, as typed from where the file counts', () => {
    expect(datumCells(row(SHAFT, 2), SHAFT, ALL).map(({ says, text }) => [says, text])).toEqual([
      ['above the wheel’s centre', '19 in'],
      ['above the floor', '38.685 in'],
      ['above the pivot', '0.0039 in'],
    ]);
    expect(datumCells(row(SHAFT, 1), SHAFT, ALL).map(({ says }) => says)).toEqual([
      'right of the wheel’s centre',
      'right of the pivot',
    ]);
  });

  test.each([
    ['212 mm above the floor', DATUMS.floor, '-288 mm'],
    ['212 mm', DATUMS.floor, '-288 mm'],
    ['8 1/2 in', DATUMS.wheel, '8 1/2 in'],
    ['38 mm below the wheel', DATUMS.wheel, '-38 mm'],
    ['-38 mm', DATUMS.wheel, '-38 mm'],
    ['20 in above the floor', DATUMS.floor, '0.315 in'],
  ])('“%s” told from %o is %s in the file', (typed, datum, text) => {
    expect(typedPlace(typed, row(SHAFT, 2), { datum, way: 1 })).toMatchObject({ ok: true, text });
  });

  test('a bare length goes the way that the field says, and keeps its text', () => {
    expect(datumCells(row(SHAFT, 1), SHAFT, ALL)[0]?.text).toBe('80 mm');
    expect(typedPlace('3 1/4 in', row(SHAFT, 1), { datum: DATUMS.wheel, way: -1 })).toMatchObject({
      text: '-3 1/4 in',
    });
    expect(typedPlace('-20 mm', row(SHAFT, 1), { datum: DATUMS.wheel, way: -1 })).toMatchObject({ text: '20 mm' });
    expect(typedPlace('30 mm left of it', row(SHAFT, 1), { datum: DATUMS.wheel, way: -1 })).toMatchObject({
      text: '30 mm',
    });
  });

  test('what cannot be read says so, with a right example', () => {
    for (const typed of ['212', '212 kg', 'high', '200..210 mm', '212 mm behind the floor']) {
      const read = typedPlace(typed, row(SHAFT, 2), { datum: DATUMS.floor, way: 1 });
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.problem.length).toBeGreaterThan(20);
    }
  });

  test('a seat is told across the vehicle: 0.05 m right of its shaft’s beginning at 0.02 m left, by hand', () => {
    const seat: Placed = {
      address: '/path/shafts/b/seats/s',
      name: 'sprocket',
      kind: 'seat',
      points: [],
      station: {
        coordinate: { address: '/path/shafts/b/seats/s/station', text: '50 mm', si: 0.05 },
        shaft: '/path/shafts/b',
        origin: [0.44, 0.02, 0.4],
        along: [0, -1, 0],
      },
    };
    const one = row(seat, 0);
    expect(datumCells(one, seat, ALL)[0]).toMatchObject({
      says: 'right of the wheel’s centre',
      text: '30 mm',
      way: -1,
    });
    expect(typedPlace('40 mm right of the wheel', one, { datum: DATUMS.wheel, way: 1 })).toMatchObject({
      ok: true,
      text: '60 mm',
    });
  });
});
