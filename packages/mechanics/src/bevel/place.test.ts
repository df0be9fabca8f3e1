import type { Vec3 } from '@oddwheel/quantity/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MethodError } from '../method/method.ts';
import { checkMethod } from '../method/proof.ts';
import { cross, dot, minus, norm, plus, times, unit } from '../numerics/vector.ts';
import { bevelApex } from './apex.ts';
import { bevelSense } from './sense.ts';

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const ORIGIN: Vec3 = [0, 0, 0];

/** Wheel body on the side of the apex that `side` names along +y. */
const rightAngle = (side: 1 | -1) => ({
  directionDriver: X,
  directionDriven: Y,
  apex: ORIGIN,
  seatDriver: [0.05, 0, 0] as Vec3,
  seatDriven: [0, 0.09 * side, 0] as Vec3,
  teethDriver: 16,
  teethDriven: 32,
});

const coordinate = fc.double({ min: -2, max: 2, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate);
const direction = point.filter((v) => norm(v) > 0.3).map((v): Vec3 => unit(v));
const axes = fc.tuple(direction, direction).filter(([a, b]) => norm(cross(a, b)) > 0.1);

describe('sense through a bevel pair', () => {
  it('veh-bevel-sense-1 — pinion +x, wheel on the +y side: 1000 rpm gives −500 rpm (equal surface velocity, computed)', () => {
    expect(1000 * bevelSense.run(rightAngle(1)).speedRatio).toBe(-500);
    expect(checkMethod(bevelSense, rightAngle(1))).toEqual([]);
  });

  it('veh-bevel-sense-2 — wheel moved to the other side of the apex: +500 rpm (equal surface velocity, computed)', () => {
    const found = bevelSense.run(rightAngle(-1));
    expect(1000 * found.speedRatio).toBe(500);
    expect([found.sense, found.sideDriver, found.sideDriven]).toEqual([1, 1, -1]);
    expect(checkMethod(bevelSense, rightAngle(-1))).toEqual([]);
  });

  it('veh-train-kh-13-16-bevel — Khurmi & Gupta, example 13.16: a bevel idler turns two coaxial gears opposite ways (read)', () => {
    // A (40 teeth) stands at −x, B (30) at +x, both facing the idler C on the y axis; all three cones share the apex.
    const toIdler = bevelSense.run({
      directionDriver: X,
      directionDriven: Y,
      apex: ORIGIN,
      seatDriver: [-1, 0, 0],
      seatDriven: [0, 1, 0],
      teethDriver: 40,
      teethDriven: 20,
    });
    const fromIdler = bevelSense.run({
      directionDriver: Y,
      directionDriven: X,
      apex: ORIGIN,
      seatDriver: [0, 1, 0],
      seatDriven: [1, 0, 0],
      teethDriver: 20,
      teethDriven: 30,
    });
    const e = toIdler.speedRatio * fromIdler.speedRatio;
    expect(e).toBeCloseTo(-40 / 30, 12);
    // X at −100 rpm, arm at 100 rpm: (n_Y − 100)/(−100 − 100) = e.
    expect(100 + e * (-100 - 100)).toBeCloseTo(366.7, 1);
  });

  it('in any position: surfaces move alike at the contact; the other side of the apex, or a shaft pointed backwards, reverses it', () => {
    fc.assert(
      fc.property(
        axes,
        point,
        fc.integer({ min: 10, max: 50 }),
        fc.integer({ min: 10, max: 50 }),
        fc.boolean(),
        ([a1, a2], apex, z1, z2, far) => {
          const side = far ? -1 : 1;
          const pair = {
            directionDriver: a1,
            directionDriven: a2,
            apex,
            seatDriver: plus(apex, times(0.06, a1)),
            seatDriven: plus(apex, times(0.08 * side, a2)),
            teethDriver: z1,
            teethDriven: z2,
          };
          const found = bevelSense.run(pair);
          expect(Math.abs(found.speedRatio)).toBeCloseTo(z1 / z2, 12);
          const slip = minus(cross(a1, found.contact), times(found.speedRatio, cross(a2, found.contact)));
          expect(norm(slip)).toBeLessThan(1e-9 * norm(found.contact));
          const across = bevelSense.run({ ...pair, seatDriven: plus(apex, times(-0.08 * side, a2)) });
          expect(across.speedRatio).toBe(-found.speedRatio);
          expect(bevelSense.run({ ...pair, directionDriven: times(-1, a2) }).speedRatio).toBe(-found.speedRatio);
          expect(bevelSense.run({ ...pair, directionDriver: times(3, a1) }).speedRatio).toBe(found.speedRatio);
          const moved = (v: Vec3): Vec3 => plus(v, [0.7, -1.3, 0.4]);
          const elsewhere = bevelSense.run({
            ...pair,
            apex: moved(apex),
            seatDriver: moved(pair.seatDriver),
            seatDriven: moved(pair.seatDriven),
          });
          expect(elsewhere.speedRatio).toBe(found.speedRatio);
          expect(checkMethod(bevelSense, pair)).toEqual([]);
        },
      ),
      { seed: 53, numRuns: 200 },
    );
  });

  it('refuses a gear at the apex, parallel shafts, a direction of no length', () => {
    expect(() => bevelSense.run({ ...rightAngle(1), seatDriven: [0.3, 0, 0] })).toThrow(
      /must lie to one side of the apex; it lies at the apex/,
    );
    expect(() => bevelSense.run({ ...rightAngle(1), directionDriven: [-2, 0, 0] })).toThrow(
      'The two shafts are parallel',
    );
    expect(() => bevelSense.run({ ...rightAngle(1), directionDriver: ORIGIN })).toThrow(MethodError);
  });
});

describe('apex of two shafts', () => {
  it('two axes that cross at right angles', () => {
    const shafts = {
      originDriver: [-0.3, 0.1, 0.2] as Vec3,
      directionDriver: X,
      originDriven: [0.1, 0.7, 0.2] as Vec3,
      directionDriven: [0, -1, 0] as Vec3,
    };
    const found = bevelApex.run(shafts);
    found.apex.forEach((x, k) => {
      expect(x).toBeCloseTo([0.1, 0.1, 0.2][k] as number, 14);
    });
    expect(found.axisDistance).toBeCloseTo(0, 14);
    expect(found.shaftAngle).toBeCloseTo(Math.PI / 2, 14);
    expect(found.stationDriver).toBeCloseTo(0.4, 14);
    expect(found.stationDriven).toBeCloseTo(0.6, 14);
    expect(checkMethod(bevelApex, shafts)).toEqual([]);
  });

  it('axes 3 mm apart: the apex lies midway', () => {
    const found = bevelApex.run({
      originDriver: [0, 0, 0.003],
      directionDriver: [2, 0, 0],
      originDriven: ORIGIN,
      directionDriven: [0, 5, 0],
    });
    expect(found.axisDistance).toBeCloseTo(0.003, 15);
    expect(found.apex[2]).toBeCloseTo(0.0015, 15);
  });

  it('the feet lie on their axes and no nearer pair exists; driver and driven swapped, and a moved origin, change nothing', () => {
    fc.assert(
      fc.property(axes, point, point, coordinate, coordinate, ([a1, a2], o1, o2, s, t) => {
        const shafts = { originDriver: o1, directionDriver: a1, originDriven: o2, directionDriven: a2 };
        const found = bevelApex.run(shafts);
        const between = minus(found.footDriven, found.footDriver);
        expect(norm(between)).toBeCloseTo(found.axisDistance, 9);
        expect(dot(between, a1)).toBeCloseTo(0, 9);
        expect(dot(between, a2)).toBeCloseTo(0, 9);
        const elsewhere = minus(plus(o2, times(t, a2)), plus(o1, times(s, a1)));
        expect(norm(elsewhere)).toBeGreaterThanOrEqual(found.axisDistance - 1e-12);
        const swapped = bevelApex.run({ originDriver: o2, directionDriver: a2, originDriven: o1, directionDriven: a1 });
        expect(norm(minus(swapped.apex, found.apex))).toBeLessThan(1e-10);
        const shift: Vec3 = [3, -4, 5];
        const moved = bevelApex.run({ ...shafts, originDriver: plus(o1, shift), originDriven: plus(o2, shift) });
        expect(norm(minus(moved.apex, plus(found.apex, shift)))).toBeLessThan(1e-10);
        expect(moved.axisDistance).toBeCloseTo(found.axisDistance, 10);
        expect(checkMethod(bevelApex, shafts, { relative: 1e-8 })).toEqual([]);
      }),
      { seed: 54, numRuns: 200 },
    );
  });

  it('parallel shafts have no apex', () => {
    const parallel = {
      originDriver: ORIGIN,
      directionDriver: X,
      originDriven: [0, 1, 0] as Vec3,
      directionDriven: [-3, 0, 0] as Vec3,
    };
    expect(() => bevelApex.run(parallel)).toThrow(
      'The two shafts are parallel: a bevel pair needs axes that meet at an angle.',
    );
    expect(() => bevelApex.run({ ...parallel, directionDriven: ORIGIN })).toThrow(
      'The positive direction of the driven shaft must not be zero; read [0, 0, 0].',
    );
  });
});
