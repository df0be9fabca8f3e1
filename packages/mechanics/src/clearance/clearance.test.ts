import type { Vec3 } from '@oddwheel/quantity/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ValuesOf } from '../method/method.ts';
import { checkMethod } from '../method/proof.ts';
import { cross, dot, minus, norm, plus, times, unit } from '../numerics/vector.ts';
import { clearanceCapsules } from './capsules.ts';
import { convexDistance, grownDistance } from './convex-distance.ts';
import { clearanceDistance, flatSolid } from './distance.ts';
import { segmentParts } from './segment-distance.ts';
import type { Bar, Box, Capsule, Cylinder, Frustum, Solid } from './solid.ts';
import { grown } from './solid.ts';

/** A tenth of a micrometre: where round edges graze each other rounding stops the search before its one nanometre. */
const NEAR = 1e-7;

const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
const point: fc.Arbitrary<Vec3> = fc.tuple(coordinate, coordinate, coordinate);
const size = fc.double({ min: 0.002, max: 0.3, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const apart = fc.tuple(point, point).filter(([from, to]) => norm(minus(to, from)) > 0.01);

const capsule: fc.Arbitrary<Capsule> = fc
  .tuple(point, point, size)
  .map(([from, to, radius]) => ({ shape: 'capsule', from, to, radius }));
const cylinder: fc.Arbitrary<Cylinder> = fc.tuple(apart, size, share).map(([[from, to], radius, part]) => ({
  shape: 'cylinder',
  from,
  to,
  radius,
  rounding: part < 0.3 ? 0 : part * Math.min(radius, norm(minus(to, from)) / 2),
}));
const frustum: fc.Arbitrary<Frustum> = fc
  .tuple(apart, size, size)
  .map(([[from, to], radiusFrom, radiusTo]) => ({ shape: 'frustum', from, to, radiusFrom, radiusTo }));
const box: fc.Arbitrary<Box> = fc
  .tuple(point, size, size, size)
  .map(([low, x, y, z]) => ({ shape: 'box', low, high: plus(low, [x, y, z]) }));
const bar: fc.Arbitrary<Bar> = fc
  .tuple(apart, point, size, size, fc.oneof(fc.constant(0), size))
  .filter(([[from, to], across]) => norm(cross(minus(to, from), across)) > 0.01)
  .map(([[from, to], across, halfHeight, halfWidth, sag]) => ({
    ...{ shape: 'bar', from, to, across, halfHeight, halfWidth, sag },
  }));
const turning = fc.oneof(capsule, cylinder, frustum);
const solid: fc.Arbitrary<Solid> = fc.oneof(capsule, cylinder, frustum, box, bar);

/** A second solid carried away from the first, so that most pairs stand clear. */
const shifted = (of: Solid, by: Vec3): Solid =>
  of.shape === 'box'
    ? { ...of, low: plus(of.low, by), high: plus(of.high, by) }
    : { ...of, from: plus(of.from, by), to: plus(of.to, by) };

/** Rotation about an axis by Rodrigues' formula, then a shift. */
const moved =
  (axis: Vec3, angle: number, by: Vec3) =>
  (p: Vec3): Vec3 => {
    const k = unit(axis);
    const turned = plus(
      plus(times(Math.cos(angle), p), times(Math.sin(angle), cross(k, p))),
      times(dot(k, p) * (1 - Math.cos(angle)), k),
    );
    return plus(turned, by);
  };

describe('closed forms', () => {
  it('two round-ended bars: the closed form of two straight pieces', () => {
    fc.assert(
      fc.property(capsule, capsule, (a, b) => {
        const { clearance } = clearanceCapsules.run({
          ...{ fromA: a.from, toA: a.to, radiusA: a.radius },
          ...{ fromB: b.from, toB: b.to, radiusB: b.radius },
        });
        const found = convexDistance(a, b);
        expect(Math.abs(found.distance - Math.max(0, clearance))).toBeLessThan(NEAR);
        if (Math.abs(clearance) > NEAR) expect(found.overlaps).toBe(clearance <= 0);
      }),
      { seed: 41, numRuns: 600 },
    );
  });

  it('a point and a cylinder: along the axis, across it, and past the rim', () => {
    fc.assert(
      fc.property(cylinder, point, (drum, from) => {
        const length = norm(minus(drum.to, drum.from));
        const along = unit(minus(drum.to, drum.from));
        const axial = dot(minus(from, drum.from), along);
        const radial = norm(minus(minus(from, drum.from), times(axial, along)));
        const past = Math.max(0, drum.rounding - axial, axial - (length - drum.rounding));
        const expected = Math.hypot(past, Math.max(0, radial - (drum.radius - drum.rounding))) - drum.rounding;
        const found = convexDistance({ shape: 'capsule', from, to: from, radius: 0 }, drum);
        expect(Math.abs(found.distance - Math.max(0, expected))).toBeLessThan(NEAR);
      }),
      { seed: 42, numRuns: 600 },
    );
  });

  it('two boxes: the gaps along the three axes, squared and added', () => {
    fc.assert(
      fc.property(box, box, (a, b) => {
        const gaps = [0, 1, 2].map((k) =>
          Math.max(0, (a.low[k] ?? 0) - (b.high[k] ?? 0), (b.low[k] ?? 0) - (a.high[k] ?? 0)),
        );
        expect(Math.abs(convexDistance(a, b).distance - Math.hypot(...gaps))).toBeLessThan(NEAR);
      }),
      { seed: 43, numRuns: 400 },
    );
  });

  it('a ball beside a cone, square to its flank; worked by hand: 60 mm over a flank at 45° is 60/√2', () => {
    const cone = { shape: 'frustum', from: [0, 0, 0], to: [0, 0, 0.1], radiusFrom: 0.1, radiusTo: 0 } as const;
    const ball = { shape: 'capsule', from: [0.05, 0, 0.11], to: [0.05, 0, 0.11], radius: 0.01 } as const;
    expect(convexDistance(cone, ball).distance).toBeCloseTo(0.06 / Math.SQRT2 - 0.01, 9);
  });

  it('two shafts face to face on one axis, and two crossing square: 5 mm and 35 mm', () => {
    const shaft = (from: Vec3, to: Vec3): Solid => ({ shape: 'cylinder', from, to, radius: 0.0125, rounding: 0 });
    const lying = shaft([0, 0, 0], [0, 0.2, 0]);
    expect(convexDistance(lying, shaft([0, 0.205, 0], [0, 0.4, 0])).distance).toBeCloseTo(0.005, 9);
    const over = convexDistance(lying, shaft([-0.1, 0.1, 0.06], [0.1, 0.1, 0.06]));
    expect(over.distance).toBeCloseTo(0.035, 9);
    expect(over.pointA[2]).toBeCloseTo(0.0125, 9);
    expect(over.pointB[2]).toBeCloseTo(0.0475, 9);
  });

  it('a sprocket beside a tyre with a rounded edge, planes parallel: the gap of the planes', () => {
    const tyre = { shape: 'cylinder', from: [0, -0.06, 0], to: [0, 0.06, 0], radius: 0.31, rounding: 0.05 } as const;
    const sprocket = { shape: 'cylinder', from: [0, 0.068, 0], to: [0, 0.075, 0], radius: 0.12, rounding: 0 } as const;
    expect(convexDistance(tyre, sprocket).distance).toBeCloseTo(0.008, 9);
  });
});

describe('properties of the distance', () => {
  it('the proven bound and the distance agree, the points lie so far apart, and swapping changes nothing', () => {
    fc.assert(
      fc.property(solid, solid, point, (a, b, by) => {
        const other = shifted(b, times(2, by));
        const found = convexDistance(a, other);
        expect(found.distance - found.atLeast).toBeLessThanOrEqual(NEAR);
        expect(found.atLeast).toBeLessThanOrEqual(found.distance + 1e-14);
        expect(norm(minus(found.pointB, found.pointA))).toBeCloseTo(found.distance, 12);
        const back = convexDistance(other, a);
        expect(back.overlaps).toBe(found.overlaps);
        expect(Math.abs(back.distance - found.distance)).toBeLessThan(NEAR);
      }),
      { seed: 44, numRuns: 1500 },
    );
  });

  it('a rigid motion of both keeps the distance', () => {
    fc.assert(
      fc.property(
        turning,
        turning,
        point,
        fc.double({ min: -3, max: 3, noNaN: true }),
        point,
        (a, b, axis, angle, by) => {
          fc.pre(norm(axis) > 0.01);
          const move = moved(axis, angle, by);
          const carry = (of: typeof a): Solid => ({ ...of, from: move(of.from), to: move(of.to) });
          const [here, there] = [convexDistance(a, b), convexDistance(carry(a), carry(b))];
          expect(Math.abs(here.distance - there.distance)).toBeLessThan(NEAR);
        },
      ),
      { seed: 45, numRuns: 500 },
    );
  });

  it('never grows when a part grows: in radius, in length, in a corner', () => {
    const grownBy = (of: Solid, by: number): Solid => {
      switch (of.shape) {
        case 'capsule':
          return { ...of, radius: of.radius + by, to: plus(of.to, times(by, minus(of.to, of.from))) };
        case 'cylinder':
          return { ...of, radius: of.radius + by, to: plus(of.to, times(by, minus(of.to, of.from))) };
        case 'frustum':
          return { ...of, radiusFrom: of.radiusFrom + by, radiusTo: of.radiusTo + by };
        case 'box':
          return { ...of, high: plus(of.high, [by, 0, by / 2]) };
        case 'bar':
          return { ...of, halfHeight: of.halfHeight + by, halfWidth: of.halfWidth + by / 2, sag: of.sag + by };
      }
    };
    fc.assert(
      fc.property(solid, solid, fc.double({ min: 0, max: 0.2, noNaN: true }), (a, b, by) => {
        const other = shifted(b, [1.5, 0, 0]);
        expect(convexDistance(grownBy(a, by), other).distance).toBeLessThanOrEqual(
          convexDistance(a, other).distance + NEAR,
        );
      }),
      { seed: 46, numRuns: 600 },
    );
  });

  it('a shift away along the line of the nearest points adds just so much', () => {
    fc.assert(
      fc.property(solid, solid, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (a, b, by) => {
        const found = convexDistance(a, b);
        fc.pre(found.distance > 0.001);
        const away = times(by / found.distance, minus(found.pointB, found.pointA));
        expect(Math.abs(convexDistance(a, shifted(b, away)).distance - found.distance - by)).toBeLessThan(NEAR);
      }),
      { seed: 47, numRuns: 400 },
    );
  });

  it('solids that overlap or touch say so, with a point between', () => {
    const drum = { shape: 'cylinder', from: [0, 0, 0], to: [0, 0.1, 0], radius: 0.1, rounding: 0 } as const;
    const bar = { shape: 'capsule', from: [-1, 0.05, 0], to: [1, 0.05, 0], radius: 0.01 } as const;
    const found = convexDistance(drum, bar);
    expect(found).toMatchObject({ distance: 0, atLeast: 0, overlaps: true });
    expect(norm(found.pointA)).toBeLessThan(0.15);
    const touching = { shape: 'box', low: [-1, 0.1, -1], high: [1, 0.2, 1] } as const;
    expect(convexDistance(drum, touching).overlaps).toBe(true);
  });
});

describe('a bar', () => {
  it('is the box that it fills, along the axes', () => {
    fc.assert(
      fc.property(box, solid, point, (of, b, by) => {
        const [middle, half] = [times(0.5, plus(of.low, of.high)), times(0.5, minus(of.high, of.low))];
        const lying: Bar = {
          ...{ shape: 'bar', from: [of.low[0], middle[1], middle[2]], to: [of.high[0], middle[1], middle[2]] },
          ...{ across: [0.3, 0, 2], halfHeight: half[2], halfWidth: half[1], sag: 0 },
        };
        const other = shifted(b, times(2, by));
        expect(Math.abs(convexDistance(lying, other).distance - convexDistance(of, other).distance)).toBeLessThan(NEAR);
      }),
      { seed: 49, numRuns: 400 },
    );
  });

  it('swings by its sag in the middle and not at its ends, worked by hand', () => {
    const span: Bar = {
      ...{ shape: 'bar', from: [0, 0, 0], to: [1, 0, 0], across: [0, 0, 1] },
      ...{ halfHeight: 0.01, halfWidth: 0.02, sag: 0.05 },
    };
    const ball = (x: number): Solid => ({ shape: 'capsule', from: [x, 0, 0.2], to: [x, 0, 0.2], radius: 0.04 });
    expect(convexDistance(span, ball(0.5)).distance).toBeCloseTo(0.1, 9);
    expect(convexDistance({ ...span, sag: 0 }, ball(0.5)).distance).toBeCloseTo(0.15, 9);
    // Past the end: 60 mm along and 190 mm up from the corner, less the ball.
    expect(convexDistance(span, ball(1.06)).distance).toBeCloseTo(Math.hypot(0.06, 0.19) - 0.04, 9);
  });

  it('refuses a height along itself', () => {
    const wrong: Bar = {
      ...{ shape: 'bar', from: [0, 0, 0], to: [1, 0, 0], across: [1, 0, 0] },
      ...{ halfHeight: 0.01, halfWidth: 0.01, sag: 0 },
    };
    expect(() => convexDistance(wrong, wrong)).toThrow(/Bar, across/);
  });
});

describe('a search that may end early', () => {
  it('never proves more than there is, and is exact where the solids are nearer than asked', () => {
    fc.assert(
      fc.property(solid, solid, point, size, (a, b, by, enough) => {
        const other = shifted(b, times(2, by));
        const [exact, early] = [convexDistance(a, other), grownDistance(grown(a), grown(other), enough)];
        expect(early.atLeast).toBeLessThanOrEqual(exact.distance + NEAR);
        if (exact.distance < enough - NEAR) expect(early.distance).toBe(exact.distance);
        else expect(early.atLeast).toBeGreaterThan(enough - 2 * NEAR);
      }),
      { seed: 50, numRuns: 800 },
    );
  });
});

describe('the method', () => {
  it('takes any two solids as numbers, and its record is true', () => {
    const named = (of: Solid, letter: 'A' | 'B') =>
      Object.fromEntries(Object.entries(flatSolid(of)).map(([key, one]) => [`${key}${letter}`, one]));
    fc.assert(
      fc.property(solid, solid, size, size, (a, b, growth, movement) => {
        const given = { ...named(a, 'A'), ...named(b, 'B'), growth, movement } as ValuesOf<
          typeof clearanceDistance.inputs
        >;
        expect(checkMethod(clearanceDistance, given)).toEqual([]);
        const { free } = clearanceDistance.run(given);
        expect(free).toBeCloseTo(convexDistance(a, b).distance - growth - movement, 12);
      }),
      { seed: 51, numRuns: 200 },
    );
  });
});

describe('two straight pieces', () => {
  it('no other pair of points is nearer', () => {
    fc.assert(
      fc.property(point, point, point, point, share, share, (a1, a2, b1, b2, s, t) => {
        const at = (from: Vec3, to: Vec3, part: number): Vec3 => plus(from, times(part, minus(to, from)));
        const { partA, partB } = segmentParts(a1, a2, b1, b2);
        const least = norm(minus(at(a1, a2, partA), at(b1, b2, partB)));
        expect(least).toBeLessThanOrEqual(norm(minus(at(a1, a2, s), at(b1, b2, t))) + 1e-12);
      }),
      { seed: 48, numRuns: 1000 },
    );
  });

  it('two tubes of 25 mm crossing square at 100 mm, worked by hand: 75 mm', () => {
    const tubes: ValuesOf<typeof clearanceCapsules.inputs> = {
      ...{ fromA: [-1, 0, 0], toA: [1, 0, 0], radiusA: 0.0125 },
      ...{ fromB: [0.3, -1, 0.1], toB: [0.3, 1, 0.1], radiusB: 0.0125 },
    };
    const found = clearanceCapsules.run(tubes);
    expect(found.clearance).toBeCloseTo(0.075, 12);
    expect(found.pointA).toEqual([expect.closeTo(0.3, 12), 0, 0]);
    expect(checkMethod(clearanceCapsules, tubes)).toEqual([]);
    expect(checkMethod(clearanceCapsules, { ...tubes, toA: [-1, 0, 0], radiusB: 3 })).toEqual([]);
    expect(clearanceCapsules.run({ ...tubes, radiusB: 0.2 }).clearance).toBeCloseTo(-0.1125, 12);
  });
});

describe('measures that are wrong', () => {
  const drum = { shape: 'cylinder', from: [0, 0, 0], to: [0, 0.1, 0], radius: 0.1, rounding: 0 } as const;
  it('are refused by name', () => {
    expect(() => convexDistance(drum, { ...drum, radius: -1 })).toThrow(
      'Cylinder, radius: -1 read; a finite length of at least 0 m is accepted.',
    );
    expect(() => convexDistance(drum, { ...drum, rounding: 0.06 })).toThrow(/at most 0.05 m/);
    expect(() => convexDistance(drum, { ...drum, to: [0, 0, 0] })).toThrow(/an end face apart from the other/);
    expect(() => convexDistance(drum, { shape: 'box', low: [0, 0, 0], high: [1, -1, 1] })).toThrow(/Box, high/);
    expect(() =>
      convexDistance(drum, { shape: 'capsule', from: [0, 0, Number.NaN], to: [0, 0, 0], radius: 1 }),
    ).toThrow(/Capsule, from/);
  });
});
