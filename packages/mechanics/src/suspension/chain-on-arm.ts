import { pitchRadius, refuseOverlap, tangentAngle } from '../chain/drive.ts';
import { DRIVE_INPUTS, radiusTree } from '../chain/parts.ts';
import { add, div, type Expr, fn, mul, neg, pow, sub, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { ARM_ANGLE_RANGE, ARM_INPUTS } from './arm.ts';
import { type Flat, segmentGap } from './segment-gap.ts';

const id = 'suspension.chainOnArm';

const SENSES = ['squats', 'rises', 'neither'] as const;

const inputs = {
  ...ARM_INPUTS,
  ...DRIVE_INPUTS,
  armAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'arm angle, 0 with the arm level behind its pivot, positive with the axle above the pivot',
    range: ARM_ANGLE_RANGE,
  },
  pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull of the tight span', range: { min: 0 } },
  tightSpan: {
    form: 'choice',
    symbol: 'w_t',
    meaning: 'the span that pulls',
    choices: ['upper', 'lower'],
    default: 'upper',
  },
  tyreRadius: { form: 'value', kind: 'length', symbol: 'r', meaning: 'loaded radius of the tyre', range: ABOVE_ZERO },
  armHalfHeight: {
    form: 'value',
    kind: 'length',
    symbol: 'h_a',
    meaning: 'half the height of the arm beside the chain, with any rubbing strip',
    range: { min: 0 },
  },
  chainHalfHeight: {
    form: 'value',
    kind: 'length',
    symbol: 'h_c',
    meaning: 'half the height of the chain’s plates',
    range: { min: 0 },
  },
  slackDeflection: {
    form: 'value',
    kind: 'length',
    symbol: 'd',
    meaning: 'how far the slack span hangs or flaps to one side of its straight line',
    range: { min: 0 },
    default: 0,
  },
} as const satisfies Params;

const sprocketX = sub(sym('sprocket', 0), sym('pivot', 0));
const sprocketZ = sub(sym('sprocket', 2), sym('pivot', 2));
const axleX = neg(mul('armLength', fn('cos', 'armAngle')));
const axleZ = mul('armLength', fn('sin', 'armAngle'));
const trail = fn('sign', 'towardX');
const bumpward = fn('sign', fn('cos', 'armAngle'));

/** Height over the pivot of the span on one side: 1 the upper, −1 the lower. */
function heightTree(side: Expr): Expr {
  const [cos, sin] = [fn('cos', 'tangentAngle'), fn('sin', 'tangentAngle')];
  const squareX = sub(neg(mul(side, trail, 'towardZ', cos)), mul('towardX', sin));
  const squareZ = sub(mul(side, trail, 'towardX', cos), mul('towardZ', sin));
  return mul(side, add('radiusDriver', mul(squareX, sprocketX), mul(squareZ, sprocketZ)));
}

/** Below this part of its length a line counts as upright: it has no upper side, and moving along it is neither bump nor rebound. */
const UPRIGHT = 1e-9;

const senseOf = (torque: number): (typeof SENSES)[number] => {
  if (torque === 0) return 'neither';
  return torque > 0 ? 'squats' : 'rises';
};

function refuseUpright(input: string, part: number, what: string): void {
  if (Math.abs(part) > UPRIGHT) return;
  throw new MethodError(id, input, `${what} stands upright, so that it has no upper side.`);
}

/**
 * What the chain does to the arm that it runs along: torque about the pivot under drive, and room between chain and arm.
 *
 * Arm, wheel and driven sprocket are one body, turning steadily: the tight span pulls on it along its own line, and the ground pushes it at the
 * tyre. Both act about the pivot; a torque that lifts the axle toward bump lets the vehicle squat, one that presses it down makes it rise.
 *
 * Errors: an axle straight over or under the sprocket, sprockets that overlap, and what the declarations refuse.
 */
