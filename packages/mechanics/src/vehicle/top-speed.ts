import { add, div, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { findMaximum } from '../numerics/maximum.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { findRoot } from '../numerics/root.ts';
import { DRIVE_INPUTS, driveOf, torqueAt } from './drive.ts';
import { LOAD_INPUTS, steadyLoad } from './load.ts';

const id = 'vehicle.topSpeed';

const inputs = { ...DRIVE_INPUTS, ...LOAD_INPUTS } as const satisfies Params;

/** Places looked at between two rows of the curve. */
const LOOKS = 16;

/**
 * Highest speed at which the pull still meets the load: the last change of sign in a scan from the top, since a falling curve may cross twice.
 * @returns undefined when the pull is below the load everywhere.
 */
function lastBalance(surplus: (v: number) => number, corners: readonly number[]): number | undefined {
  const places: number[] = [];
  for (let k = 0; k + 1 < corners.length; k++) {
    const [from, to] = [corners[k] as number, corners[k + 1] as number];
    for (let look = 0; look < LOOKS; look++) places.push(from + ((to - from) * look) / LOOKS);
  }
  places.push(corners.at(-1) as number);
  const values = places.map(surplus);
  for (let k = places.length - 1; k >= 0; k--) {
    const here = places[k] as number;
    if ((values[k] as number) >= 0) {
      const above = places[k + 1];
      return above === undefined ? here : findRoot(surplus, here, above);
    }
    // A hump between two places that both lack pull may still reach the load.
    const [left, right] = [values[k - 1], values[k + 1]];
    if (left === undefined || right === undefined || left > (values[k] as number) || right > (values[k] as number))
      continue;
    const peak = findMaximum(surplus, places[k - 1] as number, places[k + 1] as number);
    if (surplus(peak) >= 0) return findRoot(surplus, peak, places[k + 1] as number);
  }
  return undefined;
}

/**
 * Highest steady speed over all gears.
 *
 * Errors: lists of different length, engine speeds that do not rise, ratios that do not fall, values out of range, a load that no gear can hold.
 */
export const topSpeed = defineMethod({
  id,
  gives: 'Highest steady speed over all gears, and what limits it',
  inputs,
  outputs: {
    speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'top speed' },
    gear: { form: 'integer', symbol: 'k', meaning: 'gear that reaches it, counted from 1' },
    angularSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_e', meaning: 'engine speed then' },
    limit: { form: 'text', symbol: 'e', meaning: 'what limits it', example: 'power' },
    surplus: {
      form: 'value',
      kind: 'force',
      symbol: 'F_s',
      meaning: 'pull left over; above zero at the highest engine speed',
    },
    gearSpeeds: {
      form: 'list',
      kind: 'speed',
      symbol: 'v_k',
      meaning: 'highest steady speed in each gear; 0 where the gear cannot hold any',
    },
    torque: {
      form: 'value',
      kind: 'torque',
      symbol: 'T_e',
      meaning: 'full-throttle torque there, read from the curve',
    },
    ratio: { form: 'value', kind: 'ratio', symbol: 'i_k', meaning: 'ratio of that gear' },
    pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull at the ground' },
    against: { form: 'value', kind: 'speed', symbol: 'u', meaning: 'speed against the air' },
    load: { form: 'value', kind: 'force', symbol: 'F_l', meaning: 'rolling, air and slope' },
  },
  results: ['speed', 'gear', 'angularSpeed', 'limit', 'surplus', 'gearSpeeds'],
  steps: [
    { key: 'angularSpeed', is: div(mul('speed', 'ratio'), 'rollingRadius'), says: 'Engine speed at the top speed.' },
    {
      key: 'pull',
      is: div(mul('torque', 'ratio', 'efficiency'), 'rollingRadius'),
      says: 'Full throttle at that engine speed.',
    },
    { key: 'against', is: add('speed', 'headWind'), says: 'Road speed and wind from ahead.' },
    {
      key: 'load',
      is: add(
        mul('mass', 'gravity', add(mul('rollingCoefficient', fn('cos', 'slope')), fn('sin', 'slope'))),
        div(mul('airDensity', 'dragArea', 'against', fn('abs', 'against')), 2),
      ),
      says: 'Rolling, slope and air.',
    },
    {
      key: 'surplus',
      is: sub('pull', 'load'),
      says: 'Power limits the speed where nothing is left over; else the highest engine speed does.',
    },
  ],
  sources: [
    {
      title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)',
      at: 'chapter 4, road-load power against engine power',
      how: 'memory',
    },
  ],
  holds: ['Full throttle, no slip of tyre or clutch. Above the last row of the curve the engine is held back.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const drive = driveOf(id, input);
    const { ratios, efficiency, rollingRadius } = input;
    const pullAt = (ratio: number, v: number): number =>
      (torqueAt(drive, (v * ratio) / rollingRadius) * ratio * efficiency) / rollingRadius;
    const balances = ratios.map((ratio) =>
      lastBalance(
        (v) => pullAt(ratio, v) - steadyLoad(input, v),
        input.speeds.map((engine) => (engine * rollingRadius) / ratio),
      ),
    );
    const gearSpeeds = balances.map((balance) => balance ?? 0);
    const speed = Math.max(...gearSpeeds);
    const best = gearSpeeds.indexOf(speed);
    if (balances[best] === undefined)
      throw new MethodError(id, 'ratios', 'In no gear does full throttle hold a steady speed against this load.');
    const ratio = ratios[best] as number;
    const angularSpeed = (speed * ratio) / rollingRadius;
    const torque = torqueAt(drive, angularSpeed);
    const pull = (torque * ratio * efficiency) / rollingRadius;
    const load = steadyLoad(input, speed);
    return {
      speed,
      gear: best + 1,
      angularSpeed,
      limit: speed === (drive.highest * rollingRadius) / ratio ? 'engine speed' : 'power',
      surplus: pull - load,
      gearSpeeds,
      torque,
      ratio,
      pull,
      against: speed + input.headWind,
      load,
    };
  },
});
