import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { factorFrame } from './factor.ts';
import { memberForces, nodeResistance, solveFrame, springForces } from './solve.ts';
import type { Held, Material, Member, Section, Structure } from './structure.ts';

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
const six = (moves: Float64Array, node: number): number[] => [...moves.subarray(6 * node, 6 * node + 6)];

describe('A. J. M. Ferreira, MATLAB Codes for Finite Element Analysis (2009), example 8.3: first space frame', () => {
  const s = section(0.02, 1e-4, 2e-4, 5e-5);
  const material = steel(210e9, 84e9);
  const member = (to: number, reference: Vec3): Member => ({ from: 0, to, section: s, material, reference });
  const structure: Structure = {
    nodes: [
      [0, 0, 0],
      [3, 0, 0],
      [0, 0, -3],
      [0, -4, 0],
    ],
    members: [member(1, [0, 0, 1]), member(2, [1, 0, 0]), member(3, [0, 0, 1])],
    springs: [],
    supports: [1, 2, 3].map((node) => ({ node, held: ALL })),
  };
  const factors = factorFrame(structure);
  const moves = solveFrame(factors, { nodes: loads(4, { 0: [-10e3, 0, 20e3, 0, 0, 0] }) });

  it('moves the joint by (−7.05, −0.07, 14.18) µm and (1.45, 1.75, 1.14) µrad (read)', () => {
    const printed = [-7.05e-6, -7e-8, 1.418e-5, 1.45e-6, 1.75e-6, 1.14e-6];
    six(moves, 0).forEach((x, k) => {
      expect(Math.abs(x - (printed[k] as number))).toBeLessThan(0.005 * (k < 3 ? 1.418e-5 : 1.75e-6));
    });
  });

  it('balances: what the members do to the joint is the load, and the feet take it all', () => {
    const holds = nodeResistance(factors, moves);
    expect(holds[0]).toBeCloseTo(-10e3, 6);
    expect(holds[2]).toBeCloseTo(20e3, 6);
    for (const axis of [0, 1, 2]) {
      const sum = [0, 1, 2, 3].reduce((all, node) => all + (holds[6 * node + axis] as number), 0);
      expect(Math.abs(sum)).toBeLessThan(1e-6);
    }
  });
});

describe('W. Weaver, Computer Programs for Structural Analysis (1967), p. 146, problem 8', () => {
  const material = steel(30000, 12000);
  const s = section(11, 56, 56, 83);
  const member = (from: number, to: number): Member => ({ from, to, section: s, material, reference: [0, 0, 1] });
  const factors = factorFrame({
    nodes: [
      [0, 120, 0],
      [240, 120, 0],
      [0, 0, 0],
      [360, 0, 120],
    ],
    members: [member(0, 1), member(2, 0), member(1, 3)],
    springs: [],
    supports: [2, 3].map((node) => ({ node, held: ALL })),
  });
  const moves = solveFrame(factors, { nodes: loads(4, { 0: [2, 0, 0, 0, 0, 0], 1: [0, -1, 0, 0, 0, -120] }) });
  const near = (found: number[], printed: number[], unit: number): void =>
    found.forEach((x, k) => {
      expect(Math.abs(x - (printed[k] as number))).toBeLessThanOrEqual(unit);
    });

  it('gives the printed movements in inches and radians, to half a unit of the last digit (read)', () => {
    near(six(moves, 0), [0.22267, 0.00016, -0.17182, -0.00255, 0.00217, -0.00213], 0.6e-5);
    near(six(moves, 1), [0.22202, -0.48119, -0.70161, -0.00802, 0.00101, -0.00435], 0.6e-5);
  });

  it('gives the printed reactions at both feet, kip and kip·in (read)', () => {
    const holds = nodeResistance(factors, moves);
    near(six(holds, 2), [-1.1041, -0.43222, 0.21731, 48.785, -17.973, 96.122], 0.006);
    near(six(holds, 3), [-0.89588, 1.4322, -0.21731, 123.08, 47.246, -11.72], 0.006);
  });
});

