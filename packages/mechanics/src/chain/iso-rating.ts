import { div, fn, mul, num, pow } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { KILOWATT_OUTPUT, MM, MM_OUTPUT, RPM, RPM_OUTPUT } from './printed-units.ts';

const id = 'chain.isoRating';
const KILOWATT = 1000;
const NEWTON = 1;

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch of the chain', range: ABOVE_ZERO },
  dynamicStrength: {
    form: 'value',
    kind: 'force',
    symbol: 'F_d',
    meaning: 'least dynamic strength of one strand',
    range: ABOVE_ZERO,
  },
  teeth: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller sprocket', range: { min: 6, max: 150 } },
  speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω', meaning: 'speed of that sprocket', range: ABOVE_ZERO },
  strandFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'K_s',
    meaning: 'factor of the strands: 1, 1.7, 2.5 for one to three',
    range: { min: 1 },
    default: 1,
  },
} as const satisfies Params;

/**
 * Power that a chain of ISO 606 carries for 15 000 h: plates by its dynamic strength, rollers and bushes by its pitch.
 *
 * Errors: pitch, strength or speed not above zero, fewer than 6 teeth, a strand factor below 1.
 */
export const chainIsoRating = defineMethod({
  id,
  gives: 'Power that a chain of ISO 606 carries for 15 000 h, by its dynamic strength',
  inputs,
  outputs: {
    rating: { form: 'value', kind: 'power', symbol: 'P_r', meaning: 'rated power, all strands' },
    plates: { form: 'value', kind: 'power', symbol: 'P_p', meaning: 'power that the plates bear, all strands' },
    bushes: { form: 'value', kind: 'power', symbol: 'P_b', meaning: 'power that rollers and bushes bear, all strands' },
    millimetres: { form: 'value', kind: 'number', symbol: 'p_m', meaning: 'pitch in millimetres' },
    turns: { form: 'value', kind: 'number', symbol: 'n', meaning: 'turns a minute' },
    newtons: { form: 'value', kind: 'number', symbol: 'F_n', meaning: 'dynamic strength in newtons' },
    newton: { form: 'value', kind: 'force', symbol: 'u_F', meaning: 'one newton, a unit of the formula' },
    millimetre: MM_OUTPUT,
    minute: RPM_OUTPUT,
    kilowatt: KILOWATT_OUTPUT,
  },
  results: ['rating', 'plates', 'bushes'],
  steps: [
    { key: 'millimetres', is: div('pitch', 'millimetre'), says: 'In millimetres.' },
    { key: 'turns', is: div('speed', 'minute'), says: 'In turns a minute.' },
    { key: 'newtons', is: div('dynamicStrength', 'newton'), says: 'In newtons.' },
    {
      key: 'plates',
      is: mul(
        'kilowatt',
        'strandFactor',
        num(1.23e-8),
        'newtons',
        'millimetres',
        pow('teeth', 1.08),
        pow('turns', 0.9),
      ),
      says: 'Plates bear in proportion to their dynamic strength.',
    },
    {
      key: 'bushes',
      is: mul('kilowatt', 'strandFactor', num(953.5), pow('teeth', 1.5), pow('millimetres', 0.8), pow('turns', -1.5)),
      says: 'Blows of the rollers on the teeth.',
    },
    { key: 'rating', is: fn('min', 'plates', 'bushes'), says: 'The lesser of the two.' },
  ],
  sources: [
    { title: 'ISO 10823:2004', at: 'annex A: plates by the dynamic strength, rollers and bushes', how: 'memory' },
    {
      title: 'Constant of the plates worked out in this project',
      at: 'it gives the American plate formula within 1 % for 08A to 20A',
      how: 'derived',
    },
  ],
  holds: ['15 000 h, 120 links, even load, good lubrication.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teeth, strandFactor } = input;
    const millimetres = input.pitch / MM;
    const turns = input.speed / RPM;
    const newtons = input.dynamicStrength / NEWTON;
    const plates = KILOWATT * strandFactor * 1.23e-8 * newtons * millimetres * teeth ** 1.08 * turns ** 0.9;
    const bushes = KILOWATT * strandFactor * 953.5 * teeth ** 1.5 * millimetres ** 0.8 * turns ** -1.5;
    return {
      rating: Math.min(plates, bushes),
      plates,
      bushes,
      millimetres,
      turns,
      newtons,
      newton: NEWTON,
      millimetre: MM,
      minute: RPM,
      kilowatt: KILOWATT,
    };
  },
});
