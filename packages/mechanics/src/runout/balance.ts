import { add, div, mul, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.balance';

const inputs = {
  grade: { form: 'value', kind: 'speed', symbol: 'G', meaning: 'balance grade, such as 6.3 mm/s', range: ABOVE_ZERO },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'Ω', meaning: 'highest speed of rotation', range: ABOVE_ZERO },
  mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass of the rotor', range: ABOVE_ZERO },
  radius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'radius that a correction would be put at',
    range: ABOVE_ZERO,
  },
  toA: {
    form: 'value',
    kind: 'length',
    symbol: 'L_A',
    meaning: 'distance of the mass centre from plane A',
    range: ABOVE_ZERO,
  },
  toB: {
    form: 'value',
    kind: 'length',
    symbol: 'L_B',
    meaning: 'distance of the mass centre from plane B, on its other side',
    range: ABOVE_ZERO,
  },
  offset: {
    form: 'value',
    kind: 'length',
    symbol: 'e',
    meaning: 'offset of the mass centre: half the TIR when all of the mass follows the measured surface',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

/**
 * Unbalance that a balance grade leaves, as grams at a radius, and what an offset mass does.
 *
 * Errors: an input not above zero, a negative offset.
 */
export const balance = defineMethod({
  id,
  gives: 'Unbalance that a balance grade allows, in one plane and in two, and the grade and force of an offset mass',
  inputs,
  outputs: {
    offsetAllowed: { form: 'value', kind: 'length', symbol: 'e_p', meaning: 'greatest offset of the mass centre' },
    massAllowed: { form: 'value', kind: 'mass', symbol: 'u', meaning: 'the same as a mass at the radius' },
    massA: { form: 'value', kind: 'mass', symbol: 'u_A', meaning: 'its part in plane A' },
    massB: { form: 'value', kind: 'mass', symbol: 'u_B', meaning: 'its part in plane B' },
    gradeNow: { form: 'value', kind: 'speed', symbol: 'G_e', meaning: 'balance grade that the offset amounts to' },
    massNow: { form: 'value', kind: 'mass', symbol: 'u_e', meaning: 'mass at the radius that the offset amounts to' },
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'force that turns with the shaft, from the offset' },
  },
  results: ['offsetAllowed', 'massAllowed', 'massA', 'massB', 'gradeNow', 'massNow', 'force'],
  steps: [
    { key: 'offsetAllowed', is: div('grade', 'speed'), says: 'The grade is the offset times the speed of rotation.' },
    { key: 'massAllowed', is: div(mul('offsetAllowed', 'mass'), 'radius'), says: 'Same unbalance at the radius.' },
    {
      key: 'massA',
      is: div(mul('massAllowed', 'toB'), add('toA', 'toB')),
      says: 'The plane nearer to the mass centre takes the greater part.',
    },
    {
      key: 'massB',
      is: div(mul('massAllowed', 'toA'), add('toA', 'toB')),
      says: 'The rest.',
    },
    { key: 'gradeNow', is: mul('offset', 'speed'), says: 'Grade of the part as it is.' },
    { key: 'massNow', is: div(mul('offset', 'mass'), 'radius'), says: 'Unbalance of the part as it is.' },
    { key: 'force', is: mul('mass', 'offset', pow('speed', 2)), says: 'Centrifugal force.' },
  ],
  sources: [{ title: 'ISO 21940-11 (formerly ISO 1940-1), balance quality grades of rigid rotors', how: 'memory' }],
  holds: ['TIR is not unbalance: the offset counts only where the whole mass follows the measured surface.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { grade, speed, mass, radius, toA, toB, offset } = input;
    const offsetAllowed = grade / speed;
    const massAllowed = (offsetAllowed * mass) / radius;
    return {
      offsetAllowed,
      massAllowed,
      massA: (massAllowed * toB) / (toA + toB),
      massB: (massAllowed * toA) / (toA + toB),
      gradeNow: offset * speed,
      massNow: (offset * mass) / radius,
      force: mass * offset * speed ** 2,
    };
  },
});
