import { linksOver, pitchRadius, refuseOverlap, tangentAngle, tipRadius } from '../chain/drive.ts';
import { DRIVE_HOLDS, DRIVE_INPUTS, radiusTree } from '../chain/parts.ts';
import { add, branch, choose, div, type Expr, fn, mul, neg, PI, pow, sub, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { findRoot } from '../numerics/root.ts';
import {
  ARM_ANGLE_RANGE,
  ARM_INPUTS,
  ARM_SOURCES,
  centreAt,
  centreTree,
  IN_LINE_OUTPUTS,
  IN_LINE_STEPS,
  inLine,
} from './arm.ts';
import { refuseUnordered, tightest } from './tightest.ts';

const id = 'suspension.slackToSet';

const inputs = {
  ...ARM_INPUTS,
  ...DRIVE_INPUTS,
  linksFitted: { form: 'integer', symbol: 'L', meaning: 'links of the chain as fitted', range: { min: 1 } },
  reboundAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α_r',
    meaning: 'arm angle at full rebound',
    range: ARM_ANGLE_RANGE,
  },
  bumpAngle: { form: 'value', kind: 'angle', symbol: 'α_b', meaning: 'arm angle at full bump', range: ARM_ANGLE_RANGE },
  measureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α_s',
    meaning: 'arm angle at which the slack is measured: on a stand, or on its wheels',
    range: ARM_ANGLE_RANGE,
  },
  movementTightest: {
    form: 'value',
    kind: 'length',
    symbol: 'm_t',
    meaning: 'total hand movement at mid-span wanted where the chain is tightest',
    range: { min: 0 },
  },
} as const satisfies Params;

function linksTree(span: string, tangent: string): Expr {
  return add(
    div(mul(2, span), 'pitch'),
    div(mul('teethDriver', sub(PI, mul(2, tangent))), mul(2, PI)),
    div(mul('teethDriven', add(PI, mul(2, tangent))), mul(2, PI)),
  );
}

const tangentTree = (centre: string): Expr => fn('asin', div(sub('radiusDriven', 'radiusDriver'), centre));
const pastInLine = sub('tightestAngle', 'inLineAngle');

/** Chain drawn into one span that the hand moves so far in total. */
const excessOf = (span: number, movement: number): number => Math.hypot(span, movement) - span;

/**
 * Slack to measure on the stand or on its wheels, so that the chain keeps the wanted slack where it is tightest, and the arm length that does it.
 *
 * Errors: full rebound and full bump alike, sprockets that overlap, links that no arm length answers, and what the declarations refuse.
 */
