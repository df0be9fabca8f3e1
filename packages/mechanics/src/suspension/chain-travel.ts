import { linksOver, pitchRadius, refuseOverlap, tangentAngle } from '../chain/drive.ts';
import { DRIVE_HOLDS, DRIVE_INPUTS, radiusTree } from '../chain/parts.ts';
import { add, branch, choose, div, fn, mul, PI, pow, sub, when } from '../method/expr.ts';
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
} from './arm.ts';
import { refuseUnordered, tightest } from './tightest.ts';

const id = 'suspension.chainTravel';

const inputs = {
  ...ARM_INPUTS,
  ...DRIVE_INPUTS,
  linksFitted: { form: 'integer', symbol: 'L', meaning: 'links of the chain as fitted', range: { min: 1 } },
  armAngles: {
    form: 'list',
    kind: 'angle',
    symbol: 'α',
    meaning: 'arm angles from full rebound to full bump, rising or falling throughout',
    range: ARM_ANGLE_RANGE,
    atLeast: 2,
  },
} as const satisfies Params;

/**
 * What a chain on a swinging arm does over the travel: centre distance, links needed and slack at each angle, and where it is tightest.
 *
 * The tightest place is exact: the in-line angle when the travel passes it, else the end of the travel nearer to it.
 *
 * Errors: arm angles that do not rise or fall throughout sprockets that overlap somewhere in the travel, and what the
 * declarations refuse.
 */
