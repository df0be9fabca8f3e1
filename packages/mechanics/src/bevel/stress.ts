import { BEVEL_SOURCE, ELASTIC_BEVEL, RATING_INPUTS, RATING_OUTPUTS, RATING_STEPS, ratingOf } from '../gear/parts.ts';
import { add, branch, choose, div, fn, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.stress';
const MM = 1e-3;

const inputs = {
  ...RATING_INPUTS,
  mounting: {
    form: 'value',
    kind: 'number',
    symbol: 'K_mb',
    meaning: 'both gears between bearings 1, one of them 1.1, both overhung 1.25',
    range: { min: 1, max: 1.5 },
    default: 1.25,
  },
  crowning: {
    form: 'value',
    kind: 'number',
    symbol: 'C_xc',
    meaning: 'crowned teeth 1.5, straight-faced ones 2',
    range: { min: 1.5, max: 2 },
    default: 2,
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
  contact: { form: 'value', kind: 'number', symbol: 'I', meaning: 'contact factor of the pair', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Stress numbers of a bevel pair for bending and contact by the American method. They compare with its own allowed numbers only.
 *
 * Errors: sizes and factors not above zero, torque or speed below zero, a quality outside 5 to 11.
 */
export const bevelStress = defineMethod({
  id,
  gives: 'Stress numbers of a bevel pair, bending and contact, on the American scale',
  inputs,
  outputs: {
    stressPinion: { form: 'value', kind: 'pressure', symbol: 's_t1', meaning: 'bending number of the smaller gear' },
    stressGear: { form: 'value', kind: 'pressure', symbol: 's_t2', meaning: 'bending number of the larger gear' },
    stressContact: { form: 'value', kind: 'pressure', symbol: 's_c', meaning: 'contact number of the pair' },
    ...RATING_OUTPUTS,
    size: { form: 'value', kind: 'number', symbol: 'K_s', meaning: 'factor of size for bending' },
    sizeContact: { form: 'value', kind: 'number', symbol: 'C_s', meaning: 'factor of size for contact' },
    spread: { form: 'value', kind: 'number', symbol: 'K_m', meaning: 'factor of uneven load along the face' },
    modules: { form: 'value', kind: 'number', symbol: 'm_n', meaning: 'module in millimetres' },
    faces: { form: 'value', kind: 'number', symbol: 'b_n', meaning: 'face width in millimetres' },
    elastic: { form: 'value', kind: 'pressure', symbol: 'C_p2', meaning: 'elastic coefficient of two steels, squared' },
    millimetre: { form: 'value', kind: 'length', symbol: 'u_l', meaning: 'one millimetre, a unit of the formula' },
  },
  results: ['stressPinion', 'stressGear', 'stressContact', 'tangential', 'pitchSpeed'],
  steps: [
    ...RATING_STEPS,
    { key: 'modules', is: div('module', 'millimetre'), says: 'In millimetres.' },
    { key: 'faces', is: div('faceWidth', 'millimetre'), says: 'In millimetres.' },
    {
      key: 'size',
      is: choose(
        [branch(when('modules', '<', num(25.4 / 16, '25.4/16')), 0.5)],
        add(num(0.4867), mul(num(0.2132 / 25.4, '0.2132/25.4'), 'modules')),
      ),
      says: 'Large teeth are made a little worse.',
    },
    {
      key: 'sizeContact',
      is: choose(
        [branch(when('faces', '<', num(12.7)), 0.5), branch(when('faces', '>', num(114.3)), 1)],
        add(num(0.4375), mul(num(0.125 / 25.4, '0.125/25.4'), 'faces')),
      ),
      says: 'Wide faces touch less evenly.',
    },
    {
      key: 'spread',
      is: add('mounting', mul(num(0.0036 / 645.16, '0.0036/645.16'), pow('faces', 2))),
      says: 'Overhung gears lean out of mesh.',
    },
    {
      key: 'stressPinion',
      is: div(mul('tangential', 'overload', 'dynamic', 'size', 'spread'), mul('faceWidth', 'module', 'bendingPinion')),
      says: 'Bending at the root of the smaller gear.',
    },
    {
      key: 'stressGear',
      is: div(mul('tangential', 'overload', 'dynamic', 'size', 'spread'), mul('faceWidth', 'module', 'bendingGear')),
      says: 'Bending at the root of the larger gear.',
    },
    {
      key: 'stressContact',
      is: fn(
        'sqrt',
        div(
          mul('elastic', 'tangential', 'overload', 'dynamic', 'spread', 'sizeContact', 'crowning'),
          mul('faceWidth', 'pitchDiameter', 'contact'),
        ),
      ),
      says: 'Pressure where the flanks touch.',
    },
  ],
  sources: [BEVEL_SOURCE],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const shared = ratingOf(input);
    const { faceWidth, module, mounting, crowning, overload } = input;
    const modules = module / MM;
    const faces = faceWidth / MM;
    const size = modules < 25.4 / 16 ? 0.5 : 0.4867 + (0.2132 / 25.4) * modules;
    const sizeContact = faces < 12.7 ? 0.5 : faces > 114.3 ? 1 : 0.4375 + (0.125 / 25.4) * faces;
    const spread = mounting + (0.0036 / 645.16) * faces ** 2;
    const load = shared.tangential * overload * shared.dynamic * spread;
    return {
      stressPinion: (load * size) / (faceWidth * module * input.bendingPinion),
      stressGear: (load * size) / (faceWidth * module * input.bendingGear),
      stressContact: Math.sqrt(
        (ELASTIC_BEVEL * load * sizeContact * crowning) / (faceWidth * shared.pitchDiameter * input.contact),
      ),
      ...shared,
      size,
      sizeContact,
      spread,
      modules,
      faces,
      elastic: ELASTIC_BEVEL,
      millimetre: MM,
    };
  },
});
