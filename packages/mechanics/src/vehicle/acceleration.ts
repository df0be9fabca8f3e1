import { add, div, mul, pow, sub, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { DRIVE_INPUTS, driveOf } from './drive.ts';
import { LOAD_INPUTS } from './load.ts';
import { runThroughGears } from './run-through-gears.ts';

const id = 'vehicle.acceleration';

const inputs = {
  ...DRIVE_INPUTS,
  ...LOAD_INPUTS,
  wheelInertia: {
    form: 'value',
    kind: 'inertia',
    symbol: 'I_w',
    meaning: 'moment of inertia of all wheels and of the drive behind the clutch, as felt at the driven wheel',
    range: { min: 0 },
  },
  engineInertia: {
    form: 'value',
    kind: 'inertia',
    symbol: 'I_e',
    meaning: 'moment of inertia of the engine before the clutch',
    range: { min: 0 },
  },
  shiftSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_s',
    meaning: 'engine speed at which the next gear is taken',
    range: ABOVE_ZERO,
  },
  shiftTime: {
    form: 'value',
    kind: 'time',
    symbol: 't_s',
    meaning: 'time without pull in each shift',
    range: { min: 0, max: 10 },
    default: 0.5,
  },
  slipSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_c',
    meaning: 'engine speed held while the clutch slips',
    range: { min: 0 },
  },
  gripForce: {
    form: 'value',
    kind: 'force',
    symbol: 'F_g',
    meaning: 'greatest pull that the tyre passes on',
    range: ABOVE_ZERO,
  },
  fromSpeed: { form: 'value', kind: 'speed', symbol: 'v_1', meaning: 'speed at the start', range: { min: 0 } },
  toSpeed: { form: 'value', kind: 'speed', symbol: 'v_2', meaning: 'speed at the end', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Time and distance of a run at full throttle, through the gears.
 *
 * Errors: values out of range, a shift or slip speed off the curve, an end below the start or beyond the last gear, and a load that stops the run.
 */
export const acceleration = defineMethod({
  id,
  gives: 'Time and distance to speed up at full throttle through the gears, with the energy balance',
  inputs,
  outputs: {
    time: { form: 'value', kind: 'time', symbol: 't', meaning: 'time' },
    distance: { form: 'value', kind: 'length', symbol: 's', meaning: 'distance' },
    shifts: { form: 'integer', symbol: 'z', meaning: 'shifts' },
    lastGear: { form: 'integer', symbol: 'k', meaning: 'gear at the end, counted from 1' },
    gearEndSpeeds: { form: 'list', kind: 'speed', symbol: 'v_k', meaning: 'speed at the end of each gear used' },
    gearEndTimes: { form: 'list', kind: 'time', symbol: 't_k', meaning: 'time at the end of each gear used' },
    driveWork: { form: 'value', kind: 'energy', symbol: 'E_d', meaning: 'work of the drive at the wheel' },
    loadWork: { form: 'value', kind: 'energy', symbol: 'E_l', meaning: 'work against rolling, air and slope' },
    kineticGain: { form: 'value', kind: 'energy', symbol: 'E_k', meaning: 'gain of vehicle and wheels' },
    engineGain: {
      form: 'value',
      kind: 'energy',
      symbol: 'E_e',
      meaning: 'work at the wheel that went into the engine’s own speed instead, while the clutch held',
    },
    traceSpeeds: { form: 'list', kind: 'speed', symbol: 'v_j', meaning: 'speeds along the run, for drawing' },
    traceTimes: { form: 'list', kind: 'time', symbol: 't_j', meaning: 'time at each of them' },
    traceDistances: { form: 'list', kind: 'length', symbol: 's_j', meaning: 'distance at each of them' },
    gearTimes: { form: 'list', kind: 'time', symbol: 't_p', meaning: 'time under pull in each gear used' },
    gearDistances: { form: 'list', kind: 'length', symbol: 's_p', meaning: 'distance under pull in each gear used' },
    engineGains: { form: 'list', kind: 'energy', symbol: 'E_p', meaning: 'the engine’s part in each gear used' },
    shiftDistance: { form: 'value', kind: 'length', symbol: 's_s', meaning: 'distance rolled in shifts' },
    rollingMass: { form: 'value', kind: 'mass', symbol: 'm_r', meaning: 'mass with wheels, without engine' },
  },
  results: [
    'time',
    'distance',
    'shifts',
    'lastGear',
    'gearEndSpeeds',
    'gearEndTimes',
    'driveWork',
    'loadWork',
    'kineticGain',
    'engineGain',
    'traceSpeeds',
    'traceTimes',
    'traceDistances',
  ],
  steps: [
    {
      key: 'rollingMass',
      is: add('mass', div('wheelInertia', pow('rollingRadius', 2))),
      says: 'Vehicle and wheels speed up together. While the clutch holds, η i² I_e / r² of the engine joins them.',
    },
    {
      key: 'time',
      is: add(sum('gearTimes'), mul('shifts', 'shiftTime')),
      says: 'In each gear the sum of mass times change of speed over the pull left, ∫ m_e dv / (F − F_l); and the shifts.',
    },
    {
      key: 'distance',
      is: add(sum('gearDistances'), 'shiftDistance'),
      says: 'The same sum weighted with the speed; and what rolls by in the shifts.',
    },
    {
      key: 'kineticGain',
      is: div(mul('rollingMass', sub(pow('toSpeed', 2), pow('fromSpeed', 2))), 2),
      says: 'Energy of vehicle and wheels at the end less that at the start.',
    },
    { key: 'engineGain', is: sum('engineGains'), says: 'The engine’s part, gear by gear.' },
    {
      key: 'driveWork',
      left: sym('driveWork'),
      right: add('kineticGain', 'engineGain', 'loadWork'),
      says: 'All work of the drive is found again: in speed, in the engine, and against the road.',
    },
  ],
  sources: [
    {
      title: 'Theory of Ground Vehicles (J. Y. Wong)',
      at: 'section 3.4, acceleration time and distance',
      how: 'memory',
    },
    { title: 'QUADPACK (R. Piessens and others)', edition: '1983', at: 'routine qk15', how: 'memory' },
    {
      title: 'A family of embedded Runge-Kutta formulae (Dormand, Prince)',
      edition: 'J. Comp. Appl. Math. 6 (1980)',
      at: 'table 2',
      how: 'memory',
    },
  ],
  holds: [
    'Full throttle, no slip of the tyre: a pull above the grip is held back to it.',
    'Below the slip speed the clutch passes the torque that the engine has there. In a shift the vehicle coasts.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const drive = driveOf(id, input);
    const { shiftSpeed, slipSpeed, fromSpeed, toSpeed, mass, wheelInertia, rollingRadius } = input;
    const refuse = (key: string, message: string): never => {
      throw new MethodError(id, key, message);
    };
    if (shiftSpeed > drive.highest || shiftSpeed <= drive.lowest)
      refuse(
        'shiftSpeed',
        `Engine speed at which the next gear is taken: ${shiftSpeed} rad/s read; above ${drive.lowest} and at most ${drive.highest} rad/s is accepted.`,
      );
    if (slipSpeed < drive.lowest || slipSpeed >= shiftSpeed)
      refuse(
        'slipSpeed',
        `Engine speed held while the clutch slips: ${slipSpeed} rad/s read; at least ${drive.lowest} and below the shift speed, ${shiftSpeed} rad/s, is accepted.`,
      );
    if (!(toSpeed > fromSpeed))
      refuse(
        'toSpeed',
        `Speed at the end: ${toSpeed} m/s read; above the speed at the start, ${fromSpeed} m/s, is accepted.`,
      );
    const rollingMass = mass + wheelInertia / rollingRadius ** 2;
    const found = runThroughGears({ ...input, drive, rollingMass }, (message) => refuse('toSpeed', message));
    const engineGain = found.engineGains.reduce((total, gain) => total + gain, 0);
    return { ...found, kineticGain: (rollingMass * (toSpeed ** 2 - fromSpeed ** 2)) / 2, engineGain, rollingMass };
  },
});
