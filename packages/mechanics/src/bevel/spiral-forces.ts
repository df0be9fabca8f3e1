import { add, div, type Expr, fn, mul, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'bevel.spiralForces';

const PITCH_ANGLE_RANGE = { min: 0, max: Math.PI / 2 + 1e-9 } as const;

const inputs = {
  torqueDriver: { form: 'value', kind: 'torque', symbol: 'T_1', meaning: 'torque on the driver', range: { min: 0 } },
  meanDiameterDriver: {
    form: 'value',
    kind: 'length',
    symbol: 'd_m1',
    meaning: 'mean diameter of the driver',
    range: ABOVE_ZERO,
  },
  pitchAngleDriver: {
    form: 'value',
    kind: 'angle',
    symbol: 'δ_1',
    meaning: 'pitch angle of the driver',
    range: PITCH_ANGLE_RANGE,
  },
  pitchAngleDriven: {
    form: 'value',
    kind: 'angle',
    symbol: 'δ_2',
    meaning: 'pitch angle of the driven gear',
    range: PITCH_ANGLE_RANGE,
  },
  pressureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α_n',
    meaning: 'pressure angle, square to the tooth',
    range: { min: 0, max: Math.PI / 4 },
    default: Math.PI / 9,
  },
  spiralAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'ψ',
    meaning: 'spiral angle at the middle of the face',
    range: { min: 0, max: Math.PI / 3 },
  },
  hand: {
    form: 'choice',
    symbol: 'w_h',
    meaning: 'hand of the driver’s spiral: right when the outer half of a tooth leans clockwise, seen from the apex',
    choices: ['right', 'left'],
  },
  turning: {
    form: 'choice',
    symbol: 'w_t',
    meaning: 'turning of the driver, seen from its back, the large end',
    choices: ['clockwise', 'counter-clockwise'],
  },
  flow: {
    form: 'choice',
    symbol: 'w_f',
    meaning: 'drive when the driver pushes; coast when it is pushed, as in engine braking, still turning the same way',
    choices: ['drive', 'coast'],
    default: 'drive',
  },
} as const satisfies Params;

const wedge = fn('tan', 'pressureAngle');
const lean = mul('sense', fn('sin', 'spiralAngle'));
const axialTree = (angle: string, of: 1 | -1): Expr => {
  const [apart, along] = [mul(wedge, fn('sin', angle)), mul(lean, fn('cos', angle))];
  return mul('normalTangential', of === 1 ? add(apart, along) : sub(apart, along));
};
const radialTree = (angle: string, of: 1 | -1): Expr => {
  const [apart, along] = [mul(wedge, fn('cos', angle)), mul(lean, fn('sin', angle))];
  return mul('normalTangential', of === 1 ? sub(apart, along) : add(apart, along));
};

/**
 * Tooth forces of a pair of spiral bevel gears, at the mean cone, for either hand, either turning, driving or coasting.
 *
 * The mate has the other hand. Coasting loads the other flank, which turns the axial part of the spiral round: bearings need both.
 *
 * Errors: torque below zero, mean diameter not above zero, pitch angles outside 0..90 degrees, pressure angle outside 0..45 degrees, spiral angle
 * outside 0..60 degrees, a word that is not among the choices.
 */
export const bevelSpiralForces = defineMethod({
  id,
  gives:
    'Tangential, axial and radial tooth forces on both gears of a spiral bevel pair, by hand, turning, and drive or coast',
  inputs,
  outputs: {
    tangential: {
      form: 'value',
      kind: 'force',
      symbol: 'W_t',
      meaning: 'tangential force, equal and opposite on both gears',
    },
    axialDriver: {
      form: 'value',
      kind: 'force',
      symbol: 'W_a1',
      meaning: 'axial force on the driver, away from the apex; negative draws it into mesh',
    },
    radialDriver: {
      form: 'value',
      kind: 'force',
      symbol: 'W_r1',
      meaning: 'radial force on the driver, toward its axis',
    },
    axialDriven: {
      form: 'value',
      kind: 'force',
      symbol: 'W_a2',
      meaning: 'axial force on the driven gear, away from the apex; negative draws it into mesh',
    },
    radialDriven: {
      form: 'value',
      kind: 'force',
      symbol: 'W_r2',
      meaning: 'radial force on the driven gear, toward its axis',
    },
    sense: {
      form: 'integer',
      symbol: 's',
      meaning: '1 when the spiral pushes the driver away from the apex, −1 when it draws it in',
    },
    normalTangential: {
      form: 'value',
      kind: 'force',
      symbol: 'W_n',
      meaning: 'part of the tooth force in the pitch plane, square to the tooth',
    },
  },
  results: ['tangential', 'axialDriver', 'radialDriver', 'axialDriven', 'radialDriven', 'sense'],
  steps: [
    {
      key: 'tangential',
      is: div(mul(2, 'torqueDriver'), 'meanDiameterDriver'),
      says: 'The torque acts at the middle of the face.',
    },
    {
      key: 'normalTangential',
      is: div('tangential', fn('cos', 'spiralAngle')),
      says: 'The tooth runs aslant and can only be pushed square to itself.',
    },
    { key: 'axialDriver', is: axialTree('pitchAngleDriver', 1), says: 'Wedge of the flanks and lean of the spiral.' },
    { key: 'radialDriver', is: radialTree('pitchAngleDriver', 1), says: 'The same, square to the axis.' },
    { key: 'axialDriven', is: axialTree('pitchAngleDriven', -1), says: 'On the mate the spiral pushes the other way.' },
    { key: 'radialDriven', is: radialTree('pitchAngleDriven', -1), says: 'The same, square to its axis.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'sections 13-15 and 15-1, spiral bevel gears',
      how: 'memory',
    },
    { title: 'Force square to a slanting tooth on the pitch cone, in vectors, for all four cases', how: 'derived' },
  ],
  holds: ['Friction is left out; the force acts at the middle of the face; the mate has the other hand.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitchAngleDriver, pitchAngleDriven, pressureAngle, spiralAngle } = input;
    const outward = (input.hand === 'left') === (input.turning === 'clockwise');
    const sense = outward === (input.flow === 'drive') ? 1 : -1;
    const tangential = (2 * input.torqueDriver) / input.meanDiameterDriver;
    const normalTangential = tangential / Math.cos(spiralAngle);
    const apart = normalTangential * Math.tan(pressureAngle);
    const along = normalTangential * sense * Math.sin(spiralAngle);
    return {
      tangential,
      axialDriver: apart * Math.sin(pitchAngleDriver) + along * Math.cos(pitchAngleDriver),
      radialDriver: apart * Math.cos(pitchAngleDriver) - along * Math.sin(pitchAngleDriver),
      axialDriven: apart * Math.sin(pitchAngleDriven) - along * Math.cos(pitchAngleDriven),
      radialDriven: apart * Math.cos(pitchAngleDriven) + along * Math.sin(pitchAngleDriven),
      sense,
      normalTangential,
    };
  },
});
