import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cross, minus, norm, plus, times } from '../numerics/vector.ts';
import { bodyMoves, bodyOnMounts, moveOfPoint } from './body-moves.ts';

const K = 150e3;
const [A, B] = [0.18, 0.12];
const FOUR = [
  [A, B, 0],
  [A, -B, 0],
  [-A, B, 0],
  [-A, -B, 0],
].map((at) => ({ at: at as unknown as Vec3, stiffness: K }));

describe('a rigid body on mounts', () => {
  it('four equal mounts in a rectangle: shift F/4k, turns M/4kb², M/4ka² and M/4k(a² + b²)', () => {
    const force: Vec3 = [2100, -700, 350];
    const at: Vec3 = [0.31, 0.09, 0.14];
    const moment: Vec3 = [12, -40, 25];
    const [mx, my, mz] = plus(moment, cross(at, force));
    const move = bodyOnMounts(FOUR)([{ at, force, moment }]);
    const wanted = [
      ...times(1 / (4 * K), force),
      mx / (4 * K * B ** 2),
      my / (4 * K * A ** 2),
      mz / (4 * K * (A ** 2 + B ** 2)),
    ];
    [...move.shift, ...move.turn].forEach((x, n) => {
      expect(x / (wanted[n] ?? 0)).toBeCloseTo(1, 10);
    });
    expect(moveOfPoint(move, at)).toEqual(plus(move.shift, cross(move.turn, at)));
  });

  it('unlike mounts anywhere: what they push back closes with the pulls, and two pulls act as their sum', () => {
    const mounts = [
      { at: [0.9, 0.2, -0.05] as const, stiffness: 90e3 },
      { at: [0.88, -0.17, -0.02] as const, stiffness: 210e3 },
      { at: [1.2, 0.03, 0.31] as const, stiffness: 140e3 },
      { at: [1.1, 0.15, 0.1] as const, stiffness: 40e3 },
    ];
    const pulls = [
      { at: [0.82, 0.07, 0.14] as const, force: [-2600, 30, 410] as const, moment: [0, 95, 0] as const },
      { at: [1.0, 0.0, 0.3] as const, force: [0, 120, -60] as const, moment: [4, 0, -9] as const },
    ];
    const body = bodyOnMounts(mounts);
    const move = body(pulls);
    let force: Vec3 = [0, 0, 0];
    let moment: Vec3 = [0, 0, 0];
    for (const one of pulls) {
      force = plus(force, one.force);
      moment = plus(moment, plus(one.moment, cross(one.at, one.force)));
    }
    for (const { at, stiffness } of mounts) {
      const back = times(-stiffness, moveOfPoint(move, at));
      force = plus(force, back);
      moment = plus(moment, cross(at, back));
    }
    expect(norm(force) / 2600).toBeLessThan(1e-10);
    expect(norm(moment) / 1000).toBeLessThan(1e-10);
    const parts = pulls.map((one) => body([one]).shift);
    expect(norm(minus(move.shift, plus(parts[0] as Vec3, parts[1] as Vec3)))).toBeLessThan(1e-15);
  });

  it('mounts on one line leave it free to turn, and that is refused', () => {
    expect(() => bodyOnMounts(FOUR.slice(0, 2))).toThrow();
    expect(() => bodyOnMounts(FOUR.slice(0, 1))).toThrow();
    expect(() => bodyOnMounts(FOUR.slice(0, 3))).not.toThrow();
  });
});

describe('the working of it', () => {
  const input = {
    x: [0.9, 0.88, 1.2, 1.1],
    y: [0.2, -0.17, 0.03, 0.15],
    z: [-0.05, -0.02, 0.31, 0.1],
    stiffness: [90e3, 210e3, 140e3, 40e3],
    at: [0.82, 0.07, 0.14] as const,
    force: [-2600, 30, 410] as const,
    moment: [0, 95, 12] as const,
    point: [1.1, -0.2, 0.3] as const,
  };

  it('shows equations that the six-by-six answer meets, for unlike mounts anywhere', () => {
    expect(checkMethod(bodyMoves, input)).toEqual([]);
  });

  it('refuses mounts on one line, and lists that do not match', () => {
    const line = { ...input, x: [0, 1, 2], y: [0, 2, 4], z: [0, 0, 0], stiffness: [1e5, 1e5, 2e5] };
    expect(() => bodyMoves.run(line)).toThrow(/one line/);
    expect(() => bodyMoves.run({ ...input, z: [0, 0, 1] })).toThrow(/3 entries .* for 4 places/);
  });
});
