import { add, div, fn, mul, num, PI, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltTorque';

const friction = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'number', symbol, meaning, range: { min: 0.02, max: 0.6 }, default: 0.15 }) as const;

const inputs = {
  preload: { form: 'value', kind: 'force', symbol: 'F', meaning: 'preload', range: { min: 0 } },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'thread diameter', range: ABOVE_ZERO },
  mean: { form: 'value', kind: 'length', symbol: 'd_m', meaning: 'mean diameter of the thread', range: ABOVE_ZERO },
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'pitch', range: ABOVE_ZERO },
  thread: friction('f', 'friction in the thread'),
  head: friction('f_c', 'friction under the head'),
} as const satisfies Params;

const FLANK = Math.PI / 6;
const COLLAR = 0.625;

/**
 * Tightening torque for a preload, from friction in the thread and under the head.
 *
 * Errors: a size not above zero.
 */
export const boltTorque = defineMethod({
  id,
  gives: 'Tightening torque of a bolt for a preload',
  inputs,
  outputs: {
    torque: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'tightening torque' },
    factor: { form: 'value', kind: 'number', symbol: 'K', meaning: 'torque factor' },
    lead: { form: 'value', kind: 'angle', symbol: 'λ', meaning: 'lead angle' },
    inThread: { form: 'value', kind: 'number', symbol: 'k_t', meaning: 'part of the thread' },
  },
  results: ['torque', 'factor'],
  steps: [
    { key: 'lead', is: fn('atan', div('pitch', mul(PI, 'mean'))), says: 'Pitch unrolled at the mean diameter.' },
    {
      key: 'inThread',
      is: div(
        add(fn('tan', 'lead'), div('thread', num(Math.cos(FLANK), 'cos 30°'))),
        sub(num(1), div(mul('thread', fn('tan', 'lead')), num(Math.cos(FLANK), 'cos 30°'))),
      ),
      says: 'Flanks at 30 degrees.',
    },
    {
      key: 'factor',
      is: add(div(mul('mean', 'inThread'), mul(num(2), 'diameter')), mul(num(COLLAR), 'head')),
      says: 'Thread, and a head one and a half times as wide as the thread.',
    },
    { key: 'torque', is: mul('factor', 'preload', 'diameter'), says: 'Times preload and thread.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equation 8-26',
      how: 'memory',
    },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { preload, diameter, mean, pitch, thread, head } = input;
    const lead = Math.atan(pitch / (Math.PI * mean));
    const cos = Math.cos(FLANK);
    const inThread = (Math.tan(lead) + thread / cos) / (1 - (thread * Math.tan(lead)) / cos);
    const factor = (mean * inThread) / (2 * diameter) + COLLAR * head;
    return { torque: factor * preload * diameter, factor, lead, inThread };
  },
});
