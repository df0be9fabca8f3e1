import { add, cross, div, fn, mul, norm, PI, pow, product, sub } from '../expr.ts';
import { defineMethod } from '../method.ts';

/** Two pulleys and a flat belt: school physics, so that the machinery is tested on something anyone can check. */
export const pulleys = defineMethod({
  id: 'sample.pulleys',
  gives: 'Speed of the driven pulley and of the belt',
  inputs: {
    speed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_1', meaning: 'speed of the driver' },
    driver: {
      form: 'value',
      kind: 'length',
      symbol: 'd_1',
      meaning: 'diameter of the driver',
      range: { min: 0, open: true },
    },
    driven: {
      form: 'value',
      kind: 'length',
      symbol: 'd_2',
      meaning: 'diameter of the driven pulley',
      range: { min: 0, open: true },
    },
    slip: { form: 'value', kind: 'fraction', symbol: 's', meaning: 'slip', range: { min: 0, max: 0.1 }, default: 0.02 },
  },
  outputs: {
    drivenSpeed: { form: 'value', kind: 'angularSpeed', symbol: 'ω_2', meaning: 'speed of the driven pulley' },
    beltSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'speed of the belt' },
  },
  results: ['drivenSpeed'],
  steps: [
    { key: 'beltSpeed', is: div(mul('speed', 'driver'), 2), says: 'The belt runs with the rim of the driver.' },
    {
      key: 'drivenSpeed',
      is: mul(sub(1, 'slip'), div(mul(2, 'beltSpeed'), 'driven')),
      says: 'The driven rim stays behind by the slip.',
    },
  ],
  sources: [{ title: 'Definition of the ratio of a belt drive', how: 'derived' }],
  holds: ['The belt is thin.'],
  run: ({ speed, driver, driven, slip }) => {
    const beltSpeed = (speed * driver) / 2;
    return { drivenSpeed: ((1 - slip) * 2 * beltSpeed) / driven, beltSpeed };
  },
});

/** A cone whose height is found from its slant: one step is solved. */
export const cone = defineMethod({
  id: 'sample.cone',
  gives: 'Volume and apex angle of a cone',
  inputs: {
    radius: {
      form: 'value',
      kind: 'length',
      symbol: 'r',
      meaning: 'radius of the base',
      range: { min: 0, open: true },
    },
    slant: { form: 'value', kind: 'length', symbol: 's', meaning: 'slant height', range: { min: 0, open: true } },
  },
  outputs: {
    volume: { form: 'value', kind: 'volume', symbol: 'V', meaning: 'volume' },
    apexAngle: { form: 'value', kind: 'angle', symbol: 'δ', meaning: 'half angle at the apex' },
    height: { form: 'value', kind: 'length', symbol: 'h', meaning: 'height' },
  },
  results: ['volume', 'apexAngle'],
  steps: [
    {
      key: 'height',
      left: add(pow('radius', 2), pow('height', 2)),
      right: pow('slant', 2),
      says: 'Height, radius and slant form a right triangle.',
    },
    { key: 'volume', is: div(mul(PI, pow('radius', 2), 'height'), 3), says: 'A third of the cylinder.' },
    { key: 'apexAngle', is: fn('atan2', 'radius', 'height'), says: 'Angle between axis and slant.' },
  ],
  sources: [{ title: 'Elementary geometry of the cone', how: 'derived' }],
  run: ({ radius, slant }) => {
    const height = Math.sqrt(slant ** 2 - radius ** 2);
    return { volume: (Math.PI * radius ** 2 * height) / 3, apexAngle: Math.atan2(radius, height), height };
  },
});

/** Every form of parameter: vectors, a list, a whole number, a choice, a text. */
export const lever = defineMethod({
  id: 'sample.lever',
  gives: 'Moment of a force about a point, through a gear train',
  inputs: {
    arm: { form: 'vector', kind: 'length', symbol: 'r', meaning: 'from the point to the force' },
    force: { form: 'vector', kind: 'force', symbol: 'F', meaning: 'force' },
    ratios: {
      form: 'list',
      kind: 'ratio',
      symbol: 'i',
      meaning: 'stage ratios',
      atLeast: 1,
      range: { min: 0, open: true },
    },
    trains: { form: 'integer', symbol: 'z', meaning: 'equal trains', range: { min: 1, max: 4 }, default: 1 },
    side: { form: 'choice', choices: ['left', 'right'], symbol: 'q', meaning: 'side of the lever', default: 'left' },
    name: { form: 'text', symbol: 't', meaning: 'name of the lever', example: 'brake lever' },
  },
  outputs: {
    moment: { form: 'vector', kind: 'torque', symbol: 'M', meaning: 'moment about the point' },
    size: { form: 'value', kind: 'torque', symbol: 'T', meaning: 'size of the moment behind the train' },
    label: { form: 'text', symbol: 'n', meaning: 'what it is', example: 'left brake lever' },
    trainCount: { form: 'integer', symbol: 'Z', meaning: 'trains counted' },
  },
  results: ['size', 'moment', 'label', 'trainCount'],
  steps: [
    { key: 'moment', is: cross('arm', 'force'), says: 'Arm cross force.' },
    { key: 'size', is: mul(norm('moment'), product('ratios'), 'trains'), says: 'Each stage multiplies it.' },
  ],
  sources: [{ title: 'Definition of the moment of a force', edition: '1st', at: 'p. 1', how: 'memory' }],
  run: ({ arm: [x, y, z], force: [fx, fy, fz], ratios, trains, side, name }) => {
    const moment = [y * fz - z * fy, z * fx - x * fz, x * fy - y * fx] as const;
    const size = Math.hypot(...moment) * ratios.reduce((i, ratio) => i * ratio, 1) * trains;
    return { moment, size, label: `${side} ${name}`, trainCount: trains };
  },
});
