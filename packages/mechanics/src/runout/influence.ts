import { add, div, fn, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'runout.influence';

const inputs = {
  before: { form: 'value', kind: 'length', symbol: 'O', meaning: 'offset before the trial', range: { min: 0 } },
  beforeAngle: { form: 'value', kind: 'angle', symbol: 'φ_O', meaning: 'its angle' },
  after: { form: 'value', kind: 'length', symbol: 'O_1', meaning: 'offset with the trial in place', range: { min: 0 } },
  afterAngle: { form: 'value', kind: 'angle', symbol: 'φ_1', meaning: 'its angle' },
  trial: {
    form: 'value',
    kind: 'number',
    symbol: 'W',
    meaning: 'size of the trial: grams, millimetres of bead, whatever is counted',
    range: ABOVE_ZERO,
  },
  trialAngle: { form: 'value', kind: 'angle', symbol: 'φ_W', meaning: 'its angle, counted the same way round' },
} as const satisfies Params;

/**
 * What a trial tells: the correction that would take the rest away, by vectors.
 *
 * Errors: a trial without effect, sizes out of range.
 */
export const influence = defineMethod({
  id,
  gives:
    'Correction that takes an offset or a vibration away, from one trial, and what is left to add when the trial stays',
  inputs,
  outputs: {
    effect: { form: 'value', kind: 'length', symbol: 'E', meaning: 'what the trial changed' },
    effectAngle: { form: 'value', kind: 'angle', symbol: 'φ_E', meaning: 'direction of the change' },
    perUnit: { form: 'value', kind: 'length', symbol: 'H', meaning: 'change per unit of trial' },
    lag: { form: 'value', kind: 'angle', symbol: 'λ', meaning: 'turn of the change from the trial' },
    correction: { form: 'value', kind: 'number', symbol: 'C', meaning: 'whole correction, trial taken off' },
    correctionAngle: { form: 'value', kind: 'angle', symbol: 'φ_C', meaning: 'its angle' },
    more: { form: 'value', kind: 'number', symbol: 'M', meaning: 'correction to add when the trial stays on' },
    moreAngle: { form: 'value', kind: 'angle', symbol: 'φ_M', meaning: 'its angle' },
    x: { form: 'value', kind: 'length', symbol: 'E_x', meaning: 'change towards mark 0' },
    y: { form: 'value', kind: 'length', symbol: 'E_y', meaning: 'change a quarter turn on' },
    turnX: { form: 'value', kind: 'number', symbol: 'C_x', meaning: 'correction towards mark 0' },
    turnY: { form: 'value', kind: 'number', symbol: 'C_y', meaning: 'correction a quarter turn on' },
  },
  results: ['effect', 'effectAngle', 'perUnit', 'lag', 'correction', 'correctionAngle', 'more', 'moreAngle'],
  steps: [
    {
      key: 'x',
      is: sub(mul('after', fn('cos', 'afterAngle')), mul('before', fn('cos', 'beforeAngle'))),
      says: 'After less before, as vectors.',
    },
    {
      key: 'y',
      is: sub(mul('after', fn('sin', 'afterAngle')), mul('before', fn('sin', 'beforeAngle'))),
      says: 'Likewise.',
    },
    { key: 'effect', is: fn('sqrt', add(pow('x', 2), pow('y', 2))), says: 'Size of the change.' },
    { key: 'effectAngle', is: fn('atan2', 'y', 'x'), says: 'Its direction.' },
    { key: 'perUnit', is: div('effect', 'trial'), says: 'What one unit does.' },
    {
      key: 'lag',
      is: fn('atan2', fn('sin', sub('effectAngle', 'trialAngle')), fn('cos', sub('effectAngle', 'trialAngle'))),
      says: 'Direction of the change against that of the trial.',
    },
    { key: 'correction', is: div('before', 'perUnit'), says: 'As many units as the offset needs.' },
    {
      key: 'turnX',
      is: mul(-1, 'correction', fn('cos', sub('beforeAngle', 'lag'))),
      says: 'Opposite to the offset, turned back by the lag.',
    },
    { key: 'turnY', is: mul(-1, 'correction', fn('sin', sub('beforeAngle', 'lag'))), says: 'Likewise.' },
    { key: 'correctionAngle', is: fn('atan2', 'turnY', 'turnX'), says: 'Its angle.' },
    {
      key: 'more',
      is: fn(
        'sqrt',
        add(
          pow(sub('turnX', mul('trial', fn('cos', 'trialAngle'))), 2),
          pow(sub('turnY', mul('trial', fn('sin', 'trialAngle'))), 2),
        ),
      ),
      says: 'The trial that stays on is taken off the whole correction.',
    },
    {
      key: 'moreAngle',
      is: fn(
        'atan2',
        sub('turnY', mul('trial', fn('sin', 'trialAngle'))),
        sub('turnX', mul('trial', fn('cos', 'trialAngle'))),
      ),
      says: 'Its angle.',
    },
  ],
  sources: [{ title: 'Single-plane field balancing by vectors (influence coefficient)', how: 'memory' }],
  holds: ['Twice the trial does twice as much, in the same direction; beads keep to this only roughly.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { before, beforeAngle, after, afterAngle, trial, trialAngle } = input;
    const x = after * Math.cos(afterAngle) - before * Math.cos(beforeAngle);
    const y = after * Math.sin(afterAngle) - before * Math.sin(beforeAngle);
    const effect = Math.hypot(x, y);
    if (!(effect > 0))
      throw new MethodError(id, 'after', 'the trial changed nothing; a trial with an effect is accepted.');
    const effectAngle = Math.atan2(y, x);
    const lag = Math.atan2(Math.sin(effectAngle - trialAngle), Math.cos(effectAngle - trialAngle));
    const perUnit = effect / trial;
    const correction = before / perUnit;
    const turnX = -correction * Math.cos(beforeAngle - lag);
    const turnY = -correction * Math.sin(beforeAngle - lag);
    const [moreX, moreY] = [turnX - trial * Math.cos(trialAngle), turnY - trial * Math.sin(trialAngle)];
    return {
      effect,
      effectAngle,
      perUnit,
      lag,
      correction,
      correctionAngle: Math.atan2(turnY, turnX),
      more: Math.hypot(moreX, moreY),
      moreAngle: Math.atan2(moreY, moreX),
      x,
      y,
      turnX,
      turnY,
    };
  },
});
