import { add, div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'chain.wearLife';
/** mm³/(N·m) as a pressure: one over it is 1 GPa. */
const GIGAPASCAL = 1e9;

const inputs = {
  wear: {
    form: 'value',
    kind: 'number',
    symbol: 'k',
    meaning: 'what rubs off pin and bush together, in mm³ for each newton and metre',
    range: ABOVE_ZERO,
  },
  pressure: {
    form: 'value',
    kind: 'pressure',
    symbol: 'p_r',
    meaning: 'pressure in the joints, the mean over the turns',
    range: ABOVE_ZERO,
  },
  pinDiameter: { form: 'value', kind: 'length', symbol: 'd_2', meaning: 'diameter of the pins', range: ABOVE_ZERO },
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch of the chain', range: ABOVE_ZERO },
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 6 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven sprocket', range: { min: 6 } },
  links: { form: 'value', kind: 'number', symbol: 'X', meaning: 'links of the chain', range: ABOVE_ZERO },
  limit: {
    form: 'value',
    kind: 'fraction',
    symbol: 'ε',
    meaning: 'elongation at which it is worn out',
    range: { min: 0, max: 0.1, open: true },
  },
} as const satisfies Params;

/**
 * Turns of the driver until a chain is worn out: a joint rubs loaded twice in each round of the chain, onto the driver and off the driven sprocket.
 *
 * Errors: any size not above zero, fewer than 6 teeth, an elongation outside 0 to 10 %.
 */
export const chainWearLife = defineMethod({
  id,
  gives: 'Turns of the driver until a chain is worn out',
  inputs,
  outputs: {
    turns: { form: 'value', kind: 'number', symbol: 'N', meaning: 'turns of the driver until it is worn out' },
    perTurn: { form: 'value', kind: 'number', symbol: 'ε_1', meaning: 'elongation in one turn of the driver' },
    slide: { form: 'value', kind: 'length', symbol: 's', meaning: 'way that a joint rubs under load in one round' },
    rounds: { form: 'value', kind: 'number', symbol: 'r', meaning: 'rounds of the chain in one turn of the driver' },
    hardness: {
      form: 'value',
      kind: 'pressure',
      symbol: 'u_k',
      meaning: 'one newton and metre over one cubic millimetre',
    },
  },
  results: ['turns', 'perTurn', 'slide'],
  steps: [
    {
      key: 'slide',
      is: mul(PI, 'pinDiameter', add(div(1, 'teethDriver'), div(1, 'teethDriven'))),
      says: 'The pin turns in its bush by one tooth’s angle at each sprocket.',
    },
    { key: 'rounds', is: div('teethDriver', 'links'), says: 'Teeth passed over links.' },
    {
      key: 'perTurn',
      is: div(mul('wear', div('pressure', 'hardness'), 'slide', 'rounds'), 'pitch'),
      says: 'What rubs off makes each pitch longer.',
    },
    { key: 'turns', is: div('limit', 'perTurn'), says: 'Until the limit is reached.' },
  ],
  sources: [
    {
      title: 'Worked out in this project from wear in proportion to pressure and way (Archard)',
      at: 'its wear numbers stand on the basis of the ratings: 3 % in 15 000 h',
      how: 'derived',
    },
  ],
  holds: ['Wear numbers spread at least five times either way; a life by them is a range, never one number.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const slide = Math.PI * input.pinDiameter * (1 / input.teethDriver + 1 / input.teethDriven);
    const rounds = input.teethDriver / input.links;
    const perTurn = (input.wear * (input.pressure / GIGAPASCAL) * slide * rounds) / input.pitch;
    return { turns: input.limit / perTurn, perTurn, slide, rounds, hardness: GIGAPASCAL };
  },
});
