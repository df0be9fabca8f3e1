import { div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { ANGLE_OUTPUTS, ANGLE_STEPS, CONE_SOURCES, PAIR_INPUTS, pitchAngle } from './cone.ts';

const id = 'bevel.geometry';

const inputs = {
  ...PAIR_INPUTS,
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module at the large end', range: ABOVE_ZERO },
  faceWidth: { form: 'value', kind: 'length', symbol: 'b', meaning: 'face width', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Cones and diameters of a bevel pair at any shaft angle.
 *
 * Errors: teeth that are no whole number of at least 5, shaft angle outside 0..180 degrees, module or face width not above zero,
 * a gear that would be internal, a face wider than the cone distance.
 */
export const bevelGeometry = defineMethod({
  id,
  gives: 'Pitch angles, cone distances, pitch and mean diameters of a bevel pair',
  inputs,
  outputs: {
    ...ANGLE_OUTPUTS,
    pitchDiameterDriver: {
      form: 'value',
      kind: 'length',
      symbol: 'd_1',
      meaning: 'pitch diameter of the driver at the large end',
    },
    pitchDiameterDriven: {
      form: 'value',
      kind: 'length',
      symbol: 'd_2',
      meaning: 'pitch diameter of the driven gear at the large end',
    },
    outerConeDistance: { form: 'value', kind: 'length', symbol: 'R_e', meaning: 'outer cone distance' },
    meanConeDistance: { form: 'value', kind: 'length', symbol: 'R_m', meaning: 'mean cone distance' },
    meanDiameterDriver: { form: 'value', kind: 'length', symbol: 'd_m1', meaning: 'mean diameter of the driver' },
    meanDiameterDriven: { form: 'value', kind: 'length', symbol: 'd_m2', meaning: 'mean diameter of the driven gear' },
    faceWidthGuide: { form: 'value', kind: 'length', symbol: 'b_g', meaning: 'face width not to be exceeded' },
  },
  results: [
    'pitchAngleDriver',
    'pitchAngleDriven',
    'pitchDiameterDriver',
    'pitchDiameterDriven',
    'outerConeDistance',
    'meanConeDistance',
    'meanDiameterDriver',
    'meanDiameterDriven',
    'faceWidthGuide',
  ],
  steps: [
    ...ANGLE_STEPS,
    { key: 'pitchDiameterDriver', is: mul('module', 'teethDriver'), says: 'Module times teeth.' },
    { key: 'pitchDiameterDriven', is: mul('module', 'teethDriven'), says: 'Module times teeth.' },
    {
      key: 'outerConeDistance',
      is: div('pitchDiameterDriver', mul(2, fn('sin', 'pitchAngleDriver'))),
      says: 'From the apex to the large end, the same for both gears.',
    },
    {
      key: 'meanConeDistance',
      is: sub('outerConeDistance', div('faceWidth', 2)),
      says: 'To the middle of the face.',
    },
    {
      key: 'meanDiameterDriver',
      is: div(mul('pitchDiameterDriver', 'meanConeDistance'), 'outerConeDistance'),
      says: 'The cone narrows toward the apex.',
    },
    {
      key: 'meanDiameterDriven',
      is: div(mul('pitchDiameterDriven', 'meanConeDistance'), 'outerConeDistance'),
      says: 'The cone narrows toward the apex.',
    },
    {
      key: 'faceWidthGuide',
      is: fn('min', mul(num(0.3), 'outerConeDistance'), mul(10, 'module')),
      says: 'A wider face only puts thin small ends in the way.',
    },
  ],
  sources: CONE_SOURCES,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teethDriver, teethDriven, shaftAngle, module, faceWidth } = input;
    const pitchAngleDriver = pitchAngle(id, 'driver', teethDriver, teethDriven, shaftAngle);
    const pitchAngleDriven = pitchAngle(id, 'driven gear', teethDriven, teethDriver, shaftAngle);
    const pitchDiameterDriver = module * teethDriver;
    const pitchDiameterDriven = module * teethDriven;
    const outerConeDistance = pitchDiameterDriver / (2 * Math.sin(pitchAngleDriver));
    if (!(faceWidth < outerConeDistance)) {
      throw new MethodError(
        id,
        'faceWidth',
        `Face width must be less than the outer cone distance, ${outerConeDistance} m; read ${faceWidth} m.`,
      );
    }
    const meanConeDistance = outerConeDistance - faceWidth / 2;
    return {
      pitchAngleDriver,
      pitchAngleDriven,
      pitchDiameterDriver,
      pitchDiameterDriven,
      outerConeDistance,
      meanConeDistance,
      meanDiameterDriver: (pitchDiameterDriver * meanConeDistance) / outerConeDistance,
      meanDiameterDriven: (pitchDiameterDriven * meanConeDistance) / outerConeDistance,
      faceWidthGuide: Math.min(0.3 * outerConeDistance, 10 * module),
    };
  },
});
