import {
  add,
  cross as crossTree,
  div,
  dot as dotTree,
  fn,
  mul,
  norm as normTree,
  num,
  pow,
  sub,
} from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { cross, dot, minus, norm, plus, times } from '../numerics/vector.ts';
import { AXIS_OUTPUTS, AXIS_STEPS, axisOf, DIRECTION_INPUTS, refuseParallel } from './axes.ts';

const id = 'bevel.apex';

const inputs = {
  originDriver: { form: 'vector', kind: 'length', symbol: 'o_1', meaning: 'a point on the driver’s axis' },
  originDriven: { form: 'vector', kind: 'length', symbol: 'o_2', meaning: 'a point on the driven axis' },
  ...DIRECTION_INPUTS,
} as const satisfies Params;

/**
 * Where the axes of two shafts come nearest: the apex of a bevel pair on them, and by how much they miss each other.
 *
 * Errors: a direction of no length, parallel shafts.
 */
export const bevelApex = defineMethod({
  id,
  gives: 'Apex of a bevel pair: where two shaft axes come nearest, by how much they miss, and their angle',
  inputs,
  outputs: {
    apex: {
      form: 'vector',
      kind: 'length',
      symbol: 'q',
      meaning: 'apex, midway between the nearest points of the two axes',
    },
    axisDistance: { form: 'value', kind: 'length', symbol: 'e', meaning: 'shortest distance between the two axes' },
    shaftAngle: { form: 'value', kind: 'angle', symbol: 'Σ', meaning: 'angle between the two directions' },
    stationDriver: {
      form: 'value',
      kind: 'length',
      symbol: 's_1',
      meaning: 'station of the apex along the driver’s axis',
    },
    stationDriven: {
      form: 'value',
      kind: 'length',
      symbol: 's_2',
      meaning: 'station of the apex along the driven axis',
    },
    ...AXIS_OUTPUTS,
    between: { form: 'vector', kind: 'length', symbol: 'o_12', meaning: 'from the first point to the second' },
    footDriver: { form: 'vector', kind: 'length', symbol: 'q_1', meaning: 'nearest point on the driver’s axis' },
    footDriven: { form: 'vector', kind: 'length', symbol: 'q_2', meaning: 'nearest point on the driven axis' },
  },
  results: ['apex', 'axisDistance', 'shaftAngle', 'stationDriver', 'stationDriven'],
  steps: [
    ...AXIS_STEPS,
    {
      key: 'normal',
      is: crossTree('axisDriver', 'axisDriven'),
      says: 'Square to both axes; its length is the sine of their angle.',
    },
    { key: 'between', is: sub('originDriven', 'originDriver'), says: 'From one axis to the other.' },
    {
      key: 'shaftAngle',
      is: fn('atan2', normTree('normal'), dotTree('axisDriver', 'axisDriven')),
      says: 'Angle between the two directions as given.',
    },
    {
      key: 'axisDistance',
      is: div(fn('abs', dotTree('between', 'normal')), normTree('normal')),
      says: 'The part of the way between the axes that lies square to both.',
    },
    {
      key: 'stationDriver',
      is: div(dotTree(crossTree('between', 'axisDriven'), 'normal'), pow(normTree('normal'), num(2))),
      says: 'How far along the driver’s axis the nearest point lies.',
    },
    {
      key: 'stationDriven',
      is: div(dotTree(crossTree('between', 'axisDriver'), 'normal'), pow(normTree('normal'), num(2))),
      says: 'How far along the driven axis the nearest point lies.',
    },
    {
      key: 'footDriver',
      is: add('originDriver', mul('stationDriver', 'axisDriver')),
      says: 'Nearest point on the driver’s axis.',
    },
    {
      key: 'footDriven',
      is: add('originDriven', mul('stationDriven', 'axisDriven')),
      says: 'Nearest point on the driven axis.',
    },
    { key: 'apex', is: div(add('footDriver', 'footDriven'), 2), says: 'Midway between them.' },
  ],
  sources: [{ title: 'Shortest distance of two lines in space', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { originDriver, originDriven } = input;
    const axisDriver = axisOf(id, 'directionDriver', input.directionDriver);
    const axisDriven = axisOf(id, 'directionDriven', input.directionDriven);
    const normal = cross(axisDriver, axisDriven);
    refuseParallel(id, normal);
    const sine = norm(normal);
    const between = minus(originDriven, originDriver);
    const stationDriver = dot(cross(between, axisDriven), normal) / sine ** 2;
    const stationDriven = dot(cross(between, axisDriver), normal) / sine ** 2;
    const footDriver = plus(originDriver, times(stationDriver, axisDriver));
    const footDriven = plus(originDriven, times(stationDriven, axisDriven));
    return {
      apex: times(0.5, plus(footDriver, footDriven)),
      axisDistance: Math.abs(dot(between, normal)) / sine,
      shaftAngle: Math.atan2(sine, dot(axisDriver, axisDriven)),
      stationDriver,
      stationDriven,
      axisDriver,
      axisDriven,
      normal,
      between,
      footDriver,
      footDriven,
    };
  },
});
