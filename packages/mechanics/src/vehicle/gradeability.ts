import { add, div, fn, mul, pow, sub, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { GRAVITY_INPUT, MASS_INPUT } from './load.ts';

const id = 'vehicle.gradeability';

const inputs = {
  force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull at the ground', range: { min: 0 } },
  air: {
    form: 'value',
    kind: 'force',
    symbol: 'F_a',
    meaning: 'part of it that the air takes',
    range: { min: 0 },
    default: 0,
  },
  ...MASS_INPUT,
  rollingCoefficient: {
    form: 'value',
    kind: 'fraction',
    symbol: 'f',
    meaning: 'rolling resistance over load',
    range: { min: 0, max: 1 },
  },
  ...GRAVITY_INPUT,
} as const satisfies Params;

/**
 * Slope that a pull climbs at steady speed, exactly. Below zero where the pull is too small for the level.
 *
 * Errors: pull or air below zero, mass not above zero, a pull greater than any slope could ask for.
 */
export const gradeability = defineMethod({
  id,
  gives: 'Steepest slope that a pull climbs at steady speed',
  inputs,
  outputs: {
    slope: { form: 'value', kind: 'angle', symbol: 'θ', meaning: 'slope as an angle' },
    grade: { form: 'value', kind: 'fraction', symbol: 'p', meaning: 'slope as rise over run' },
    weight: { form: 'value', kind: 'force', symbol: 'W', meaning: 'weight' },
    free: { form: 'value', kind: 'force', symbol: 'F_f', meaning: 'pull left for rolling and climbing' },
  },
  results: ['slope', 'grade'],
  steps: [
    { key: 'weight', is: mul('mass', 'gravity'), says: 'Weight of the loaded vehicle.' },
    { key: 'free', is: sub('force', 'air'), says: 'Less what the air takes.' },
    {
      key: 'slope',
      is: sub(
        fn('asin', div('free', mul('weight', fn('sqrt', add(1, pow('rollingCoefficient', 2)))))),
        fn('atan', 'rollingCoefficient'),
      ),
      says: 'Slope at which climbing and rolling together take the pull.',
    },
    {
      key: 'slope',
      left: sym('free'),
      right: mul('weight', add(fn('sin', 'slope'), mul('rollingCoefficient', fn('cos', 'slope')))),
      says: 'The same, put back into the balance.',
    },
    { key: 'grade', is: fn('tan', 'slope'), says: 'Rise over run: the tangent, not the sine.' },
  ],
  sources: [{ title: 'Balance of forces along the slope, solved without small-angle shortcuts', how: 'derived' }],
  holds: ['The tyres’ grip and the lift of the front may end the climb earlier.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { force, air, mass, gravity, rollingCoefficient } = input;
    const weight = mass * gravity;
    const free = force - air;
    const most = weight * Math.hypot(1, rollingCoefficient);
    if (Math.abs(free) > most)
      throw new MethodError(
        id,
        'force',
        `Pull at the ground: ${force} N less ${air} N for the air is more than any slope asks for; at most ${most} N is accepted.`,
      );
    const slope = Math.asin(free / most) - Math.atan(rollingCoefficient);
    return { slope, grade: Math.tan(slope), weight, free };
  },
});
