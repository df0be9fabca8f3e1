import { branch, choose, div, fn, mul, num, PI, pow, sub, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'belt.trapezoidalRating';

const inputs = {
  pitch: { form: 'value', kind: 'length', symbol: 'p', meaning: 'belt pitch', range: ABOVE_ZERO },
  teethSmall: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller pulley', range: { min: 8 } },
  teethLarge: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the larger pulley', range: { min: 8 } },
  centreDistance: { form: 'value', kind: 'length', symbol: 'a', meaning: 'centre distance', range: ABOVE_ZERO },
  speed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_1',
    meaning: 'speed of the smaller pulley',
    range: ABOVE_ZERO,
  },
  width: { form: 'value', kind: 'length', symbol: 'b', meaning: 'belt width', range: ABOVE_ZERO },
  baseWidth: {
    form: 'value',
    kind: 'length',
    symbol: 'b_0',
    meaning: 'width that the table stands for',
    range: ABOVE_ZERO,
  },
  basePull: { form: 'value', kind: 'force', symbol: 'T_a', meaning: 'pull allowed at that width', range: ABOVE_ZERO },
  baseMass: {
    form: 'value',
    kind: 'linearDensity',
    symbol: 'm',
    meaning: 'mass per length at that width',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Power that a toothed belt with trapezoidal teeth carries: shear of the teeth in mesh, less what its own turning takes.
 *
 * Errors: sizes not above zero, more teeth on the smaller pulley, fewer than two teeth in mesh.
 */
export const beltTrapezoidalRating = defineMethod({
  id,
  gives: 'Power that a toothed belt with trapezoidal teeth carries',
  inputs,
  outputs: {
    power: { form: 'value', kind: 'power', symbol: 'P', meaning: 'power before any service factor' },
    beltSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'speed of the belt' },
    meshed: { form: 'value', kind: 'number', symbol: 'z_m', meaning: 'whole teeth in mesh on the smaller pulley' },
    meshFactor: { form: 'value', kind: 'number', symbol: 'k_z', meaning: 'factor of the teeth in mesh' },
    widthFactor: { form: 'value', kind: 'number', symbol: 'k_w', meaning: 'factor of the width' },
  },
  results: ['power', 'beltSpeed', 'meshed', 'meshFactor', 'widthFactor'],
  steps: [
    {
      key: 'beltSpeed',
      is: div(mul('teethSmall', 'pitch', 'speed'), mul(2, PI)),
      says: 'Teeth times pitch each turn.',
    },
    {
      key: 'meshed',
      is: fn(
        'floor',
        sub(
          div('teethSmall', 2),
          div(mul('pitch', 'teethSmall', sub('teethLarge', 'teethSmall')), mul(2, pow(PI, 2), 'centreDistance')),
        ),
      ),
      says: 'Half of its teeth, less what the larger pulley pulls away.',
    },
    {
      key: 'meshFactor',
      is: choose([branch(when('meshed', '>=', 6), 1)], sub(1, mul(num(0.2), sub(6, 'meshed')))),
      says: 'Six teeth bear all that the belt can pull.',
    },
    { key: 'widthFactor', is: pow(div('width', 'baseWidth'), 1.14), says: 'Edges bear less.' },
    {
      key: 'power',
      is: mul(
        sub(
          mul('meshFactor', 'widthFactor', 'basePull'),
          mul(div('width', 'baseWidth'), 'baseMass', pow('beltSpeed', 2)),
        ),
        'beltSpeed',
      ),
      says: 'What is left after the belt’s own pull outward.',
    },
  ],
  sources: [
    { title: 'ISO 5295:2017', at: 'structure of the rating', how: 'read' },
    { title: 'GB/T 11362-2008', at: 'the same with its numbers', how: 'memory' },
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethSmall, teethLarge, centreDistance, speed, width, baseWidth, basePull, baseMass } = input;
    if (teethSmall > teethLarge)
      throw new MethodError(
        id,
        'teethSmall',
        `Teeth of the smaller pulley: ${teethSmall} is more than the ${teethLarge} of the larger; it must not be.`,
      );
    const beltSpeed = (teethSmall * pitch * speed) / (2 * Math.PI);
    const meshed = Math.floor(
      teethSmall / 2 - (pitch * teethSmall * (teethLarge - teethSmall)) / (2 * Math.PI ** 2 * centreDistance),
    );
    if (meshed < 2)
      throw new MethodError(
        id,
        'centreDistance',
        `Centre distance: at ${centreDistance} m only ${meshed} teeth mesh; at least 2 must.`,
      );
    const meshFactor = meshed >= 6 ? 1 : 1 - 0.2 * (6 - meshed);
    const widthFactor = (width / baseWidth) ** 1.14;
    const power = (meshFactor * widthFactor * basePull - (width / baseWidth) * baseMass * beltSpeed ** 2) * beltSpeed;
    return { power, beltSpeed, meshed, meshFactor, widthFactor };
  },
});
