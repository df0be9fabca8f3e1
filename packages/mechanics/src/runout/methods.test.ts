import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { axisAtStation } from './axis-at-station.ts';
import { balance } from './balance.ts';
import { leastSquaresCircle } from './circle.ts';
import { faceSquareness } from './face.ts';
import { fourPoint } from './four-point.ts';
import { gearLimits } from './gear-limits.ts';
import { harmonic } from './harmonic.ts';
import { influence } from './influence.ts';
import { lineFit } from './line-fit.ts';
import { pressSet } from './press.ts';
import { sprocketLimits } from './sprocket-limits.ts';
import { stackUp } from './stack-up.ts';
import { vblockFactor } from './vblock-factor.ts';
import { warmBow } from './warm-bow.ts';

const DEGREE = Math.PI / 180;
const MM = 1e-3;

describe('records say what they compute', () => {
  const circlePoints: readonly Vec3[] = [
    [1, 7, 0],
    [2, 6, 0],
    [5, 8, 0],
    [7, 7, 0],
  ];
  it.each([
    ['four points', checkMethod(fourPoint, { readings: [0.1, 0.34, 0.2, -0.04] })],
    ['harmonic', checkMethod(harmonic, { angles: [0, 1, 2, 3, 4.5], readings: [1, 3, 2, 0, -1], orders: 2, order: 2 })],
    [
      'circle',
      checkMethod(leastSquaresCircle, { xs: circlePoints.map(([x]) => x), ys: circlePoints.map(([, y]) => y) }),
    ],
    ['line', checkMethod(lineFit, { stations: [0, 1, 3], offsets: [0.2, 0.1, 0.5], at: 4 })],
    [
      'axis',
      checkMethod(axisAtStation, {
        ...{ station1: 0.02, tir1: 1.2e-4, high1: 30 * DEGREE, station2: 0.18, tir2: 3e-4, high2: 110 * DEGREE },
        ...{ at: 0.26, faceDiameter: 0.12 },
      }),
    ],
    ['stack-up', checkMethod(stackUp, { tirs: [2e-5, 5e-5], highs: [0, 2] })],
    [
      'balance',
      checkMethod(balance, { grade: 6.3e-3, speed: 300, mass: 6, radius: 0.1, toA: 0.1, toB: 0.3, offset: 5e-5 }),
    ],
    [
      'influence',
      checkMethod(influence, { before: 5, beforeAngle: 2, after: 8, afterAngle: 0.5, trial: 10, trialAngle: 0.3 }),
    ],
    ['sprocket', checkMethod(sprocketLimits, { rootDiameter: 0.06, made: 'welded' })],
    ['sprocket, large', checkMethod(sprocketLimits, { rootDiameter: 1.4, made: 'turned' })],
    ['gear', checkMethod(gearLimits, { bevel: 0, diameter: 0.1, module: 0.003, grade: 8 })],
    ['bevel', checkMethod(gearLimits, { bevel: 1, diameter: 0.12, module: 0.003, grade: 8 })],
    [
      'press',
      checkMethod(pressSet, { span: 0.4, at: 0.15, diameter: 0.025, yieldStress: 3e8, modulus: 2.05e11, wanted: 2e-4 }),
    ],
    ['face', checkMethod(faceSquareness, { tir: 2e-4, diameter: 0.1, shimDiameter: 0.08, reach: 0.2 })],
    ['warm', checkMethod(warmBow, { difference: 10, expansion: 12e-6, length: 0.6, diameter: 0.03 })],
    ['V-block', checkMethod(vblockFactor, { angle: 90 * DEGREE, lobes: 5 })],
  ])('%s', (_, misses) => {
    expect(misses).toEqual([]);
  });
});

