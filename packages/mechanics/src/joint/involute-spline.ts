import { div, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.involuteSpline';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'torque through the spline', range: { min: 0 } },
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth', range: { min: 4, max: 300 } },
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module', range: ABOVE_ZERO },
  length: { form: 'value', kind: 'length', symbol: 'l', meaning: 'length in mesh', range: ABOVE_ZERO },
  root: { form: 'value', kind: 'length', symbol: 'd_r', meaning: 'root diameter of the shaft', range: ABOVE_ZERO },
  bore: { form: 'value', kind: 'length', symbol: 'd_b', meaning: 'bore of the shaft', range: { min: 0 }, default: 0 },
  height: { form: 'value', kind: 'length', symbol: 'h', meaning: 'height of flank in contact', range: ABOVE_ZERO },
  uneven: {
    form: 'value',
    kind: 'number',
    symbol: 'K_m',
    meaning: 'uneven load along the teeth, 1 when in line',
    range: { min: 1, max: 10 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Stresses of an involute spline that sits fast: shear in the root section of the shaft, shear through the teeth, pressure on the flanks with half of
 * the teeth in contact for shear.
 *
 * Errors: a size not above zero, torque below zero, a bore as large as the root.
 */
export const involuteSpline = defineMethod({
  id,
  gives: 'Shear and flank pressure of an involute spline',
  inputs,
  outputs: {
    pressure: { form: 'value', kind: 'pressure', symbol: 'p', meaning: 'pressure on the flanks, all teeth alike' },
    toothShear: {
      form: 'value',
      kind: 'pressure',
      symbol: 'τ_z',
      meaning: 'shear through the teeth, half of them carrying',
    },
    rootShear: { form: 'value', kind: 'pressure', symbol: 'τ_r', meaning: 'shear in the shaft under the teeth' },
    pitch: { form: 'value', kind: 'length', symbol: 'd', meaning: 'pitch diameter' },
    thickness: { form: 'value', kind: 'length', symbol: 't', meaning: 'thickness of a tooth at the pitch diameter' },
  },
  results: ['pressure', 'toothShear', 'rootShear'],
  steps: [
    { key: 'pitch', is: mul('module', 'teeth'), says: 'Module times teeth.' },
    { key: 'thickness', is: div(mul(PI, 'module'), num(2)), says: 'Half of the pitch.' },
    {
      key: 'pressure',
      is: div(mul(num(2), 'torque', 'uneven'), mul('pitch', 'teeth', 'length', 'height')),
      says: 'Push at the pitch diameter over the flanks of all teeth.',
    },
    {
      key: 'toothShear',
      is: div(mul(num(4), 'torque', 'uneven'), mul('pitch', 'teeth', 'length', 'thickness')),
      says: 'Half of the teeth carry.',
    },
    {
      key: 'rootShear',
      is: div(mul(num(16), 'torque', 'root'), mul(PI, sub(pow('root', 4), pow('bore', 4)))),
      says: 'A round shaft of the root diameter.',
    },
  ],
  sources: [
    {
      title: 'Machinery’s Handbook, Involute Splines (after D. W. Dudley)',
      at: 'formulas 1 to 5, without service factors',
      how: 'read',
    },
  ],
  holds: [
    'Service factors are left out: the load cases carry their own peaks, and the handbook’s allowed stresses are not used with them.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, teeth, module, length, root, bore, height, uneven } = input;
    if (bore >= root) throw new MethodError(id, 'bore', 'The bore is as large as the root; no shaft is left.');
    const pitch = module * teeth;
    const thickness = (Math.PI * module) / 2;
    return {
      pressure: (2 * torque * uneven) / (pitch * teeth * length * height),
      toothShear: (4 * torque * uneven) / (pitch * teeth * length * thickness),
      rootShear: (16 * torque * root) / (Math.PI * (root ** 4 - bore ** 4)),
      pitch,
      thickness,
    };
  },
});
