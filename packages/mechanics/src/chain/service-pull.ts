import { add, div, mul, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.servicePull';

const inputs = {
  pull: { form: 'value', kind: 'force', symbol: 'F_t', meaning: 'pull that the torque asks for', range: { min: 0 } },
  mass: {
    form: 'value',
    kind: 'linearDensity',
    symbol: 'q',
    meaning: 'mass of the chain per length, all strands',
    range: { min: 0 },
  },
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'speed of the chain', range: { min: 0 } },
  minTensile: {
    form: 'value',
    kind: 'force',
    symbol: 'F_u',
    meaning: 'least tensile strength, all strands',
    range: ABOVE_ZERO,
  },
  part: {
    form: 'value',
    kind: 'number',
    symbol: 'n',
    meaning: 'strength over the pull allowed: 6, and 9 with a slip-fit joining link',
    range: { min: 1 },
    default: 6,
  },
} as const satisfies Params;

/**
 * Pull in the tight span with what the chain’s own turning adds, against the part of its strength that service may use.
 *
 * Errors: a pull, mass or speed below zero, a strength not above zero, a part below 1.
 */
export const chainServicePull = defineMethod({
  id,
  gives: 'Pull of a chain in service, with its centrifugal part, and the pull that service may use',
  inputs,
  outputs: {
    total: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull in plates and pins' },
    centrifugal: { form: 'value', kind: 'force', symbol: 'F_c', meaning: 'centrifugal part, in every link' },
    limit: { form: 'value', kind: 'force', symbol: 'F_s', meaning: 'pull that service may use' },
  },
  results: ['total', 'centrifugal', 'limit'],
  steps: [
    {
      key: 'centrifugal',
      is: mul('mass', pow('speed', 2)),
      says: 'The chain pulls itself outward on both sprockets; the shafts do not feel it.',
    },
    { key: 'total', is: add('pull', 'centrifugal'), says: 'What plates and pins feel.' },
    { key: 'limit', is: div('minTensile', 'part'), says: 'The part of its strength that service may use.' },
  ],
  sources: [
    {
      title: 'A chain maker’s technical engineering guide',
      at: 'service pull up to a sixth of the tensile strength',
      how: 'read',
    },
    { title: 'An encyclopedia article on roller chain', at: 'a ninth with a slip-fit joining link', how: 'read' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const centrifugal = input.mass * input.speed ** 2;
    return { total: input.pull + centrifugal, centrifugal, limit: input.minTensile / input.part };
  },
});
