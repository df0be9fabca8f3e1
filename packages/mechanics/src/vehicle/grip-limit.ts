import { add, branch, choose, div, fn, mul, sub, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { BALANCE_INPUTS, beyondAxles } from './balance.ts';

const id = 'vehicle.gripLimit';

const inputs = {
  ...BALANCE_INPUTS,
  drivenAxle: {
    form: 'choice',
    choices: ['rear', 'front'],
    symbol: 'q',
    meaning: 'axle of the driven wheel or wheels',
    default: 'rear',
  },
  share: {
    form: 'value',
    kind: 'fraction',
    symbol: 's',
    meaning:
      'part of that axle’s load on the wheels that pull: 1 for a single wheel, a pair or a locked axle, 0.5 for one wheel of a pair',
    range: { min: 0.01, max: 1 },
    default: 1,
  },
  friction: {
    form: 'value',
    kind: 'fraction',
    symbol: 'μ',
    meaning: 'friction between tyre and ground',
    range: ABOVE_ZERO,
  },
} as const satisfies Params;

/**
 * Greatest pull before the driven tyre slips or, with rear drive, the front lifts.
 *
 * Errors: mass, lengths or friction not above zero, centre of mass not between the axles, share outside 0.01..1.
 */
export const gripLimit = defineMethod({
  id,
  gives: 'Greatest pull that the driven tyres pass on, with the load that the pull itself moves',
  inputs,
  outputs: {
    force: { form: 'value', kind: 'force', symbol: 'F', meaning: 'greatest pull at the ground' },
    staticForce: {
      form: 'value',
      kind: 'force',
      symbol: 'F_s',
      meaning: 'the same with the load that stands there at rest',
    },
    slipForce: { form: 'value', kind: 'force', symbol: 'F_μ', meaning: 'pull at which the tyre slips' },
    liftForce: { form: 'value', kind: 'force', symbol: 'F_l', meaning: 'pull at which the front carries nothing' },
    drivenLoad: { form: 'value', kind: 'force', symbol: 'N', meaning: 'load on the driven axle at the greatest pull' },
    acceleration: {
      form: 'value',
      kind: 'acceleration',
      symbol: 'a',
      meaning: 'acceleration at the greatest pull, without rolling and air',
    },
    governs: { form: 'text', symbol: 'e', meaning: 'what comes first', example: 'grip' },
    normal: { form: 'value', kind: 'force', symbol: 'W_n', meaning: 'weight across the road' },
    restLoad: { form: 'value', kind: 'force', symbol: 'N_0', meaning: 'load on the driven axle without pull' },
    lever: {
      form: 'value',
      kind: 'ratio',
      symbol: 'k',
      meaning: 'load that a pull brings to the driven axle, over the pull: below zero where it takes load away',
    },
    side: { form: 'integer', symbol: 'j', meaning: '1 for rear drive, −1 for front drive' },
  },
  results: ['force', 'staticForce', 'slipForce', 'liftForce', 'drivenLoad', 'acceleration', 'governs'],
  steps: [
    {
      key: 'normal',
      is: mul('mass', 'gravity', fn('cos', 'slope')),
      says: 'Only this part of the weight presses on the road.',
    },
    {
      key: 'restLoad',
      is: choose(
        [branch(when('side', '>', 0), div(mul('normal', sub('wheelbase', 'aheadOfRear')), 'wheelbase'))],
        div(mul('normal', 'aheadOfRear'), 'wheelbase'),
      ),
      says: 'Balance of moments without pull: the rear axle carries more the further back the mass sits.',
    },
    {
      key: 'lever',
      is: div(mul('side', 'height'), 'wheelbase'),
      says: 'The pull at the ground and the inertia at the height of the mass form a couple that loads the rear axle.',
    },
    { key: 'staticForce', is: mul('friction', 'share', 'restLoad'), says: 'Friction times load, the couple left out.' },
    {
      key: 'liftForce',
      is: div(mul('normal', 'aheadOfRear'), 'height'),
      says: 'Balance of moments about the rear contact with no load in front.',
    },
    {
      key: 'slipForce',
      is: choose(
        [
          branch(
            when(sub(1, mul('friction', 'share', 'lever')), '>', 0),
            div('staticForce', sub(1, mul('friction', 'share', 'lever'))),
          ),
        ],
        'liftForce',
      ),
      says: 'Friction times load with the couple. Where that has no end the front lifts first.',
    },
    {
      key: 'force',
      is: choose([branch(when('side', '>', 0), fn('min', 'slipForce', 'liftForce'))], 'slipForce'),
      says: 'What comes first. Front drive does not lift the front.',
    },
    {
      key: 'drivenLoad',
      is: add('restLoad', mul('lever', 'force')),
      says: 'Load at rest and what the pull brings or takes.',
    },
    {
      key: 'acceleration',
      is: sub(div('force', 'mass'), mul('gravity', fn('sin', 'slope'))),
      says: 'What the slope leaves.',
    },
  ],
  sources: [
    {
      title: 'Fundamentals of Vehicle Dynamics (T. D. Gillespie)',
      at: 'chapter 2, traction-limited acceleration',
      how: 'memory',
    },
    { title: 'Motorcycle Dynamics (V. Cossalter)', at: 'chapter 3, limits of slip and of wheelie', how: 'memory' },
  ],
  holds: [
    'Rigid vehicle, suspension settled, drag at the height of the mass. Rolling of the other wheels is left out.',
    'One wheel of a pair carries half of its axle’s load; a torque about the vehicle’s length, a turn or a side slope changes that.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, wheelbase, aheadOfRear, height, slope, gravity, drivenAxle, share, friction } = input;
    const problem = beyondAxles(aheadOfRear, wheelbase);
    if (problem !== undefined) throw new MethodError(id, 'aheadOfRear', problem);
    const rear = drivenAxle === 'rear';
    const normal = mass * gravity * Math.cos(slope);
    const restLoad = (normal * (rear ? wheelbase - aheadOfRear : aheadOfRear)) / wheelbase;
    const side = rear ? 1 : -1;
    const lever = (side * height) / wheelbase;
    const staticForce = friction * share * restLoad;
    const liftForce = (normal * aheadOfRear) / height;
    const rest = 1 - friction * share * lever;
    const slipForce = rest > 0 ? staticForce / rest : liftForce;
    const lifts = rear && (rest <= 0 || liftForce < slipForce);
    const force = lifts ? liftForce : slipForce;
    return {
      force,
      staticForce,
      slipForce,
      liftForce,
      drivenLoad: restLoad + lever * force,
      acceleration: force / mass - gravity * Math.sin(slope),
      governs: lifts ? 'front lift' : 'grip',
      normal,
      restLoad,
      lever,
      side,
    };
  },
});
