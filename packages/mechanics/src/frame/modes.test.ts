import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { factorFrame } from './factor.ts';
import { frameModes } from './modes.ts';
import { solveFrame } from './solve.ts';
import type { Held, Material, Member, Section } from './structure.ts';

const ALL: Held = [true, true, true, true, true, true];
const section = (area: number, iy: number, iz: number, torsion: number): Section => ({
  area,
  iy,
  iz,
  torsion,
  shearY: 0,
  shearZ: 0,
});
const steel = (youngs: number, shear: number, density = 0): Material => ({ youngs, shear, density });
const loads = (count: number, at: Readonly<Record<number, readonly number[]>>): Float64Array => {
  const all = new Float64Array(6 * count);
  for (const [node, six] of Object.entries(at)) all.set(six, 6 * Number(node));
  return all;
};

describe('natural modes', () => {
  it('AFNOR SDLX 01/89: nine modes of a plane frame of two storeys, within 0.5 % (read)', () => {
    const [width, depth] = [0.029, 0.0048];
    // The frame lies in x-y; bending in its plane is over the small depth.
    const s = section(width * depth, (depth * width ** 3) / 12, (width * depth ** 3) / 12, 1e-9);
    const corner: Vec3[] = [
      [-0.3, 0, 0],
      [-0.3, 0.81, 0],
      [0.3, 0, 0],
      [0.3, 0.81, 0],
      [-0.3, 0.36, 0],
      [0.3, 0.36, 0],
    ];
    const nodes = [...corner];
    const members: Member[] = [];
    for (const [a, b] of [
      [4, 0],
      [1, 4],
      [1, 3],
      [5, 3],
      [5, 2],
      [5, 4],
    ] as const) {
      const [p, q] = [corner[a] as Vec3, corner[b] as Vec3];
      let before: number = a;
      for (let part = 1; part <= 8; part++) {
        const last = part === 8;
        const node = last ? b : nodes.length;
        if (!last)
          nodes.push(
            [0, 1, 2].map(
              (i) => (p[i] as number) + (((q[i] as number) - (p[i] as number)) * part) / 8,
            ) as unknown as Vec3,
          );
        members.push({ from: before, to: node, section: s, material: steel(210e9, 80e9, 7850), reference: [0, 0, 1] });
        before = node;
      }
    }
    const plane: Held = [false, false, true, true, true, false];
    const factors = factorFrame({
      nodes,
      members,
      springs: [],
      supports: [...nodes.map((_, node) => ({ node, held: plane })), { node: 0, held: ALL }, { node: 2, held: ALL }],
    });
    const modes = frameModes(factors, 9);
    [8.75, 29.34, 43.71, 56.12, 95.86, 102.37, 146.64, 174.39, 178.36].forEach((printed, k) => {
      expect(Math.abs((modes[k]?.frequency ?? 0) / printed - 1)).toBeLessThan(5e-3);
    });
  });

  it('NAFEMS R0015, FV2: a double cross with pinned ends has five equal modes at 17.709 Hz, all returned (memory)', () => {
    const side = 0.125;
    const I = side ** 4 / 12;
    const s = section(side * side * 1e4, I, I, 0.141 * side ** 4);
    // The area carries mass as well: made large for stiffness alone, so its density is lowered by as much.
    const nodes: Vec3[] = [[0, 0, 0]];
    const members: Member[] = [];
    const ends: number[] = [];
    for (let arm = 0; arm < 8; arm++) {
      const [c, q] = [Math.cos((arm * Math.PI) / 4), Math.sin((arm * Math.PI) / 4)];
      let before = 0;
      for (let part = 1; part <= 5; part++) {
        nodes.push([c * part, q * part, 0]);
        const node = nodes.length - 1;
        members.push({
          from: before,
          to: node,
          section: s,
          material: steel(200e9, 77e9, 8000e-4),
          reference: [0, 0, 1],
        });
        before = node;
      }
      ends.push(before);
    }
    const plane: Held = [false, false, true, true, true, false];
    const factors = factorFrame({
      nodes,
      members,
      springs: [],
      supports: [
        ...nodes.map((_, node) => ({ node, held: plane })),
        ...ends.map((node) => ({ node, held: [true, true, true, true, true, false] as const })),
      ],
    });
    const found = frameModes(factors, 9).map(({ frequency }) => frequency);
    expect(Math.abs((found[0] as number) / 11.336 - 1)).toBeLessThan(6e-3);
    for (const k of [3, 4, 5, 6, 7]) expect(Math.abs((found[k] as number) / 17.709 - 1)).toBeLessThan(6e-3);
    expect(Math.abs((found[8] as number) / 45.345 - 1)).toBeLessThan(6e-3);
  });

  it('A. Ghali, A. Neville, Structural Analysis, 7th ed., example 24.2: three masses on a cantilever, 4.858, 53.16, 153.66 Hz (read)', () => {
    const s = section(1e-2, 4.32e-6, 4.32e-6, 8e-6);
    const bar = { section: s, material: steel(200e9, 77e9), reference: [0, 0, 1] as const };
    const factors = factorFrame({
      nodes: [0, 2, 4, 6].map((x): Vec3 => [x, 0, 0]),
      members: [0, 1, 2].map((n) => ({ from: n, to: n + 1, ...bar })),
      springs: [],
      supports: [
        { node: 0, held: ALL },
        ...[1, 2, 3].map((node) => ({ node, held: [true, false, true, true, true, false] as const })),
      ],
    });
    const masses = [3, 3, 12].map((mass, k) => ({ node: k + 1, mass, inertia: [0, 0, 0] as const }));
    const found = frameModes(factors, 3, masses).map(({ frequency }) => frequency);
    [4.8581, 53.161, 153.66].forEach((printed, k) => {
      expect(Math.abs((found[k] as number) / printed - 1)).toBeLessThan(1e-3);
    });
  });

  it('S. Timoshenko, D. Young, W. Weaver, 4th ed., problem 1.1-3: a weight on a beam on end springs, 1.876 Hz (read)', () => {
    const s = section(10, 1, 1, 2);
    const bar = { section: s, material: steel(30e6, 11.5e6), reference: [0, 0, 1] as const };
    const axes = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const;
    const factors = factorFrame({
      nodes: [0, 84, 120].map((x): Vec3 => [x, 0, 0]),
      members: [0, 1].map((n) => ({ from: n, to: n + 1, ...bar })),
      springs: [0, 2].map((a) => ({ a, b: null, axes, stiffness: [0, 300, 0, 0, 0, 0] as const })),
      supports: [0, 1, 2].map((node) => ({ node, held: [true, false, true, true, true, false] as const })),
    });
    const found = frameModes(factors, 1, [{ node: 1, mass: 1000 / 386.09, inertia: [0, 0, 0] }]);
    expect(found[0]?.frequency).toBeCloseTo(1.876, 3);
    const moves = solveFrame(factors, { nodes: loads(3, { 1: [0, -1000, 0, 0, 0, 0] }) });
    expect(moves[7]).toBeCloseTo(-2.7801, 3);
  });
});
