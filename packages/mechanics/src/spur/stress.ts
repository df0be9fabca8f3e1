import { ELASTIC_SPUR, RATING_INPUTS, RATING_OUTPUTS, RATING_STEPS, ratingOf, SPUR_SOURCE } from '../gear/parts.ts';
import { add, div, fn, mul, num, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'spur.stress';
const INCH = 0.0254;

const inputs = {
  ...RATING_INPUTS,
  teethGear: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the larger gear', range: { min: 5 } },
  shapePinion: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_1',
    meaning: 'Lewis form factor of the smaller gear',
    range: ABOVE_ZERO,
  },
  shapeGear: {
    form: 'value',
    kind: 'number',
    symbol: 'Y_2',
    meaning: 'Lewis form factor of the larger gear',
    range: ABOVE_ZERO,
  },
  bendingPinion: {
    form: 'value',
    kind: 'number',
    symbol: 'J_1',
    meaning: 'bending factor of the smaller gear',
    range: ABOVE_ZERO,
  },
  bendingGear: {
    form: 'value',
    kind: 'number',
    symbol: 'J_2',
    meaning: 'bending factor of the larger gear',
    range: ABOVE_ZERO,
  },
  mesh: {
    form: 'value',
    kind: 'number',
    symbol: 'C_ma',
    meaning: 'misalignment of the mesh: 0.15 in a closed case, 0.27 for open gears, at an inch of face',
    range: { min: 0, max: 0.6 },
  },
  pressureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'pressure angle',
    range: { min: 0.2, max: 0.5 },
    default: Math.PI / 9,
  },
} as const satisfies Params;

const size = (shape: string) =>
  fn('max', 1, mul(num(1.192), pow(mul('faces', 'modules', pow(shape, num(0.5))), num(0.0535))));

const part = div('faceWidth', mul(10, 'pitchDiameter'));

/**
 * Stress numbers of a spur pair for bending and contact by the American method. They compare with its own allowed numbers only.
 *
 * Errors: sizes and factors not above zero, torque or speed below zero, a quality outside 5 to 11.
 */
export const spurStress = defineMethod({
  id,
  gives: 'Stress numbers of a spur pair, bending and contact, on the American scale',
  inputs,
  outputs: {
    stressPinion: { form: 'value', kind: 'pressure', symbol: 's_t1', meaning: 'bending number of the smaller gear' },
    stressGear: { form: 'value', kind: 'pressure', symbol: 's_t2', meaning: 'bending number of the larger gear' },
    stressContact: { form: 'value', kind: 'pressure', symbol: 's_c', meaning: 'contact number of the pair' },
    ...RATING_OUTPUTS,
    sizePinion: { form: 'value', kind: 'number', symbol: 'K_s1', meaning: 'factor of size, smaller gear' },
    sizeGear: { form: 'value', kind: 'number', symbol: 'K_s2', meaning: 'factor of size, larger gear' },
    spread: { form: 'value', kind: 'number', symbol: 'K_m', meaning: 'factor of uneven load along the face' },
    contact: { form: 'value', kind: 'number', symbol: 'I', meaning: 'contact factor of the pair' },
    modules: { form: 'value', kind: 'number', symbol: 'm_n', meaning: 'module in inches' },
    faces: { form: 'value', kind: 'number', symbol: 'b_n', meaning: 'face width in inches' },
    elastic: { form: 'value', kind: 'pressure', symbol: 'C_p2', meaning: 'elastic coefficient of two steels, squared' },
    inch: { form: 'value', kind: 'length', symbol: 'u_i', meaning: 'one inch, a unit of the formula' },
  },
  results: ['stressPinion', 'stressGear', 'stressContact', 'tangential', 'pitchSpeed'],
  steps: [
    ...RATING_STEPS,
    { key: 'modules', is: div('module', 'inch'), says: 'In inches.' },
    { key: 'faces', is: div('faceWidth', 'inch'), says: 'In inches.' },
    { key: 'sizePinion', is: size('shapePinion'), says: 'Large teeth are made a little worse.' },
    { key: 'sizeGear', is: size('shapeGear'), says: 'The same for its mate.' },
    {
      key: 'spread',
      is: add(1, fn('max', num(0.05), part), num(-0.0375), mul(num(0.0125), fn('max', 1, 'faces')), 'mesh'),
      says: 'Wide faces and loose bearings load one end.',
    },
    {
      key: 'contact',
      is: mul(
        div(mul(fn('sin', 'pressureAngle'), fn('cos', 'pressureAngle')), 2),
        div('teethGear', add('teethGear', 'teethPinion')),
      ),
      says: 'Curvature of both flanks.',
    },
    {
      key: 'stressPinion',
      is: div(
        mul('tangential', 'overload', 'dynamic', 'sizePinion', 'spread'),
        mul('faceWidth', 'module', 'bendingPinion'),
      ),
      says: 'Bending at the root of the smaller gear.',
    },
    {
      key: 'stressGear',
      is: div(
        mul('tangential', 'overload', 'dynamic', 'sizeGear', 'spread'),
        mul('faceWidth', 'module', 'bendingGear'),
      ),
      says: 'Bending at the root of the larger gear.',
    },
    {
      key: 'stressContact',
      is: fn(
        'sqrt',
        div(
          mul('elastic', 'tangential', 'overload', 'dynamic', 'sizePinion', 'spread'),
          mul('faceWidth', 'pitchDiameter', 'contact'),
        ),
      ),
      says: 'Pressure where the flanks touch.',
    },
  ],
  sources: [SPUR_SOURCE],
  holds: ['Faces without crowning, a gear midway between its bearings.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const shared = ratingOf(input);
    const { faceWidth, module, overload, pressureAngle, teethGear, teethPinion } = input;
    const modules = module / INCH;
    const faces = faceWidth / INCH;
    const sizeOf = (shape: number): number => Math.max(1, 1.192 * (faces * modules * shape ** 0.5) ** 0.0535);
    const [sizePinion, sizeGear] = [sizeOf(input.shapePinion), sizeOf(input.shapeGear)];
    const spread =
      1 + Math.max(0.05, faceWidth / (10 * shared.pitchDiameter)) - 0.0375 + 0.0125 * Math.max(1, faces) + input.mesh;
    const contact = ((Math.sin(pressureAngle) * Math.cos(pressureAngle)) / 2) * (teethGear / (teethGear + teethPinion));
    const load = shared.tangential * overload * shared.dynamic * spread;
    return {
      stressPinion: (load * sizePinion) / (faceWidth * module * input.bendingPinion),
      stressGear: (load * sizeGear) / (faceWidth * module * input.bendingGear),
      stressContact: Math.sqrt((ELASTIC_SPUR * load * sizePinion) / (faceWidth * shared.pitchDiameter * contact)),
      ...shared,
      sizePinion,
      sizeGear,
      spread,
      contact,
      modules,
      faces,
      elastic: ELASTIC_SPUR,
      inch: INCH,
    };
  },
});
