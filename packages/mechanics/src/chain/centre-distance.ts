import { sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { findRoot } from '../numerics/root.ts';
import { linksOver, pitchRadius, tangentAngle, tipRadius } from './drive.ts';
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

const id = 'chain.centreDistance';

const inputs = {
  ...DRIVE_INPUTS,
  links: { form: 'value', kind: 'count', symbol: 'L', meaning: 'links of the chain', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Centre distance at which a chain of so many links lies taut on two sprockets, exactly.
 *
 * Errors: teeth that are no whole number of at least 6, pitch or links not above zero, too few links for the sprockets to clear.
 */
export const chainCentreDistance = defineMethod({
  id,
  gives: 'Centre distance that a chain of so many links asks for',
  inputs,
  outputs: {
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance, chain taut' },
    ...DRIVE_OUTPUTS,
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
      left: sym('links'),
      right: LINKS_TREE,
      says: 'The centre distance at which both spans and both arcs take up all links.',
    },
    ...SHAPE_STEPS,
  ],
  sources: EXACT_SOURCES,
  holds: DRIVE_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, links } = input;
    const pitchRadiusDriver = pitchRadius(pitch, teethDriver);
    const pitchRadiusDriven = pitchRadius(pitch, teethDriven);
    const tooMany = (centre: number): number =>
      linksOver(pitch, teethDriver, teethDriven, centre, tangentAngle(pitchRadiusDriver, pitchRadiusDriven, centre)) -
      links;
    const least = tipRadius(pitch, teethDriver) + tipRadius(pitch, teethDriven);
    if (!(tooMany(least) < 0)) {
      throw new MethodError(
        id,
        'links',
        `Links of the chain must be more than ${tooMany(least) + links}, else the tooth tips of the two sprockets touch; read ${links}.`,
      );
    }
    // Half the chain laid straight, and the two radii on top, is more than any drive can reach.
    const most = (links * pitch) / 2 + pitchRadiusDriver + pitchRadiusDriven;
    const centreDistance = findRoot(tooMany, least, most);
    const angle = tangentAngle(pitchRadiusDriver, pitchRadiusDriven, centreDistance);
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
