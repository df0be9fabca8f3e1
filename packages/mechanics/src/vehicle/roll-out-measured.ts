import { div, mul, PI } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.rollOutMeasured';

const inputs = {
  distance: {
    form: 'value',
    kind: 'length',
    symbol: 's',
    meaning: 'distance rolled straight ahead',
    range: ABOVE_ZERO,
  },
  turns: { form: 'value', kind: 'number', symbol: 'N', meaning: 'turns of the wheel, mark to mark', range: ABOVE_ZERO },
  tape: {
    form: 'value',
    kind: 'length',
    symbol: 'δs',
    meaning: 'how far the distance may be off, either way',
    range: { min: 0 },
    default: 0.02,
  },
} as const satisfies Params;

/**
 * Roll-out of one turn from rolling a loaded wheel over a measured distance.
 *
 * Errors: a distance or turns not above zero.
 */
export const rollOutMeasured = defineMethod({
  id,
  gives: 'Roll-out of one turn from a distance rolled',
  inputs,
  outputs: {
    rollOut: { form: 'value', kind: 'length', symbol: 'U', meaning: 'roll-out of one turn' },
    spread: { form: 'value', kind: 'length', symbol: 'δU', meaning: 'how far the tape may put it off, either way' },
    rollingRadius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'rolling radius' },
  },
  results: ['rollOut', 'spread', 'rollingRadius'],
  steps: [
    { key: 'rollOut', is: div('distance', 'turns'), says: 'Many turns share the error of the tape.' },
    { key: 'spread', is: div('tape', 'turns'), says: 'The error of the tape, for one turn.' },
    { key: 'rollingRadius', is: div('rollOut', mul(2, PI)), says: 'Radius of the circle that would roll as far.' },
  ],
  sources: [{ title: 'Definition of the rolling circumference: distance rolled in one turn', how: 'common practice' }],
  holds: ['Rolled at walking pace with the load and the pressure of the road, without pull or brake on the wheel.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const rollOut = input.distance / input.turns;
    return { rollOut, spread: input.tape / input.turns, rollingRadius: rollOut / (2 * Math.PI) };
  },
});
