import { add, div, dot, fn, mul, pow, sub, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { DRIVE_INPUTS, driveOf, torqueAt } from './drive.ts';
import { nextGear } from './gear-use.ts';
import { airLoad, groundLoad, LOAD_INPUTS } from './load.ts';

const id = 'vehicle.cycleRun';

const inputs = {
  ...DRIVE_INPUTS,
  ...LOAD_INPUTS,
  trace: {
    form: 'list',
    kind: 'speed',
    symbol: 'v',
    meaning: 'road speed at equal steps of time',
    range: { min: 0 },
    atLeast: 2,
  },
  step: {
    form: 'value',
    kind: 'time',
    symbol: 'δ',
    meaning: 'step of time',
    range: { min: 0.01, max: 10 },
    default: 1,
  },
  turningMass: {
    form: 'value',
    kind: 'mass',
    symbol: 'm_t',
    meaning: 'mass that the turning parts add',
    range: { min: 0 },
  },
  idleSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_i',
    meaning: 'idle speed of the engine',
    range: { min: 0 },
  },
  upSpeeds: {
    form: 'list',
    kind: 'speed',
    symbol: 'v_u',
    meaning: 'speed at which each gear but the last is left upwards',
    range: { min: 0 },
  },
  downSpeeds: {
    form: 'list',
    kind: 'speed',
    symbol: 'v_d',
    meaning: 'speed at which second gear is declutched, then at which third and each higher gear is left downwards',
    range: { min: 0 },
  },
  holdTime: {
    form: 'value',
    kind: 'time',
    symbol: 't_h',
    meaning: 'time that a gear is held at least',
    range: { min: 0, max: 60 },
    default: 2,
  },
} as const satisfies Params;

const total = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
const product = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((all, one, k) => all + one * (b[k] as number), 0);

/**
 * A driving cycle run backwards: from the speeds of each step to pull, gear, engine speed and torque. A step that asks for more torque than the engine has,
 * or for a higher engine speed, counts as not followed.
 *
 * Errors: values out of range, lists of different length, shift speeds that are not one fewer than the gears.
 */
