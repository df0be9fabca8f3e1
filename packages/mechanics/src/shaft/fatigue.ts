import { add, branch, choose, div, fn, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { MODULUS_OUTPUT, MODULUS_STEP, modulusOf, SECTION_INPUTS } from './section.ts';

const id = 'shaft.fatigue';

const moment = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'torque', symbol, meaning, range: { min: 0 } }) as const;
const notch = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'number', symbol, meaning, range: { min: 1, max: 20 }, default: 1 }) as const;

const inputs = {
  ...SECTION_INPUTS,
  bendingSwing: moment('M_a', 'bending moment that swings: on a turning shaft all of it'),
  bendingMean: { ...moment('M_m', 'steady bending moment'), default: 0 },
  torqueSwing: { ...moment('T_a', 'torque that swings about its mean'), default: 0 },
  torqueMean: moment('T_m', 'mean torque'),
  notchBending: notch('K_f', 'fatigue notch factor in bending'),
  notchTorsion: notch('K_fs', 'fatigue notch factor in torsion'),
  endurance: {
    form: 'value',
    kind: 'pressure',
    symbol: 'S_e',
    meaning: 'endurance limit of the part',
    range: ABOVE_ZERO,
  },
  tensile: { form: 'value', kind: 'pressure', symbol: 'S_ut', meaning: 'tensile strength', range: ABOVE_ZERO },
  yieldStrength: { form: 'value', kind: 'pressure', symbol: 'S_y', meaning: 'yield strength', range: ABOVE_ZERO },
  criterion: {
    form: 'choice',
    symbol: 'k',
    meaning: 'fatigue criterion',
    choices: ['Goodman', 'Gerber', 'ASME elliptic', 'Soderberg'],
    default: 'Goodman',
  },
} as const satisfies Params;

/** The criteria as numbers, so that the shown tree can choose. */
const NUMBER = { Goodman: 1, Gerber: 2, 'ASME elliptic': 3, Soderberg: 4 } as const;

const squares = (a: string, b: string, c: string, d: string) =>
  fn('sqrt', add(mul(4, pow(mul(a, b), 2)), mul(3, pow(mul(c, d), 2))));

/**
 * Reserve against fatigue of a round section for ever, by one of four criteria.
 *
 * Errors: sizes, strengths or notch factors out of range, a bore as large as the shaft, no moment at all.
 */
export const shaftFatigue = defineMethod({
  id,
  gives: 'Reserve of a shaft’s section against fatigue under bending and torque',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'reserve against fatigue' },
    swing: { form: 'value', kind: 'pressure', symbol: 'σ_a', meaning: 'equivalent stress that swings' },
    mean: { form: 'value', kind: 'pressure', symbol: 'σ_m', meaning: 'equivalent mean stress' },
    ...MODULUS_OUTPUT,
    swingMoment: { form: 'value', kind: 'torque', symbol: 'A', meaning: 'equivalent moment that swings' },
    meanMoment: { form: 'value', kind: 'torque', symbol: 'B', meaning: 'equivalent mean moment' },
    which: { form: 'integer', symbol: 'k_n', meaning: 'criterion: 1 Goodman, 2 Gerber, 3 ASME elliptic, 4 Soderberg' },
  },
  results: ['reserve', 'swing', 'mean'],
  steps: [
    MODULUS_STEP,
    {
      key: 'swingMoment',
      is: squares('notchBending', 'bendingSwing', 'notchTorsion', 'torqueSwing'),
      says: 'What swings, bending and torsion together.',
    },
    {
      key: 'meanMoment',
      is: squares('notchBending', 'bendingMean', 'notchTorsion', 'torqueMean'),
      says: 'What stays, bending and torsion together.',
    },
    { key: 'swing', is: div('swingMoment', mul(2, 'modulus')), says: 'Equivalent stress that swings.' },
    { key: 'mean', is: div('meanMoment', mul(2, 'modulus')), says: 'Equivalent mean stress.' },
    {
      key: 'reserve',
      is: choose(
        [
          branch(when('which', '=', num(1)), div(1, add(div('swing', 'endurance'), div('mean', 'tensile')))),
          branch(
            when('which', '=', num(2)),
            div(
              2,
              add(
                div('swing', 'endurance'),
                fn('sqrt', add(pow(div('swing', 'endurance'), 2), pow(div(mul(2, 'mean'), 'tensile'), 2))),
              ),
            ),
          ),
          branch(
            when('which', '=', num(3)),
            div(1, fn('sqrt', add(pow(div('swing', 'endurance'), 2), pow(div('mean', 'yieldStrength'), 2)))),
          ),
        ],
        div(1, add(div('swing', 'endurance'), div('mean', 'yieldStrength'))),
      ),
      says: 'By the criterion chosen.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '8th and 9th',
      at: 'equations 7-7 to 7-14',
      how: 'read',
    },
  ],
  holds: [
    'Steel below 250 °C, without corrosion. Goodman and Gerber do not guard against yield: that is checked apart.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const modulus = modulusOf(id, input.diameter, input.bore);
    const both = (kb: number, m: number, kt: number, t: number): number =>
      Math.sqrt(4 * (kb * m) ** 2 + 3 * (kt * t) ** 2);
    const swingMoment = both(input.notchBending, input.bendingSwing, input.notchTorsion, input.torqueSwing);
    const meanMoment = both(input.notchBending, input.bendingMean, input.notchTorsion, input.torqueMean);
    if (!(swingMoment + meanMoment > 0))
      throw new MethodError(id, 'bendingSwing', 'All moments are 0; a section without load has no reserve.');
    const swing = swingMoment / (2 * modulus);
    const mean = meanMoment / (2 * modulus);
    const which = NUMBER[input.criterion];
    const [a, u, y] = [swing / input.endurance, mean / input.tensile, mean / input.yieldStrength];
    const reserve =
      which === 1
        ? 1 / (a + u)
        : which === 2
          ? 2 / (a + Math.sqrt(a * a + (2 * u) ** 2))
          : which === 3
            ? 1 / Math.sqrt(a * a + y * y)
            : 1 / (a + y);
    return { reserve, swing, mean, modulus, swingMoment, meanMoment, which };
  },
});
