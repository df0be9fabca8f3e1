import { add, div, fn, mul, num, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltStiffness';

const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  diameter: length('d', 'thread diameter'),
  area: { form: 'value', kind: 'area', symbol: 'A_t', meaning: 'stress area of the thread', range: ABOVE_ZERO },
  shank: { form: 'value', kind: 'length', symbol: 'l_d', meaning: 'plain shank within the grip', range: { min: 0 } },
  thread: length('l_t', 'thread within the grip'),
  youngs: {
    form: 'value',
    kind: 'pressure',
    symbol: 'E',
    meaning: 'Young’s modulus of bolt and parts',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/** Half angle of the cone of pressure, 30 degrees. */
const TAN = 0.5774;

/**
 * Stiffness of a bolt and of the parts that it clamps, both of one material.
 *
 * Errors: a size not above zero.
 */
export const boltStiffness = defineMethod({
  id,
  gives: 'Stiffness of a bolt and of what it clamps',
  inputs,
  outputs: {
    bolt: { form: 'value', kind: 'stiffness', symbol: 'k_b', meaning: 'stiffness of the bolt' },
    parts: { form: 'value', kind: 'stiffness', symbol: 'k_m', meaning: 'stiffness of the parts' },
    share: { form: 'value', kind: 'fraction', symbol: 'C', meaning: 'part of a pull that the bolt feels' },
    whole: { form: 'value', kind: 'area', symbol: 'A_d', meaning: 'area of the plain shank' },
    grip: { form: 'value', kind: 'length', symbol: 'l', meaning: 'grip' },
  },
  results: ['bolt', 'parts', 'share'],
  steps: [
    { key: 'whole', is: div(mul(PI, 'diameter', 'diameter'), num(4)), says: 'Plain shank.' },
    { key: 'grip', is: add('shank', 'thread'), says: 'Head to nut.' },
    {
      key: 'bolt',
      is: div(mul('whole', 'area', 'youngs'), add(mul('whole', 'thread'), mul('area', 'shank'))),
      says: 'Shank and thread one behind the other.',
    },
    {
      key: 'parts',
      is: div(
        mul(num(TAN), PI, 'youngs', 'diameter'),
        mul(
          num(2),
          fn(
            'ln',
            div(
              mul(num(5), add(mul(num(TAN), 'grip'), mul(num(0.5), 'diameter'))),
              add(mul(num(TAN), 'grip'), mul(num(2.5), 'diameter')),
            ),
          ),
        ),
      ),
      says: 'Two cones of pressure from washers half again as wide as the bolt.',
    },
    { key: 'share', is: div('bolt', add('bolt', 'parts')), says: 'Two springs side by side.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 8-17, 8-22',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { diameter, area, shank, thread, youngs } = input;
    const whole = (Math.PI * diameter * diameter) / 4;
    const grip = shank + thread;
    const bolt = (whole * area * youngs) / (whole * thread + area * shank);
    const parts =
      (TAN * Math.PI * youngs * diameter) /
      (2 * Math.log((5 * (TAN * grip + 0.5 * diameter)) / (TAN * grip + 2.5 * diameter)));
    return { bolt, parts, share: bolt / (bolt + parts), whole, grip };
  },
});
