import { describe, expect, it } from 'vitest';
import {
  alongCurve,
  between,
  curveInSi,
  frameFor,
  nearestRow,
  type Row,
  rowAt,
  ticksOf,
  xOf,
  yOf,
} from './curve-scale.ts';

const ROWS: readonly Row[] = [
  [1300, 24.5],
  [5500, 40.2],
  [8800, 32.4],
];
const CURVE = { speedUnit: 'rpm', torqueUnit: 'N.m', rows: ROWS };
const frame = frameFor(640, 340, ROWS, 30.6);

describe('the plot of the torque curve', () => {
  it('has round axes with room above the last point', () => {
    expect(frame).toMatchObject({ mostSpeed: 10000, mostTorque: 50, mostPower: 35 });
    expect(ticksOf(10000, 10)).toHaveLength(11);
    expect(ticksOf(10000, 5)).toEqual([0, 2000, 4000, 6000, 8000, 10000]);
  });

  it('a place of the drawing is the point that is drawn there, snapped to steps', () => {
    const at = (row: Row) => [xOf(frame, row[0]), yOf(frame, row[1] / frame.mostTorque)] as const;
    expect(rowAt(frame, CURVE, ...at([5500, 40.2]))).toEqual([5500, 40.2]);
    expect(rowAt(frame, CURVE, ...at([5517, 40.23]))).toEqual([5500, 40.2]);
    expect(rowAt(frame, CURVE, 2, 2)).toBeNull();
    expect(nearestRow(frame, ROWS, ...at([5600, 41]), 24)).toBe(1);
    expect(nearestRow(frame, ROWS, ...at([3300, 10]), 24)).toBeNull();
  });

  it('a moved point stays between its neighbours and above zero', () => {
    expect(between(ROWS, 1, [500, 30], 50)).toEqual([1350, 30]);
    expect(between(ROWS, 1, [9900, -3], 50)).toEqual([8750, 0]);
    expect(between(ROWS, 2, [12000, 30], 50)).toEqual([12000, 30]);
    const close: readonly Row[] = [
      [1000, 1],
      [1040, 2],
      [1080, 3],
    ];
    expect(between(close, 1, [1060, 5], 50)).toEqual([1040, 5]);
  });

  it('the line goes through the points; rows that do not rise make none', () => {
    const known = curveInSi(CURVE);
    const line = known ? alongCurve(known) : [];
    expect(line[0]?.torque).toBeCloseTo(24.5, 9);
    expect(line.at(-1)?.torque).toBeCloseTo(32.4, 9);
    expect(Math.max(...line.map(({ torque }) => torque))).toBeLessThanOrEqual(40.2 + 1e-9);
    expect(curveInSi({ ...CURVE, rows: [ROWS[1], ROWS[0]] as readonly Row[] })).toBeNull();
    expect(curveInSi({ ...CURVE, rows: ROWS.slice(0, 1) })).toBeNull();
  });
});
