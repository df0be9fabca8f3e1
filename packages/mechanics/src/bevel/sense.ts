import type { Vec3 } from '@oddwheel/quantity/quantity';
import { add, cross as crossTree, dot as dotTree, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { cross, dot, minus, plus, times } from '../numerics/vector.ts';
import { AXIS_OUTPUTS, AXIS_STEPS, axisOf, DIRECTION_INPUTS, refuseParallel } from './axes.ts';

const id = 'bevel.sense';

const inputs = {
  ...DIRECTION_INPUTS,
  apex: { form: 'vector', kind: 'length', symbol: 'q', meaning: 'point where the two axes meet' },
  seatDriver: {
    form: 'vector',
    kind: 'length',
    symbol: 'g_1',
    meaning: 'point on the driver’s axis where its gear sits',
  },
  seatDriven: {
    form: 'vector',
    kind: 'length',
    symbol: 'g_2',
    meaning: 'point on the driven axis where its gear sits',
  },
  teethDriver: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the driver', range: { min: 5 } },
  teethDriven: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the driven gear', range: { min: 5 } },
} as const satisfies Params;

function sideOf(input: 'seatDriver' | 'seatDriven', seat: Vec3, apex: Vec3, axis: Vec3): 1 | -1 {
  const along = dot(minus(seat, apex), axis);
  if (along !== 0) return along > 0 ? 1 : -1;
  throw new MethodError(id, input, `A ${inputs[input].meaning} must lie to one side of the apex; it lies at the apex.`);
}

/**
 * Which way a bevel pair turns its driven shaft: each shaft turns positive by the right-hand rule about its own direction.
 *
 * No plus or minus belongs to a bevel pair as such; the sense depends on the side of the apex on which each gear stands.
 *
 * Errors: a direction of no length, parallel shafts, a gear that sits at the apex, teeth that are no whole number of at least 5.
 */
export const bevelSense = defineMethod({
  id,
  gives: 'Speed of the driven shaft over that of the driver, with its sign, from where the two bevel gears stand',
  inputs,
  outputs: {
    speedRatio: {
      form: 'value',
      kind: 'ratio',
      symbol: 'ω_q',
      meaning: 'driven speed over driver speed, negative when one turns positive and the other negative',
    },
    sense: { form: 'integer', symbol: 's_ω', meaning: '1 when both shafts turn positive together, −1 when not' },
    sideDriver: {
      form: 'integer',
      symbol: 's_1',
      meaning: 'side of the apex on which the driver stands, along its direction',
    },
    sideDriven: {
      form: 'integer',
      symbol: 's_2',
      meaning: 'side of the apex on which the driven gear stands, along its direction',
    },
    ...AXIS_OUTPUTS,
    contact: {
      form: 'vector',
      kind: 'number',
      symbol: 'p',
      meaning: 'direction from the apex along the line of contact',
    },
  },
  results: ['speedRatio', 'sense', 'sideDriver', 'sideDriven'],
  steps: [
    ...AXIS_STEPS,
    {
      key: 'sideDriver',
      is: fn('sign', dotTree(sub('seatDriver', 'apex'), 'axisDriver')),
      says: 'On which side of the apex the driver stands.',
    },
    {
      key: 'sideDriven',
      is: fn('sign', dotTree(sub('seatDriven', 'apex'), 'axisDriven')),
      says: 'On which side of the apex the driven gear stands.',
    },
    {
      key: 'contact',
      is: add(mul('teethDriven', 'sideDriver', 'axisDriver'), mul('teethDriver', 'sideDriven', 'axisDriven')),
      says: 'The cones touch along a line between the two gears; its sines to the axes are as the teeth.',
    },
    { key: 'normal', is: crossTree('axisDriver', 'axisDriven'), says: 'Square to both axes.' },
    {
      key: 'speedRatio',
      left: dotTree(crossTree('axisDriver', 'contact'), 'normal'),
      right: mul('speedRatio', dotTree(crossTree('axisDriven', 'contact'), 'normal')),
      says: 'At the line of contact both surfaces move alike: ω₁ (a₁ × p) = ω₂ (a₂ × p), compared square to both axes.',
    },
    { key: 'sense', is: fn('sign', 'speedRatio'), says: 'Its sign.' },
  ],
  sources: [{ title: 'Equal surface velocity along the line of contact of two rolling cones', how: 'derived' }],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { apex, seatDriver, seatDriven, teethDriver, teethDriven } = input;
    const axisDriver = axisOf(id, 'directionDriver', input.directionDriver);
    const axisDriven = axisOf(id, 'directionDriven', input.directionDriven);
    const normal = cross(axisDriver, axisDriven);
    refuseParallel(id, normal);
    const sideDriver = sideOf('seatDriver', seatDriver, apex, axisDriver);
    const sideDriven = sideOf('seatDriven', seatDriven, apex, axisDriven);
    const contact = plus(times(teethDriven * sideDriver, axisDriver), times(teethDriver * sideDriven, axisDriven));
    const speedRatio = (-sideDriver * sideDriven * teethDriver) / teethDriven;
    return {
      speedRatio,
      sense: Math.sign(speedRatio),
      sideDriver,
      sideDriven,
      axisDriver,
      axisDriven,
      normal,
      contact,
    };
  },
});
