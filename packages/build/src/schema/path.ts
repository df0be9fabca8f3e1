import { z } from 'zod';
import { belt } from './belt.ts';
import { choiceField, IN_REACH, integerField, keyField, namedMap, quantityField, textField } from './field.ts';
import { bevelMounting, gearFacts } from './gears.ts';
import { guard } from './guard.ts';
import { hub, LOCKINGS } from './hub.ts';
import { join } from './join.ts';
import { plate, seating } from './plate.ts';
import { efficiency, ends, teeth } from './stage-parts.ts';

const coordinate = (axis: string) => quantityField('length', { name: axis, example: '440 mm', ...IN_REACH });

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

const station = quantityField('length', { name: 'Station along the shaft', example: '58 mm', ...IN_REACH });
const seatBase = {
  name: textField('Seat', 'sprocket 17'),
  station,
  diameter: quantityField('length', { name: 'Diameter of the seat', example: '30 mm', above: 0 }).optional(),
  width: quantityField('length', { name: 'Width of the part', example: '18 mm', above: 0 }).optional(),
};

const HOLDS_ON_SHAFT = [
  'shoulder',
  'retaining ring',
  'nut',
  'sleeve',
  'setscrews',
  'press fit',
  'weld',
  'nothing',
] as const;
const HOLDS_IN_PLATE = ['shoulder', 'retaining ring', 'cover', 'press fit', 'nothing'] as const;

/** What stops a part from sliding on its shaft, each way along the shaft's direction. */
const heldOnShaft = z
  .strictObject({
    towardStart: choiceField('Stopped toward the start of the shaft by', HOLDS_ON_SHAFT).optional(),
    towardEnd: choiceField('Stopped toward the end of the shaft by', HOLDS_ON_SHAFT).optional(),
  })
  .meta({ 'x-field': { name: 'Held on the shaft' } });

const heldGear = heldOnShaft
  .extend({ locking: choiceField('Its nut or screws are locked by', LOCKINGS).optional() })
  .meta({ 'x-field': { name: 'Held on the shaft' } });

const torqueSeat = { ...seatBase, hub: hub.optional() };

const heldInPlate = z
  .strictObject({
    towardStart: choiceField('Outer ring stopped toward the start of the shaft by', HOLDS_IN_PLATE).optional(),
    towardEnd: choiceField('Outer ring stopped toward the end of the shaft by', HOLDS_IN_PLATE).optional(),
  })
  .meta({ 'x-field': { name: 'Held in its plate' } });

const seat = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sprocket'), ...torqueSeat }),
  z.strictObject({ kind: z.literal('pulley'), ...torqueSeat }),
  z.strictObject({ kind: z.literal('gear'), ...torqueSeat, held: heldGear.optional() }),
  z.strictObject({ kind: z.literal('joint'), ...torqueSeat }),
  z.strictObject({ kind: z.literal('wheel'), ...torqueSeat }),
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
    row: keyField({ name: 'Bearing by its number', table: 'bearings', example: '6207' }).optional(),
    ratings: z
      .strictObject({
        dynamic: quantityField('force', { name: 'Dynamic load rating', example: '27 kN', above: 0 }),
        static: quantityField('force', { name: 'Static load rating', example: '15.3 kN', above: 0 }),
      })
      .meta({ 'x-field': { name: 'Ratings of its maker' } })
      .optional(),
    clearance: choiceField('Clearance inside', ['normal', 'C3', 'C4']).optional(),
    seal: choiceField('Seal', ['open', 'shields', 'rubbing seals'], {
      recipe: 'Rubber lips on both sides are rubbing seals; sheet metal that does not touch is a shield.',
    }).optional(),
    stiffness: quantityField('stiffness', {
      name: 'Stiffness across the shaft',
      example: '80 kN/mm',
      range: true,
      above: 0,
      blank: { row: 'brief-defaults/bearing-stiffness' },
      recipe:
        'Pull the shaft at the bearing with a spring balance and read a dial gauge beside it: pull over movement.',
    }).optional(),
    plate: keyField({ name: 'Sits in', refersTo: '/path/plates', example: 'plate-left' }).optional(),
    held: heldOnShaft.optional(),
    ring: heldInPlate.optional(),
    seating: seating.optional(),
  }),
]);

/** Where parts sit on a shaft, by permanent id. */
export const seats = namedMap('Seats', seat);

