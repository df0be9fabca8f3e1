import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

/** Distances of solids by plain geometry; no published worked example was found. */
export const CLEARANCE_CASES: readonly ProofCase[] = [
  {
    method: 'clearance.distance',
    id: 'clearance-two-cylinders-side-by-side',
    given: {
      shapeA: 'cylinder',
      fromA: [0, 0, 0],
      toA: [0, 0.1, 0],
      acrossA: [0, 0, 0],
      radiusA: '30 mm',
      shapeB: 'cylinder',
      fromB: [0.1, 0.02, 0],
      toB: [0.1, 0.08, 0],
      acrossB: [0, 0, 0],
      radiusB: '50 mm',
    },
    expect: { distance: { value: '20 mm', within: { abs: '0.001 mm' } } },
    source: constructed('Axes 100 mm apart, radii of 30 and 50 mm'),
    kind: 'constructed',
  },
  {
    method: 'clearance.distance',
    id: 'clearance-ball-and-box',
    given: {
      shapeA: 'capsule',
      fromA: [0.3, 0.4, 0],
      toA: [0.3, 0.4, 0],
      acrossA: [0, 0, 0],
      radiusA: '100 mm',
      shapeB: 'box',
      fromB: [-1, -1, -1],
      toB: [0, 0, 1],
      acrossB: [0, 0, 0],
    },
    expect: { distance: { value: '400 mm', within: { abs: '0.001 mm' } } },
    source: constructed('A ball beside the edge of a box: 300 and 400 mm off, 500 mm in all, less its radius'),
    kind: 'constructed',
  },
];
