import { z } from 'zod';
import { choiceField, integerField, keyField, namedMap, quantityField, textField } from './field.ts';

const coordinate = (axis: string) => quantityField('length', { name: axis, example: '440 mm' });

/** A point in vehicle axes: x forward, y left, z up, from the driven wheel's centre (ISO 8855:2011). */
export const point3 = z
  .strictObject({ x: coordinate('Forward, x'), y: coordinate('Left, y'), z: coordinate('Up, z') })
  .meta({ 'x-field': { name: 'Origin' } });

/** As above, with a name of its own for where it stands. */
export const namedPoint = (name: string) => point3.meta({ 'x-field': { name } });

/** A direction in vehicle axes; its length does not matter. */
export const direction3 = z
  .tuple([z.number(), z.number(), z.number()])
  .meta({ 'x-field': { name: 'Direction, forward left up', example: '0 1 0' } });

const station = quantityField('length', { name: 'Station along the shaft', example: '58 mm' });
const seatBase = {
  name: textField('Seat', 'sprocket 17'),
  station,
  diameter: quantityField('length', { name: 'Diameter of the seat', example: '30 mm', above: 0 }).optional(),
  width: quantityField('length', { name: 'Width of the part', example: '18 mm', above: 0 }).optional(),
};

const seat = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sprocket'), ...seatBase }),
  z.strictObject({ kind: z.literal('pulley'), ...seatBase }),
  z.strictObject({ kind: z.literal('gear'), ...seatBase }),
  z.strictObject({ kind: z.literal('joint'), ...seatBase }),
  z.strictObject({ kind: z.literal('wheel'), ...seatBase }),
  z.strictObject({
    kind: z.literal('bearing'),
    ...seatBase,
    body: choiceField('Carried by', ['engine', 'subframe', 'vehicle frame', 'swinging arm']),
    outside: quantityField('length', {
      name: 'Outside diameter of the bearing',
      example: '62 mm',
      above: 0,
    }).optional(),
    opening: quantityField('length', {
      name: 'Hole in its plate, bearing out',
      example: '62 mm',
      above: 0,
    }).optional(),
  }),
]);

/** Where parts sit on a shaft, by permanent id. */
export const seats = namedMap('Seats', seat);

const shaft = z
  .strictObject({
    name: textField('Shaft', 'Shaft A'),
    origin: point3,
    direction: direction3,
    stock: keyField({ name: 'Turned from', refersTo: '/brief/shop/stock', example: 'bright-bar-50' }).optional(),
    seats,
  })
  .meta({ 'x-field': { name: 'Shaft' } });

const ends = {
  name: textField('Stage', 'Chain 1'),
  from: keyField({ name: 'Driver sits on', seat: true, example: 'output/sprocket' }),
  to: keyField({ name: 'Driven sits on', seat: true, example: 'shaft-a/sprocket' }),
};

const efficiency = (row: string) => ({
  efficiency: quantityField('fraction', {
    name: 'Efficiency',
    example: '98 %',
    range: true,
    above: 0,
    max: 1,
    blank: { row: `stage-efficiencies/${row}` },
    recipe: 'It cannot be measured without a dynamometer: leave it blank and keep the published range.',
  }).optional(),
});

const teeth = (least: number) =>
  z
    .strictObject({
      driver: integerField({ name: 'Driver teeth', min: least, max: 300 }),
      driven: integerField({ name: 'Driven teeth', min: least, max: 300 }),
    })
    .meta({ 'x-field': { name: 'Teeth' } });

const chain = z.strictObject({
  kind: z.literal('chain'),
  ...ends,
  chain: keyField({ name: 'Chain size', table: 'chain-sizes', example: '12B' }),
  strands: integerField({ name: 'Strands', min: 1, max: 3, blank: { row: 'brief-defaults/strands' } }).optional(),
  teeth: teeth(6),
  links: integerField({ name: 'Links', min: 10, max: 2000 }).optional(),
  tensioner: choiceField('Tensioner', ['none', 'slack side']).optional(),
  joint: choiceField('Closed by', ['joining link', 'riveted link', 'endless']).optional(),
  idler: z
    .strictObject({
      at: namedPoint('Centre'),
      teeth: integerField({ name: 'Teeth', min: 6, max: 60 }),
      span: choiceField('Sits on', ['slack span', 'tight span']),
      runs: choiceField('Runs', ['inside the chain', 'outside the chain']),
      hold: choiceField('Held', ['fixed', 'sprung']),
    })
    .meta({ 'x-field': { name: 'Idler' } })
    .optional(),
  largest: z
    .strictObject({
      driver: integerField({ name: 'Largest driver, teeth', min: 6, max: 300 }).optional(),
      driven: integerField({ name: 'Largest driven, teeth', min: 6, max: 300 }).optional(),
    })
    .meta({ 'x-field': { name: 'Largest sprockets that shall go on' } })
    .optional(),
  ...efficiency('chain'),
});

