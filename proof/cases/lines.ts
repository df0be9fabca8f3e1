import type { ProofCase } from './case.ts';

const GUIDE = {
  title: 'The Complete Guide to Chain',
  at: 'section 7.1.2.2',
  how: 'read',
  address: 'chain-guide.com/basics/7-1-2-2-horizontal-precision-parallelism-shafts.html',
} as const;

const run = (centre: string) => ({
  seatDriver: ['0 mm', '0 mm', '0 mm'],
  directionDriver: [0, 1, 0],
  seatDriven: [centre, '0 mm', '0 mm'],
  directionDriven: [0, 1, 0],
});

/** Limits that the layout of a drive is held to. */
export const LINE_CASES: readonly ProofCase[] = [
  {
    method: 'chain.alignment',
    id: 'chain-line-600',
    given: run('600 mm'),
    expect: {
      offsetLimit: { value: '1 mm', within: { abs: '0.000001 mm' } },
      angleLimit: { value: '0.190985 deg', within: { abs: '0.000001 deg' } },
    },
    source: GUIDE,
    kind: 'table-spot',
    note: 'Offset of the sprocket faces up to 1 m; shafts parallel within 1/300.',
  },
  {
    method: 'chain.alignment',
    id: 'chain-line-2000',
    given: run('2 m'),
    expect: { offsetLimit: { value: '2 mm', within: { abs: '0.000001 mm' } } },
    source: GUIDE,
    kind: 'table-spot',
    note: 'A thousandth of the centre distance, from 1 m to 10 m.',
  },
];
