import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { linksOver, pitchRadius, refuseOverlap, tangentAngle } from './drive.ts';
import {
  DRIVE_HOLDS,
  DRIVE_INPUTS,
  DRIVE_OUTPUTS,
  EXACT_SOURCES,
  LINKS_TREE,
  RADIUS_STEPS,
  SHAPE_STEPS,
  TANGENT_STEP,
} from './parts.ts';

const id = 'chain.length';

const inputs = {
  ...DRIVE_INPUTS,
  centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Links that a centre distance asks for, exactly: a real number, to be compared with the whole number fitted.
 *
 * Errors: teeth that are no whole number of at least 6, pitch or centre distance not above zero, sprockets that overlap.
 */
export const chainLength = defineMethod({
  id,
  gives: 'Links that two sprockets at a centre distance need, with spans and wraps',
  inputs,
  outputs: {
    links: { form: 'value', kind: 'count', symbol: 'L', meaning: 'links needed, not rounded' },
    ...DRIVE_OUTPUTS,
  },
  results: ['links', 'span', 'tangentAngle', 'wrapDriver', 'wrapDriven', 'pitchRadiusDriver', 'pitchRadiusDriven'],
  steps: [
    ...RADIUS_STEPS,
    TANGENT_STEP,
    ...SHAPE_STEPS,
    {
      key: 'links',
      is: LINKS_TREE,
      says: 'Both spans in pitches, and each arc as its share of the teeth: a chain lies on a polygon, not on the pitch circle.',
    },
  ],
  sources: EXACT_SOURCES,
  holds: DRIVE_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, centreDistance } = input;
    refuseOverlap(id, pitch, teethDriver, teethDriven, centreDistance);
    const pitchRadiusDriver = pitchRadius(pitch, teethDriver);
    const pitchRadiusDriven = pitchRadius(pitch, teethDriven);
    const angle = tangentAngle(pitchRadiusDriver, pitchRadiusDriven, centreDistance);
    return {
      links: linksOver(pitch, teethDriver, teethDriven, centreDistance, angle),
      span: centreDistance * Math.cos(angle),
      tangentAngle: angle,
      wrapDriver: Math.PI - 2 * angle,
      wrapDriven: Math.PI + 2 * angle,
      pitchRadiusDriver,
      pitchRadiusDriven,
    };
  },
});
