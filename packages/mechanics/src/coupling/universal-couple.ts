import { div, fn, mul, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'coupling.universalCouple';

const inputs = {
  torque: { form: 'value', kind: 'torque', symbol: 'T_1', meaning: 'torque of the driving shaft', range: { min: 0 } },
  angle: {
    form: 'value',
    kind: 'angle',
    symbol: 'β',
    meaning: 'angle between the two shafts of the joint',
    range: { min: 0, max: (80 * Math.PI) / 180 },
  },
  turn: {
    form: 'value',
    kind: 'angle',
    symbol: 'θ',
    meaning: 'turn of the driving shaft since its fork lay in the plane of both shafts',
    default: 0,
  },
  bearingSpanDriving: {
    form: 'value',
    kind: 'length',
    symbol: 'L_1',
    meaning: 'distance of the two bearings of the driving shaft',
    range: ABOVE_ZERO,
  },
  bearingSpanDriven: {
    form: 'value',
    kind: 'length',
    symbol: 'L_2',
    meaning: 'distance of the two bearings of the driven shaft',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Bending couples that a universal joint lays on both shafts because torque cannot turn a corner, and what they put on the bearings.
 *
 * The cross passes on a couple square to its own plane; what of it does not lie along a shaft bends that shaft.
 *
 * Errors: torque below zero, angle outside 0..80 degrees, a bearing span not above zero.
 */
export const universalCouple = defineMethod({
  id,
  gives:
    'Bending couples of a universal joint on both its shafts, with the forces on their bearings and the torque out',
  inputs,
  outputs: {
    drivingMost: { form: 'value', kind: 'torque', symbol: 'M_1', meaning: 'greatest couple on the driving shaft' },
    drivenMost: { form: 'value', kind: 'torque', symbol: 'M_2', meaning: 'greatest couple on the driven shaft' },
    drivingAtTurn: {
      form: 'value',
      kind: 'torque',
      symbol: 'M_1t',
      meaning: 'couple on the driving shaft at this turn',
    },
    drivenAtTurn: { form: 'value', kind: 'torque', symbol: 'M_2t', meaning: 'couple on the driven shaft at this turn' },
    drivingSteady: {
      form: 'value',
      kind: 'torque',
      symbol: 'M_1s',
      meaning: 'part of the couple on the driving shaft that stands still; as much again turns at twice its speed',
    },
    bearingDriving: {
      form: 'value',
      kind: 'force',
      symbol: 'F_1',
      meaning: 'greatest force of the couple on each bearing of the driving shaft',
    },
    bearingDriven: {
      form: 'value',
      kind: 'force',
      symbol: 'F_2',
      meaning: 'greatest force of the couple on each bearing of the driven shaft',
    },
    torqueOutLowest: { form: 'value', kind: 'torque', symbol: 'T_2l', meaning: 'lowest torque of the driven shaft' },
    torqueOutHighest: { form: 'value', kind: 'torque', symbol: 'T_2h', meaning: 'highest torque of the driven shaft' },
    torqueOutAtTurn: {
      form: 'value',
      kind: 'torque',
      symbol: 'T_2',
      meaning: 'torque of the driven shaft at this turn',
    },
    turnDriven: {
      form: 'value',
      kind: 'angle',
      symbol: 'θ_2',
      meaning: 'turn of the driven shaft from the same position',
    },
  },
  results: [
    'drivingMost',
    'drivenMost',
    'drivingAtTurn',
    'drivenAtTurn',
    'drivingSteady',
    'bearingDriving',
    'bearingDriven',
    'torqueOutLowest',
    'torqueOutHighest',
    'torqueOutAtTurn',
  ],
  steps: [
    {
      key: 'drivingMost',
      is: mul('torque', fn('tan', 'angle')),
      says: 'With the driving fork across the plane of both shafts.',
    },
    { key: 'drivenMost', is: mul('torque', fn('sin', 'angle')), says: 'With the driving fork in that plane.' },
    {
      key: 'drivingAtTurn',
      is: mul('drivingMost', fn('abs', fn('sin', 'turn'))),
      says: 'In between; nothing with the driving fork in the plane.',
    },
    { key: 'drivingSteady', is: div('drivingMost', 2), says: 'Its direction rocks about the plane of the shafts.' },
    {
      key: 'turnDriven',
      is: fn('atan2', fn('sin', 'turn'), mul(fn('cos', 'angle'), fn('cos', 'turn'))),
      says: 'tan θ₂ = tan θ / cos β.',
    },
    {
      key: 'torqueOutAtTurn',
      is: div(mul('torque', sub(1, pow(mul(fn('sin', 'angle'), fn('cos', 'turn')), 2))), fn('cos', 'angle')),
      says: 'No power is lost: torque is inverse to speed.',
    },
    {
      key: 'drivenAtTurn',
      is: mul('torqueOutAtTurn', fn('tan', 'angle'), fn('abs', fn('cos', 'turnDriven'))),
      says: 'The joint seen from the driven side, whose fork stands a quarter turn on.',
    },
    {
      key: 'bearingDriving',
      is: div('drivingMost', 'bearingSpanDriving'),
      says: 'Equal and opposite on both bearings.',
    },
    { key: 'bearingDriven', is: div('drivenMost', 'bearingSpanDriven'), says: 'Equal and opposite on both bearings.' },
    { key: 'torqueOutLowest', is: mul('torque', fn('cos', 'angle')), says: 'While the driven shaft runs fastest.' },
    { key: 'torqueOutHighest', is: div('torque', fn('cos', 'angle')), says: 'While it runs slowest.' },
  ],
  sources: [{ title: 'Equilibrium of the cross of a universal joint, in vectors', how: 'derived' }],
  holds: ['One joint without friction; the couples add as vectors to all other loads of the bearings.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torque, angle, turn } = input;
    const [cos, sin, tan] = [Math.cos(angle), Math.sin(angle), Math.tan(angle)];
    const [drivingMost, drivenMost] = [torque * tan, torque * sin];
    const turnDriven = Math.atan2(Math.sin(turn), cos * Math.cos(turn));
    const torqueOutAtTurn = (torque * (1 - (sin * Math.cos(turn)) ** 2)) / cos;
    return {
      drivingMost,
      drivenMost,
      drivingAtTurn: drivingMost * Math.abs(Math.sin(turn)),
      drivenAtTurn: torqueOutAtTurn * tan * Math.abs(Math.cos(turnDriven)),
      drivingSteady: drivingMost / 2,
      bearingDriving: drivingMost / input.bearingSpanDriving,
      bearingDriven: drivenMost / input.bearingSpanDriven,
      torqueOutLowest: torque * cos,
      torqueOutHighest: torque / cos,
      torqueOutAtTurn,
      turnDriven,
    };
  },
});
