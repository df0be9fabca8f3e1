import { div, mul } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.elasticSelect';

/** 0 °C in kelvin. */
const ICE = 273.15;
/** Factor up to a temperature, °C, and up to so many starts an hour. */
const BY_TEMPERATURE = [
  [30, 1],
  [40, 1.2],
  [80, 1.4],
  [120, 1.8],
] as const;
const BY_STARTS = [
  [100, 1],
  [200, 1.2],
  [400, 1.4],
  [800, 1.6],
] as const;
const BY_SHOCK = { light: 1.5, medium: 1.8, heavy: 2.2 } as const;
/** The table’s limits are whole degrees; a reading may lie above by rounding of the conversion. */
const ROUNDING = 1e-9;

const inputs = {
  torque: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_N',
    meaning: 'running torque at the coupling',
    range: ABOVE_ZERO,
  },
  torqueStart: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_S',
    meaning: 'greatest torque of starts and shocks at the coupling',
    range: ABOVE_ZERO,
  },
  torqueAlternating: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_W',
    meaning: 'torque that alternates about the running torque, to one side',
    range: { min: 0 },
  },
  temperature: {
    form: 'value',
    kind: 'temperature',
    symbol: 'ϑ',
    meaning: 'temperature about the coupling',
    range: { min: ICE - 40, max: ICE + 120 + ROUNDING },
  },
  startsPerHour: {
    form: 'value',
    kind: 'count',
    symbol: 'Z',
    meaning: 'starts in an hour',
    range: { min: 0, max: 800 },
  },
  shock: { form: 'choice', symbol: 'w', meaning: 'shocks of drive and load', choices: ['light', 'medium', 'heavy'] },
  massFactor: {
    form: 'value',
    kind: 'number',
    symbol: 'S_m',
    meaning: 'part of the shock that the coupling carries, by the split of inertia; 1 when that is not known',
    range: { min: 0.01, max: 1 },
    default: 1,
  },
  ratedTorque: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_KN',
    meaning: 'rated torque of the coupling',
    range: ABOVE_ZERO,
  },
  ratedMost: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_Km',
    meaning: 'greatest torque of the coupling',
    range: ABOVE_ZERO,
  },
  ratedAlternating: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_KW',
    meaning: 'alternating torque that the coupling bears for good, to one side',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/** Factor of the first step of a table that is not below the value. */
function step(
  input: 'temperature' | 'startsPerHour',
  rows: readonly (readonly [number, number])[],
  value: number,
): number {
  const row = rows.find(([upTo]) => value <= upTo + ROUNDING);
  if (row !== undefined) return row[1];
  throw new MethodError(id, input, `The table ends before ${value}.`);
}

/**
 * Whether an elastic coupling of known ratings bears running, starting and alternating torque.
 *
 * Factors go by steps, up to and with the value named: to 30, 40, 80, 120 °C; to 100, 200, 400, 800 starts an hour. Off the table is refused.
 *
 * Errors: torque or rating not above zero, over 120 °C or below −40 °C, over 800 starts an hour, mass factor outside 0.01..1.
 */
export const elasticSelect = defineMethod({
  id,
  gives: 'Torques that an elastic coupling must be rated for, and its reserves',
  inputs,
  outputs: {
    requiredTorque: { form: 'value', kind: 'torque', symbol: 'T_rN', meaning: 'rated torque required' },
    requiredMost: { form: 'value', kind: 'torque', symbol: 'T_rm', meaning: 'greatest torque required' },
    reserveTorque: { form: 'value', kind: 'number', symbol: 'n_N', meaning: 'reserve of the rated torque' },
    reserveMost: { form: 'value', kind: 'number', symbol: 'n_m', meaning: 'reserve of the greatest torque' },
    alternatingUsed: {
      form: 'value',
      kind: 'fraction',
      symbol: 'q_W',
      meaning: 'part of the alternating torque that is used',
    },
    verdict: {
      form: 'choice',
      symbol: 'w_v',
      meaning: 'whether all three ratings are kept',
      choices: ['large enough', 'too small'],
    },
    temperatureFactor: { form: 'value', kind: 'number', symbol: 'S_t', meaning: 'temperature factor' },
    startFactor: { form: 'value', kind: 'number', symbol: 'S_z', meaning: 'factor for starts' },
    shockFactor: { form: 'value', kind: 'number', symbol: 'S_A', meaning: 'shock factor' },
  },
  results: ['requiredTorque', 'requiredMost', 'reserveTorque', 'reserveMost', 'alternatingUsed', 'verdict'],
  steps: [
    { key: 'requiredTorque', is: mul('torque', 'temperatureFactor'), says: 'A warm elastomer carries less.' },
    {
      key: 'requiredMost',
      is: mul('torqueStart', 'massFactor', 'shockFactor', 'temperatureFactor', 'startFactor'),
      says: 'Shock, heat and number of starts all count.',
    },
    { key: 'reserveTorque', is: div('ratedTorque', 'requiredTorque'), says: 'Capacity over demand.' },
    { key: 'reserveMost', is: div('ratedMost', 'requiredMost'), says: 'Capacity over demand.' },
    {
      key: 'alternatingUsed',
      is: div(mul('torqueAlternating', 'temperatureFactor'), 'ratedAlternating'),
      says: 'An engine’s firing, away from resonance.',
    },
  ],
  sources: [
    { title: 'A coupling maker’s catalogue: selection and factors for polyurethane of 92 Shore A', how: 'read' },
    { title: 'DIN 740-2, flexible shaft couplings', how: 'memory' },
  ],
  holds: [
    'Polyurethane of 92 Shore A; softer elastomers want more for heat.',
    'No factor stands in for a check of torsional resonance behind a piston engine.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const temperatureFactor = step('temperature', BY_TEMPERATURE, input.temperature - ICE);
    const startFactor = step('startsPerHour', BY_STARTS, input.startsPerHour);
    const shockFactor = BY_SHOCK[input.shock];
    const requiredTorque = input.torque * temperatureFactor;
    const requiredMost = input.torqueStart * input.massFactor * shockFactor * temperatureFactor * startFactor;
    const reserveTorque = input.ratedTorque / requiredTorque;
    const reserveMost = input.ratedMost / requiredMost;
    const alternatingUsed = (input.torqueAlternating * temperatureFactor) / input.ratedAlternating;
    const enough = reserveTorque >= 1 && reserveMost >= 1 && alternatingUsed <= 1;
    return {
      requiredTorque,
      requiredMost,
      reserveTorque,
      reserveMost,
      alternatingUsed,
      verdict: enough ? 'large enough' : 'too small',
      temperatureFactor,
      startFactor,
      shockFactor,
    };
  },
});
