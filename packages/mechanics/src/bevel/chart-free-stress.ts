import { add, div, fn, mul, num, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.chartFreeStress';
/** Square of the elastic coefficient of two steels, 189.8 √MPa. */
const ELASTIC = 189.8 ** 2 * 1e6;
const FLANK = 2.5;

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T_1', meaning: 'torque on the smaller gear', range: { min: 0 } },
  load: { form: 'value', kind: 'number', symbol: 'K', meaning: 'all load factors', range: { min: 1 }, default: 1 },
  teethPinion: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller gear', range: { min: 5 } },
  teethGear: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the larger gear', range: { min: 5 } },
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module at the large end', range: ABOVE_ZERO },
  faceWidth: { form: 'value', kind: 'length', symbol: 'b', meaning: 'face width', range: ABOVE_ZERO },
  form: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_F',
    meaning: 'form factor at the virtual teeth, by the table of ISO 6336',
    range: ABOVE_ZERO,
  },
  notch: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_S',
    meaning: 'notch factor at the virtual teeth, by the same table',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Stresses of a straight bevel pair at 90° without any chart, on the scale of ISO and DIN. They are about 2.3 times the American numbers for the
 * same load and must not meet the American limits.
 *
 * Errors: sizes and factors not above zero, a face as wide as the cone.
 */
export const bevelChartFreeStress = defineMethod({
  id,
  gives: 'Stresses of a straight bevel pair at 90° on the scale of ISO and DIN',
  inputs,
  outputs: {
    bending: { form: 'value', kind: 'pressure', symbol: 'σ_F', meaning: 'bending stress at the root' },
    contact: { form: 'value', kind: 'pressure', symbol: 'σ_H', meaning: 'pressure of the flanks' },
    ratio: { form: 'value', kind: 'number', symbol: 'u', meaning: 'teeth of the larger gear over the smaller' },
    face: { form: 'value', kind: 'number', symbol: 'ψ', meaning: 'face width over cone distance' },
    coneDistance: { form: 'value', kind: 'length', symbol: 'R_e', meaning: 'outer cone distance' },
    elastic: { form: 'value', kind: 'pressure', symbol: 'Z_E2', meaning: 'elastic coefficient of two steels, squared' },
  },
  results: ['bending', 'contact'],
  steps: [
    { key: 'ratio', is: div('teethGear', 'teethPinion'), says: 'Teeth over teeth.' },
    {
      key: 'coneDistance',
      is: mul(div('module', 2), fn('sqrt', add(pow('teethPinion', 2), pow('teethGear', 2)))),
      says: 'At 90° the two cones share the long side of a right triangle.',
    },
    { key: 'face', is: div('faceWidth', 'coneDistance'), says: 'Part of the cone that has teeth.' },
    {
      key: 'bending',
      is: div(
        mul(4, 'load', 'torque', 'form', 'notch'),
        mul(
          'face',
          pow(sub(1, mul(num(0.5), 'face')), 2),
          pow('module', 3),
          pow('teethPinion', 2),
          fn('sqrt', add(1, pow('ratio', 2))),
        ),
      ),
      says: 'At the middle of the face.',
    },
    {
      key: 'contact',
      is: mul(
        num(FLANK),
        fn(
          'sqrt',
          div(
            mul(4, 'elastic', 'load', 'torque'),
            mul('face', pow(sub(1, mul(num(0.5), 'face')), 2), pow(mul('module', 'teethPinion'), 3), 'ratio'),
          ),
        ),
      ),
      says: 'Two rollers with the curvature of the flanks.',
    },
  ],
  sources: [{ title: 'Analysis and Design of Machine Elements (W. Jiang)', at: 'Eq. 8.77 to 8.80', how: 'read' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, load, teethPinion, teethGear, module, faceWidth } = input;
    const ratio = teethGear / teethPinion;
    const coneDistance = (module / 2) * Math.hypot(teethPinion, teethGear);
    const face = faceWidth / coneDistance;
    if (!(face < 1))
      throw new MethodError(
        id,
        'faceWidth',
        `Face width must be less than the cone distance, ${coneDistance} m; read ${faceWidth} m.`,
      );
    const middle = face * (1 - 0.5 * face) ** 2;
    const bending =
      (4 * load * torque * input.form * input.notch) /
      (middle * module ** 3 * teethPinion ** 2 * Math.sqrt(1 + ratio ** 2));
    const contact = FLANK * Math.sqrt((4 * ELASTIC * load * torque) / (middle * (module * teethPinion) ** 3 * ratio));
    return { bending, contact, ratio, face, coneDistance, elastic: ELASTIC };
  },
});
