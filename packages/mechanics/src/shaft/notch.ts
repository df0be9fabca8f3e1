import { add, branch, choose, div, fn, mul, num, pow, sub, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.notch';

const inputs = {
  shape: {
    form: 'value',
    kind: 'number',
    symbol: 'K_t',
    meaning: 'stress concentration by shape',
    range: { min: 1, max: 20 },
  },
  radius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'radius at the root of the notch', range: ABOVE_ZERO },
  tensile: {
    form: 'value',
    kind: 'pressure',
    symbol: 'S_ut',
    meaning: 'tensile strength',
    range: { min: 200e6, max: 1800e6 },
  },
  load: { form: 'choice', symbol: 'w', meaning: 'what loads it', choices: ['bending', 'torsion'], default: 'bending' },
} as const satisfies Params;

const KPSI = 6894757.293168361;
const INCH = 0.0254;
/** Fits of the root of Neuber's length over strength in kpsi, in root inches; beyond 200 kpsi they would turn. */
const FITS = {
  bending: [0.246, -3.08e-3, 1.51e-5, -2.67e-8],
  torsion: [0.19, -2.51e-3, 1.35e-5, -2.67e-8],
} as const;
const MOST = 200;

/**
 * Fatigue notch factor from the shape, the root radius and the strength of a steel.
 *
 * Errors: shape factor below 1, radius not above zero, a strength outside 200 to 1800 MPa.
 */
export const shaftNotch = defineMethod({
  id,
  gives: 'Fatigue notch factor of a steel shaft from shape, root radius and strength',
  inputs,
  outputs: {
    factor: { form: 'value', kind: 'number', symbol: 'K_f', meaning: 'fatigue notch factor' },
    sensitivity: { form: 'value', kind: 'number', symbol: 'q', meaning: 'notch sensitivity' },
    root: { form: 'value', kind: 'number', symbol: 'a_q', meaning: 'root of Neuber’s length, in root inches' },
    strength: { form: 'value', kind: 'number', symbol: 'S', meaning: 'strength in kpsi, at most 200' },
    c0: { form: 'value', kind: 'number', symbol: 'c_0', meaning: 'first figure of the fit' },
    c1: { form: 'value', kind: 'number', symbol: 'c_1', meaning: 'second figure of the fit' },
    c2: { form: 'value', kind: 'number', symbol: 'c_2', meaning: 'third figure of the fit' },
    c3: { form: 'value', kind: 'number', symbol: 'c_3', meaning: 'fourth figure of the fit' },
    kpsi: { form: 'value', kind: 'pressure', symbol: 'u_S', meaning: 'one kpsi, the unit of the fit' },
    inch: { form: 'value', kind: 'length', symbol: 'u_l', meaning: 'one inch, the unit of the fit' },
  },
  results: ['factor', 'sensitivity'],
  steps: [
    { key: 'strength', is: fn('min', div('tensile', 'kpsi'), num(MOST)), says: 'In the unit of the fit.' },
    {
      key: 'root',
      is: add('c0', mul('c1', 'strength'), mul('c2', pow('strength', 2)), mul('c3', pow('strength', 3))),
      says: 'Fit for bending or for torsion.',
    },
    {
      key: 'sensitivity',
      is: div(1, add(1, div('root', fn('sqrt', div('radius', 'inch'))))),
      says: 'Strong steels and wide roots feel the whole notch.',
    },
    {
      key: 'factor',
      is: choose([branch(when('shape', '<=', num(1)), num(1))], add(1, mul('sensitivity', sub('shape', 1)))),
      says: 'As much of the notch as the steel feels.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 6-32 to 6-35',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const [c0, c1, c2, c3] = FITS[input.load];
    const strength = Math.min(input.tensile / KPSI, MOST);
    const root = c0 + c1 * strength + c2 * strength ** 2 + c3 * strength ** 3;
    const sensitivity = 1 / (1 + root / Math.sqrt(input.radius / INCH));
    const factor = input.shape <= 1 ? 1 : 1 + sensitivity * (input.shape - 1);
    return { factor, sensitivity, root, strength, c0, c1, c2, c3, kpsi: KPSI, inch: INCH };
  },
});