describe('AFNOR, Guide de validation (1990), SSLL 04/89: frame with ball joint and springs', () => {
  const s = section(1e-3, 1e-6, 1e-6, 2e-6);
  const material = steel(210e9, 210e9 / (2 * (1 + 1 / 3)));
  const member = (from: number, to: number, reference: Vec3): Member => ({ from, to, section: s, material, reference });
  const X: Vec3 = [1, 0, 0];
  const axes = [X, [0, 1, 0], [0, 0, 1]] as const;
  const factors = factorFrame({
    // A, B, C, D, and the two halves of the joint.
    nodes: [
      [0, 2, 1],
      [2, 0, -1],
      [0, 0, -1],
      [0, 0, 1],
      [0, 0, 0],
      [0, 0, 0],
    ],
    members: [member(0, 3, [0, 0, 1]), member(2, 1, [0, 0, 1]), member(3, 4, X), member(5, 2, X)],
    springs: [
      { a: 0, b: null, axes, stiffness: [0, 52500, 0, 52500, 0, 52500] },
      { a: 1, b: null, axes, stiffness: [52500, 0, 0, 0, 52500, 52500] },
    ],
    supports: [
      { node: 0, held: [true, false, true, false, true, false] },
      { node: 1, held: [false, true, true, true, false, false] },
    ],
    ties: [{ node: 5, to: 4, moves: [true, true, true, false, false, false] }],
  });
  const moves = solveFrame(factors, { nodes: loads(6, { 3: [0, 0, -10000, 0, 0, 0] }) });

  it('A moves −29.762 mm along y and turns 0.16073 and −0.05952 rad; C moves (29.773, 138.889, −370.021) mm (read)', () => {
    const a = six(moves, 0);
    expect(a[1]).toBeCloseTo(-0.02976196, 4);
    expect(a[3]).toBeCloseTo(0.16072649, 4);
    expect(a[5]).toBeCloseTo(-0.05951626, 4);
    const c = six(moves, 2);
    for (const [k, printed] of [0.02977301, 0.13888914, -0.37002052].entries())
      expect(Math.abs((c[k] as number) / printed - 1)).toBeLessThan(1e-3);
  });

  it('the moments at A are 1562.3, 8438.1 and 3124.6 N·m (read)', () => {
    const end = memberForces(factors, 0, moves);
    const [twist, my, mz] = [3, 4, 5].map((k) => Math.abs(end[k] as number)) as [number, number, number];
    expect(twist / 1562.3).toBeCloseTo(1, 3);
    expect(my / 8438.1).toBeCloseTo(1, 3);
    expect(mz / 3124.6).toBeCloseTo(1, 3);
    const spring = springForces(factors, 0, moves);
    expect(Math.abs(spring[3] as number) / 8438.1).toBeCloseTo(1, 3);
  });
});

describe('McGuire, Gallagher, Ziemian, Matrix Structural Analysis, 2nd ed., example 4.12: torsion and bending', () => {
  const factors = factorFrame({
    nodes: [
      [0, 0, 0],
      [8000, 0, 0],
      [13000, 0, 0],
    ],
    members: [
      { from: 0, to: 1, section: section(6000, 2e8, 2e8, 3e5), material: steel(2e5, 2e5 / 2.6), reference: [0, 0, 1] },
      { from: 1, to: 2, section: section(4000, 5e7, 5e7, 1e5), material: steel(2e5, 2e5 / 2.6), reference: [0, 0, 1] },
    ],
    springs: [],
    supports: [0, 2].map((node) => ({ node, held: ALL })),
  });
  const moves = solveFrame(factors, { nodes: loads(3, { 1: [0, -1000, 0, 40000, 0, 0] }) });

  it('sinks 0.545 mm and turns −2.63e-5 rad; moments at the ends as in the public test of it (read)', () => {
    expect((moves[7] as number) / -0.545).toBeCloseTo(1, 2);
    expect(moves[11]).toBeCloseTo(-2.63e-5, 6);
    const ends = nodeResistance(factors, moves);
    expect((ends[5] as number) / 1783365).toBeCloseTo(1, 3);
    expect((ends[17] as number) / -1414998).toBeCloseTo(1, 3);
    expect((ends[3] as number) / -26087).toBeCloseTo(1, 3);
    expect((ends[15] as number) / -13913).toBeCloseTo(1, 3);
  });
});

