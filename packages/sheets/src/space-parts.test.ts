import { openSession } from '@oddwheel/build/session';
import { SMALL_BUILD } from '@oddwheel/build/testing/small-build';
import { cross, dot, minus, norm } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, test } from 'vitest';
import type { Solid, Turned } from './solids.ts';
import { EDGE_NUMBERS } from './space-mesh.ts';
import { type SpacePart, spacePart } from './space-parts.ts';
import { layoutSolids } from './views.ts';

const solid = (shape: Solid['shape'], role: Solid['role'] = 'shaft'): Solid => ({
  of: '/x',
  name: 'x',
  role,
  moves: null,
  sized: true,
  shape,
});
const AXLE: Turned = {
  shape: 'turned',
  at: [10, -20, 30],
  along: [0, 1, 0],
  outline: [
    [0, 10],
    [100, 10],
  ],
  bore: 0,
  teeth: null,
};

const facetsOf = ({ facets }: SpacePart): readonly (readonly [Vec3, Vec3, Vec3])[] =>
  Array.from({ length: facets.length / 9 }, (_, k) => {
    const at = (n: number): Vec3 => [
      facets[9 * k + 3 * n] ?? 0,
      facets[9 * k + 3 * n + 1] ?? 0,
      facets[9 * k + 3 * n + 2] ?? 0,
    ];
    return [at(0), at(1), at(2)];
  });
/** By the divergence theorem, so it is right only for a closed surface whose facets all face the same way. */
const volume = (part: SpacePart): number =>
  Math.abs(facetsOf(part).reduce((sum, [a, b, c]) => sum + dot(a, cross(b, c)) / 6, 0));
const edgesOf = ({ edges }: SpacePart): readonly (readonly number[])[] =>
  Array.from({ length: edges.length / EDGE_NUMBERS }, (_, k) => [
    ...edges.slice(k * EDGE_NUMBERS, (k + 1) * EDGE_NUMBERS),
  ]);
const always = (edge: readonly number[]): boolean => edge.slice(6, 12).every((x) => x === 0);
const seenFrom = (edge: readonly number[], towards: Vec3): boolean => {
  const side = (k: number): number => dot([edge[k] ?? 0, edge[k + 1] ?? 0, edge[k + 2] ?? 0], towards);
  return side(6) * side(9) <= 0;
};

describe('a plain round bar', () => {
  const part = spacePart(solid(AXLE));
  test('has the volume of its many-sided prism, and the box that it takes', () => {
    const sides = facetsOf(part).length / 4;
    const prism = (sides / 2) * 10 * 10 * Math.sin((2 * Math.PI) / sides) * 100;
    expect(volume(part)).toBeCloseTo(prism, 0);
    expect(part.least[1]).toBe(-20);
    expect(part.most[1]).toBe(80);
    expect(part.most[0] - part.least[0]).toBeCloseTo(20, 6);
  });

  test('shows its two end circles always, and from the side two lines along it', () => {
    const edges = edgesOf(part);
    const sides = facetsOf(part).length / 4;
    expect(edges.filter(always)).toHaveLength(2 * sides);
    for (const towards of [
      [0.2, 0, 0.98],
      [0.6, -0.5, 0.3],
      [0.01, 1, 0.02],
    ] as const) {
      const along = edges.filter((edge) => !always(edge) && seenFrom(edge, towards));
      expect(along).toHaveLength(2);
      for (const edge of along) expect(Math.abs((edge[4] ?? 0) - (edge[1] ?? 0))).toBeCloseTo(100, 6);
    }
  });
});

test('a block shows twelve lines, wherever it is seen from, and closes', () => {
  const corners = [0, 30].flatMap((x) => [0, 20].flatMap((y) => [0, 10].map((z): Vec3 => [x, y, z])));
  const part = spacePart(solid({ shape: 'block', corners }, 'keep-out'));
  expect(edgesOf(part)).toHaveLength(12);
  expect(edgesOf(part).every(always)).toBe(true);
  expect(volume(part)).toBeCloseTo(30 * 20 * 10, 6);
  expect([part.line, part.fill]).toEqual(['keep-out', 'tint']);
});

test('a bar that stands aslant has its own length and section', () => {
  const part = spacePart(solid({ shape: 'bar', from: [0, 0, 0], to: [30, 40, 0], size: 6 }, 'tube'));
  expect(volume(part)).toBeCloseTo(50 * 6 * 6, 3);
});

test.each([
  ['without a hub', [], []],
  [
    'with a hub on both sides',
    [
      [30, 20],
      [40, 20],
    ],
    [
      [46, 20],
      [60, 20],
    ],
  ],
] as const)('a sprocket %s has its teeth: as many gaps as its outline has, on both faces', (_, before, after) => {
  const teeth = {
    form: 'sprocket',
    count: 17,
    from: 40,
    to: 46,
    pitch: 43,
    tip: 47,
    root: 38,
    gap: [1, 0, 0],
  } as const;
  const outline: Turned['outline'] = [...before, [40, 47], [46, 47], ...after];
  const part = spacePart(solid({ ...AXLE, outline, teeth }, 'sprocket'));
  const radii = edgesOf(part)
    .filter(always)
    .map((edge) => Math.hypot((edge[0] ?? 0) - 10, (edge[2] ?? 0) - 30));
  expect(radii.filter((r) => Math.abs(r - 38) < 0.01)).toHaveLength(2 * 17);
  expect(Math.max(...radii)).toBeCloseTo(47, 3);
  expect(part.most[1] - part.least[1]).toBeCloseTo(before.length === 0 ? 6 : 30, 6);
  // A hub is drawn as its own two ends and where it meets the disc.
  expect(radii.some((r) => Math.abs(r - 20) < 0.01)).toBe(before.length > 0);
});

describe('the parts of a build', () => {
  const opened = openSession(JSON.stringify(SMALL_BUILD));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { evaluation, assessment } = opened.session;
  const solids = layoutSolids(evaluation.middle.scene, assessment, 0);
  const parts = solids.map(spacePart);

  test('are all there, with finite numbers and lines that have a length', () => {
    expect(parts.map(({ of }) => of)).toEqual(solids.map(({ of }) => of));
    for (const part of parts) {
      expect(part.edges.every(Number.isFinite)).toBe(true);
      expect(part.facets.every(Number.isFinite)).toBe(true);
      expect(part.edges.length).toBeGreaterThan(0);
      for (const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] of edgesOf(part))
        expect(norm(minus([a, b, c], [d, e, f]))).toBeGreaterThan(1e-6);
    }
  });

  test('a chain has two plates a link', () => {
    const k = solids.findIndex(({ role }) => role === 'chain');
    const [chain, part] = [solids[k], parts[k]];
    if (chain?.shape.shape !== 'loop' || !part) throw new Error('no chain');
    expect(facetsOf(part)).toHaveLength(2 * 2 * chain.shape.pins.length);
  });
});
