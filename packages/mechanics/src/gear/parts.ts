import { add, div, type Expr, mul, num, pow, sub } from '../method/expr.ts';
import type { Params, Source } from '../method/method.ts';
import { ABOVE_ZERO } from '../numerics/refuse.ts';

/** Inputs that bevel and spur ratings share. */
export const RATING_INPUTS = {
  torque: {
    form: 'value',
    kind: 'torque',
    symbol: 'T_1',
    meaning: 'torque on the smaller gear',
    range: { min: 0 },
  },
  speed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_1',
    meaning: 'speed of the smaller gear',
    range: { min: 0 },
  },
  teethPinion: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller gear', range: { min: 5 } },
  module: {
    form: 'value',
    kind: 'length',
    symbol: 'm',
    meaning: 'module, at the large end of a bevel',
    range: ABOVE_ZERO,
  },
  faceWidth: { form: 'value', kind: 'length', symbol: 'b', meaning: 'face width', range: ABOVE_ZERO },
  quality: {
    form: 'value',
    kind: 'number',
    symbol: 'Q_v',
    meaning: 'quality number: 5 cast, worn or not known, 6 cut, 7 well generated, 10 ground',
    range: { min: 5, max: 11 },
  },
  overload: {
    form: 'value',
    kind: 'number',
    symbol: 'K_o',
    meaning: 'overload factor of the engine and what it drives',
    range: { min: 1 },
    default: 1,
  },
} as const satisfies Params;

export const RATING_OUTPUTS = {
  tangential: { form: 'value', kind: 'force', symbol: 'W_t', meaning: 'tooth load at the pitch diameter' },
  pitchSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'pitch-line speed' },
  pitchDiameter: { form: 'value', kind: 'length', symbol: 'd_1', meaning: 'pitch diameter of the smaller gear' },
  dynamic: { form: 'value', kind: 'number', symbol: 'K_v', meaning: 'factor of speed and quality' },
  curve: { form: 'value', kind: 'number', symbol: 'B', meaning: 'exponent of the quality' },
  base: { form: 'value', kind: 'number', symbol: 'A', meaning: 'constant of the quality' },
  plainSpeed: { form: 'value', kind: 'number', symbol: 'v_n', meaning: 'pitch-line speed in feet a minute' },
  footMinute: { form: 'value', kind: 'speed', symbol: 'u_v', meaning: 'one foot a minute, a unit of the formula' },
} as const satisfies Params;

const B: Expr = mul(num(0.25), pow(sub(12, 'quality'), num(2 / 3, '2/3')));

export const RATING_STEPS = [
  { key: 'pitchDiameter', is: mul('module', 'teethPinion'), says: 'Module times teeth.' },
  { key: 'tangential', is: div(mul(2, 'torque'), 'pitchDiameter'), says: 'Torque over radius.' },
  { key: 'pitchSpeed', is: div(mul('speed', 'pitchDiameter'), 2), says: 'Speed of rotation times radius.' },
  { key: 'plainSpeed', is: div('pitchSpeed', 'footMinute'), says: 'In feet a minute.' },
  { key: 'curve', is: B, says: 'From the quality number.' },
  { key: 'base', is: add(50, mul(56, sub(1, 'curve'))), says: 'From the quality number.' },
  {
    key: 'dynamic',
    is: pow(div(add('base', pow('plainSpeed', num(0.5))), 'base'), 'curve'),
    says: 'Rough teeth hit each other harder the faster they turn.',
  },
] as const;

const FOOT_MINUTE = 0.3048 / 60;

export interface RatingInput {
  readonly torque: number;
  readonly speed: number;
  readonly teethPinion: number;
  readonly module: number;
  readonly quality: number;
}

/** The shared outputs worked out. */
export function ratingOf({ torque, speed, teethPinion, module, quality }: RatingInput) {
  const pitchDiameter = module * teethPinion;
  const pitchSpeed = (speed * pitchDiameter) / 2;
  const plainSpeed = pitchSpeed / FOOT_MINUTE;
  const curve = 0.25 * (12 - quality) ** (2 / 3);
  const base = 50 + 56 * (1 - curve);
  return {
    tangential: (2 * torque) / pitchDiameter,
    pitchSpeed,
    pitchDiameter,
    dynamic: ((base + Math.sqrt(plainSpeed)) / base) ** curve,
    curve,
    base,
    plainSpeed,
    footMinute: FOOT_MINUTE,
  };
}

export const PSI = 6894.757293168361;
/** Square of the elastic coefficients of two steels, 2290 and 2300 √psi. */
export const ELASTIC_BEVEL = 2290 ** 2 * PSI;
export const ELASTIC_SPUR = 2300 ** 2 * PSI;

export const BEVEL_SOURCE: Source = {
  title: 'ANSI/AGMA 2003-B97',
  at: "as Shigley's Mechanical Engineering Design, chapter 15, gives it; load at the large end",
  how: 'memory',
};
export const SPUR_SOURCE: Source = {
  title: 'ANSI/AGMA 2001-D04',
  at: "as Shigley's Mechanical Engineering Design, chapter 14, gives it",
  how: 'memory',
};