describe('AFNOR, Guide de validation (1990), SSLL 05/89: two bars with their tips joined by a rigid link', () => {
  // Clamped at x = 0, 0.2 m apart; the second bar's tip stands off the shared node.
  const s = section(1e-2, 4 / 3e8, 4 / 3e8, 1e-8);
  const material = steel(200e9, 77e9);
  const factors = factorFrame({
    nodes: [
      [0, 0, 0],
      [0, 0.2, 0],
      [2, 0, 0],
    ],
    members: [
      { from: 0, to: 2, section: s, material, reference: [0, 0, 1] },
      { from: 1, to: 2, section: s, material, reference: [0, 0, 1], toOffset: [0, 0.2, 0] },
    ],
    springs: [],
    supports: [0, 1].map((node) => ({ node, held: ALL })),
  });
  const moves = solveFrame(factors, { nodes: loads(3, { 2: [0, -1000, 0, 0, 0, 0] }) });

  it('the tip sinks 0.125 m, and each bar is clamped with 500 N·m (read; the bars are all but rigid along their length)', () => {
    expect(Math.abs((moves[13] as number) / -0.125 - 1)).toBeLessThan(3e-3);
    for (const bar of [0, 1])
      expect(Math.abs((memberForces(factors, bar, moves)[5] as number) / 500 - 1)).toBeLessThan(3e-3);
  });
});

describe('R. E. Sennett, Matrix Analysis of Structures, section 3.8: a support that sinks', () => {
  const s = section(1, 1, 0.1, 1);
  const bar = { section: s, material: steel(29e6, 11e6), reference: [0, 0, 1] as const };
  const factors = factorFrame({
    nodes: [
      [0, 0, 0],
      [120, 0, 0],
      [240, 0, 0],
    ],
    members: [
      { from: 0, to: 1, ...bar },
      { from: 1, to: 2, ...bar },
    ],
    springs: [],
    supports: [
      { node: 0, held: ALL },
      { node: 1, held: [false, true, true, true, true, false] },
      { node: 2, held: [false, true, true, true, true, false] },
    ],
  });
  const forced = loads(3, { 1: [0, -0.25, 0, 0, 0, 0] });
  const moves = solveFrame(factors, { nodes: new Float64Array(18), forced });

  it('EI = 2.9e6 lb·in², 0.25 in: reactions 3.9558, −5.754, 1.7981 lb, clamp 258.93 lb·in (read)', () => {
    const holds = nodeResistance(factors, moves);
    expect(Math.abs(holds[1] as number)).toBeCloseTo(3.9558, 3);
    expect(Math.abs(holds[5] as number)).toBeCloseTo(258.929, 1);
    expect(Math.abs(holds[7] as number)).toBeCloseTo(5.754, 3);
    expect(Math.abs(holds[13] as number)).toBeCloseTo(1.7981, 3);
  });
});

