import { add, div, fn, mul, neg, num, pow, sub, sum } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.boltGroup';

const inputs = {
  x: { form: 'list', kind: 'length', symbol: 'x_k', meaning: 'places of the bolts, first axis', atLeast: 1 },
  y: { form: 'list', kind: 'length', symbol: 'y_k', meaning: 'places of the bolts, second axis', atLeast: 1 },
  forceX: { form: 'value', kind: 'force', symbol: 'F_x', meaning: 'force along the first axis' },
  forceY: { form: 'value', kind: 'force', symbol: 'F_y', meaning: 'force along the second axis' },
  atX: { form: 'value', kind: 'length', symbol: 'x_F', meaning: 'where the force acts, first axis' },
  atY: { form: 'value', kind: 'length', symbol: 'y_F', meaning: 'where the force acts, second axis' },
  torque: {
    form: 'value',
    kind: 'torque',
    symbol: 'T',
    meaning: 'torque besides, from first to second axis',
    default: 0,
  },
  diameter: { form: 'value', kind: 'length', symbol: 'd', meaning: 'diameter that is sheared', range: ABOVE_ZERO },
} as const satisfies Params;

/**
 * Shear on each bolt of a group of equal bolts under a force out of its centre and a torque: the force shared evenly, the torque by distance, both as arrows.
 *
 * Errors: lists of different length; a torque on bolts that all sit in one place.
 */
export const boltGroup = defineMethod({
  id,
  gives: 'Shear on the bolts of a group under a force out of centre',
  inputs,
  outputs: {
    greatest: { form: 'value', kind: 'force', symbol: 'V', meaning: 'greatest shear on one bolt' },
    stress: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'its shear stress' },
    worst: { form: 'integer', symbol: 'k', meaning: 'which bolt it is, first is 1' },
    alongX: { form: 'list', kind: 'force', symbol: 'V_xk', meaning: 'on each bolt along the first axis' },
    alongY: { form: 'list', kind: 'force', symbol: 'V_yk', meaning: 'on each bolt along the second axis' },
    bolts: { form: 'integer', symbol: 'n', meaning: 'bolts' },
    centreX: { form: 'value', kind: 'length', symbol: 'x_c', meaning: 'centre of the group, first axis' },
    centreY: { form: 'value', kind: 'length', symbol: 'y_c', meaning: 'centre of the group, second axis' },
    moment: { form: 'value', kind: 'torque', symbol: 'M', meaning: 'torque about the centre' },
    squares: { form: 'list', kind: 'area', symbol: 'r_k²', meaning: 'distances from the centre, squared' },
    dx: { form: 'value', kind: 'length', symbol: 'Δ_x', meaning: 'that bolt from the centre, first axis' },
    dy: { form: 'value', kind: 'length', symbol: 'Δ_y', meaning: 'that bolt from the centre, second axis' },
    perX: { form: 'value', kind: 'force', symbol: 'V_x', meaning: 'on that bolt, first axis' },
    perY: { form: 'value', kind: 'force', symbol: 'V_y', meaning: 'on that bolt, second axis' },
    turning: { form: 'value', kind: 'stiffness', symbol: 'q', meaning: 'torque over all distances squared' },
  },
  results: ['greatest', 'stress', 'worst', 'alongX', 'alongY'],
  steps: [
    { key: 'centreX', is: div(sum('x'), 'bolts'), says: 'Mean of the places.' },
    { key: 'centreY', is: div(sum('y'), 'bolts'), says: 'Mean of the places.' },
    {
      key: 'moment',
      is: add('torque', sub(mul('forceY', sub('atX', 'centreX')), mul('forceX', sub('atY', 'centreY')))),
      says: 'The force turns the group about its centre.',
    },
    { key: 'turning', is: div('moment', sum('squares')), says: 'Each bolt takes part by its distance.' },
    { key: 'perX', is: add(div('forceX', 'bolts'), neg(mul('turning', 'dy'))), says: 'Its share, and the turning.' },
    { key: 'perY', is: add(div('forceY', 'bolts'), mul('turning', 'dx')), says: 'Its share, and the turning.' },
    { key: 'greatest', is: fn('sqrt', add(pow('perX', 2), pow('perY', 2))), says: 'Both as arrows.' },
    {
      key: 'stress',
      is: div(mul(num(4), 'greatest'), mul(num(Math.PI, 'π'), pow('diameter', 2))),
      says: 'Over the section that is sheared.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 8-56, 8-57, example 8-7',
      how: 'read',
    },
  ],
  holds: ['Equal bolts; the plates are stiff against them, and friction between the plates is left out.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { x, y, forceX, forceY, atX, atY, torque, diameter } = input;
    const bolts = x.length;
    if (y.length !== bolts)
      throw new MethodError(
        id,
        'y',
        `${y.length} places read on the second axis for ${bolts} on the first; as many are accepted.`,
      );
    const centreX = x.reduce((total, one) => total + one, 0) / bolts;
    const centreY = y.reduce((total, one) => total + one, 0) / bolts;
    const moment = torque + forceY * (atX - centreX) - forceX * (atY - centreY);
    const squares = x.map((one, k) => (one - centreX) ** 2 + ((y[k] as number) - centreY) ** 2);
    const polar = squares.reduce((total, one) => total + one, 0);
    if (polar === 0 && moment !== 0)
      throw new MethodError(id, 'x', 'The bolts sit in one place and cannot take a torque.');
    const turning = moment === 0 ? 0 : moment / polar;
    const alongX = y.map((one) => forceX / bolts - turning * (one - centreY));
    const alongY = x.map((one) => forceY / bolts + turning * (one - centreX));
    const sizes = alongX.map((one, k) => Math.hypot(one, alongY[k] as number));
    const k = sizes.reduce((best, size, at) => (size > (sizes[best] as number) ? at : best), 0);
    const greatest = sizes[k] as number;
    return {
      greatest,
      stress: (4 * greatest) / (Math.PI * diameter ** 2),
      worst: k + 1,
      alongX,
      alongY,
      bolts,
      centreX,
      centreY,
      moment,
      squares,
      dx: (x[k] as number) - centreX,
      dy: (y[k] as number) - centreY,
      perX: alongX[k] as number,
      perY: alongY[k] as number,
      turning,
    };
  },
});
