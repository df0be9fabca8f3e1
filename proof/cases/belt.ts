import type { ProofCase } from './case.ts';
import { constructed, khurmi } from './sources.ts';

/** Pulleys with circles instead of teeth are put as toothed ones: diameter = teeth × pitch / π. */
const PLAIN =
  'Plain pulleys, put here as toothed ones of the same diameter. The book’s rule for the length is an approximation.';

export const BELT_CASES: readonly ProofCase[] = [
  {
    method: 'belt.length',
    id: 'belt-length-khurmi-11-15',
    given: { pitch: '3.141592653589793 mm', teethDriver: 240, teethDriven: 600, centreDistance: '3 m' },
    expect: { length: { value: '7.33 m', within: { abs: '0.005 m' } } },
    source: khurmi('Example 11.15, p. 356', 'ch11'),
    kind: 'published-example',
    note: PLAIN,
  },
  {
    method: 'belt.length',
    id: 'belt-length-khurmi-11-19',
    given: { pitch: '1.0471975511965976 mm', teethDriver: 1000, teethDriven: 3000, centreDistance: '1.75 m' },
    expect: { length: { value: '5.66 m', within: { abs: '0.005 m' } } },
    source: khurmi('Example 11.19, p. 363', 'ch11'),
    kind: 'published-example',
    note: PLAIN,
  },
  {
    method: 'belt.length',
    id: 'belt-length-at10',
    given: { pitch: '10 mm', teethDriver: 25, teethDriven: 25, centreDistance: '625 mm' },
    expect: { length: { value: '1500 mm', within: { abs: '0.01 mm' } } },
    source: {
      title: 'A belt maker’s catalogue, T and AT profiles',
      at: 'calculation example, AT10',
      how: 'read',
      address: 'ArtemFilin1990/Mar, commit 7b871a5',
    },
    kind: 'published-example',
  },
  {
    method: 'belt.centreDistance',
    id: 'belt-centres-3m',
    given: { pitch: '3 mm', teethDriver: 20, teethDriven: 20, beltTeeth: 312 },
    expect: {
      centreDistance: { value: '438.000 mm', within: { abs: '0.01 mm' } },
      pitchRadiusDriver: { value: '9.5495 mm', within: { abs: '0.001 mm' } },
    },
    source: {
      title: 'A calculation sheet citing the Chinese mechanical design handbook, ISO 5295 family',
      at: 'toothed belt 3M, shaft load',
      how: 'read',
      address: 'xiaomilidoc.com/p-12235936',
    },
    kind: 'published-example',
    note: 'Printed as a pitch diameter of 19.099 mm.',
  },
  {
    method: 'belt.centreDistance',
    id: 'belt-centres-8m-28-80',
    given: { pitch: '8 mm', teethDriver: 28, teethDriven: 80, beltTeeth: 150 },
    expect: {
      centreDistance: { value: '378.19 mm', within: { abs: '0.01 mm' } },
      wrapDriver: { value: '159.835 deg', within: { abs: '0.02 deg' } },
      pitchRadiusDriver: { value: '35.6507 mm', within: { abs: '0.0025 mm' } },
      pitchRadiusDriven: { value: '101.859 mm', within: { abs: '0.0025 mm' } },
    },
    source: constructed('Own computation: belt pitch line on circles, ISO 13050 pitch'),
    kind: 'constructed',
  },
];
