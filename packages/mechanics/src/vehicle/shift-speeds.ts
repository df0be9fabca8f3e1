import { add, div, dot, fn, mul, sub, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.shiftSpeeds';

const KILOWATT = 1000;
/** Numbers of the rule. */
const DECAY = 1.9;
const SPAN = 0.5753;
const FIRST_LESS = 0.1;
const CLUTCH = 0.03;

const inputs = {
  ratedPower: { form: 'value', kind: 'power', symbol: 'P_n', meaning: 'rated power of the engine', range: ABOVE_ZERO },
  kerbMass: {
    form: 'value',
    kind: 'mass',
    symbol: 'm_k',
    meaning: 'mass of the vehicle ready to drive, without rider',
    range: ABOVE_ZERO,
  },
  riderMass: {
    form: 'value',
    kind: 'mass',
    symbol: 'm_d',
    meaning: 'mass of the rider',
    range: { min: 0 },
    default: 75,
  },
  ratedSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_s',
    meaning: 'engine speed of the rated power',
    range: ABOVE_ZERO,
  },
  idleSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_i',
    meaning: 'idle speed of the engine',
    range: ABOVE_ZERO,
  },
  ratios: {
    form: 'list',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'engine speed over wheel speed in each gear, first gear first',
    range: ABOVE_ZERO,
    atLeast: 2,
  },
  rollingRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'rolling radius of the driven wheel',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Road speeds at which a rider shifts by the rule of the world motorcycle test.
 *
 * Errors: values not above zero, an idle speed not below the rated speed, fewer than two gears, ratios that do not fall, a first gear that would be
 * left below idle.
 */
export const shiftSpeeds = defineMethod({
  id,
  gives: 'Road speeds at which gears are shifted by the rule of the world motorcycle test',
  inputs,
  outputs: {
    upSpeeds: {
      form: 'list',
      kind: 'speed',
      symbol: 'v_u',
      meaning: 'speed at which each gear but the last is left upwards',
    },
    downSpeeds: {
      form: 'list',
      kind: 'speed',
      symbol: 'v_d',
      meaning: 'speed at which second gear is declutched, then at which third and each higher gear is left downwards',
    },
    firstEngineSpeed: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_1',
      meaning: 'engine speed at which first gear is left',
    },
    engineSpeed: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_u',
      meaning: 'engine speed at which higher gears are left',
    },
    powerPart: {
      form: 'value',
      kind: 'number',
      symbol: 'x',
      meaning: 'part of the speed range used: the stronger, the less',
    },
    kilowatt: { form: 'value', kind: 'power', symbol: 'P_0', meaning: 'one kilowatt, the unit of the rule' },
    kilogram: { form: 'value', kind: 'mass', symbol: 'm_0', meaning: 'one kilogram, the unit of the rule' },
    turns: {
      form: 'list',
      kind: 'angularSpeed',
      symbol: 'ω_k',
      meaning: 'engine speed at which each gear but the last is left',
    },
    perTurn: {
      form: 'list',
      kind: 'length',
      symbol: 'λ',
      meaning: 'way for one radian of the engine in each gear but the last',
    },
  },
  results: ['upSpeeds', 'downSpeeds', 'firstEngineSpeed', 'engineSpeed'],
  steps: [
    {
      key: 'powerPart',
      is: fn('exp', div(mul(-DECAY, div('ratedPower', 'kilowatt')), div(add('kerbMass', 'riderMass'), 'kilogram'))),
      says: 'Power in kW over mass in kg.',
    },
    {
      key: 'firstEngineSpeed',
      is: add(mul(sub(mul(SPAN, 'powerPart'), FIRST_LESS), sub('ratedSpeed', 'idleSpeed')), 'idleSpeed'),
      says: 'First gear is left earlier.',
    },
    {
      key: 'engineSpeed',
      is: add(mul(SPAN, 'powerPart', sub('ratedSpeed', 'idleSpeed')), 'idleSpeed'),
      says: 'All other gears.',
    },
    {
      key: 'upSpeeds',
      left: sym('upSpeeds', 0),
      right: div(mul('firstEngineSpeed', 'rollingRadius'), sym('ratios', 0)),
      says: 'Road speed at that engine speed in first gear.',
    },
    {
      key: 'upSpeeds',
      left: sum('upSpeeds'),
      right: dot('turns', 'perTurn'),
      says: 'In each gear engine speed times its way for one radian; shown added up.',
    },
    {
      key: 'downSpeeds',
      left: sym('downSpeeds', 0),
      right: div(mul(add(mul(CLUTCH, sub('ratedSpeed', 'idleSpeed')), 'idleSpeed'), 'rollingRadius'), sym('ratios', 1)),
      says: 'Second gear is declutched just above idle. Each higher gear is left at the speed at which the gear two below it was left upwards.',
    },
  ],
  sources: [{ title: 'UN Global Technical Regulation No. 2', at: 'section 6.5 and Annex 13, gear use', how: 'memory' }],
  holds: ['A gear is held for at least 2 s; no shift up while slowing down.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { ratedPower, kerbMass, riderMass, ratedSpeed, idleSpeed, ratios, rollingRadius } = input;
    if (!(idleSpeed < ratedSpeed))
      throw new MethodError(
        id,
        'idleSpeed',
        `Idle speed of the engine: ${idleSpeed} rad/s read; below the speed of rated power, ${ratedSpeed} rad/s, is accepted.`,
      );
    const falls = ratios.findIndex((ratio, k) => k > 0 && ratio >= (ratios[k - 1] as number));
    if (falls >= 0)
      throw new MethodError(
        id,
        'ratios',
        `Ratio of each gear, entry ${falls + 1}: ${ratios[falls]} is not below ${ratios[falls - 1]} of the gear before.`,
      );
    const powerPart = Math.exp((-DECAY * (ratedPower / KILOWATT)) / (kerbMass + riderMass));
    const span = ratedSpeed - idleSpeed;
    const firstEngineSpeed = (SPAN * powerPart - FIRST_LESS) * span + idleSpeed;
    if (!(firstEngineSpeed > idleSpeed))
      throw new MethodError(
        id,
        'ratedPower',
        `Rated power of the engine: ${ratedPower} W for ${kerbMass + riderMass} kg read; the rule would leave first gear below idle speed.`,
      );
    const engineSpeed = SPAN * powerPart * span + idleSpeed;
    const left = ratios.slice(0, -1);
    const turns = left.map((_, k) => (k === 0 ? firstEngineSpeed : engineSpeed));
    const perTurn = left.map((ratio) => rollingRadius / ratio);
    const upSpeeds = left.map((ratio, k) => ((turns[k] as number) * rollingRadius) / ratio);
    const declutch = ((CLUTCH * span + idleSpeed) * rollingRadius) / (ratios[1] as number);
    return {
      upSpeeds,
      downSpeeds: [declutch, ...upSpeeds.slice(0, -1)],
      firstEngineSpeed,
      engineSpeed,
      powerPart,
      kilowatt: KILOWATT,
      kilogram: 1,
      turns,
      perTurn,
    };
  },
});
