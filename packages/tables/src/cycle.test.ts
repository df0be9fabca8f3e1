import { describe, expect, it } from 'vitest';
import { type Cycle, cycleTrace } from './cycle.ts';
import { CYCLE_HWFET } from './cycle-hwfet.ts';
import { CYCLE_NEDC, CYCLE_UDC } from './cycle-nedc.ts';
import { CYCLE_R47 } from './cycle-r47.ts';
import { CYCLE_UDDS } from './cycle-udds.ts';
import { CYCLE_WMTC_PART1 } from './cycle-wmtc-part1.ts';
import { CYCLE_WMTC_PART2 } from './cycle-wmtc-part2.ts';
import { CYCLE_WMTC_PART3 } from './cycle-wmtc-part3.ts';
import { rowInSi } from './table.ts';

const KMH = 1 / 3.6;
const MILE = 1609.344;

/** Seconds, metres by the trapezoid rule, greatest speed in m/s, and greatest and least acceleration. */
function totals(cycle: Cycle) {
  const trace = cycleTrace(cycle);
  const steps = trace
    .slice(1)
    .map((speed, k) => ({ mean: (speed + (trace[k] as number)) / 2, rise: speed - (trace[k] as number) }));
  return {
    duration: steps.length,
    distance: steps.reduce((sum, { mean }) => sum + mean, 0),
    top: Math.max(...trace),
    standing: trace.filter((speed) => speed === 0).length,
    most: Math.max(...steps.map(({ rise }) => rise)),
    least: Math.min(...steps.map(({ rise }) => rise)),
  };
}

describe('driving cycles against their published totals', () => {
  // UN GTR No. 2 and its technical report: 600 s; 4.07, 9.11, 15.74 km; 60, 94.9, 125.3 km/h (memory).
  it.each([
    ['veh-cycle-wmtc-part1', CYCLE_WMTC_PART1, 4070, 60],
    ['veh-cycle-wmtc-part2', CYCLE_WMTC_PART2, 9110, 94.9],
    ['veh-cycle-wmtc-part3', CYCLE_WMTC_PART3, 15740, 125.3],
  ] as const)('%s: length to 10 m, 600 s, top speed', (_, cycle, distance, top) => {
    const found = totals(cycle);
    expect(found.duration).toBe(600);
    expect(Math.abs(found.distance - distance)).toBeLessThan(5);
    expect(found.top).toBeCloseTo(top * KMH, 10);
  });

  it('veh-cycle-udds — 40 CFR 86 Appendix I (a): 1369 s, 7.45 miles, 56.7 mph, mean 19.59 mph (totals from memory)', () => {
    const found = totals(CYCLE_UDDS);
    expect(found.duration).toBe(1369);
    expect(Math.abs(found.distance / MILE - 7.45)).toBeLessThan(0.005);
    expect(found.top * (3600 / MILE)).toBeCloseTo(56.7, 10);
    expect(Math.abs(found.distance / found.duration / (MILE / 3600) - 19.59)).toBeLessThan(0.01);
  });

  it('veh-cycle-hwfet — 40 CFR 600 Appendix I: 765 s, 10.26 miles, 59.9 mph (totals from memory)', () => {
    const found = totals(CYCLE_HWFET);
    expect(found.duration).toBe(765);
    expect(Math.abs(found.distance / MILE - 10.26)).toBeLessThan(0.005);
    expect(found.top * (3600 / MILE)).toBeCloseTo(59.9, 10);
  });

  it('veh-cycle-udc — UN R83 Annex 4: 195 s, 1.013 km, mean 19 km/h, 50 km/h (totals read)', () => {
    const found = totals(CYCLE_UDC);
    expect(found.duration).toBe(195);
    expect(Math.abs(found.distance / 1013 - 1)).toBeLessThan(0.002);
    expect(Math.abs((found.distance / 195) * 3.6 - 19)).toBeLessThan(0.5);
    expect(found.top).toBeCloseTo(50 * KMH, 10);
  });

  it('four urban cycles and the extra-urban one: UN R83, 1180 s, 11.007 km, 120 km/h (totals from memory)', () => {
    const found = totals(CYCLE_NEDC);
    expect(found.duration).toBe(1180);
    expect(Math.abs(found.distance / 11007 - 1)).toBeLessThan(0.001);
    expect(found.top).toBeCloseTo(120 * KMH, 10);
  });

  it('no step asks for what a car or motorcycle cannot do: within −2.1 and 2.8 m/s² (40 CFR: 3.3 mph each second)', () => {
    for (const cycle of [CYCLE_WMTC_PART1, CYCLE_WMTC_PART2, CYCLE_WMTC_PART3, CYCLE_UDDS, CYCLE_HWFET, CYCLE_NEDC]) {
      const { most, least } = totals(cycle);
      expect(most, cycle.id).toBeLessThan(2.8);
      expect(least, cycle.id).toBeGreaterThan(-2.1);
    }
    expect(totals(CYCLE_UDDS).most).toBeCloseTo((3.3 * MILE) / 3600, 10);
  });

  it('moped cycle: the phases last 112 s, and 20 km/h is shed in 6 s (UN R47; memory)', () => {
    const phases = Object.keys(CYCLE_R47.rows).map((key) => rowInSi(CYCLE_R47, key));
    expect(phases.reduce((sum, { duration = 0 }) => sum + duration, 0)).toBe(112);
    const { duration = 0, deceleration = 0 } = rowInSi(CYCLE_R47, 'stop');
    expect(Math.abs(duration * deceleration - 20 * KMH)).toBeLessThan(0.03);
  });
});
