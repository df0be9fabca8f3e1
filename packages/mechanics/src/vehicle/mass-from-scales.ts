import { div, mul, sub, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.massFromScales';

const inputs = {
  readings: {
    form: 'list',
    kind: 'mass',
    symbol: 'R',
    meaning: 'what the scale shows under each wheel or axle in turn',
    range: { min: 0 },
    atLeast: 1,
  },
  tare: {
    form: 'value',
    kind: 'mass',
    symbol: 'R_0',
    meaning: 'what it shows with the bare plank on it',
    range: { min: 0 },
    default: 0,
  },
  scaleArm: {
    form: 'value',
    kind: 'length',
    symbol: 'b',
    meaning: 'from the edge that the far end of the plank rests on to the middle of the scale',
    range: ABOVE_ZERO,
    default: 1,
  },
  loadArm: {
    form: 'value',
    kind: 'length',
    symbol: 'a',
    meaning: 'from that edge to the middle of the tyre’s print; the same as the scale’s when it stands on the scale',
    range: ABOVE_ZERO,
    default: 1,
  },
  scaleError: {
    form: 'value',
    kind: 'mass',
    symbol: 'δR',
    meaning: 'how far each reading may be off, either way',
    range: { min: 0 },
    default: 0.5,
  },
} as const satisfies Params;

/**
 * Mass on one axle, or of a whole vehicle, from weighing wheel by wheel; with a plank as a lever where a wheel is too heavy for the scale.
 *
 * Errors: no reading, arms not above zero, readings that are no more than the bare plank.
 */
export const massFromScales = defineMethod({
  id,
  gives: 'Mass from weighing wheel by wheel, straight on the scale or over a plank as a lever',
  inputs,
  outputs: {
    mass: { form: 'value', kind: 'mass', symbol: 'm', meaning: 'mass on all wheels weighed' },
    spread: { form: 'value', kind: 'mass', symbol: 'δm', meaning: 'how far the scale may put it off, either way' },
    count: { form: 'integer', symbol: 'n', meaning: 'weighings' },
    net: { form: 'value', kind: 'mass', symbol: 'R_n', meaning: 'sum of the readings without the plank' },
    leverage: {
      form: 'value',
      kind: 'ratio',
      symbol: 'u',
      meaning: 'load on the plank over what the scale feels of it',
    },
  },
  results: ['mass', 'spread'],
  steps: [
    { key: 'net', is: sub(sum('readings'), mul('count', 'tare')), says: 'All readings, each without the plank.' },
    {
      key: 'leverage',
      is: div('scaleArm', 'loadArm'),
      says: 'Moments about the edge: the nearer the wheel stands to it, the less the scale feels.',
    },
    { key: 'mass', is: mul('net', 'leverage'), says: 'Back from the scale to the wheels.' },
    {
      key: 'spread',
      is: mul('count', 'scaleError', 'leverage'),
      says: 'The lever makes the error of the scale larger as well.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      at: 'table A-9, beam on two supports with one load between them: reactions',
      how: 'memory',
    },
  ],
  holds: [
    'Vehicle level, the other wheels packed as high as the plank; brakes off; the plank level and free of everything else.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { readings, tare, scaleArm, loadArm, scaleError } = input;
    const count = readings.length;
    let total = 0;
    for (const reading of readings) total += reading;
    const net = total - count * tare;
    if (!(net > 0))
      throw new MethodError(
        id,
        'readings',
        `What the scale shows: ${total} kg in all read; more than the bare plank, ${count * tare} kg, is accepted.`,
      );
    const leverage = scaleArm / loadArm;
    return { mass: net * leverage, spread: count * scaleError * leverage, count, net, leverage };
  },
});
