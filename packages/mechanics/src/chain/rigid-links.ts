import { sub, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { chainCentreDistance } from './centre-distance.ts';
import { DRIVE_INPUTS, LINKS_TREE, RADIUS_STEPS, TANGENT_STEP } from './parts.ts';
import { polygonCentre } from './polygon-drive.ts';

const id = 'chain.rigidLinks';

/** Spans shorter than this many pitches cannot be told from the sides of the polygons. */
const LEAST_SPAN = 3;

const inputs = {
  ...DRIVE_INPUTS,
  links: { form: 'integer', symbol: 'L', meaning: 'links of the chain', range: { min: 10 } },
  phase: {
    form: 'value',
    kind: 'fraction',
    symbol: 'f',
    meaning: 'turn of the driver, as part of one tooth',
    range: { min: 0, max: 1 },
  },
} as const satisfies Params;

/**
 * Centre distance of a taut chain of rigid links over two polygons at one turn of the driver, beside the closed form.
 *
 * Solved numerically, and so an independent check of the closed form; turning the driver shows the ripple that a fixed centre distance must leave.
 *
 * Errors: links too few for spans of three pitches, and what the declarations refuse.
 */
export const chainRigidLinks = defineMethod({
  id,
  gives:
    'Centre distance of a chain of rigid links over two polygons at one turn of the driver, against the closed form',
  inputs,
  outputs: {
    centreRigid: { form: 'value', kind: 'length', symbol: 'C_f', meaning: 'centre distance at this turn, chain taut' },
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance by the closed form' },
    departure: {
      form: 'value',
      kind: 'length',
      symbol: 'Δ',
      meaning: 'how far this turn departs from the closed form',
    },
    pitchRadiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
    pitchRadiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
    tangentAngle: {
      form: 'value',
      kind: 'angle',
      symbol: 'a',
      meaning: 'angle between a span and the line of centres',
    },
  },
  results: ['centreRigid', 'centreDistance', 'departure'],
  steps: [
    ...RADIUS_STEPS,
    TANGENT_STEP,
    { key: 'centreDistance', left: sym('links'), right: LINKS_TREE, says: 'The closed form.' },
    { key: 'departure', is: sub('centreRigid', 'centreDistance'), says: 'Averaged over a tooth it comes to nothing.' },
  ],
  sources: [
    { title: 'Taut outline of two polygons with whole links in both spans, solved numerically', how: 'derived' },
    {
      title: 'Determination of centre distance of a roller chain drive (Rong, Zhu, Xu; Xi’an Jiaotong University)',
      at: 'abstract: the same model',
      how: 'read',
    },
  ],
  holds: ['Links are rigid and without play; both spans are straight.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, links, phase } = input;
    const closed = chainCentreDistance.run({ pitch, teethDriver, teethDriven, links });
    if (closed.span < LEAST_SPAN * pitch)
      throw new MethodError(
        id,
        'links',
        `Links leave spans of ${closed.span / pitch} pitches; spans of at least ${LEAST_SPAN} pitches are accepted.`,
      );
    const centreRigid = pitch * polygonCentre(teethDriver, phase, teethDriven, links, closed.centreDistance / pitch);
    return {
      centreRigid,
      centreDistance: closed.centreDistance,
      departure: centreRigid - closed.centreDistance,
      pitchRadiusDriver: closed.pitchRadiusDriver,
      pitchRadiusDriven: closed.pitchRadiusDriven,
      tangentAngle: closed.tangentAngle,
    };
  },
});