const piece = z.strictObject({
  from: quantityField('length', { name: 'From station', example: '0 mm', ...IN_REACH }),
  to: quantityField('length', { name: 'To station', example: '85 mm', ...IN_REACH }),
  diameter: quantityField('length', { name: 'Diameter', example: '30 mm', above: 0 }),
  bore: quantityField('length', { name: 'Bore through it', example: '10 mm', above: 0 }).optional(),
});

const notch = z.strictObject({
  name: textField('Notch', 'shoulder behind the bearing'),
  kind: choiceField('Kind', [
    'shoulder',
    'ring groove',
    'keyway, end milled',
    'keyway, disc milled',
    'press fit',
    'cross hole',
    'spline',
    'thread',
    'weld toe',
  ]),
  station,
  radius: quantityField('length', {
    name: 'Radius at its root',
    example: '1 mm',
    range: true,
    above: 0,
    recipe: 'Lay a radius gauge in the corner; a sharp tool leaves about 0.2 mm.',
  }).optional(),
});

export const shaftStrength = {
  material: keyField({ name: 'Steel', table: 'shaft-steels', example: '1045-hot-rolled' }).optional(),
  surface: choiceField('Surface', ['ground', 'machined or cold drawn', 'hot rolled', 'as forged']).optional(),
  pieces: z
    .array(piece)
    .min(1)
    .meta({ 'x-field': { name: 'Diameters along the shaft' } })
    .optional(),
  notches: namedMap('Notches', notch).optional(),
  joins: namedMap('Joints that build it up', join).optional(),
} as const;

const shaft = z
  .strictObject({
    name: textField('Shaft', 'Shaft A'),
    origin: point3,
    direction: direction3,
    stock: keyField({ name: 'Turned from', refersTo: '/brief/shop/stock', example: 'bright-bar-50' }).optional(),
    ...shaftStrength,
    seats,
  })
  .meta({ 'x-field': { name: 'Shaft' } });

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
  stretch: quantityField('fraction', {
    name: 'Stretch under a tenth of its breaking load',
    example: '0.1..0.2 %',
    range: true,
    above: 0,
    max: 0.05,
    blank: { row: 'brief-defaults/chain-stretch' },
    recipe: 'Hang a metre of it up, hang a known weight on it, and read the stretch with a dial gauge.',
  }).optional(),
  strength: quantityField('force', {
    name: 'Least tensile strength, as printed on its box',
    example: '30 kN',
    above: 0,
    recipe: 'Read the average or least strength of one strand on the box or sheet of its maker; take the least.',
  }).optional(),
  oiled: choiceField('Oiled by', [
    'oil bath or stream',
    'drip or brush',
    'dirty or seldom',
    'dry',
    'sealed rings',
  ]).optional(),
  breaks: choiceField('A broken end would hit', [
    'its guard',
    'nothing in reach',
    'brake line',
    'fuel line or tank',
    'rider or passenger',
    'frame or engine case',
  ]).optional(),
  guard: guard.optional(),
  ...efficiency('chain'),
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
  backlash: quantityField('length', {
    name: 'Backlash at the rim of the larger gear',
    example: '0.2 mm',
    range: true,
    min: 0,
    recipe: 'Hold the pinion, set a dial gauge square to a tooth of the gear, and rock the gear.',
  }).optional(),
  guard: guard.optional(),
  ...gearFacts,
  ...bevelMounting,
  ...efficiency('bevel'),
});

const spur = z.strictObject({
  kind: z.literal('spur'),
  ...ends,
  teeth: teeth(5),
  ...gearSize,
  guard: guard.optional(),
  ...gearFacts,
  ...efficiency('spur'),
});

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
    plates: namedMap('Plates', plate).optional(),
    adjusters: namedMap('Adjusters', adjuster).optional(),
    cush: z
      .strictObject({
        at: keyField({ name: 'Sits at', seat: true, example: 'axle-c/sprocket' }),
        stiffness: quantityField('turningStiffness', {
          name: 'Stiffness against turning',
          example: '2000..4000 N.m/rad',
          range: true,
          above: 0,
          recipe:
            'Hold one side, hang a weight on a bar at the other, and read the angle: weight times arm over angle.',
        }).optional(),
        lash: quantityField('angle', { name: 'Play in it', example: '2 deg', min: 0, max: 1 }).optional(),
      })
      .meta({ 'x-field': { name: 'Cush or damper' } })
      .optional(),
  })
  .meta({ 'x-field': { name: 'Path of power' } });

export type StageFile = z.infer<typeof stage>;
export type ShaftFile = z.infer<typeof shaft>;
export type SeatFile = z.infer<typeof seat>;
