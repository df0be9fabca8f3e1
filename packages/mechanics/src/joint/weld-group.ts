import { add, div, fn, mul, neg, num, pow, sub, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'joint.weldGroup';

const ends = (symbol: string, meaning: string) =>
  ({ form: 'list', kind: 'length', symbol, meaning, atLeast: 1 }) as const;
const force = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'force', symbol, meaning, default: 0 }) as const;
const length = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'length', symbol, meaning, default: 0 }) as const;

const inputs = {
  x1: ends('x_1k', 'beginnings of the welds, first axis'),
  y1: ends('y_1k', 'beginnings of the welds, second axis'),
  x2: ends('x_2k', 'ends of the welds, first axis'),
  y2: ends('y_2k', 'ends of the welds, second axis'),
  leg: { form: 'value', kind: 'length', symbol: 'h', meaning: 'leg of the fillet', range: ABOVE_ZERO },
  forceX: force('F_x', 'force along the first axis'),
  forceY: force('F_y', 'force along the second axis'),
  forceZ: force('F_z', 'force square to both'),
  atX: length('x_F', 'where the force acts, first axis'),
  atY: length('y_F', 'where the force acts, second axis'),
  atZ: length('z_F', 'where the force acts, out of the plane of the welds'),
} as const satisfies Params;

const THROAT = Math.SQRT1_2;

