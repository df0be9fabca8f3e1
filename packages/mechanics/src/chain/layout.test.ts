import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { chainAlignment } from './alignment.ts';
import { chainIdlerLength } from './idler-length.ts';
import { chainLength } from './length.ts';
import { chainRigidLinks } from './rigid-links.ts';
import { chainWearTakeUp } from './wear-take-up.ts';

const DEGREE = Math.PI / 180;
const mm = (metres: number): number => metres * 1000;
const radius = (teeth: number, pitch: number): number => pitch / (2 * Math.sin(Math.PI / teeth));

const DRIVE = { pitch: 0.015875, teethDriver: 15, teethDriven: 45, centreDistance: 0.6 } as const;

describe('chain round an idler', () => {
  it('equal sprockets, idler outside at the middle: spans across by Pythagoras, worked by hand', () => {
    const [p, r, r3] = [0.0127, radius(20, 0.0127), radius(12, 0.0127)];
    const [half, y] = [0.25, 0.05];
    const found = chainIdlerLength.run({
      ...{ pitch: p, teethDriver: 20, teethDriven: 20, centreDistance: 2 * half },
      ...{ teethIdler: 12, idlerAlong: half, idlerAcross: y, idlerSide: 'outside' },
    });
    // The span crosses over the line between the two centres: it leans by the sum of both angles of that triangle.
    const between = Math.hypot(half, y);
    const lean = Math.asin((r + r3) / between) - Math.atan(y / half);
    expect(found.spanDriver).toBeCloseTo(Math.sqrt(between ** 2 - (r + r3) ** 2), 12);
    expect(found.spanDriven).toBeCloseTo(found.spanDriver, 12);
    expect(found.wrapIdler).toBeCloseTo(2 * lean, 12);
    expect(found.wrapDriver).toBeCloseTo(Math.PI + lean, 12);
    expect(found.links).toBeCloseTo(
      (2 * half + 2 * found.spanDriver) / p + (2 * 20 * (Math.PI + lean) + 12 * 2 * lean) / (2 * Math.PI),
      9,
    );
  });

  it('inside: spans and wraps of the outline of three circles drawn as polygons of 0.01°', () => {
    const place = { idlerAlong: 0.25, idlerAcross: 0.11, teethIdler: 13, idlerSide: 'inside' } as const;
    const found = chainIdlerLength.run({ ...DRIVE, ...place });
    const length = outlineLength([
      [0, 0, radius(15, DRIVE.pitch)],
      [0.6, 0, radius(45, DRIVE.pitch)],
      [0.25, 0.11, radius(13, DRIVE.pitch)],
    ]);
    const byRadius =
      found.spanOther +
      found.spanDriver +
      found.spanDriven +
      found.wrapDriver * radius(15, DRIVE.pitch) +
      found.wrapDriven * radius(45, DRIVE.pitch) +
      found.wrapIdler * radius(13, DRIVE.pitch);
    expect(byRadius / length).toBeCloseTo(1, 7);
    expect(found.wrapDriver + found.wrapDriven + found.wrapIdler).toBeCloseTo(2 * Math.PI, 12);
  });

  it('an idler that only just touches its span adds nothing', () => {
    const { links, tangentAngle } = chainLength.run(DRIVE);
    const r3 = radius(13, DRIVE.pitch);
    for (const [side, k] of [
      ['inside', 1],
      ['outside', -1],
    ] as const) {
      // The upper span rises by the tangent angle from R1/cos a over the driver's centre.
      const spanAt = radius(15, DRIVE.pitch) / Math.cos(tangentAngle) + 0.3 * Math.tan(tangentAngle);
      const idlerAcross = spanAt - (k * r3) / Math.cos(tangentAngle) + k * 1e-7;
      const found = chainIdlerLength.run({ ...DRIVE, teethIdler: 13, idlerAlong: 0.3, idlerAcross, idlerSide: side });
      expect(found.links).toBeCloseTo(links, 6);
      expect(found.teethInMesh).toBeLessThan(0.01);
      expect(() =>
        chainIdlerLength.run({
          ...DRIVE,
          teethIdler: 13,
          idlerAlong: 0.3,
          idlerAcross: idlerAcross - k * 1e-6,
          idlerSide: side,
        }),
      ).toThrow(/The idler does not touch its span/);
    }
  });

  it('seen in a mirror, driver and driven swapped: the same chain', () => {
    const place = { teethIdler: 14, idlerAcross: 0.06, idlerSide: 'outside' } as const;
    const one = chainIdlerLength.run({ ...DRIVE, ...place, idlerAlong: 0.22 });
    const other = chainIdlerLength.run({ ...DRIVE, teethDriver: 45, teethDriven: 15, ...place, idlerAlong: 0.38 });
    expect(other.links).toBeCloseTo(one.links, 10);
    expect(other.wrapDriven).toBeCloseTo(one.wrapDriver, 12);
    expect(other.spanDriver).toBeCloseTo(one.spanDriven, 12);
  });

  it('pressing farther takes up more links and meshes more teeth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.075, noNaN: true }),
        fc.double({ min: 0.001, max: 0.01, noNaN: true }),
        (y, by) => {
          const at = (idlerAcross: number) =>
            chainIdlerLength.run({ ...DRIVE, teethIdler: 13, idlerAlong: 0.25, idlerAcross, idlerSide: 'outside' });
          expect(at(y - by).links).toBeGreaterThan(at(y).links);
          expect(at(y - by).teethInMesh).toBeGreaterThan(at(y).teethInMesh);
        },
      ),
      { seed: 51, numRuns: 100 },
    );
  });

  it('refuses an idler in the other span or among the teeth; every formula shown gives the value returned', () => {
    const place = { teethIdler: 13, idlerAlong: 0.25, idlerAcross: 0.05, idlerSide: 'outside' } as const;
    expect(() => chainIdlerLength.run({ ...DRIVE, ...place, idlerAcross: -0.08 })).toThrow(/runs into the other span/);
    expect(() => chainIdlerLength.run({ ...DRIVE, ...place, idlerAlong: 0.02 })).toThrow(/The sprockets overlap/);
    expect(checkMethod(chainIdlerLength, { ...DRIVE, ...place })).toEqual([]);
    expect(checkMethod(chainIdlerLength, { ...DRIVE, ...place, idlerSide: 'inside', idlerAcross: 0.12 })).toEqual([]);
  });
});

