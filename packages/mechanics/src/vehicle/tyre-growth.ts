import { add, div, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.tyreGrowth';

const inputs = {
  rollOut: {
    form: 'value',
    kind: 'length',
    symbol: 'U_0',
    meaning: 'roll-out at the lowest speed of the table',
    range: ABOVE_ZERO,
  },
  speed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed', range: { min: 0 } },
  rowSpeeds: {
    form: 'list',
    kind: 'speed',
    symbol: 'v_k',
    meaning: 'speeds of the table, rising',
    range: { min: 0 },
    atLeast: 2,
  },
  rowGrowths: {
    form: 'list',
    kind: 'fraction',
    symbol: 'g_k',
    meaning: 'growth at each of them',
    range: { min: 0, max: 1 },
    atLeast: 2,
  },
} as const satisfies Params;

/**
 * Roll-out of a tyre grown by speed, straight between the rows of a table.
 *
 * Errors: lists of different length, speeds that do not rise, a speed outside the table: it is not extended.
 */
export const tyreGrowth = defineMethod({
  id,
  gives: 'Roll-out of a tyre at speed, from a table of its growth',
  inputs,
  outputs: {
    grownRollOut: { form: 'value', kind: 'length', symbol: 'U', meaning: 'roll-out at that speed' },
    growth: { form: 'value', kind: 'fraction', symbol: 'g', meaning: 'growth' },
    part: { form: 'value', kind: 'fraction', symbol: 'x', meaning: 'part of the way between the two rows' },
    lowerSpeed: { form: 'value', kind: 'speed', symbol: 'v_a', meaning: 'speed of the row below' },
    upperSpeed: { form: 'value', kind: 'speed', symbol: 'v_b', meaning: 'speed of the row above' },
    lowerGrowth: { form: 'value', kind: 'fraction', symbol: 'g_a', meaning: 'growth in the row below' },
    upperGrowth: { form: 'value', kind: 'fraction', symbol: 'g_b', meaning: 'growth in the row above' },
  },
  results: ['grownRollOut', 'growth'],
  steps: [
    {
      key: 'part',
      is: div(sub('speed', 'lowerSpeed'), sub('upperSpeed', 'lowerSpeed')),
      says: 'Where the speed lies between the two rows next to it.',
    },
    {
      key: 'growth',
      is: add('lowerGrowth', mul('part', sub('upperGrowth', 'lowerGrowth'))),
      says: 'Straight between the rows.',
    },
    { key: 'grownRollOut', is: mul('rollOut', add(1, 'growth')), says: 'The roll-out grows with the tyre.' },
  ],
  sources: [
    {
      title: 'The Automotive Chassis (Reimpell, Stoll, Betzler)',
      at: 'chapter 2, rolling circumference over speed',
      how: 'memory',
    },
  ],
  holds: ['Rated load and pressure. The published growth is that of radial car tyres; cross-ply tyres grow more.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { rollOut, speed, rowSpeeds, rowGrowths } = input;
    if (rowGrowths.length !== rowSpeeds.length)
      throw new MethodError(
        id,
        'rowGrowths',
        `Growth at each speed: ${rowGrowths.length} entries read; as many as speeds, ${rowSpeeds.length}, are accepted.`,
      );
    const falls = rowSpeeds.findIndex((row, k) => k > 0 && row <= (rowSpeeds[k - 1] as number));
    if (falls >= 0)
      throw new MethodError(
        id,
        'rowSpeeds',
        `Speeds of the table, entry ${falls + 1}: ${rowSpeeds[falls]} m/s is not above ${rowSpeeds[falls - 1]} m/s of the entry before.`,
      );
    const above = rowSpeeds.findIndex((row, k) => k > 0 && speed <= row);
    if (above < 0 || speed < (rowSpeeds[0] as number))
      throw new MethodError(
        id,
        'speed',
        `Road speed: ${speed} m/s lies outside the table, which runs from ${rowSpeeds[0]} to ${rowSpeeds.at(-1)} m/s.`,
      );
    const [lowerSpeed, upperSpeed] = [rowSpeeds[above - 1] as number, rowSpeeds[above] as number];
    const [lowerGrowth, upperGrowth] = [rowGrowths[above - 1] as number, rowGrowths[above] as number];
    const part = (speed - lowerSpeed) / (upperSpeed - lowerSpeed);
    const growth = lowerGrowth + part * (upperGrowth - lowerGrowth);
    return { grownRollOut: rollOut * (1 + growth), growth, part, lowerSpeed, upperSpeed, lowerGrowth, upperGrowth };
  },
});