interface Line {
  readonly l: number;
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/**
 * Greatest stress in the throat of a group of straight fillet welds in one plane under a force anywhere: welds as lines, shares of force, torsion and bending
 * added as arrows at every end.
 *
 * Errors: lists of different length, a weld without length, a moment that the welds cannot take.
 */
export const weldGroup = defineMethod({
  id,
  gives: 'Greatest stress in a group of fillet welds under a force anywhere',
  inputs,
  outputs: {
    stress: { form: 'value', kind: 'pressure', symbol: 'τ', meaning: 'greatest stress in the throat' },
    direct: { form: 'value', kind: 'pressure', symbol: 'τ_F', meaning: 'stress by the force alone' },
    throat: { form: 'value', kind: 'length', symbol: 't', meaning: 'throat' },
    lengths: { form: 'list', kind: 'length', symbol: 'l_k', meaning: 'lengths of the welds' },
    area: { form: 'value', kind: 'area', symbol: 'A', meaning: 'throat area' },
    centreX: { form: 'value', kind: 'length', symbol: 'x_c', meaning: 'centre of the welds, first axis' },
    centreY: { form: 'value', kind: 'length', symbol: 'y_c', meaning: 'centre of the welds, second axis' },
    unitX: { form: 'value', kind: 'volume', symbol: 'I_x', meaning: 'second moment of the lines about the first axis' },
    unitY: { form: 'value', kind: 'volume', symbol: 'I_y', meaning: 'about the second axis' },
    unitXY: { form: 'value', kind: 'volume', symbol: 'I_xy', meaning: 'mixed moment' },
    tiltX: {
      form: 'value',
      kind: 'pressure',
      symbol: 'a',
      meaning: 'force per length square to the plane, per distance on the first axis',
    },
    tiltY: { form: 'value', kind: 'pressure', symbol: 'b', meaning: 'the same on the second axis' },
    polar: { form: 'value', kind: 'volume', symbol: 'J_u', meaning: 'polar second moment of the lines' },
    torsion: { form: 'value', kind: 'torque', symbol: 'M_z', meaning: 'torque in the plane' },
    momentX: { form: 'value', kind: 'torque', symbol: 'M_x', meaning: 'bending about the first axis' },
    momentY: { form: 'value', kind: 'torque', symbol: 'M_y', meaning: 'bending about the second axis' },
    rx: { form: 'value', kind: 'length', symbol: 'r_x', meaning: 'worst end from the centre, first axis' },
    ry: { form: 'value', kind: 'length', symbol: 'r_y', meaning: 'worst end from the centre, second axis' },
    stressX: { form: 'value', kind: 'pressure', symbol: 'τ_x', meaning: 'there along the first axis' },
    stressY: { form: 'value', kind: 'pressure', symbol: 'τ_y', meaning: 'there along the second axis' },
    stressZ: { form: 'value', kind: 'pressure', symbol: 'τ_w', meaning: 'there square to both' },
  },
  results: ['stress', 'direct'],
  steps: [
    { key: 'throat', is: mul(num(THROAT, '√½'), 'leg'), says: 'Least thickness of an even fillet.' },
    { key: 'area', is: mul('throat', sum('lengths')), says: 'All welds.' },
    {
      key: 'direct',
      is: div(fn('sqrt', add(pow('forceX', 2), pow('forceY', 2), pow('forceZ', 2))), 'area'),
      says: 'Force over area.',
    },
    { key: 'polar', is: add('unitX', 'unitY'), says: 'About the axis square to the plane.' },
    {
      key: 'torsion',
      is: sub(mul('forceY', sub('atX', 'centreX')), mul('forceX', sub('atY', 'centreY'))),
      says: 'Force times distance.',
    },
    {
      key: 'momentX',
      is: sub(mul('forceZ', sub('atY', 'centreY')), mul('forceY', 'atZ')),
      says: 'Force times distance.',
    },
    {
      key: 'momentY',
      is: sub(mul('forceX', 'atZ'), mul('forceZ', sub('atX', 'centreX'))),
      says: 'Force times distance.',
    },
    {
      key: 'stressX',
      is: sub(div('forceX', 'area'), div(mul('torsion', 'ry'), mul('polar', 'throat'))),
      says: 'Share of the force, and torsion.',
    },
    {
      key: 'stressY',
      is: add(div('forceY', 'area'), div(mul('torsion', 'rx'), mul('polar', 'throat'))),
      says: 'Share of the force, and torsion.',
    },
    {
      key: 'tiltY',
      left: sym('momentX'),
      right: add(mul('tiltX', 'unitXY'), mul('tiltY', 'unitX')),
      says: 'The welds balance the moment about the first axis.',
    },
    {
      key: 'tiltX',
      left: sym('momentY'),
      right: neg(add(mul('tiltX', 'unitY'), mul('tiltY', 'unitXY'))),
      says: 'And about the second.',
    },
    {
      key: 'stressZ',
      is: add(div('forceZ', 'area'), div(add(mul('tiltX', 'rx'), mul('tiltY', 'ry')), 'throat')),
      says: 'Share of the force, and bending.',
    },
    {
      key: 'stress',
      is: fn('sqrt', add(pow('stressX', 2), pow('stressY', 2), pow('stressZ', 2))),
      says: 'All as arrows at the worst end.',
    },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'sections 9-3, 9-4, tables 9-1, 9-2',
      how: 'read',
    },
  ],
  holds: ['The throat takes force, torsion and bending as shear, whichever way they point.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { x1, y1, x2, y2, leg, forceX, forceY, forceZ, atX, atY, atZ } = input;
    for (const [key, list] of [
      ['y1', y1],
      ['x2', x2],
      ['y2', y2],
    ] as const)
      if (list.length !== x1.length)
        throw new MethodError(id, key, `${list.length} places read for ${x1.length} welds; as many are accepted.`);
    const lines = x1.map((a, k): Line => {
      const [b, c, d] = [y1[k] as number, x2[k] as number, y2[k] as number];
      return { l: Math.hypot(c - a, d - b), x: (a + c) / 2, y: (b + d) / 2, dx: c - a, dy: d - b };
    });
    if (lines.some(({ l }) => !(l > 0))) throw new MethodError(id, 'x2', 'A weld begins and ends at one place.');
    const lengths = lines.map(({ l }) => l);
    const whole = lengths.reduce((total, l) => total + l, 0);
    const mean = (of: (line: Line) => number) => lines.reduce((total, line) => total + line.l * of(line), 0) / whole;
    const [centreX, centreY] = [mean(({ x }) => x), mean(({ y }) => y)];
    const second = (of: (line: Line) => number) => lines.reduce((total, line) => total + line.l * of(line), 0);
    const unitX = second(({ y, dy }) => dy ** 2 / 12 + (y - centreY) ** 2);
    const unitY = second(({ x, dx }) => dx ** 2 / 12 + (x - centreX) ** 2);
    const unitXY = second(({ x, y, dx, dy }) => (dx * dy) / 12 + (x - centreX) * (y - centreY));
    const polar = unitX + unitY;
    const throat = THROAT * leg;
    const area = throat * whole;
    const torsion = forceY * (atX - centreX) - forceX * (atY - centreY);
    const momentX = forceZ * (atY - centreY) - forceY * atZ;
    const momentY = forceX * atZ - forceZ * (atX - centreX);
    const [tiltX, tiltY] = tilts(unitX, unitY, unitXY, momentX, momentY);
    const stressAt = (px: number, py: number) => {
      const [rx, ry] = [px - centreX, py - centreY];
      const stressX = forceX / area - (torsion * ry) / (polar * throat);
      const stressY = forceY / area + (torsion * rx) / (polar * throat);
      const stressZ = forceZ / area + (tiltX * rx + tiltY * ry) / throat;
      return { rx, ry, stressX, stressY, stressZ, stress: Math.sqrt(stressX ** 2 + stressY ** 2 + stressZ ** 2) };
    };
    const all = x1.flatMap((a, k) => [stressAt(a, y1[k] as number), stressAt(x2[k] as number, y2[k] as number)]);
    const worst = all.reduce((best, one) => (one.stress > best.stress ? one : best));
    const direct = Math.sqrt(forceX ** 2 + forceY ** 2 + forceZ ** 2) / area;
    return {
      ...worst,
      direct,
      throat,
      lengths,
      area,
      centreX,
      centreY,
      unitX,
      unitY,
      unitXY,
      tiltX,
      tiltY,
      polar,
      torsion,
      momentX,
      momentY,
    };
  },
});

/** Force per length square to the plane grows by these with the distance along each axis, so that the welds balance the moments. */
function tilts(
  unitX: number,
  unitY: number,
  unitXY: number,
  momentX: number,
  momentY: number,
): readonly [number, number] {
  if (momentX === 0 && momentY === 0) return [0, 0];
  const whole = unitX * unitY - unitXY ** 2;
  const polar = unitX + unitY;
  if (whole > 1e-12 * polar ** 2)
    return [(-momentY * unitX - momentX * unitXY) / whole, (momentX * unitY + momentY * unitXY) / whole];
  // One straight line of weld bends only along itself.
  const ux = Math.sqrt(unitY / polar);
  const uy = (Math.sign(unitXY) || 1) * Math.sqrt(unitX / polar);
  if (Math.abs(momentX * ux + momentY * uy) > 1e-9 * Math.hypot(momentX, momentY))
    throw new MethodError(id, 'atZ', 'One straight weld cannot take a moment about its own line.');
  const slope = (momentX * uy - momentY * ux) / polar;
  return [slope * ux, slope * uy];
}
