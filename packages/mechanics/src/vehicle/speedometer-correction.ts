import { add, div, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.speedometerCorrection';

const inputs = {
  indicated: {
    form: 'value',
    kind: 'speed',
    symbol: 'v_i',
    meaning: 'speed that the instrument shows',
    range: { min: 0 },
  },
  designRatio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i_0',
    meaning: 'turns of the sensed shaft for a turn of the wheel, in the vehicle that the instrument was made for',
    range: ABOVE_ZERO,
  },
  designRollOut: {
    form: 'value',
    kind: 'length',
    symbol: 'U_0',
    meaning: 'roll-out of the wheel there',
    range: ABOVE_ZERO,
  },
  ratio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'turns of the sensed shaft for a turn of the wheel now',
    range: ABOVE_ZERO,
  },
  rollOut: { form: 'value', kind: 'length', symbol: 'U', meaning: 'roll-out of the wheel now', range: ABOVE_ZERO },
  allowance: {
    form: 'value',
    kind: 'speed',
    symbol: 'c',
    meaning: 'fixed part of what the instrument may show too much; 4 km/h is the strictest',
    range: { min: 0 },
    default: 4 / 3.6,
  },
} as const satisfies Params;

/**
 * True speed behind a reading when wheel or gearing are not those the instrument was made for, and what a correct instrument may show.
 *
 * Errors: ratios or roll-outs not above zero, speed or allowance below zero.
 */
export const speedometerCorrection = defineMethod({
  id,
  gives: 'True speed behind a speedometer reading after a change of wheel or gearing',
  inputs,
  outputs: {
    speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'true speed' },
    factor: {
      form: 'value',
      kind: 'ratio',
      symbol: 'k',
      meaning: 'true speed over shown speed; so many times the sensed turns put the instrument right',
    },
    mostIndicated: {
      form: 'value',
      kind: 'speed',
      symbol: 'v_m',
      meaning: 'most that may be shown at that true speed',
    },
    verdict: {
      form: 'text',
      symbol: 'e',
      meaning: 'whether the reading is allowed at that true speed',
      example: 'shows too little',
    },
  },
  results: ['speed', 'factor', 'mostIndicated', 'verdict'],
  steps: [
    {
      key: 'factor',
      is: div(mul('rollOut', 'designRatio'), mul('designRollOut', 'ratio')),
      says: 'The same turns of the sensed shaft now cover another distance.',
    },
    { key: 'speed', is: mul('indicated', 'factor'), says: 'True speed.' },
    {
      key: 'mostIndicated',
      is: add('speed', div('speed', 10), 'allowance'),
      says: 'An instrument may never show less than the true speed, and a tenth and a fixed part more.',
    },
  ],
  sources: [
    { title: 'Turns and distance of a rolling wheel', how: 'derived' },
    {
      title: 'UN Regulation No. 39',
      at: 'paragraph 5: 0 ≤ V1 − V2 ≤ 0.1 V2 + 4 km/h; some classes have a larger fixed part',
      how: 'memory',
    },
  ],
  holds: [
    'The instrument was exact in the vehicle it was made for; most show some per cent too much. Local rules decide.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { indicated, designRatio, designRollOut, ratio, rollOut, allowance } = input;
    const factor = (rollOut * designRatio) / (designRollOut * ratio);
    const speed = indicated * factor;
    const mostIndicated = speed + speed / 10 + allowance;
    const verdict = indicated < speed ? 'shows too little' : indicated > mostIndicated ? 'shows too much' : 'allowed';
    return { speed, factor, mostIndicated, verdict };
  },
});
