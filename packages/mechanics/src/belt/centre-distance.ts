import { mul } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { findRoot } from '../numerics/root.ts';
import { lengthOver, pitchRadius } from './drive.ts';
import {
  BELT_HOLDS,
  BELT_INPUTS,
  BELT_OUTPUTS,
  BELT_SOURCES,
  LENGTH_TREE,
  RADIUS_STEPS,
  SHAPE_STEPS,
  TANGENT_STEP,
} from './parts.ts';

const id = 'belt.centreDistance';

const inputs = {
  ...BELT_INPUTS,
  beltTeeth: { form: 'value', kind: 'count', symbol: 'z_b', meaning: 'teeth of the belt', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Centre distance at which a toothed belt lies taut on two pulleys.
 *
 * Errors: teeth that are no whole number of at least 8, pitch or belt teeth not above zero, a belt too short for the pulleys to clear.
 */
export const beltCentreDistance = defineMethod({
  id,
  gives: 'Centre distance that a toothed belt of so many teeth asks for',
  inputs,
  outputs: {
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance, belt taut' },
    ...BELT_OUTPUTS,
  },
  results: [
    'centreDistance',
    'span',
    'tangentAngle',
    'wrapDriver',
    'wrapDriven',
    'pitchRadiusDriver',
    'pitchRadiusDriven',
  ],
  steps: [
    ...RADIUS_STEPS,
    TANGENT_STEP,
    {
      key: 'centreDistance',
      left: mul('beltTeeth', 'pitch'),
      right: LENGTH_TREE,
      says: 'The centre distance at which both spans and both arcs take up the whole belt.',
    },
    ...SHAPE_STEPS,
  ],
  sources: BELT_SOURCES,
  holds: BELT_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, beltTeeth } = input;
    const pitchRadiusDriver = pitchRadius(pitch, teethDriver);
    const pitchRadiusDriven = pitchRadius(pitch, teethDriven);
    const wanted = beltTeeth * pitch;
    const angleAt = (centre: number): number => Math.asin((pitchRadiusDriven - pitchRadiusDriver) / centre);
    const over = (centre: number): number =>
      lengthOver(pitchRadiusDriver, pitchRadiusDriven, centre, angleAt(centre)) - wanted;
    const least = pitchRadiusDriver + pitchRadiusDriven;
    if (!(over(least) < 0)) {
      throw new MethodError(
        id,
        'beltTeeth',
        `Teeth of the belt must be more than ${(over(least) + wanted) / pitch}, else the pulleys touch; read ${beltTeeth}.`,
      );
    }
    const centreDistance = findRoot(over, least, wanted / 2 + least);
    const angle = angleAt(centreDistance);
    return {
      centreDistance,
      span: centreDistance * Math.cos(angle),
      tangentAngle: angle,
      wrapDriver: Math.PI - 2 * angle,
      wrapDriven: Math.PI + 2 * angle,
      pitchRadiusDriver,
      pitchRadiusDriven,
    };
  },
});
