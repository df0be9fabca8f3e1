import { add, div, fn, mul, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.resonance';

const inputs = {
  stiffness: {
    form: 'value',
    kind: 'torque',
    symbol: 'c',
    meaning: 'dynamic torsional stiffness of the coupling, torque per radian',
    range: ABOVE_ZERO,
  },
  inertiaDriver: {
    form: 'value',
    kind: 'inertia',
    symbol: 'J_1',
    meaning: 'moment of inertia on the engine’s side of the coupling',
    range: ABOVE_ZERO,
  },
  inertiaLoad: {
    form: 'value',
    kind: 'inertia',
    symbol: 'J_2',
    meaning: 'moment of inertia on the other side, brought to the coupling’s speed',
    range: ABOVE_ZERO,
  },
  order: {
    form: 'value',
    kind: 'number',
    symbol: 'i',
    meaning: 'firing impulses for each turn: half the cylinders of a four-stroke engine, all those of a two-stroke',
    range: ABOVE_ZERO,
  },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω',
    meaning: 'speed asked about, such as idle',
    range: ABOVE_ZERO,
  },
  damping: {
    form: 'value',
    kind: 'number',
    symbol: 'Ψ',
    meaning: 'relative damping of the coupling: energy lost in one cycle over the energy stored',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Torsional resonance of two inertias with an elastic coupling between them: where it lies, and how much a speed amplifies.
 *
 * Errors: a value not above zero.
 */
export const couplingResonance = defineMethod({
  id,
  gives:
    'Torsional resonance of a drive with an elastic coupling, how much it amplifies at a speed, and the least speed above it',
  inputs,
  outputs: {
    naturalFrequency: { form: 'value', kind: 'frequency', symbol: 'f', meaning: 'natural frequency' },
    resonantSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_R', meaning: 'speed at which firing meets it' },
    speedOverResonance: {
      form: 'value',
      kind: 'ratio',
      symbol: 'r',
      meaning: 'speed asked about over the resonant one',
    },
    amplification: {
      form: 'value',
      kind: 'number',
      symbol: 'V',
      meaning: 'alternating torque in the coupling over that of a rigid drive',
    },
    leastAbove: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_l',
      meaning: 'speed above which the coupling softens instead of amplifies',
    },
  },
  results: ['naturalFrequency', 'resonantSpeed', 'speedOverResonance', 'amplification', 'leastAbove'],
  steps: [
    {
      key: 'naturalFrequency',
      is: div(
        fn('sqrt', div(mul('stiffness', add('inertiaDriver', 'inertiaLoad')), mul('inertiaDriver', 'inertiaLoad'))),
        mul(2, PI),
      ),
      says: 'Both inertias swing against each other.',
    },
    {
      key: 'resonantSpeed',
      is: div(mul(2, PI, 'naturalFrequency'), 'order'),
      says: 'Impulses come so often for each turn.',
    },
    { key: 'speedOverResonance', is: div('angularSpeed', 'resonantSpeed'), says: 'Below 1 under resonance.' },
    {
      key: 'amplification',
      is: fn(
        'sqrt',
        div(
          add(1, pow(div('damping', mul(2, PI)), 2)),
          add(pow(sub(1, pow('speedOverResonance', 2)), 2), pow(div('damping', mul(2, PI)), 2)),
        ),
      ),
      says: 'One swinging pair with damping.',
    },
    { key: 'leastAbove', is: mul(fn('sqrt', 2), 'resonantSpeed'), says: 'Here the amplification falls back to 1.' },
  ],
  sources: [
    { title: 'DIN 740-2, flexible shaft couplings: two-mass drive', how: 'memory' },
    { title: 'Free and forced swing of two inertias on one spring', how: 'derived' },
  ],
  holds: [
    'Two inertias; the rest of the drive is stiff against the coupling.',
    'An elastomer grows stiffer under torque: look at both ends of its stiffness, for the resonance moves.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { stiffness, inertiaDriver, inertiaLoad } = input;
    const swing = Math.sqrt((stiffness * (inertiaDriver + inertiaLoad)) / (inertiaDriver * inertiaLoad));
    const resonantSpeed = swing / input.order;
    const speedOverResonance = input.angularSpeed / resonantSpeed;
    const loss = (input.damping / (2 * Math.PI)) ** 2;
    return {
      naturalFrequency: swing / (2 * Math.PI),
      resonantSpeed,
      speedOverResonance,
      amplification: Math.sqrt((1 + loss) / ((1 - speedOverResonance ** 2) ** 2 + loss)),
      leastAbove: Math.SQRT2 * resonantSpeed,
    };
  },
});
