import { add, branch, choose, div, fn, mul, num, pow, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.gearLimits';

const inputs = {
  bevel: {
    form: 'integer',
    symbol: 'k',
    meaning: '1 for a bevel gear, 0 for a cylindrical one',
    range: { min: 0, max: 1 },
    default: 0,
  },
  diameter: {
    form: 'value',
    kind: 'length',
    symbol: 'd',
    meaning: 'reference diameter; of a bevel gear its tolerance diameter',
    range: ABOVE_ZERO,
  },
  module: {
    form: 'value',
    kind: 'length',
    symbol: 'm_n',
    meaning: 'normal module; of a bevel gear the mean one',
    range: ABOVE_ZERO,
  },
  grade: { form: 'integer', symbol: 'A', meaning: 'tolerance class', range: { min: 1, max: 12 } },
} as const satisfies Params;

/**
 * Run-out that a gear's tolerance class allows its teeth.
 *
 * Errors: a class outside 1..12, a size not above zero.
 */
export const gearLimits = defineMethod({
  id,
  gives: 'Run-out that a gear’s own tolerance class allows, and half of it for its mounting',
  inputs,
  outputs: {
    runout: { form: 'value', kind: 'length', symbol: 'F_r', meaning: 'greatest run-out of the teeth' },
    mounting: {
      form: 'value',
      kind: 'length',
      symbol: 'T_m',
      meaning: 'TIR of its seat that spoils no class: half of it',
    },
    d: { form: 'value', kind: 'number', symbol: 'd_mm', meaning: 'diameter in millimetres' },
    micrometre: { form: 'value', kind: 'length', symbol: 'µm', meaning: 'one micrometre, the unit of the rule' },
    m: { form: 'value', kind: 'number', symbol: 'm_mm', meaning: 'module in millimetres' },
  },
  results: ['runout', 'mounting'],
  steps: [
    {
      key: 'runout',
      is: mul(
        'micrometre',
        choose(
          [
            branch(
              when('bevel', '=', 1),
              mul(0.8, add(mul(0.025, 'd'), mul(0.3, 'm'), 19), pow(num(Math.SQRT2, '√2'), sub('grade', 4))),
            ),
          ],
          mul(
            0.9,
            add(mul(0.002, 'd'), mul(0.55, fn('sqrt', 'd')), mul(0.7, 'm'), 12),
            pow(num(Math.SQRT2, '√2'), sub('grade', 5)),
          ),
        ),
      ),
      says: 'Micrometres, with diameter and module in millimetres; each class is √2 wider than the one before.',
    },
    { key: 'mounting', is: div('runout', 2), says: 'Half is left for the seat.' },
  ],
  sources: [
    { title: 'ISO 1328-1', edition: '2013', at: 'run-out of cylindrical gears', how: 'memory' },
    { title: 'ISO 17485', edition: '2006', at: 'run-out of bevel gears', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const [d, m] = [input.diameter * 1000, input.module * 1000];
    const micrometres =
      input.bevel === 1
        ? 0.8 * (0.025 * d + 0.3 * m + 19) * Math.SQRT2 ** (input.grade - 4)
        : 0.9 * (0.002 * d + 0.55 * Math.sqrt(d) + 0.7 * m + 12) * Math.SQRT2 ** (input.grade - 5);
    return { runout: micrometres * 1e-6, mounting: micrometres * 0.5e-6, d, m, micrometre: 1e-6 };
  },
});