export const chainOnArm = defineMethod({
  id,
  gives:
    'Torque of a chain’s pull and of the tyre’s thrust on a swinging arm, whether it squats or rises, and room between chain and arm',
  inputs,
  outputs: {
    heightTight: {
      form: 'value',
      kind: 'length',
      symbol: 'y_t',
      meaning: 'height of the tight span’s line over the pivot, square to the span; negative below it',
    },
    heightSlack: { form: 'value', kind: 'length', symbol: 'y_s', meaning: 'the same for the slack span' },
    torqueChain: {
      form: 'value',
      kind: 'torque',
      symbol: 'M_c',
      meaning: 'torque on the arm from the chain’s pull; positive lifts the axle toward bump',
    },
    thrust: { form: 'value', kind: 'force', symbol: 'X', meaning: 'thrust at the tyre from this pull' },
    torqueThrust: {
      form: 'value',
      kind: 'torque',
      symbol: 'M_x',
      meaning: 'torque on the arm from the thrust; positive lifts the axle toward bump',
    },
    torque: {
      form: 'value',
      kind: 'torque',
      symbol: 'M',
      meaning: 'both torques; positive lifts the axle toward bump',
    },
    chainSense: { form: 'choice', symbol: 'w_c', meaning: 'what the chain’s pull alone does', choices: SENSES },
    sense: { form: 'choice', symbol: 'w', meaning: 'what pull and thrust together do', choices: SENSES },
    clearanceTight: {
      form: 'value',
      kind: 'length',
      symbol: 'g_t',
      meaning: 'room between the tight span and the arm; negative when they rub',
    },
    clearanceSlack: {
      form: 'value',
      kind: 'length',
      symbol: 'g_s',
      meaning: 'room between the slack span and the arm; negative when they rub',
    },
    side: { form: 'integer', symbol: 'k', meaning: '1 when the upper span pulls, −1 when the lower does' },
    radiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
    radiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
    centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance' },
    tangentAngle: {
      form: 'value',
      kind: 'angle',
      symbol: 'a',
      meaning: 'angle between a span and the line of centres',
    },
    towardX: {
      form: 'value',
      kind: 'number',
      symbol: 'u_x',
      meaning: 'direction from the sprocket to the axle, forward',
    },
    towardZ: { form: 'value', kind: 'number', symbol: 'u_z', meaning: 'direction from the sprocket to the axle, up' },
    gapTight: {
      form: 'value',
      kind: 'length',
      symbol: 'b_t',
      meaning: 'least distance of the tight span’s line from that of the arm',
    },
    gapSlack: { form: 'value', kind: 'length', symbol: 'b_s', meaning: 'the same for the slack span, drawn straight' },
  },
  results: [
    'heightTight',
    'heightSlack',
    'torqueChain',
    'thrust',
    'torqueThrust',
    'torque',
    'chainSense',
    'sense',
    'clearanceTight',
    'clearanceSlack',
  ],
  steps: [
    { key: 'radiusDriver', is: radiusTree('teethDriver'), says: 'The pins of the driver lie on this radius.' },
    { key: 'radiusDriven', is: radiusTree('teethDriven'), says: 'The pins of the driven sprocket lie on this radius.' },
    {
      key: 'centreDistance',
      is: fn('sqrt', add(pow(sub(axleX, sprocketX), 2), pow(sub(axleZ, sprocketZ), 2))),
      says: 'From the sprocket to the axle.',
    },
    { key: 'towardX', is: div(sub(axleX, sprocketX), 'centreDistance'), says: 'Part of it along the vehicle.' },
    { key: 'towardZ', is: div(sub(axleZ, sprocketZ), 'centreDistance'), says: 'Part of it upward.' },
    {
      key: 'tangentAngle',
      is: fn('asin', div(sub('radiusDriven', 'radiusDriver'), 'centreDistance')),
      says: 'Lean of a span against the line of centres.',
    },
    {
      key: 'heightTight',
      is: heightTree(sym('side')),
      says: 'The span touches both pitch circles; its line passes the pivot at this height.',
    },
    { key: 'heightSlack', is: heightTree(neg('side')), says: 'The other span likewise.' },
    {
      key: 'torqueChain',
      is: neg(mul(trail, bumpward, 'pull', 'heightTight')),
      says: 'The span draws the axle toward the sprocket, along a line this far from the pivot.',
    },
    {
      key: 'thrust',
      is: neg(mul('side', trail, div(mul('pull', 'radiusDriven'), 'tyreRadius'))),
      says: 'The wheel turns steadily: what the chain puts in, the tyre passes on; negative when it holds the vehicle back.',
    },
    {
      key: 'torqueThrust',
      is: mul(bumpward, sub(axleZ, 'tyreRadius'), 'thrust'),
      says: 'The ground pushes so far below the pivot.',
    },
    { key: 'torque', is: add('torqueChain', 'torqueThrust'), says: 'Both together.' },
    {
      key: 'clearanceTight',
      is: sub(sub('gapTight', 'armHalfHeight'), 'chainHalfHeight'),
      says: 'Between the lines, less half of each.',
    },
    {
      key: 'clearanceSlack',
      is: sub(sub(sub('gapSlack', 'armHalfHeight'), 'chainHalfHeight'), 'slackDeflection'),
      says: 'The slack span hangs or flaps as well.',
    },
  ],
  sources: [
    { title: 'Statics of arm, wheel and driven sprocket as one body, about the pivot', how: 'derived' },
    {
      title: 'The upper run over the pivot squats and the thrust of the tyre lifts, as motorcycle builders hold',
      how: 'common practice',
    },
  ],
  holds: [
    'The driven sprocket turns with the wheel, steadily; weight carried from one axle to the other is left out.',
    'The slack span pulls nothing.',
    'Room counts as if arm and chain lay in one plane; an arm beside the chain has its own room sideways.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pivot, sprocket, armLength, armAngle, pitch, pull } = input;
    refuseUpright('armAngle', Math.cos(armAngle), 'The arm');
    const driver: Flat = [sprocket[0] - pivot[0], sprocket[2] - pivot[2]];
    const axle: Flat = [-armLength * Math.cos(armAngle), armLength * Math.sin(armAngle)];
    const [dx, dz] = [axle[0] - driver[0], axle[1] - driver[1]];
    const centreDistance = Math.sqrt(dx ** 2 + dz ** 2);
    refuseOverlap(id, pitch, input.teethDriver, input.teethDriven, centreDistance, 'armLength');
    const [towardX, towardZ] = [dx / centreDistance, dz / centreDistance];
    refuseUpright('sprocket', towardX, 'The line of centres');
    const radiusDriver = pitchRadius(pitch, input.teethDriver);
    const radiusDriven = pitchRadius(pitch, input.teethDriven);
    const angle = tangentAngle(radiusDriver, radiusDriven, centreDistance);
    const side = input.tightSpan === 'upper' ? 1 : -1;
    const [trailing, bump] = [Math.sign(towardX), Math.sign(Math.cos(armAngle))];
    const span = (of: number) => {
      const square: Flat = [
        -of * trailing * towardZ * Math.cos(angle) - towardX * Math.sin(angle),
        of * trailing * towardX * Math.cos(angle) - towardZ * Math.sin(angle),
      ];
      const touch = (centre: Flat, radius: number): Flat => [
        centre[0] + radius * square[0],
        centre[1] + radius * square[1],
      ];
      return {
        height: of * (radiusDriver + square[0] * driver[0] + square[1] * driver[1]),
        gap: segmentGap([touch(driver, radiusDriver), touch(axle, radiusDriven)], [[0, 0], axle]),
      };
    };
    const [tight, slack] = [span(side), span(-side)];
    const torqueChain = -trailing * bump * pull * tight.height;
    const thrust = (-side * trailing * pull * radiusDriven) / input.tyreRadius;
    const torqueThrust = bump * (axle[1] - input.tyreRadius) * thrust;
    const torque = torqueChain + torqueThrust;
    const halves = input.armHalfHeight + input.chainHalfHeight;
    return {
      heightTight: tight.height,
      heightSlack: slack.height,
      torqueChain,
      thrust,
      torqueThrust,
      torque,
      chainSense: senseOf(torqueChain),
      sense: senseOf(torque),
      clearanceTight: tight.gap - halves,
      clearanceSlack: slack.gap - halves - input.slackDeflection,
      side,
      radiusDriver,
      radiusDriven,
      centreDistance,
      tangentAngle: angle,
      towardX,
      towardZ,
      gapTight: tight.gap,
      gapSlack: slack.gap,
    };
  },
});