const belt = z.strictObject({
  kind: z.literal('belt'),
  ...ends,
  pitch: quantityField('length', { name: 'Belt pitch', example: '8 mm', above: 0 }),
  teeth: teeth(8),
  length: integerField({ name: 'Belt teeth', min: 20, max: 2000 }).optional(),
  ...efficiency('belt'),
});

const gearSize = {
  module: quantityField('length', {
    name: 'Module at the large end',
    example: '4 mm',
    range: true,
    above: 0,
    recipe: 'Count the teeth, measure the outside diameters of both gears, and work back from them.',
  }).optional(),
  faceWidth: quantityField('length', { name: 'Face width', example: '26 mm', range: true, above: 0 }).optional(),
};

const bevel = z.strictObject({
  kind: z.literal('bevel'),
  ...ends,
  teeth: teeth(5),
  ...gearSize,
  spiral: quantityField('angle', {
    name: 'Mean spiral angle',
    example: '35 deg',
    range: true,
    above: 0,
    max: 1,
  }).optional(),
  hand: choiceField('Hand of the driver’s spiral', ['left', 'right']).optional(),
  ...efficiency('bevel'),
});

const spur = z.strictObject({ kind: z.literal('spur'), ...ends, teeth: teeth(5), ...gearSize, ...efficiency('spur') });

const coupling = z.strictObject({
  kind: z.literal('coupling'),
  ...ends,
  joint: choiceField('Joint', ['rigid', 'elastic', 'universal joint', 'two universal joints']),
  takes: z
    .strictObject({
      angle: quantityField('angle', { name: 'Angle it takes', example: '3 deg', min: 0, max: 1 }).optional(),
      offset: quantityField('length', { name: 'Parallel offset it takes', example: '0.5 mm', min: 0 }).optional(),
      axial: quantityField('length', { name: 'Axial movement it takes', example: '2 mm', min: 0 }).optional(),
    })
    .meta({ 'x-field': { name: 'What it takes up' } })
    .optional(),
  ...efficiency('coupling'),
});

const unit = z.strictObject({
  kind: z.literal('unit'),
  ...ends,
  ratio: quantityField('ratio', { name: 'Ratio on its plate', example: '3.18', range: true, above: 0, max: 1000 }),
  sense: choiceField('Output turns', ['positive', 'negative'], {
    recipe:
      'Turn the input positive about its shaft direction and look along the output’s direction: clockwise is positive.',
  }),
  rating: z
    .strictObject({
      torque: quantityField('torque', { name: 'Output torque on its plate', example: '850 N.m', above: 0 }).optional(),
      inputSpeed: quantityField('angularSpeed', {
        name: 'Input speed on its plate',
        example: '3000 rpm',
        above: 0,
      }).optional(),
    })
    .meta({ 'x-field': { name: 'Rating on its plate' } })
    .optional(),
  ...efficiency('unit'),
});

const stage = z.discriminatedUnion('kind', [chain, belt, bevel, spur, coupling, unit]);

const adjuster = z.strictObject({
  name: textField('Adjuster', 'axle slot'),
  sets: choiceField('Sets', ['slack', 'gear position', 'sprocket line']),
  /** Stage whose slack it sets, or seat whose place it sets. */
  of: keyField({ name: 'Of', example: 'chain-2' }),
  moves: keyField({ name: 'By moving', example: 'axle-c' }),
  along: direction3,
  travel: quantityField('length', { name: 'Travel from where it is drawn, each way', example: '12 mm', min: 0 }),
});

export const path = z
  .strictObject({
    shafts: namedMap('Shafts', shaft),
    stages: namedMap('Stages', stage),
    adjusters: namedMap('Adjusters', adjuster).optional(),
  })
  .meta({ 'x-field': { name: 'Path of power' } });

export type StageFile = z.infer<typeof stage>;
export type ShaftFile = z.infer<typeof shaft>;
export type SeatFile = z.infer<typeof seat>;
