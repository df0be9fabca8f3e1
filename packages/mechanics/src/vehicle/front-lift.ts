import { add, div, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { BALANCE_INPUTS, beyondAxles } from './balance.ts';

const id = 'vehicle.frontLift';

const inputs = {
  ...BALANCE_INPUTS,
  drag: { form: 'value', kind: 'force', symbol: 'D', meaning: 'drag of the air', range: { min: 0 }, default: 0 },
  dragHeight: {
    form: 'value',
    kind: 'length',
    symbol: 'h_d',
    meaning: 'height at which the drag acts',
    range: { min: 0 },
    default: 0,
  },
  acceleration: {
    form: 'value',
    kind: 'acceleration',
    symbol: 'a',
    meaning: 'acceleration to give the axle loads for; braking is below zero',
    default: 0,
  },
} as const satisfies Params;

/**
 * Acceleration at which the front wheel or wheels carry nothing, with the friction that it takes, and the axle loads at any acceleration.
 *
 * Errors: mass or lengths not above zero, centre of mass not between the axles, drag below zero.
 */
export const frontLift = defineMethod({
  id,
  gives: 'Acceleration that lifts the front, and the axle loads at an acceleration',
  inputs,
  outputs: {
    liftAcceleration: {
      form: 'value',
      kind: 'acceleration',
      symbol: 'a_l',
      meaning: 'acceleration that lifts the front',
    },
    liftForce: { form: 'value', kind: 'force', symbol: 'F_l', meaning: 'pull at the rear wheel that lifts the front' },
    frictionNeeded: { form: 'value', kind: 'fraction', symbol: 'μ_l', meaning: 'friction that this pull takes' },
    frontLoad: {
      form: 'value',
      kind: 'force',
      symbol: 'N_f',
      meaning: 'load in front at the acceleration asked about; below zero means it has lifted',
    },
    rearLoad: {
      form: 'value',
      kind: 'force',
      symbol: 'N_r',
      meaning: 'load at the rear at the acceleration asked about',
    },
    brakeLift: { form: 'value', kind: 'acceleration', symbol: 'a_b', meaning: 'deceleration that lifts the rear' },
    normal: { form: 'value', kind: 'force', symbol: 'W_n', meaning: 'weight across the road' },
    along: { form: 'value', kind: 'force', symbol: 'W_t', meaning: 'weight along the road' },
  },
  results: ['liftAcceleration', 'liftForce', 'frictionNeeded', 'frontLoad', 'rearLoad', 'brakeLift'],
  steps: [
    { key: 'normal', is: mul('mass', 'gravity', fn('cos', 'slope')), says: 'Weight across the road.' },
    { key: 'along', is: mul('mass', 'gravity', fn('sin', 'slope')), says: 'Weight along the road, downhill.' },
    {
      key: 'liftAcceleration',
      is: div(
        sub(sub(mul('normal', 'aheadOfRear'), mul('along', 'height')), mul('drag', 'dragHeight')),
        mul('mass', 'height'),
      ),
      says: 'Balance of moments about the rear contact with no load in front.',
    },
    {
      key: 'liftForce',
      is: add(mul('mass', 'liftAcceleration'), 'along', 'drag'),
      says: 'The pull speeds the mass up, climbs, and overcomes the drag.',
    },
    {
      key: 'frictionNeeded',
      is: div('liftForce', 'normal'),
      says: 'With less friction the tyre slips before the front lifts.',
    },
    {
      key: 'frontLoad',
      is: div(
        sub(
          sub(mul('normal', 'aheadOfRear'), mul(add(mul('mass', 'acceleration'), 'along'), 'height')),
          mul('drag', 'dragHeight'),
        ),
        'wheelbase',
      ),
      says: 'Balance of moments about the rear contact.',
    },
    { key: 'rearLoad', is: sub('normal', 'frontLoad'), says: 'Both axles carry the weight across the road.' },
    {
      key: 'brakeLift',
      is: div(
        add(mul('normal', sub('wheelbase', 'aheadOfRear')), mul('along', 'height'), mul('drag', 'dragHeight')),
        mul('mass', 'height'),
      ),
      says: 'Balance of moments about the front contact with no load at the rear.',
    },
  ],
  sources: [
    { title: 'Motorcycle Dynamics (V. Cossalter)', at: 'chapter 3, limits of wheelie and stoppie', how: 'memory' },
    { title: 'Balance of moments about the wheel contacts', how: 'derived' },
  ],
  holds: ['Rigid vehicle, suspension settled; no lift of the air; inertia of the turning wheels left out.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, wheelbase, aheadOfRear, height, slope, gravity, drag, dragHeight, acceleration } = input;
    const problem = beyondAxles(aheadOfRear, wheelbase);
    if (problem !== undefined) throw new MethodError(id, 'aheadOfRear', problem);
    const normal = mass * gravity * Math.cos(slope);
    const along = mass * gravity * Math.sin(slope);
    const liftAcceleration = (normal * aheadOfRear - along * height - drag * dragHeight) / (mass * height);
    const liftForce = mass * liftAcceleration + along + drag;
    const frontLoad = (normal * aheadOfRear - (mass * acceleration + along) * height - drag * dragHeight) / wheelbase;
    return {
      liftAcceleration,
      liftForce,
      frictionNeeded: liftForce / normal,
      frontLoad,
      rearLoad: normal - frontLoad,
      brakeLift: (normal * (wheelbase - aheadOfRear) + along * height + drag * dragHeight) / (mass * height),
      normal,
      along,
    };
  },
});
