import { add, fn, mul, sub, sym } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import {
  ARM_ANGLE_RANGE,
  ARM_INPUTS,
  ARM_SOURCES,
  centreAt,
  centreTree,
  IN_LINE_OUTPUTS,
  IN_LINE_STEPS,
  inLine,
  wrapped,
} from './arm.ts';

const id = 'suspension.centreDistance';

const inputs = {
  ...ARM_INPUTS,
  armAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'arm angle, 0 with the arm level behind its pivot, positive with the axle above the pivot',
    range: ARM_ANGLE_RANGE,
  },
} as const satisfies Params;

const fromInLine = sub('armAngle', 'inLineAngle');

/**
 * Centre distance between a sprocket on the frame and an axle on a swinging arm, and how far that is from the greatest.
 *
 * Errors: arm length not above zero, arm angle outside −180..180 degrees, coordinates that are not finite.
 */
export const armCentreDistance = defineMethod({
  id,
  gives: 'Centre distance of a chain on a swinging arm, with the greatest one and the arm angle at which it falls',
  inputs,
  outputs: {
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance at this arm angle' },
    centreMost: { form: 'value', kind: 'length', symbol: 'C_m', meaning: 'greatest centre distance' },
    shortOfMost: {
      form: 'value',
      kind: 'length',
      symbol: 'c',
      meaning: 'how much less than the greatest centre distance',
    },
    ...IN_LINE_OUTPUTS,
    fromInLine: { form: 'value', kind: 'angle', symbol: 'φ', meaning: 'arm angle past the in-line place' },
    axleX: { form: 'value', kind: 'length', symbol: 'x_a', meaning: 'axle, forward' },
    axleZ: { form: 'value', kind: 'length', symbol: 'z_a', meaning: 'axle, up' },
  },
  results: ['centreDistance', 'centreMost', 'shortOfMost', 'inLineAngle', 'fromInLine', 'axleX', 'axleZ'],
  steps: [
    ...IN_LINE_STEPS,
    { key: 'centreDistance', is: centreTree('armLength', 'armAngle'), says: 'Law of cosines.' },
    { key: 'centreMost', is: add('offset', 'armLength'), says: 'With all three in line.' },
    {
      key: 'shortOfMost',
      is: sub('centreMost', 'centreDistance'),
      says: 'So much the chain has gone slack at the centres.',
    },
    {
      key: 'fromInLine',
      is: fn('atan2', fn('sin', fromInLine), fn('cos', fromInLine)),
      says: 'Within half a turn either way.',
    },
    { key: 'axleX', is: sub(sym('pivot', 0), mul('armLength', fn('cos', 'armAngle'))), says: 'Behind the pivot.' },
    { key: 'axleZ', is: add(sym('pivot', 2), mul('armLength', fn('sin', 'armAngle'))), says: 'Above the pivot.' },
  ],
  sources: ARM_SOURCES,
  holds: ['The sprockets turn about axes square to the x–z plane.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pivot, sprocket, armLength, armAngle } = input;
    const place = inLine(pivot, sprocket);
    const centreDistance = centreAt(place, armLength, armAngle);
    const centreMost = place.offset + armLength;
    return {
      centreDistance,
      centreMost,
      shortOfMost: centreMost - centreDistance,
      ...place,
      fromInLine: wrapped(armAngle - place.inLineAngle),
      axleX: pivot[0] - armLength * Math.cos(armAngle),
      axleZ: pivot[2] + armLength * Math.sin(armAngle),
    };
  },
});