/** Length of the convex outline of circles, each drawn as corners of 0.01°, by the mean width over all directions (Cauchy). */
function outlineLength(circles: readonly (readonly [number, number, number])[]): number {
  const steps = 36000;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / steps;
    sum += Math.max(...circles.map(([x, y, r]) => x * Math.cos(angle) + y * Math.sin(angle) + r));
  }
  return (sum * 2 * Math.PI) / steps;
}

describe('rigid links against the closed form', () => {
  it('chain-polygon-13-39 — 76 links: 24.6502 to 24.6530 pitches over 48 turns, on average 24.6519 (computed)', () => {
    const found = Array.from({ length: 48 }, (_, k) =>
      chainRigidLinks.run({ pitch: 1, teethDriver: 13, teethDriven: 39, links: 76, phase: k / 48 }),
    );
    const centres = found.map(({ centreRigid }) => centreRigid);
    expect(Math.abs(Math.min(...centres) - 24.6502)).toBeLessThan(0.0006);
    expect(Math.abs(Math.max(...centres) - 24.653)).toBeLessThan(0.0006);
    expect(Math.abs(found.reduce((sum, { departure }) => sum + departure, 0) / 48)).toBeLessThan(2e-5);
  });

  it('other drives, 11:88 among them: on average the closed form within 1e-4 of a pitch', () => {
    for (const [teethDriver, teethDriven, links] of [
      [15, 45, 110],
      [11, 88, 104],
      [17, 17, 63],
      [20, 31, 77],
    ] as const) {
      const found = Array.from({ length: 12 }, (_, k) =>
        chainRigidLinks.run({ pitch: 0.0127, teethDriver, teethDriven, links, phase: (k + 0.25) / 12 }),
      );
      expect(Math.abs(found.reduce((sum, { departure }) => sum + departure, 0) / 12 / 0.0127)).toBeLessThan(1e-4);
      for (const { departure } of found) expect(Math.abs(departure / 0.0127)).toBeLessThan(0.006);
    }
  });

  it('every formula shown gives the value returned; short spans are refused', () => {
    expect(
      checkMethod(chainRigidLinks, { pitch: 0.0127, teethDriver: 13, teethDriven: 39, links: 76, phase: 0.3 }),
    ).toEqual([]);
    expect(() => chainRigidLinks.run({ pitch: 1, teethDriver: 10, teethDriven: 10, links: 15, phase: 0 })).toThrow(
      /spans of at least 3 pitches are accepted|tooth tips/,
    );
  });
});