export const armChainTravel = defineMethod({
  id,
  gives:
    'Centre distance, links needed and slack of a chain over the travel of a swinging arm, with the tightest place',
  inputs,
  outputs: {
    centres: { form: 'list', kind: 'length', symbol: 'C', meaning: 'centre distance at each arm angle' },
    linksNeeded: { form: 'list', kind: 'count', symbol: 'L_n', meaning: 'links needed at each arm angle, not rounded' },
    excesses: {
      form: 'list',
      kind: 'length',
      symbol: 'q',
      meaning: 'chain beyond what is needed at each arm angle; negative where it is too short',
    },
    movements: {
      form: 'list',
      kind: 'length',
      symbol: 'm',
      meaning: 'total hand movement at mid-span at each arm angle; 0 where the chain is too short',
    },
    tightestAt: {
      form: 'choice',
      symbol: 'w',
      meaning: 'where the chain is tightest',
      choices: ['in line', 'full rebound', 'full bump', 'everywhere alike'],
    },
    tightestAngle: { form: 'value', kind: 'angle', symbol: 'α_t', meaning: 'arm angle at which the chain is tightest' },
    centreTightest: { form: 'value', kind: 'length', symbol: 'C_t', meaning: 'centre distance there' },
    linksTightest: { form: 'value', kind: 'count', symbol: 'L_t', meaning: 'links needed there, not rounded' },
    excessTightest: { form: 'value', kind: 'length', symbol: 'q_t', meaning: 'chain beyond what is needed there' },
    movementTightest: {
      form: 'value',
      kind: 'length',
      symbol: 'm_t',
      meaning: 'total hand movement at mid-span there',
    },
    slackSwing: {
      form: 'value',
      kind: 'length',
      symbol: 'q_s',
      meaning: 'chain that goes slack between the tightest place and the slackest of the angles given',
    },
    ...IN_LINE_OUTPUTS,
    radiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
    radiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
    tangentTightest: {
      form: 'value',
      kind: 'angle',
      symbol: 'a_t',
      meaning: 'angle between a straight span and the line of centres at the tightest place',
    },
    spanTightest: { form: 'value', kind: 'length', symbol: 's_t', meaning: 'straight span at the tightest place' },
    excessMost: { form: 'value', kind: 'length', symbol: 'q_m', meaning: 'greatest excess at the angles given' },
  },
  results: [
    'centres',
    'linksNeeded',
    'excesses',
    'movements',
    'tightestAt',
    'tightestAngle',
    'centreTightest',
    'linksTightest',
    'excessTightest',
    'movementTightest',
    'slackSwing',
    'excessMost',
    'inLineAngle',
  ],
  steps: [
    ...IN_LINE_STEPS,
    { key: 'radiusDriver', is: radiusTree('teethDriver'), says: 'The pins of the driver lie on this radius.' },
    { key: 'radiusDriven', is: radiusTree('teethDriven'), says: 'The pins of the driven sprocket lie on this radius.' },
    {
      key: 'centreTightest',
      is: centreTree('armLength', 'tightestAngle'),
      says: 'The centres are farthest apart where the arm comes nearest to the in-line angle.',
    },
    {
      key: 'tangentTightest',
      is: fn('asin', div(sub('radiusDriven', 'radiusDriver'), 'centreTightest')),
      says: 'Lean of the straight spans there.',
    },
    { key: 'spanTightest', is: mul('centreTightest', fn('cos', 'tangentTightest')), says: 'Straight span there.' },
    {
      key: 'linksTightest',
      is: add(
        div(mul(2, 'spanTightest'), 'pitch'),
        div(mul('teethDriver', sub(PI, mul(2, 'tangentTightest'))), mul(2, PI)),
        div(mul('teethDriven', add(PI, mul(2, 'tangentTightest'))), mul(2, PI)),
      ),
      says: 'Spans and arcs, counted in links.',
    },
    {
      key: 'excessTightest',
      is: mul(sub('linksFitted', 'linksTightest'), 'pitch'),
      says: 'Chain fitted less chain needed.',
    },
    {
      key: 'movementTightest',
      is: choose(
        [branch(when('excessTightest', '<=', 0), 0)],
        fn('sqrt', sub(pow(add('spanTightest', 'excessTightest'), 2), pow('spanTightest', 2))),
      ),
      says: 'All of it pulled into a V at the middle of one span, from one side to the other.',
    },
    { key: 'slackSwing', is: sub('excessMost', 'excessTightest'), says: 'What a tensioner would have to take up.' },
  ],
  sources: ARM_SOURCES,
  holds: [...DRIVE_HOLDS, 'The wheel’s axle keeps its place on the arm.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, linksFitted, armLength, armAngles } = input;
    refuseUnordered(id, 'armAngles', armAngles);
    const [first = 0] = armAngles;
    const last = armAngles.at(-1) ?? first;
    const place = inLine(input.pivot, input.sprocket);
    const [radiusDriver, radiusDriven] = [pitchRadius(pitch, teethDriver), pitchRadius(pitch, teethDriven)];
    const at = (angle: number) => {
      const centre = centreAt(place, armLength, angle);
      refuseOverlap(id, pitch, teethDriver, teethDriven, centre, 'armAngles');
      const tangent = tangentAngle(radiusDriver, radiusDriven, centre);
      const span = centre * Math.cos(tangent);
      const links = linksOver(pitch, teethDriver, teethDriven, centre, tangent);
      const excess = (linksFitted - links) * pitch;
      const movement = excess <= 0 ? 0 : Math.sqrt((span + excess) ** 2 - span ** 2);
      return { centre, tangent, span, links, excess, movement };
    };
    const all = armAngles.map(at);
    const { at: tightestAt, angle: tightestAngle } = tightest(place, armLength, first, last);
    const tight = at(tightestAngle);
    const excessMost = Math.max(...all.map(({ excess }) => excess));
    return {
      centres: all.map(({ centre }) => centre),
      linksNeeded: all.map(({ links }) => links),
      excesses: all.map(({ excess }) => excess),
      movements: all.map(({ movement }) => movement),
      tightestAt,
      tightestAngle,
      centreTightest: tight.centre,
      linksTightest: tight.links,
      excessTightest: tight.excess,
      movementTightest: tight.movement,
      slackSwing: excessMost - tight.excess,
      ...place,
      radiusDriver,
      radiusDriven,
      tangentTightest: tight.tangent,
      spanTightest: tight.span,
      excessMost,
    };
  },
});
