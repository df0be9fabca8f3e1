import { defineMethod } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { ANGLE_OUTPUTS, ANGLE_STEPS, CONE_SOURCES, PAIR_INPUTS, pitchAngle } from './cone.ts';

const id = 'bevel.pitchAngles';

/**
 * Pitch angles of a bevel pair: they follow from teeth and shaft angle alone.
 *
 * Errors: teeth that are no whole number of at least 5, shaft angle outside 0..180 degrees, a gear that would be internal.
 */
export const bevelPitchAngles = defineMethod({
  id,
  gives: 'Pitch angles of a bevel pair at any shaft angle',
  inputs: PAIR_INPUTS,
  outputs: ANGLE_OUTPUTS,
  results: ['pitchAngleDriver', 'pitchAngleDriven'],
  steps: ANGLE_STEPS,
  sources: CONE_SOURCES,
  run: (input) => {
    refuseOutside(id, PAIR_INPUTS, input);
    const { teethDriver, teethDriven, shaftAngle } = input;
    return {
      pitchAngleDriver: pitchAngle(id, 'driver', teethDriver, teethDriven, shaftAngle),
      pitchAngleDriven: pitchAngle(id, 'driven gear', teethDriven, teethDriver, shaftAngle),
    };
  },
});
