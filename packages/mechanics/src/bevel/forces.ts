import { div, fn, mul } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.forces';

const PITCH_ANGLE_RANGE = { min: 0, max: Math.PI / 2 + 1e-9 } as const;

const inputs = {
  torqueDriver: { form: 'value', kind: 'torque', symbol: 'T_1', meaning: 'torque on the driver', range: { min: 0 } },
  meanDiameterDriver: {
    form: 'value',
    kind: 'length',
    symbol: 'd_m1',
    meaning: 'mean diameter of the driver',
    range: ABOVE_ZERO,
  },
  pitchAngleDriver: {
    form: 'value',
    kind: 'angle',
    symbol: 'δ_1',
    meaning: 'pitch angle of the driver',
    range: PITCH_ANGLE_RANGE,
  },
  pitchAngleDriven: {
    form: 'value',
    kind: 'angle',
    symbol: 'δ_2',
    meaning: 'pitch angle of the driven gear',
    range: PITCH_ANGLE_RANGE,
  },
  pressureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'pressure angle',
    range: { min: 0, max: Math.PI / 4 },
    default: Math.PI / 9,
  },
} as const satisfies Params;

/**
 * Tooth forces of a pair of straight bevel gears, at the mean cone.
 *
 * Errors: torque below zero, mean diameter not above zero, pitch angles outside 0..90 degrees, pressure angle outside 0..45 degrees.
 */
export const bevelForces = defineMethod({
  id,
  gives: 'Tangential, axial and radial tooth forces on both gears of a straight bevel pair',
  inputs,
  outputs: {
    tangential: {
      form: 'value',
      kind: 'force',
      symbol: 'W_t',
      meaning: 'tangential force, equal and opposite on both gears',
    },
    separating: { form: 'value', kind: 'force', symbol: 'W_s', meaning: 'force that pushes the teeth apart' },
    axialDriver: {
      form: 'value',
      kind: 'force',
      symbol: 'W_a1',
      meaning: 'axial force on the driver, away from the apex',
    },
    radialDriver: {
      form: 'value',
      kind: 'force',
      symbol: 'W_r1',
      meaning: 'radial force on the driver, toward its axis',
    },
    axialDriven: {
      form: 'value',
      kind: 'force',
      symbol: 'W_a2',
      meaning: 'axial force on the driven gear, away from the apex',
    },
    radialDriven: {
      form: 'value',
      kind: 'force',
      symbol: 'W_r2',
      meaning: 'radial force on the driven gear, toward its axis',
    },
  },
  results: ['tangential', 'separating', 'axialDriver', 'radialDriver', 'axialDriven', 'radialDriven'],
  steps: [
    {
      key: 'tangential',
      is: div(mul(2, 'torqueDriver'), 'meanDiameterDriver'),
      says: 'The torque acts at the middle of the face.',
    },
    { key: 'separating', is: mul('tangential', fn('tan', 'pressureAngle')), says: 'The flanks wedge the gears apart.' },
    {
      key: 'axialDriver',
      is: mul('separating', fn('sin', 'pitchAngleDriver')),
      says: 'Its part along the driver’s axis.',
    },
    {
      key: 'radialDriver',
      is: mul('separating', fn('cos', 'pitchAngleDriver')),
      says: 'Its part square to the driver’s axis.',
    },
    {
      key: 'axialDriven',
      is: mul('separating', fn('sin', 'pitchAngleDriven')),
      says: 'Its part along the driven gear’s axis.',
    },
    {
      key: 'radialDriven',
      is: mul('separating', fn('cos', 'pitchAngleDriven')),
      says: 'Its part square to the driven gear’s axis.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'Eq. 13-38, Example 13-8',
      how: 'memory',
    },
    { title: 'Textbook chapter 27, Straight Bevel Gears', at: 'Example 27-1', how: 'read' },
  ],
  holds: ['Straight teeth; friction is left out; the force acts at the middle of the face.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { torqueDriver, meanDiameterDriver, pitchAngleDriver, pitchAngleDriven, pressureAngle } = input;
    const tangential = (2 * torqueDriver) / meanDiameterDriver;
    const separating = tangential * Math.tan(pressureAngle);
    return {
      tangential,
      separating,
      axialDriver: separating * Math.sin(pitchAngleDriver),
      radialDriver: separating * Math.cos(pitchAngleDriver),
      axialDriven: separating * Math.sin(pitchAngleDriven),
      radialDriven: separating * Math.cos(pitchAngleDriven),
    };
  },
});