describe('two ways to the same answer', () => {
  it('four even marks give what the least-squares fit gives', () => {
    const readings = [0.1, 0.34, 0.2, -0.04];
    const short = fourPoint.run({ readings });
    const fit = harmonic.run({ angles: [0, 90, 180, 270].map((a) => a * DEGREE), readings, orders: 1, order: 1 });
    expect(fit.amplitude).toBeCloseTo(short.offset, 12);
    expect(fit.high).toBeCloseTo(short.high, 12);
  });

  it('the circle through points moved and turned moves and turns with them', () => {
    const xs = [1, 2, 5, 7, 9, 3];
    const ys = [7, 6, 8, 7, 5, 7];
    const plain = leastSquaresCircle.run({ xs, ys });
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const turned = leastSquaresCircle.run({
      xs: xs.map((x, i) => 100 + c * x - s * (ys[i] as number)),
      ys: ys.map((y, i) => -40 + s * (xs[i] as number) + c * y),
    });
    expect(turned.radius).toBeCloseTo(plain.radius, 6);
    expect(turned.x).toBeCloseTo(100 + c * plain.x - s * plain.y, 5);
    expect(turned.y).toBeCloseTo(-40 + s * plain.x + c * plain.y, 5);
  });

  it('the correction of a trial takes the offset away when it is put on', () => {
    const given = { before: 0.42, beforeAngle: 70 * DEGREE, after: 0.3, afterAngle: 95 * DEGREE };
    const found = influence.run({ ...given, trial: 1, trialAngle: 250 * DEGREE });
    const at = found.moreAngle + found.lag;
    expect(given.after * Math.cos(given.afterAngle) + found.more * found.perUnit * Math.cos(at)).toBeCloseTo(0, 12);
    expect(given.after * Math.sin(given.afterAngle) + found.more * found.perUnit * Math.sin(at)).toBeCloseTo(0, 12);
  });

  it('a lobed section rolled in a V, point by point, shows the factor of its lobes', () => {
    const [radius, size, angle] = [20, 0.005, 90 * DEGREE];
    for (const lobes of [2, 3, 4, 5, 6, 8]) {
      const { factor } = vblockFactor.run({ angle, lobes });
      const swing = rolledSwing(radius, size, lobes, angle);
      expect(swing / (2 * size)).toBeCloseTo(Math.abs(factor), 2);
    }
  });

  it('press: movement and force at first yield fit together as a beam on two rests', () => {
    const [span, at, diameter, modulus] = [0.4, 0.15, 0.025, 2.05e11];
    const { firstYield, force } = pressSet.run({ span, at, diameter, yieldStress: 3e8, modulus, wanted: 0 });
    const inertia = (Math.PI * diameter ** 4) / 64;
    expect(firstYield).toBeCloseTo((force * at ** 2 * (span - at) ** 2) / (3 * modulus * inertia * span), 12);
  });

  it('refuses what makes no sense, by name', () => {
    expect(() => fourPoint.run({ readings: [1, 2, 3, 4, 5] })).toThrow('5 readings read');
    expect(() => leastSquaresCircle.run({ xs: [0, 1, 2], ys: [0, 1, 2] })).toThrow('one line');
    expect(() => harmonic.run({ angles: [0, 1, 2], readings: [0, 1, 2], orders: 2, order: 1 })).toThrow('at least 5');
    expect(() => stackUp.run({ tirs: [1 * MM], highs: [] })).toThrow();
    expect(() =>
      pressSet.run({ span: 0.1, at: 0.2, diameter: 0.02, yieldStress: 3e8, modulus: 2e11, wanted: 0 }),
    ).toThrow('less than the span');
  });
});

/** Swing of an indicator over a lobed section that rests on both sides of a V: its support function, turned. */
function rolledSwing(radius: number, size: number, lobes: number, angle: number): number {
  const support = (direction: number) => radius + size * Math.cos(lobes * direction);
  const half = angle / 2;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < 3600; k++) {
    const turn = (k * 2 * Math.PI) / 3600;
    // Normals of the two sides point down and out; the centre rises by what both need.
    const left = support(-Math.PI / 2 - (Math.PI / 2 - half) - turn);
    const right = support(-Math.PI / 2 + (Math.PI / 2 - half) - turn);
    const rise = (left + right) / 2 / Math.sin(half);
    const reading = rise + support(Math.PI / 2 - turn);
    low = Math.min(low, reading);
    high = Math.max(high, reading);
  }
  return high - low;
}
