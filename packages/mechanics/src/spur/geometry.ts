import { add, div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'spur.geometry';

const inputs = {
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 5 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven gear', range: { min: 5 } },
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Sizes of an external pair of straight spur gears.
 *
 * Errors: teeth that are no whole number of at least 5, module not above zero.
 */
export const spurGeometry = defineMethod({
  id,
  gives: 'Diameters, centre distance and ratio of a pair of spur gears',
  inputs,
  outputs: {
    pitchDiameterDriver: { form: 'value', kind: 'length', symbol: 'd_1', meaning: 'pitch diameter of the driver' },
    pitchDiameterDriven: { form: 'value', kind: 'length', symbol: 'd_2', meaning: 'pitch diameter of the driven gear' },
    outsideDiameterDriver: { form: 'value', kind: 'length', symbol: 'd_a1', meaning: 'outside diameter of the driver' },
    outsideDiameterDriven: {
      form: 'value',
      kind: 'length',
      symbol: 'd_a2',
      meaning: 'outside diameter of the driven gear',
    },
    centreDistance: { form: 'value', kind: 'length', symbol: 'a', meaning: 'centre distance' },
    ratio: { form: 'value', kind: 'ratio', symbol: 'i', meaning: 'input speed over output speed' },
  },
  results: [
    'pitchDiameterDriver',
    'pitchDiameterDriven',
    'outsideDiameterDriver',
    'outsideDiameterDriven',
    'centreDistance',
    'ratio',
  ],
  steps: [
    { key: 'pitchDiameterDriver', is: mul('module', 'teethDriver'), says: 'Module times teeth.' },
    { key: 'pitchDiameterDriven', is: mul('module', 'teethDriven'), says: 'Module times teeth.' },
    {
      key: 'outsideDiameterDriver',
      is: add('pitchDiameterDriver', mul(2, 'module')),
      says: 'Teeth stand one module out.',
    },
    {
      key: 'outsideDiameterDriven',
      is: add('pitchDiameterDriven', mul(2, 'module')),
      says: 'Teeth stand one module out.',
    },
    {
      key: 'centreDistance',
      is: div(add('pitchDiameterDriver', 'pitchDiameterDriven'), 2),
      says: 'The pitch circles touch.',
    },
    { key: 'ratio', is: div('teethDriven', 'teethDriver'), says: 'As many teeth pass on one gear as on the other.' },
  ],
  sources: [
    {
      title: 'Theory of Machines (Khurmi, Gupta)',
      at: 'example 13.3, centre distance of a reverted train',
      how: 'read',
    },
    { title: 'ISO 53, basic rack: addendum of one module', how: 'memory' },
  ],
  holds: ['External pair, straight teeth of full depth, no profile shift.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teethDriver, teethDriven, module } = input;
    const pitchDiameterDriver = module * teethDriver;
    const pitchDiameterDriven = module * teethDriven;
    return {
      pitchDiameterDriver,
      pitchDiameterDriven,
      outsideDiameterDriver: pitchDiameterDriver + 2 * module,
      outsideDiameterDriven: pitchDiameterDriven + 2 * module,
      centreDistance: (pitchDiameterDriver + pitchDiameterDriven) / 2,
      ratio: teethDriven / teethDriver,
    };
  },
});