describe('alignment', () => {
  const run = (centre: number, offset: number, tilt: number) =>
    chainAlignment.run({
      seatDriver: [0, 0.1, 0],
      directionDriver: [0, 2, 0],
      seatDriven: [centre, 0.1 + offset, 0],
      directionDriven: [Math.sin(tilt), -Math.cos(tilt), 0],
    });

  it('chain-misalign-600 — The Complete Guide to Chain, 7.1.2.2: 1 mm and 0.190985° (read)', () => {
    const found = run(0.6, 0.0005, 0.1 * DEGREE);
    expect(found.offsetLimit).toBe(0.001);
    expect(found.angleLimit / DEGREE).toBeCloseTo(0.190985, 3);
    expect(Math.tan(found.angleLimit)).toBeCloseTo(1 / 300, 12);
    expect(found).toMatchObject({ verdict: 'within', offset: expect.closeTo(0.0005, 12) });
    expect(found.angleUsed).toBeCloseTo(0.1 / 0.190985, 4);
  });

  it('over a metre a thousandth of the centre distance, over ten metres 10 mm (same source)', () => {
    expect(run(2.5, 0, 0).offsetLimit).toBe(0.0025);
    expect(run(12, 0, 0).offsetLimit).toBe(0.01);
    expect(run(0.6, -0.0011, 0).verdict).toBe('beyond');
    expect(run(0.6, 0, 0.2 * DEGREE).verdict).toBe('beyond');
    expect(() => run(0, 0.1, 0)).toThrow(/stand on one axis/);
  });

  it('every formula shown gives the value returned', () => {
    for (const seat of [0.6, 3, 14]) {
      const misses = checkMethod(chainAlignment, {
        seatDriver: [0, 0, 0],
        directionDriver: [0.01, 1, 0],
        seatDriven: [seat, 0.003, 0.1],
        directionDriven: [0, 1, 0.02],
      });
      expect(misses).toEqual([]);
    }
  });
});

describe('wear and take-up', () => {
  const limit = (teethDriven: number, centres: 'adjustable' | 'fixed') =>
    chainWearTakeUp.run({ pitch: 0.0127, teethDriver: 17, teethDriven, linksFitted: 140, centres, travel: 0.02 })
      .elongationLimit;

  it('chain-wear-84-adj, -40-adj, -40-fixed — a chain maker’s rule: 2.381 %, 3 %, 1.5 % (read)', () => {
    expect(limit(84, 'adjustable')).toBeCloseTo(0.0238095, 6);
    expect(limit(40, 'adjustable')).toBe(0.03);
    expect(limit(40, 'fixed')).toBe(0.015);
  });

  it('chain-takeup-3pct — 110 links on 15 and 45 teeth: 52.39 mm, about 26.38 mm of take-up, 15.99 mm for two pitches (computed)', () => {
    const found = chainWearTakeUp.run({ ...DRIVE, linksFitted: 110, centres: 'adjustable', travel: 0.02 });
    expect(found.elongationLimit).toBe(0.03);
    expect(Math.abs(mm(found.centreNew) - 630.438)).toBeLessThan(0.02);
    expect(Math.abs(mm(found.addedLength) - 52.3875)).toBeLessThan(0.1);
    expect(Math.abs(mm(found.wearTravel) - 26.3842)).toBeLessThan(0.2);
    expect(Math.abs(mm(found.twoPitchTravel) - 15.9904)).toBeLessThan(0.1);
    expect(mm(found.spare)).toBeCloseTo(20 - mm(found.twoPitchTravel), 9);
  });

  it('every formula shown gives the value returned; too few links are named', () => {
    const sprockets = { pitch: DRIVE.pitch, teethDriver: 15, teethDriven: 45 };
    const input = { ...sprockets, linksFitted: 110, centres: 'fixed', travel: 0.001 } as const;
    expect(checkMethod(chainWearTakeUp, input)).toEqual([]);
    expect(() => chainWearTakeUp.run({ ...input, linksFitted: 40 })).toThrow(/Links of the chain must be more than/);
  });
});
