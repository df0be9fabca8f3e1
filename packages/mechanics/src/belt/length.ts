import { div } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { lengthOver, pitchRadius, refuseOverlap } from './drive.ts';
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

const id = 'belt.length';

const inputs = {
  ...BELT_INPUTS,
  centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Length of the toothed belt that a centre distance asks for.
 *
 * Errors: teeth that are no whole number of at least 8, pitch or centre distance not above zero, pulleys that overlap.
 */
export const beltLength = defineMethod({
  id,
  gives: 'Length and teeth of the toothed belt that two pulleys need, with span and wraps',
  inputs,
  outputs: {
    length: { form: 'value', kind: 'length', symbol: 'L', meaning: 'length of the pitch line' },
    beltTeeth: { form: 'value', kind: 'count', symbol: 'z_b', meaning: 'belt teeth needed, not rounded' },
    ...BELT_OUTPUTS,
  },
  results: [
    'length',
    'beltTeeth',
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
    ...SHAPE_STEPS,
    { key: 'length', is: LENGTH_TREE, says: 'Both spans, and each arc as radius times angle.' },
    { key: 'beltTeeth', is: div('length', 'pitch'), says: 'Length in pitches.' },
  ],
  sources: BELT_SOURCES,
  holds: BELT_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, centreDistance } = input;
    const pitchRadiusDriver = pitchRadius(pitch, teethDriver);
    const pitchRadiusDriven = pitchRadius(pitch, teethDriven);
    refuseOverlap(id, pitchRadiusDriver, pitchRadiusDriven, centreDistance);
    const angle = Math.asin((pitchRadiusDriven - pitchRadiusDriver) / centreDistance);
    const length = lengthOver(pitchRadiusDriver, pitchRadiusDriven, centreDistance, angle);
    return {
      length,
      beltTeeth: length / pitch,
      span: centreDistance * Math.cos(angle),
      tangentAngle: angle,
      wrapDriver: Math.PI - 2 * angle,
      wrapDriven: Math.PI + 2 * angle,
      pitchRadiusDriver,
      pitchRadiusDriven,
    };
  },
});
