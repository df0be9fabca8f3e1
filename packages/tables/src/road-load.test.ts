import { describe, expect, it } from 'vitest';
import { DRAG_AREAS } from './drag-areas.ts';
import { MOTORCYCLE_ROAD_LOAD } from './motorcycle-road-load.ts';
import { ROLLING_RESISTANCE } from './rolling-resistance.ts';
import { rowInSi } from './table.ts';
import { TYRE_FRICTION } from './tyre-friction.ts';

describe('motorcycle road load, 40 CFR 86.529-98, Figure F98-9 (read)', () => {
  it.each(Object.keys(MOTORCYCLE_ROAD_LOAD.rows))(
    '%s kg: force column, and the time to coast from 70 to 60 km/h',
    (key) => {
      const {
        mass = 0,
        constantForce: a = 0,
        squareForce: c = 0,
        forceAt65 = 0,
        coastTime = 0,
        longest = 0,
        shortest = 0,
      } = rowInSi(MOTORCYCLE_ROAD_LOAD, key);
      expect(Math.abs(a + c * 65 ** 2 - forceAt65)).toBeLessThan(0.5);
      // m ∫ dv/(a + c v²), speeds in km/h; a Simpson rule is exact enough over so short a span.
      const slow = (v: number): number => mass / (3.6 * (a + c * v * v));
      const time = ((slow(60) + 4 * slow(65) + slow(70)) * 10) / 6;
      // The 160 kg row prints 4.10 s; its own force and its neighbours ask for 4.18 s.
      expect(Math.abs(time / (key === '160' ? 4.18 : coastTime) - 1)).toBeLessThan(0.004);
      expect(shortest).toBeLessThan(time);
      expect(longest).toBeGreaterThan(time);
    },
  );

  it('drag areas of the regulation follow from the square parts at 1.2 kg/m³', () => {
    const area = (key: string) => (2 * (rowInSi(MOTORCYCLE_ROAD_LOAD, key).squareForce ?? 0) * 3.6 ** 2) / 1.2;
    expect(area('100')).toBeCloseTo(rowInSi(DRAG_AREAS, 'motorcycle-regulation').low ?? 0, 3);
    expect(area('340')).toBeCloseTo(rowInSi(DRAG_AREAS, 'motorcycle-regulation').high ?? 0, 3);
  });
});

describe('ranges', () => {
  it('every range runs upwards', () => {
    for (const table of [ROLLING_RESISTANCE, DRAG_AREAS, TYRE_FRICTION])
      for (const key of Object.keys(table.rows)) {
        const { low = 0, high = 0 } = rowInSi(table, key);
        expect(low, key).toBeGreaterThan(0);
        expect(high, key).toBeGreaterThanOrEqual(low);
      }
  });
});
