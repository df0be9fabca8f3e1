import { add, div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'fit.joiningTemperature';

const growth = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'number', symbol, meaning, range: { min: 1e-7, max: 1e-4 } }) as const;
const warmth = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'temperature', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  interference: {
    form: 'value',
    kind: 'length',
    symbol: 'δ',
    meaning: 'greatest interference, on the diameter',
    range: { min: 0 },
  },
  room: {
    form: 'value',
    kind: 'length',
    symbol: 'S',
    meaning: 'play to slide it on with, about a thousandth of the diameter',
    range: { min: 0 },
  },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter of the joint', range: ABOVE_ZERO },
  hubGrowth: growth('α_o', 'growth per degree of the hub'),
  shaftGrowth: growth('α_i', 'growth per degree of the shaft as it is chilled'),
  shop: { ...warmth('T_0', 'temperature of the shop'), default: 293.15 },
  most: warmth('T_m', 'temperature that the hub may reach'),
} as const satisfies Params;

/**
 * Temperature that slides a hub over its seat. Where the hub may not be made that hot, the rest is chilled off the shaft.
 *
 * Errors: a diameter or temperature not above zero, growth out of range.
 */
export const joiningTemperature = defineMethod({
  id,
  gives: 'Temperature of hub and shaft at which the hub slides over its seat',
  inputs,
  outputs: {
    hub: { form: 'value', kind: 'temperature', symbol: 'T_o', meaning: 'temperature to warm the hub to' },
    shaft: { form: 'value', kind: 'temperature', symbol: 'T_i', meaning: 'temperature to chill the shaft to' },
    rise: { form: 'value', kind: 'temperatureDifference', symbol: 'ΔT', meaning: 'warming by the hub alone' },
    degree: { form: 'value', kind: 'temperatureDifference', symbol: 'u_T', meaning: 'one degree' },
    left: { form: 'value', kind: 'length', symbol: 'r', meaning: 'what the warm hub does not open' },
  },
  results: ['hub', 'shaft', 'rise'],
  steps: [
    {
      key: 'rise',
      is: mul(div(add('interference', 'room'), mul('hubGrowth', 'diameter')), 'degree'),
      says: 'The hub opens by the interference and by the play that it needs.',
    },
    { key: 'hub', is: fn('min', add('shop', 'rise'), 'most'), says: 'No hotter than its steel bears.' },
    {
      key: 'left',
      is: fn(
        'max',
        sub(add('interference', 'room'), mul('hubGrowth', 'diameter', div(sub('hub', 'shop'), 'degree'))),
        num(0),
      ),
      says: 'What is left for the shaft.',
    },
    {
      key: 'shaft',
      is: sub('shop', mul(div('left', mul('shaftGrowth', 'diameter')), 'degree')),
      says: 'The shaft shrinks by what is left.',
    },
  ],
  sources: [{ title: 'DIN 7190', edition: '2001', at: 'temperature for joining', how: 'memory' }],
  holds: [
    'A bearing ring stays below 120 °C, a hardened part below the temperature that it was tempered at.',
    'Dry ice stands at −78 °C and liquid nitrogen at −196 °C: steel grows less down there, about 8.5 millionths per degree. Both burn and take the air away: gloves, goggles, and an open door.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { interference, room, diameter, hubGrowth, shaftGrowth, shop, most } = input;
    const degree = 1;
    const rise = ((interference + room) / (hubGrowth * diameter)) * degree;
    const hub = Math.min(shop + rise, most);
    const left = Math.max(interference + room - hubGrowth * diameter * ((hub - shop) / degree), 0);
    return { hub, shaft: shop - (left / (shaftGrowth * diameter)) * degree, rise, degree, left };
  },
});