export const cycleRun = defineMethod({
  id,
  gives: 'A driving cycle: time in gears, engine speed, energy at the wheel, and what the engine cannot follow',
  inputs,
  outputs: {
    duration: { form: 'value', kind: 'time', symbol: 't', meaning: 'duration' },
    distance: { form: 'value', kind: 'length', symbol: 's', meaning: 'distance' },
    driveEnergy: { form: 'value', kind: 'energy', symbol: 'E_d', meaning: 'energy that the drive gives at the wheel' },
    brakeEnergy: {
      form: 'value',
      kind: 'energy',
      symbol: 'E_b',
      meaning: 'energy that engine drag and brakes take up',
    },
    gearTimes: {
      form: 'list',
      kind: 'time',
      symbol: 't_g',
      meaning: 'time standing or declutched, then in each gear',
    },
    meanEngineSpeed: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_m',
      meaning: 'mean engine speed over the whole time',
    },
    meanGearSpeed: {
      form: 'value',
      kind: 'angularSpeed',
      symbol: 'ω_g',
      meaning: 'mean engine speed while a gear is in; 0 when none ever is',
    },
    missed: { form: 'integer', symbol: 'z', meaning: 'steps that the engine cannot follow' },
    missedAt: { form: 'list', kind: 'time', symbol: 't_z', meaning: 'where these steps begin' },
    peakPower: { form: 'value', kind: 'power', symbol: 'P', meaning: 'greatest power at the wheel' },
    peakTorque: { form: 'value', kind: 'torque', symbol: 'T_w', meaning: 'greatest torque on the wheel' },
    gears: { form: 'list', kind: 'count', symbol: 'k', meaning: 'gear in each step; 0 standing or declutched' },
    engineSpeeds: { form: 'list', kind: 'angularSpeed', symbol: 'ω_e', meaning: 'engine speed in each step' },
    engineTorques: {
      form: 'list',
      kind: 'torque',
      symbol: 'T_e',
      meaning: 'engine torque in each step; below zero on the overrun, brakes included',
    },
    drivePulls: { form: 'list', kind: 'force', symbol: 'F_d', meaning: 'pull in each step, where the engine drives' },
    brakePulls: {
      form: 'list',
      kind: 'force',
      symbol: 'F_b',
      meaning: 'push in each step, where it must be held back',
    },
    meanSpeeds: { form: 'list', kind: 'speed', symbol: 'u', meaning: 'mean speed of each step' },
    airPulls: { form: 'list', kind: 'force', symbol: 'F_a', meaning: 'pull of the air in each step' },
    groundEnergy: { form: 'value', kind: 'energy', symbol: 'E_r', meaning: 'energy into rolling and slope' },
    airEnergy: { form: 'value', kind: 'energy', symbol: 'E_a', meaning: 'energy into the air' },
    kineticGain: { form: 'value', kind: 'energy', symbol: 'E_k', meaning: 'energy at the end less that at the start' },
    startSpeed: { form: 'value', kind: 'speed', symbol: 'v_1', meaning: 'speed at the start' },
    endSpeed: { form: 'value', kind: 'speed', symbol: 'v_2', meaning: 'speed at the end' },
  },
  results: [
    'duration',
    'distance',
    'driveEnergy',
    'brakeEnergy',
    'gearTimes',
    'meanEngineSpeed',
    'meanGearSpeed',
    'missed',
    'missedAt',
    'peakPower',
    'peakTorque',
    'gears',
    'engineSpeeds',
    'engineTorques',
    'drivePulls',
    'brakePulls',
    'meanSpeeds',
  ],
  steps: [
    { key: 'duration', is: sum('gearTimes'), says: 'Standing or declutched, and in each gear.' },
    { key: 'distance', is: mul('step', sum('meanSpeeds')), says: 'Mean speed of each step times its time.' },
    {
      key: 'driveEnergy',
      is: mul('step', dot('drivePulls', 'meanSpeeds')),
      says: 'Pull of each step, from acceleration, rolling, slope and air at its mean speed.',
    },
    { key: 'brakeEnergy', is: mul('step', dot('brakePulls', 'meanSpeeds')), says: 'Where the pull is below zero.' },
    {
      key: 'groundEnergy',
      is: mul('mass', 'gravity', add(mul('rollingCoefficient', fn('cos', 'slope')), fn('sin', 'slope')), 'distance'),
      says: 'Rolling and slope do not change with speed.',
    },
    { key: 'airEnergy', is: mul('step', dot('airPulls', 'meanSpeeds')), says: 'Air, step by step.' },
    {
      key: 'kineticGain',
      is: div(mul(add('mass', 'turningMass'), sub(pow('endSpeed', 2), pow('startSpeed', 2))), 2),
      says: 'What is left in speed.',
    },
    {
      key: 'driveEnergy',
      left: sub('driveEnergy', 'brakeEnergy'),
      right: add('groundEnergy', 'airEnergy', 'kineticGain'),
      says: 'All energy given and not taken back is found again.',
    },
    {
      key: 'meanEngineSpeed',
      is: div(mul('step', sum('engineSpeeds')), 'duration'),
      says: 'Idle while standing or declutched or where the clutch slips; else as the gear turns it.',
    },
  ],
  sources: [
    {
      title: 'Quasi-static backward run of a driving cycle: mean speed and acceleration of each step',
      how: 'common practice',
    },
    {
      title: 'UN Global Technical Regulation No. 2',
      at: 'gear use: shift up above, down below stated speeds, none upwards while slowing down',
      how: 'memory',
    },
  ],
  holds: [
    'The vehicle follows the trace in every step, also in those that the engine cannot follow.',
    'Below idle speed the clutch slips; there, and below the first row of the curve, the engine has the torque of the first row.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const drive = driveOf(id, input);
    const { trace, step, ratios, efficiency, rollingRadius, idleSpeed, upSpeeds, downSpeeds, mass, turningMass } =
      input;
    for (const [key, list] of [
      ['upSpeeds', upSpeeds],
      ['downSpeeds', downSpeeds],
    ] as const)
      if (list.length !== ratios.length - 1)
        throw new MethodError(
          id,
          key,
          `Shift speeds: ${list.length} entries read; one fewer than the gears, ${ratios.length - 1}, is accepted.`,
        );
    const rule = { upSpeeds, downSpeeds, holdSteps: Math.ceil(input.holdTime / step) };
    const ground = groundLoad(input);
    const leastTorque = Math.min(...input.torques);
    const meanSpeeds: number[] = [];
    const airPulls: number[] = [];
    const drivePulls: number[] = [];
    const brakePulls: number[] = [];
    const gears: number[] = [];
    const engineSpeeds: number[] = [];
    const engineTorques: number[] = [];
    const missedAt: number[] = [];
    let use = { gear: 0, held: rule.holdSteps };
    for (let k = 0; k + 1 < trace.length; k++) {
      const [from, to] = [trace[k] as number, trace[k + 1] as number];
      const mean = (from + to) / 2;
      const air = mean === 0 ? 0 : airLoad(input, mean);
      const pull = mean === 0 ? 0 : ((mass + turningMass) * (to - from)) / step + ground + air;
      use = nextGear(rule, use, mean, to < from, pull <= 0);
      const ratio = ratios[use.gear - 1];
      const turning = ratio === undefined ? 0 : (mean * ratio) / rollingRadius;
      const torque =
        ratio === undefined ? 0 : ((pull * rollingRadius) / ratio) * (pull > 0 ? 1 / efficiency : efficiency);
      const engine = Math.max(idleSpeed, turning);
      // The curve lies nowhere below its lowest row.
      if (engine > drive.highest || (torque > leastTorque && torque > torqueAt(drive, engine))) missedAt.push(k * step);
      meanSpeeds.push(mean);
      airPulls.push(air);
      drivePulls.push(Math.max(pull, 0));
      brakePulls.push(Math.max(-pull, 0));
      gears.push(use.gear);
      engineSpeeds.push(engine);
      engineTorques.push(torque);
    }
    const gearTimes = [0, ...ratios].map((_, gear) => step * gears.filter((one) => one === gear).length);
    const duration = total(gearTimes);
    const distance = step * total(meanSpeeds);
    const inGear = engineSpeeds.filter((_, k) => (gears[k] as number) > 0);
    const [startSpeed, endSpeed] = [trace[0] as number, trace.at(-1) as number];
    return {
      duration,
      distance,
      driveEnergy: step * product(drivePulls, meanSpeeds),
      brakeEnergy: step * product(brakePulls, meanSpeeds),
      gearTimes,
      meanEngineSpeed: (step * total(engineSpeeds)) / duration,
      meanGearSpeed: inGear.length === 0 ? 0 : total(inGear) / inGear.length,
      missed: missedAt.length,
      missedAt,
      peakPower: drivePulls.reduce((most, pull, k) => Math.max(most, pull * (meanSpeeds[k] as number)), 0),
      peakTorque: drivePulls.reduce((most, pull) => Math.max(most, pull * rollingRadius), 0),
      gears,
      engineSpeeds,
      engineTorques,
      drivePulls,
      brakePulls,
      meanSpeeds,
      airPulls,
      groundEnergy: ground * distance,
      airEnergy: step * product(airPulls, meanSpeeds),
      kineticGain: ((mass + turningMass) * (endSpeed ** 2 - startSpeed ** 2)) / 2,
      startSpeed,
      endSpeed,
    };
  },
});
