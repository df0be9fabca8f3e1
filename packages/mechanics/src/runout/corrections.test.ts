import { describe, expect, it } from 'vitest';
import type { Offset } from './adviser-types.ts';
import { diagnose, leanAt, runoutAt, type Section } from './axis.ts';
import { bestClockings } from './clocking-fit.ts';
import { fourJaw, turnTrue } from './hand-ways.ts';
import { type ClockedJoint, clockingOf, reClock, refitSpread } from './re-clock.ts';

const MM = 1e-3;

/** A small generator of our own, so that the tests are the same each time. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const polar = (size: number, angle: number): Offset => ({ x: size * Math.cos(angle), y: size * Math.sin(angle) });

describe('re-clocking', () => {
  it('equals full enumeration, for three joints with offsets and tilts and two stations', () => {
    const next = chance(17);
    for (let round = 0; round < 60; round++) {
      const leg = () => ({ offset: polar(next() * 0.3 * MM, next() * 7), tilt: polar(next() * 1e-3, next() * 7) });
      const base = { ...leg(), station: 0 };
      const joints: ClockedJoint[] = [6, 5, 8].map((positions, k) => ({
        ...leg(),
        positions,
        station: 0.05 + 0.1 * k,
      }));
      const watched = [
        { station: 0.2, goal: 0.1 * MM },
        { station: 0.4, goal: 0.08 * MM },
      ];
      const found = reClock(base, joints, watched);
      let least = Number.POSITIVE_INFINITY;
      for (let a = 0; a < 6; a++)
        for (let b = 0; b < 5; b++)
          for (let c = 0; c < 8; c++) least = Math.min(least, clockingOf(base, joints, watched, [a, b, c]).worst);
      expect(found.best.worst).toBeCloseTo(least, 12);
      expect(found.looked).toBeLessThanOrEqual(found.all);
    }
  });

  it('two equal offsets in a joint of two positions cancel', () => {
    const base = { offset: { x: MM, y: 0 }, tilt: { x: 0, y: 0 }, station: 0 };
    const found = reClock(base, [{ ...base, station: 0.1, positions: 2 }], [{ station: 0.2, goal: 0.1 * MM }]);
    expect(found.best.positions).toEqual([1]);
    expect(found.best.tirs[0]).toBeCloseTo(0, 12);
    expect(found.now.tirs[0]).toBeCloseTo(4 * MM, 12);
  });

  it('the spread of refits wants three of them', () => {
    expect(refitSpread([polar(1, 0), polar(1, Math.PI), polar(0, 0)])).toBeCloseTo(Math.SQRT1_2, 12);
    expect(() => refitSpread([polar(1, 0), polar(1, 1)])).toThrow('2 refits read');
  });
});

describe('axis in space', () => {
  const seats = { a: 0, b: 0.2 };
  const shape = (axis: (z: number) => Offset, stations: readonly number[], noise = 0): Section[] => {
    const next = chance(5);
    return stations.map((station) => {
      const { x, y } = axis(station);
      const off = () => (next() - 0.5) * 2 * noise;
      return { station, offset: { x: x + off(), y: y + off() }, spread: 2e-6 };
    });
  };
  const chuck = (z: number): Offset => ({ x: 0.4 * MM - 0.001 * z, y: 0.002 * z });
  const STATIONS = [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35];

  it('the chuck drops out: a straight part in a bad chuck runs true', () => {
    const sections = shape(chuck, STATIONS);
    expect(runoutAt(sections, seats, 0.3).tir).toBeCloseTo(0, 9);
    expect(diagnose(sections, seats).best.kind).toBe('straight');
  });

  it.each([
    ['bend', 0.12, (z: number) => polar(3e-3 * Math.max(0, z - 0.12), 1)],
    ['tilt', 0.23, (z: number) => polar(3e-3 * Math.max(0, z - 0.23), 2)],
    ['offset', 0.225, (z: number) => polar(z > 0.225 ? 0.2 * MM : 0, 2)],
  ] as const)('a %s is told from the others, with its place', (kind, at, fault) => {
    const sections = shape((z) => ({ x: chuck(z).x + fault(z).x, y: chuck(z).y + fault(z).y }), STATIONS, 1e-6);
    const { best } = diagnose(sections, seats);
    expect(best.kind).toBe(kind);
    expect(best.at).toBeGreaterThan(at - 0.026);
    expect(best.at).toBeLessThan(at + 0.026);
    expect(best.misfit).toBeLessThan(4);
  });

  it('offset and tilt at a joint are both found', () => {
    const sections = shape(
      (z) => (z > 0.22 ? { x: chuck(z).x + 0.1 * MM, y: chuck(z).y + 2e-3 * (z - 0.22) } : chuck(z)),
      [0, 0.1, 0.2, 0.25, 0.3, 0.35],
      1e-6,
    );
    const { best } = diagnose(sections, seats, [0.22]);
    expect(best.kind).toBe('offset and tilt');
    expect(best.step.x).toBeCloseTo(0.1 * MM, 5);
    expect(best.kink.y).toBeCloseTo(2e-3, 4);
  });

  it('uncertainty grows with the overhang', () => {
    const sections = shape(chuck, [0, 0.2, 0.25]);
    expect(runoutAt(sections, seats, 0.25).spread).toBeLessThan(runoutAt(sections, seats, 0.4).spread);
  });
});

describe('by hand', () => {
  it('the jaw at the high spot goes in, the one opposite out', () => {
    expect(fourJaw({ x: 0.1, y: -0.2 }).jaws).toEqual([0.1, -0.2, -0.1, 0.2]);
  });

  it('turning true takes twice the offset and the form off the diameter', () => {
    expect(turnTrue(30 * MM, { x: 0.03 * MM, y: 0.04 * MM }, 0.01 * MM, 29.87 * MM)).toMatchObject({ keeps: true });
    expect(turnTrue(30 * MM, { x: 0.03 * MM, y: 0.04 * MM }, 0.01 * MM, 29.9 * MM).short).toBeCloseTo(0.02 * MM, 9);
    expect(() => turnTrue(-1, { x: 0, y: 0 }, 0, 0)).toThrow('diameter');
  });
});

describe('clocking learned from readings', () => {
  const [base, first, second] = [polar(0.2 * MM, 0.4), polar(0.15 * MM, 2), polar(0.1 * MM, -1)];
  const of = [6, 5];
  const truth = (p: number, q: number): Offset => {
    const [a, b] = [(2 * Math.PI * p) / 6, (2 * Math.PI * p) / 6 + (2 * Math.PI * q) / 5];
    const turn = ({ x, y }: Offset, t: number): Offset => ({
      x: x * Math.cos(t) - y * Math.sin(t),
      y: x * Math.sin(t) + y * Math.cos(t),
    });
    const [one, two] = [turn(first, a), turn(second, b)];
    return { x: base.x + one.x + two.x, y: base.y + one.y + two.y };
  };

  it('three clockings of two joints tell all thirty, the best by full enumeration', () => {
    const readings = [
      [0, 0],
      [1, 0],
      [0, 2],
    ].map(([p, q]) => ({ positions: [p as number, q as number], offset: truth(p as number, q as number) }));
    const found = bestClockings(readings, of, 2e-6) ?? [];
    expect(found).toHaveLength(30);
    for (const { positions, tir } of found) {
      const { x, y } = truth(positions[0] as number, positions[1] as number);
      expect(tir).toBeCloseTo(2 * Math.hypot(x, y), 10);
    }
  });

  it('one clocking alone tells nothing of the others', () => {
    expect(bestClockings([{ positions: [0, 0], offset: truth(0, 0) }], of, 2e-6)).toBeUndefined();
    expect(() => bestClockings([], [500, 500], 1e-6)).toThrow('250000 clockings');
  });
});

describe('lean of the axis at a station', () => {
  const at = (station: number, x: number, y = 0): Section => ({ station, offset: { x, y }, spread: 1e-6 });
  const seats = { a: 0, b: 0.2 };

  it('a bow of 0.1 mm midway between seats 200 mm apart leans 1 in 1000 at either, as two straight lines have it', () => {
    const bow = [at(0, 0), at(0.1, 1e-4), at(0.2, 0)];
    expect(leanAt(bow, seats, 0)).toBeCloseTo(1e-3, 12);
    expect(leanAt(bow, seats, 0.2)).toBeCloseTo(1e-3, 12);
  });

  it('does not change when the whole part sits off centre and askew, as a chuck may hold it', () => {
    const bow = [at(0, 0), at(0.1, 1e-4, 5e-5), at(0.2, 0), at(0.3, 2e-4)];
    const held = bow.map(({ station, offset: { x, y } }) => at(station, x + 3e-4 - 2e-3 * station, y + 1e-3 * station));
    for (const station of [0, 0.1, 0.2, 0.3])
      expect(leanAt(held, seats, station)).toBeCloseTo(leanAt(bow, seats, station) ?? Number.NaN, 12);
  });

  it('takes the steeper side of a kink, nothing of a straight part, and wants a third section', () => {
    expect(leanAt([at(0, 0), at(0.2, 0), at(0.3, 3e-4)], seats, 0.2)).toBeCloseTo(3e-3, 12);
    expect(leanAt([at(0, 1e-4), at(0.1, 2e-4), at(0.2, 3e-4)], seats, 0.1)).toBeCloseTo(0, 12);
    expect(leanAt([at(0, 0), at(0.2, 0)], seats, 0)).toBeUndefined();
  });
});