export const armSlackToSet = defineMethod({
  id,
  gives:
    'Hand movement to measure at one arm angle so that a chain on a swinging arm keeps its slack at the tightest place',
  inputs,
  outputs: {
    movementToMeasure: {
      form: 'value',
      kind: 'length',
      symbol: 'm_s',
      meaning:
        'total hand movement at mid-span to measure; 0 when the chain would be too short at the angle of measuring',
    },
    armLengthSet: { form: 'value', kind: 'length', symbol: 'S_s', meaning: 'arm length that gives the wanted slack' },
    adjustment: {
      form: 'value',
      kind: 'length',
      symbol: 'ΔS',
      meaning: 'how far the axle must go along the arm from the given arm length; positive away from the pivot',
    },
    tightestAt: {
      form: 'choice',
      symbol: 'w',
      meaning: 'where the chain is tightest',
      choices: ['in line', 'full rebound', 'full bump', 'everywhere alike'],
    },
    tightestAngle: { form: 'value', kind: 'angle', symbol: 'α_t', meaning: 'arm angle at which the chain is tightest' },
    ...IN_LINE_OUTPUTS,
    radiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
    radiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
    centreTightest: { form: 'value', kind: 'length', symbol: 'C_t', meaning: 'centre distance at the tightest place' },
    tangentTightest: {
      form: 'value',
      kind: 'angle',
      symbol: 'a_t',
      meaning: 'lean of the spans at the tightest place',
    },
    spanTightest: { form: 'value', kind: 'length', symbol: 's_t', meaning: 'straight span at the tightest place' },
    centreMeasured: { form: 'value', kind: 'length', symbol: 'C_s', meaning: 'centre distance where it is measured' },
    tangentMeasured: { form: 'value', kind: 'angle', symbol: 'a_s', meaning: 'lean of the spans where it is measured' },
    spanMeasured: { form: 'value', kind: 'length', symbol: 's_s', meaning: 'straight span where it is measured' },
    excessMeasured: {
      form: 'value',
      kind: 'length',
      symbol: 'q_s',
      meaning: 'chain beyond what is needed where it is measured',
    },
  },
  results: ['movementToMeasure', 'armLengthSet', 'adjustment', 'tightestAt', 'tightestAngle', 'excessMeasured'],
  steps: [
    ...IN_LINE_STEPS,
    { key: 'radiusDriver', is: radiusTree('teethDriver'), says: 'The pins of the driver lie on this radius.' },
    { key: 'radiusDriven', is: radiusTree('teethDriven'), says: 'The pins of the driven sprocket lie on this radius.' },
    { key: 'tangentTightest', is: tangentTree('centreTightest'), says: 'Lean of the straight spans.' },
    { key: 'spanTightest', is: mul('centreTightest', fn('cos', 'tangentTightest')), says: 'Straight span.' },
    {
      key: 'centreTightest',
      left: mul('linksFitted', 'pitch'),
      right: add(
        mul(linksTree('spanTightest', 'tangentTightest'), 'pitch'),
        sub(fn('sqrt', add(pow('spanTightest', 2), pow('movementTightest', 2))), 'spanTightest'),
      ),
      says: 'At the tightest angle the chain fitted covers what is needed and what the V of the hand movement takes.',
    },
    {
      key: 'armLengthSet',
      is: add(
        neg(mul('offset', fn('cos', pastInLine))),
        fn('sqrt', sub(pow('centreTightest', 2), pow(mul('offset', fn('sin', pastInLine)), 2))),
      ),
      says: 'Law of cosines, for the arm.',
    },
    { key: 'adjustment', is: sub('armLengthSet', 'armLength'), says: 'Shift of the axle in its slot.' },
    { key: 'centreMeasured', is: centreTree('armLengthSet', 'measureAngle'), says: 'Law of cosines, for the centres.' },
    { key: 'tangentMeasured', is: tangentTree('centreMeasured'), says: 'Lean of the straight spans.' },
    { key: 'spanMeasured', is: mul('centreMeasured', fn('cos', 'tangentMeasured')), says: 'Straight span.' },
    {
      key: 'excessMeasured',
      is: mul(sub('linksFitted', linksTree('spanMeasured', 'tangentMeasured')), 'pitch'),
      says: 'Chain fitted less chain needed.',
    },
    {
      key: 'movementToMeasure',
      is: choose(
        [branch(when('excessMeasured', '<=', 0), 0)],
        fn('sqrt', sub(pow(add('spanMeasured', 'excessMeasured'), 2), pow('spanMeasured', 2))),
      ),
      says: 'The excess pulled into a V at the middle of one span, from one side to the other.',
    },
  ],
  sources: ARM_SOURCES,
  holds: [...DRIVE_HOLDS, 'The axle slot runs along the arm, so that the arm angles stay as they are.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, linksFitted, armLength, movementTightest } = input;
    refuseUnordered(id, 'bumpAngle', [input.reboundAngle, input.bumpAngle]);
    const place = inLine(input.pivot, input.sprocket);
    const { at: tightestAt, angle: tightestAngle } = tightest(place, armLength, input.reboundAngle, input.bumpAngle);
    const [radiusDriver, radiusDriven] = [pitchRadius(pitch, teethDriver), pitchRadius(pitch, teethDriven)];
    const shapeAt = (centre: number) => {
      const tangent = tangentAngle(radiusDriver, radiusDriven, centre);
      const span = centre * Math.cos(tangent);
      const excess = (linksFitted - linksOver(pitch, teethDriver, teethDriven, centre, tangent)) * pitch;
      return { tangent, span, excess };
    };
    const spare = (centre: number): number => {
      const { span, excess } = shapeAt(centre);
      return excess - excessOf(span, movementTightest);
    };
    const least = tipRadius(pitch, teethDriver) + tipRadius(pitch, teethDriven);
    const most = (linksFitted * pitch) / 2 + radiusDriver + radiusDriven;
    if (!(least < most && spare(least) > 0)) {
      throw new MethodError(
        id,
        'linksFitted',
        `No arm length gives the wanted slack: ${linksFitted} links are too few for sprockets whose tips clear each other.`,
      );
    }
    const centreTightest = findRoot(spare, least, most);
    const phi = tightestAngle - place.inLineAngle;
    const under = centreTightest ** 2 - (place.offset * Math.sin(phi)) ** 2;
    const armLengthSet = -place.offset * Math.cos(phi) + Math.sqrt(under);
    if (!(armLengthSet > 0)) {
      throw new MethodError(
        id,
        'linksFitted',
        `No arm length gives the wanted slack: the chain wants a centre distance of ${centreTightest} m, less than the sprocket’s own distance from the pivot allows.`,
      );
    }
    const centreMeasured = centreAt(place, armLengthSet, input.measureAngle);
    refuseOverlap(id, pitch, teethDriver, teethDriven, centreMeasured, 'measureAngle');
    const tight = shapeAt(centreTightest);
    const { tangent, span, excess } = shapeAt(centreMeasured);
    return {
      movementToMeasure: excess <= 0 ? 0 : Math.sqrt((span + excess) ** 2 - span ** 2),
      armLengthSet,
      adjustment: armLengthSet - armLength,
      tightestAt,
      tightestAngle,
      ...place,
      radiusDriver,
      radiusDriven,
      centreTightest,
      tangentTightest: tight.tangent,
      spanTightest: tight.span,
      centreMeasured,
      tangentMeasured: tangent,
      spanMeasured: span,
      excessMeasured: excess,
    };
  },
});