describe('shear bending and springs against closed forms', () => {
  it('cantilever of SHS 40 × 3, 500 N at 300 mm: 0.22983 mm from bending and 0.01013 mm from shear (Cowper 1966; memory)', () => {
    const kappa = (20 * 1.3) / (48 + 39 * 0.3);
    const tube: Section = {
      area: 420.823e-6,
      iy: 93235.6e-12,
      iz: 93235.6e-12,
      torsion: 15.8e-8,
      shearY: kappa * 420.823e-6,
      shearZ: kappa * 420.823e-6,
    };
    const factors = factorFrame({
      nodes: [
        [0, 0, 0],
        [0, 0.3, 0],
      ],
      members: [{ from: 0, to: 1, section: tube, material: steel(210e9, 210e9 / 2.6), reference: [0, 0, 1] }],
      springs: [],
      supports: [{ node: 0, held: ALL }],
    });
    for (const [axis, six] of [
      [0, [500, 0, 0, 0, 0, 0]],
      [2, [0, 0, 500, 0, 0, 0]],
    ] as const) {
      const moves = solveFrame(factors, { nodes: loads(2, { 1: six }) });
      expect(moves[6 + axis]).toBeCloseTo(0.229833e-3 + 0.0101332e-3, 8);
    }
  });

  it('a load before a third sprung bearing divides as the flexibilities say', () => {
    // Simple beam on three springs at 0, 1 and 2 m with a load over the middle one: compatibility of the middle.
    const [E, I, L, k, P] = [200e9, 2e-8, 1, 4e5, 1000];
    const s = section(1e-3, I, I, 4e-8);
    const axes = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const;
    const bearing = (a: number, stiffness: number) => ({
      a,
      b: null,
      axes,
      stiffness: [0, stiffness, stiffness, 0, 0, 0] as const,
    });
    const reactions = (middle: number): number => {
      const factors = factorFrame({
        nodes: [
          [0, 0, 0],
          [L, 0, 0],
          [2 * L, 0, 0],
        ],
        members: [0, 1].map((n) => ({
          from: n,
          to: n + 1,
          section: s,
          material: steel(E, 80e9),
          reference: [0, 0, 1] as const,
        })),
        springs: [bearing(0, k), bearing(1, middle), bearing(2, k)],
        supports: [{ node: 0, held: [true, false, false, true, false, false] }],
      });
      const moves = solveFrame(factors, { nodes: loads(3, { 1: [0, 0, -P, 0, 0, 0] }) });
      return -(springForces(factors, 1, moves)[2] as number);
    };
    const beam = (48 * E * I) / (2 * L) ** 3;
    const ends = 1 / (1 / beam + 1 / (2 * k));
    for (const middle of [k, k / 2]) expect(Math.abs(reactions(middle))).toBeCloseTo((P * middle) / (middle + ends), 6);
    expect(Math.abs(reactions(k / 2))).toBeLessThan(Math.abs(reactions(k)));
  });
});

describe('faults are named', () => {
  const s = section(1e-3, 1e-8, 1e-8, 2e-8);
  const material = steel(200e9, 77e9);
  const bar = { section: s, material, reference: [0, 0, 1] as const };
  it('a member along its reference, one without length, and a node that nothing holds', () => {
    const of = (nodes: Vec3[], supports: Structure['supports']): Structure => ({
      nodes,
      members: [{ from: 0, to: 1, ...bar }],
      springs: [],
      supports,
    });
    const held = [{ node: 0, held: ALL }];
    expect(() =>
      factorFrame(
        of(
          [
            [0, 0, 0],
            [0, 0, 1],
          ],
          held,
        ),
      ),
    ).toThrow(/reference of member 0/);
    expect(() =>
      factorFrame(
        of(
          [
            [0, 0, 0],
            [0, 0, 0],
          ],
          held,
        ),
      ),
    ).toThrow(/no length/);
    expect(() =>
      factorFrame(
        of(
          [
            [0, 0, 0],
            [1, 0, 0],
          ],
          [],
        ),
      ),
    ).toThrow(/Nothing holds node/);
    expect(() =>
      factorFrame(
        of(
          [
            [0, 0, 0],
            [1, 0, 0],
          ],
          [{ node: 0, held: [true, true, true, true, true, false] }],
        ),
      ),
    ).toThrow(/Nothing holds node/);
  });
});
