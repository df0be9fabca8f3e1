import { branch, choose, div, fn, mul, num, pow, when } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.endurance';

const SURFACES = ['ground', 'machined or cold drawn', 'hot rolled', 'as forged'] as const;

const inputs = {
  tensile: { form: 'value', kind: 'pressure', symbol: 'S_ut', meaning: 'tensile strength', range: ABOVE_ZERO },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the section', range: ABOVE_ZERO },
  surface: {
    form: 'choice',
    symbol: 's',
    meaning: 'surface',
    choices: SURFACES,
    default: 'machined or cold drawn',
  },
  turning: {
    form: 'choice',
    symbol: 't',
    meaning: 'whether the section turns against its load',
    choices: ['turns', 'stands still'],
    default: 'turns',
  },
  reliability: {
    form: 'value',
    kind: 'number',
    symbol: 'k_e',
    meaning: 'factor of reliability: 0.897 for 90 %, 0.814 for 99 %',
    range: { min: 0.5, max: 1 },
    default: 0.814,
  },
} as const satisfies Params;

const MPA = 1e6;
const MM = 1e-3;
const FIGURES = {
  ground: [1.58, -0.085],
  'machined or cold drawn': [4.51, -0.265],
  'hot rolled': [57.7, -0.718],
  'as forged': [272, -0.995],
} as const;
const MOST_STRENGTH = 1400;

/**
 * Endurance limit of a steel part from its tensile strength: half of it for the polished rod, less for surface, size and reliability.
 *
 * Errors: strength, diameter or reliability out of range.
 */
export const shaftEndurance = defineMethod({
  id,
  gives: 'Endurance limit of a steel shaft’s section',
  inputs,
  outputs: {
    limit: { form: 'value', kind: 'pressure', symbol: 'S_e', meaning: 'endurance limit of the part' },
    surfaceFactor: { form: 'value', kind: 'number', symbol: 'k_a', meaning: 'factor of the surface' },
    sizeFactor: { form: 'value', kind: 'number', symbol: 'k_b', meaning: 'factor of the size' },
    rod: { form: 'value', kind: 'pressure', symbol: 'S_p', meaning: 'endurance limit of a polished rod' },
    strength: { form: 'value', kind: 'number', symbol: 'S', meaning: 'strength in megapascals' },
    size: { form: 'value', kind: 'number', symbol: 'd_e', meaning: 'effective diameter in millimetres' },
    part: { form: 'value', kind: 'number', symbol: 'c', meaning: 'part of the diameter that counts' },
    a: { form: 'value', kind: 'number', symbol: 'a', meaning: 'figure of the surface' },
    b: { form: 'value', kind: 'number', symbol: 'b', meaning: 'exponent of the surface' },
    megapascal: { form: 'value', kind: 'pressure', symbol: 'u_S', meaning: 'one megapascal, the unit of the fit' },
    millimetre: { form: 'value', kind: 'length', symbol: 'u_l', meaning: 'one millimetre, the unit of the fit' },
  },
  results: ['limit', 'surfaceFactor', 'sizeFactor'],
  steps: [
    { key: 'strength', is: div('tensile', 'megapascal'), says: 'In megapascals.' },
    {
      key: 'surfaceFactor',
      is: fn('min', num(1), mul('a', pow('strength', 'b'))),
      says: 'Rough surfaces cost strong steels most.',
    },
    {
      key: 'size',
      is: div(mul('part', 'diameter'), 'millimetre'),
      says: 'A section that stands still in its load counts with 0.37 of its diameter.',
    },
    {
      key: 'sizeFactor',
      is: choose(
        [
          branch(when('size', '<=', num(2.79)), num(1.24 * 2.79 ** -0.107)),
          branch(when('size', '<=', num(51)), mul(1.24, pow('size', -0.107))),
        ],
        mul(1.51, pow('size', -0.157)),
      ),
      says: 'Thick shafts have more weak places.',
    },
    {
      key: 'rod',
      is: mul('megapascal', fn('min', mul(0.5, 'strength'), num(MOST_STRENGTH / 2))),
      says: 'Half the tensile strength, at most 700 MPa.',
    },
    {
      key: 'limit',
      is: mul('surfaceFactor', 'sizeFactor', 'reliability', 'rod'),
      says: 'Bending and torsion are joined later, so no factor of load enters.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'table 6-2, equations 6-8 and 6-20, tables 6-3 and 6-5',
      how: 'read',
    },
  ],
  holds: ['Steel below 250 °C, not corroded and not plated.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const [a, b] = FIGURES[input.surface];
    const part = input.turning === 'turns' ? 1 : 0.37;
    const strength = input.tensile / MPA;
    const surfaceFactor = Math.min(1, a * strength ** b);
    const size = (part * input.diameter) / MM;
    const sizeFactor =
      size <= 2.79 ? 1.24 * 2.79 ** -0.107 : size <= 51 ? 1.24 * size ** -0.107 : 1.51 * size ** -0.157;
    const rod = MPA * Math.min(0.5 * strength, MOST_STRENGTH / 2);
    const limit = surfaceFactor * sizeFactor * input.reliability * rod;
    return { limit, surfaceFactor, sizeFactor, rod, strength, size, part, a, b, megapascal: MPA, millimetre: MM };
  },
});
