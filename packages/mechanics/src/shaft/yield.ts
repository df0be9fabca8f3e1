import { add, div, fn, mul, num, PI, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { MODULUS_OUTPUT, MODULUS_STEP, modulusOf, SECTION_INPUTS } from './section.ts';

const id = 'shaft.yield';

const inputs = {
  ...SECTION_INPUTS,
  bending: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'greatest bending moment', range: { min: 0 } },
  torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'greatest torque', range: { min: 0 } },
  axial: {
    form: 'value',
    kind: 'force',
    symbol: 'F_a',
    meaning: 'axial force, pull or push',
    range: { min: 0 },
    default: 0,
  },
  notchBending: {
    form: 'value',
    kind: 'number',
    symbol: 'K_b',
    meaning: 'factor on the bending stress; 1 for ductile steel',
    range: { min: 1, max: 20 },
    default: 1,
  },
  notchTorsion: {
    form: 'value',
    kind: 'number',
    symbol: 'K_t',
    meaning: 'factor on the torsion stress; 1 for ductile steel',
    range: { min: 1, max: 20 },
    default: 1,
  },
  yieldStrength: { form: 'value', kind: 'pressure', symbol: 'S_y', meaning: 'yield strength', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Reserve of a round section against yield on the first load, by the energy of distortion.
 *
 * Errors: sizes or strength out of range, a bore as large as the shaft, no load at all.
 */
export const shaftYield = defineMethod({
  id,
  gives: 'Reserve of a shaft’s section against yield under bending, torque and axial force',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'reserve against yield' },
    stress: { form: 'value', kind: 'pressure', symbol: 'σ_v', meaning: 'equivalent stress' },
    bendingStress: { form: 'value', kind: 'pressure', symbol: 'σ_b', meaning: 'bending and axial stress together' },
    torsionStress: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'torsion stress' },
    area: { form: 'value', kind: 'area', symbol: 'A', meaning: 'area of the section' },
    ...MODULUS_OUTPUT,
  },
  results: ['reserve', 'stress', 'bendingStress', 'torsionStress'],
  steps: [
    MODULUS_STEP,
    {
      key: 'area',
      is: div(mul(PI, sub(pow('diameter', 2), pow('bore', 2))), num(4)),
      says: 'Area of the ring.',
    },
    {
      key: 'bendingStress',
      is: add(div(mul('notchBending', 'bending'), 'modulus'), div('axial', 'area')),
      says: 'Bending, and the axial force spread over the section.',
    },
    { key: 'torsionStress', is: div(mul('notchTorsion', 'torque'), mul(2, 'modulus')), says: 'Torsion.' },
    {
      key: 'stress',
      is: fn('sqrt', add(pow('bendingStress', 2), mul(3, pow('torsionStress', 2)))),
      says: 'Equal energy of distortion.',
    },
    { key: 'reserve', is: div('yieldStrength', 'stress'), says: 'Capacity over demand.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 7-15 and 7-16',
      how: 'read',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const modulus = modulusOf(id, input.diameter, input.bore);
    const area = (Math.PI * (input.diameter ** 2 - input.bore ** 2)) / 4;
    const bendingStress = (input.notchBending * input.bending) / modulus + input.axial / area;
    const torsionStress = (input.notchTorsion * input.torque) / (2 * modulus);
    const stress = Math.sqrt(bendingStress ** 2 + 3 * torsionStress ** 2);
    if (!(stress > 0)) throw new MethodError(id, 'bending', 'No load at all; a section without load has no reserve.');
    return { reserve: input.yieldStrength / stress, stress, bendingStress, torsionStress, area, modulus };
  },
});
