import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

const mm = (value: number) => ({ value: `${value} mm`, within: { abs: '1 um' } });

const shop = (process: string, address: string) =>
  ({ title: `Design rules of a ${process} cutting shop`, at: 'metal between features', how: 'read', address }) as const;
const PLASMA = shop('plasma', 'newayprecision.com/services/plasma-cutting');
const LASER = shop('laser', 'smslaserfab.com/resources/laser-cutting-design-rules');
const rule = (row: string) => ({
  times: { row: `cutting-rules/${row}`, field: 'web' },
  floor: { row: `cutting-rules/${row}`, field: 'floor' },
});

export const PLATE_CASES: readonly ProofCase[] = [
  {
    method: 'plate.web',
    id: 'plate-web-8-mm-plasma',
    given: { width: '100 mm', hole: '60 mm', thickness: '8 mm', ...rule('plasma cut') },
    expect: { least: mm(12), web: mm(20) },
    source: PLASMA,
    kind: 'table-spot',
  },
  {
    method: 'plate.web',
    id: 'plate-web-8-mm-laser',
    given: { width: '100 mm', hole: '60 mm', thickness: '8 mm', ...rule('laser cut') },
    expect: { least: mm(8), web: mm(20) },
    source: LASER,
    kind: 'table-spot',
  },
  {
    method: 'plate.web',
    id: 'plate-web-12-mm-plasma',
    given: { width: '100 mm', hole: '70 mm', thickness: '12 mm', ...rule('plasma cut') },
    expect: { least: mm(18), web: mm(15), leastWidth: mm(106) },
    source: PLASMA,
    kind: 'table-spot',
  },
  {
    method: 'plate.web',
    id: 'plate-web-47-in-2-in',
    given: { width: '2 in', hole: '47 mm', thickness: '6.35 mm', ...rule('laser cut') },
    expect: { web: mm(1.9), least: mm(6.35), leastWidth: mm(59.7) },
    source: constructed('Half of what the hole leaves; 59.7 mm is 2.35 in, next eighth 2 3/8 in'),
    kind: 'constructed',
  },
  {
    method: 'plate.lug',
    id: 'plate-pin-connected-member',
    given: {
      thickness: '0.5 in',
      pin: '1 in',
      ahead: '2.25 in',
      beside: '1.61 in',
      tensile: '58000 psi',
      yieldStrength: '36000 psi',
    },
    expect: {
      tearsBeside: { value: '93400 lbf', within: { rel: 0.002 } },
      tearsAhead: { value: '95700 lbf', within: { rel: 0.002 } },
      crushes: { value: '32400 lbf', within: { rel: 0.002 } },
      counted: { value: '1.61 in', within: { abs: '1 um' } },
    },
    source: {
      title: 'AISC Design Examples',
      at: 'example D.7, pin-connected tension member',
      how: 'read',
      address: 'scribd.com/document/429295284',
    },
    kind: 'published-example',
  },
  {
    method: 'plate.strength',
    id: 'plate-beside-a-push',
    given: { lengthwise: '40 kN', crosswise: '20 kN', square: '8 kN', angle: '0 deg', push: '2 kN' },
    expect: { force: { value: '30 kN', within: { rel: 1e-9 } } },
    source: constructed('A quarter of the plate is taken by the push'),
    kind: 'constructed',
  },
];
