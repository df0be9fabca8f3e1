import { add, div, mul, product, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'ratio.trainPower';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T_1', meaning: 'torque into the train', range: { min: 0 } },
  angularSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_1',
    meaning: 'speed of the first shaft',
    range: { min: 0 },
  },
  ratios: {
    form: 'list',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'ratio of each stage, input speed over output speed',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
  efficiencies: {
    form: 'list',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiency of each stage, in the same order',
    range: { min: 0, max: 1 },
    atLeast: 1,
  },
} as const satisfies Params;

/**
 * Torque, speed and power on every shaft of a train that is driven from its first shaft, and what each stage loses.
 *
 * Errors: torque or speed below zero, a ratio not above zero, an efficiency outside 0..1, lists of different length.
 */
export const ratioTrainPower = defineMethod({
  id,
  gives: 'Torque, speed and power on every shaft of a train, with the loss in each stage',
  inputs,
  outputs: {
    torques: { form: 'list', kind: 'torque', symbol: 'T', meaning: 'torque on each shaft, first shaft first' },
    angularSpeeds: {
      form: 'list',
      kind: 'angularSpeed',
      symbol: 'ω',
      meaning: 'speed of each shaft, first shaft first',
    },
    powers: { form: 'list', kind: 'power', symbol: 'P', meaning: 'power on each shaft, first shaft first' },
    losses: { form: 'list', kind: 'power', symbol: 'V', meaning: 'power lost in each stage' },
    torqueOut: { form: 'value', kind: 'torque', symbol: 'T_o', meaning: 'torque out of the train' },
    angularSpeedOut: { form: 'value', kind: 'angularSpeed', symbol: 'ω_o', meaning: 'speed of the last shaft' },
    powerIn: { form: 'value', kind: 'power', symbol: 'P_i', meaning: 'power into the train' },
    powerOut: { form: 'value', kind: 'power', symbol: 'P_o', meaning: 'power out of the train' },
    lossTotal: { form: 'value', kind: 'power', symbol: 'V_t', meaning: 'power lost in all stages' },
    residual: {
      form: 'value',
      kind: 'power',
      symbol: 'ε_P',
      meaning: 'power in less power out less losses; zero but for rounding',
    },
    overall: { form: 'value', kind: 'ratio', symbol: 'i_t', meaning: 'overall ratio' },
    efficiency: { form: 'value', kind: 'fraction', symbol: 'η_t', meaning: 'efficiency of the whole train' },
  },
  results: [
    'torques',
    'angularSpeeds',
    'powers',
    'losses',
    'torqueOut',
    'angularSpeedOut',
    'powerIn',
    'powerOut',
    'lossTotal',
    'residual',
  ],
  steps: [
    { key: 'overall', is: product('ratios'), says: 'Each stage divides the speed and multiplies the torque.' },
    { key: 'efficiency', is: product('efficiencies'), says: 'Each stage passes its part of the power on.' },
    { key: 'angularSpeedOut', is: div('angularSpeed', 'overall'), says: 'Speed of the last shaft.' },
    { key: 'torqueOut', is: mul('torque', 'overall', 'efficiency'), says: 'Torque on the last shaft.' },
    { key: 'powerIn', is: mul('torque', 'angularSpeed'), says: 'Power on the first shaft.' },
    { key: 'powerOut', is: mul('torqueOut', 'angularSpeedOut'), says: 'Power on the last shaft.' },
    { key: 'lossTotal', is: sum('losses'), says: 'What the stages turn into heat.' },
    {
      key: 'lossTotal',
      left: sym('powerIn'),
      right: add('powerOut', 'lossTotal'),
      says: 'Power in equals power out and losses.',
    },
  ],
  sources: [
    {
      title: 'Automotive Transmissions (Naunheimer and others)',
      at: 'chapter 4, torque along a drive: T_k = T_(k−1) i_k η_k',
      how: 'memory',
    },
  ],
  holds: ['The first shaft drives. When the load drives, losses act the other way.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, angularSpeed, ratios, efficiencies } = input;
    if (efficiencies.length !== ratios.length) {
      throw new MethodError(
        id,
        'efficiencies',
        `Efficiency of each stage must be a list as long as the ratios, ${ratios.length} entries; read ${efficiencies.length}.`,
      );
    }
    const torques = [torque];
    const angularSpeeds = [angularSpeed];
    const powerIn = torque * angularSpeed;
    const powers = [powerIn];
    const losses: number[] = [];
    let [t, w, p, overall, efficiency, lossTotal] = [torque, angularSpeed, powerIn, 1, 1, 0];
    for (let k = 0; k < ratios.length; k++) {
      const ratio = ratios[k] as number;
      const passed = efficiencies[k] as number;
      t *= ratio * passed;
      w /= ratio;
      const after = t * w;
      const loss = p * (1 - passed);
      torques.push(t);
      angularSpeeds.push(w);
      powers.push(after);
      losses.push(loss);
      lossTotal += loss;
      overall *= ratio;
      efficiency *= passed;
      p = after;
    }
    return {
      torques,
      angularSpeeds,
      powers,
      losses,
      torqueOut: t,
      angularSpeedOut: w,
      powerIn,
      powerOut: p,
      lossTotal,
      residual: powerIn - p - lossTotal,
      overall,
      efficiency,
    };
  },
});
