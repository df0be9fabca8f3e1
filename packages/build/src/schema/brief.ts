import { z } from 'zod';
import { choiceField, integerField, keyField, namedMap, quantityField, textField } from './field.ts';
import { direction3, point3, seats } from './path.ts';

const ratioField = (name: string, example: string, more = {}) =>
  quantityField('ratio', { name, example, range: true, above: 0, max: 100, ...more });

const curve = z
  .strictObject({
    units: z.strictObject({
      speed: choiceField('Unit of the speeds', ['rpm', 'rad/s']),
      torque: choiceField('Unit of the torques', ['N.m', 'lbf.ft']),
    }),
    rows: z.array(z.tuple([z.number(), z.number()])).min(2),
  })
  .meta({ 'x-field': { name: 'Torque curve at full throttle' } });

const peaks = z
  .strictObject({
    torque: quantityField('torque', { name: 'Peak torque', example: '41 N.m', above: 0 }),
    torqueAt: quantityField('angularSpeed', { name: 'Speed at peak torque', example: '5200 rpm', above: 0 }),
    power: quantityField('power', { name: 'Peak power', example: '27 kW', above: 0 }),
    powerAt: quantityField('angularSpeed', { name: 'Speed at peak power', example: '7500 rpm', above: 0 }),
  })
  .meta({ 'x-field': { name: 'Peak power and peak torque' } });

const engine = z
  .strictObject({
    name: textField('Engine', '500 cc twin'),
    curve: curve.optional(),
    peaks: peaks.optional(),
    idle: quantityField('angularSpeed', {
      name: 'Idle speed',
      example: '1200 rpm',
      range: true,
      above: 0,
      blank: { row: 'brief-defaults/idle-speed' },
      recipe:
        'Warm the engine through, then read a tachometer clipped to a plug lead, or count sparks with a timing light.',
    }).optional(),
    redline: quantityField('angularSpeed', {
      name: 'Redline',
      example: '8000 rpm',
      range: true,
      above: 0,
      recipe: 'Take it from the maker’s plate or manual; without one, stop at the speed of peak power.',
    }).optional(),
    primary: ratioField('Primary ratio', '72:26', {
      blank: { row: 'brief-defaults/primary-ratio' },
      recipe:
        'Plugs out, top gear in. Turn the crank by hand and count its turns for ten turns of the output; divide by the top gear ratio.',
    }).optional(),
    gears: z
      .array(ratioField('Gear ratio', '2.62'))
      .min(1)
      .max(12)
      .meta({
        'x-field': {
          name: 'Gearbox ratios, first gear first',
          recipe:
            'Plugs out. In each gear, mark the crank and the output, and count crank turns for ten turns of the output.',
        },
      }),
    boxEfficiency: quantityField('fraction', {
      name: 'Efficiency, crank to output',
      example: '94 %',
      range: true,
      above: 0,
      max: 1,
      blank: { row: 'stage-efficiencies/gearbox' },
      recipe: 'It cannot be measured without a dynamometer: leave it blank and keep the published range.',
    }).optional(),
    output: z
      .strictObject({
        name: textField('Output', 'gearbox output'),
        origin: point3,
        direction: direction3,
        sense: choiceField('Sense about its direction when driving forward', ['positive', 'negative'], {
          recipe:
            'Select a forward gear, turn the engine the way it runs, and look along the direction: clockwise is positive.',
        }),
        madeFor: choiceField('Made for', ['side pull', 'torque only'], {
          recipe:
            'An output that carried a sprocket in its first life was made for side pull. One that drove a shaft through a joint was made for torque only.',
        }).optional(),
        seats,
      })
      .meta({ 'x-field': { name: 'Output shaft' } }),
  })
  .meta({ 'x-field': { name: 'Engine and gearbox' } });

const vehicle = z
  .strictObject({
    mass: quantityField('mass', {
      name: 'Mass, ready to drive, no load',
      example: '310 kg',
      range: true,
      above: 0,
      recipe: 'One axle at a time on bathroom scales under a plank, the others packed to the same height; add them up.',
    }),
    payload: quantityField('mass', {
      name: 'Rider and load',
      example: '240 kg',
      range: true,
      min: 0,
      blank: { row: 'brief-defaults/payload' },
      recipe: 'Weigh the rider and the heaviest load you mean to carry.',
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Vehicle' } });

const wheel = z
  .strictObject({
    tyre: textField('Tyre size as moulded on the wall', '110/85R36').optional(),
    construction: choiceField('Tyre construction', ['radial', 'cross-ply']).optional(),
    rollOut: quantityField('length', {
      name: 'Measured roll-out of one turn, loaded',
      example: '3.35 m',
      range: true,
      above: 0.1,
      max: 20,
      recipe: 'Load the wheel, chalk tyre and floor, roll ten turns straight ahead, measure, divide by ten.',
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Driven wheel' } });

const targets = z
  .strictObject({
    topSpeed: quantityField('speed', { name: 'Top speed wanted', example: '60 km/h', above: 0 }).optional(),
    cruiseSpeed: quantityField('speed', { name: 'Cruising speed', example: '40 km/h', above: 0 }).optional(),
    cruiseEngine: quantityField('angularSpeed', {
      name: 'Engine speed wanted when cruising in top gear',
      example: '4000..5500 rpm',
      range: true,
      above: 0,
    }).optional(),
    pull: quantityField('force', {
      name: 'Pull wanted at the wheel in first gear',
      example: '3 kN',
      above: 0,
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Targets' } });

const reference = z
  .strictObject({
    name: textField('Reference vehicle', 'the donor on its own wheel'),
    overall: z
      .array(ratioField('Overall ratio', '18.4'))
      .min(1)
      .max(12)
      .meta({ 'x-field': { name: 'Overall ratios, first gear first' } }),
    rollOut: quantityField('length', { name: 'Roll-out', example: '1.98 m', above: 0.1, max: 20 }),
    at: quantityField('speed', {
      name: 'Road speed to compare at',
      example: '40 km/h',
      above: 0,
      blank: { row: 'brief-defaults/compare-speed' },
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Reference vehicle' } });

const machine = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('lathe'),
    name: textField('Name', 'bench lathe'),
    swing: quantityField('length', { name: 'Swing over the bed', example: '330 mm', above: 0 }).optional(),
    centres: quantityField('length', { name: 'Between centres', example: '600 mm', above: 0 }).optional(),
  }),
  z.strictObject({
    kind: z.enum(['drill press', 'press', 'welder', 'laser cutting', 'waterjet cutting', 'mill', 'saw']),
    name: textField('Name', 'hydraulic press'),
  }),
]);

const shelfItem = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sprocket'),
    name: textField('Name', 'sprocket 17'),
    chain: keyField({ name: 'Chain size', table: 'chain-sizes', example: '12B' }),
    teeth: integerField({ name: 'Teeth', min: 6, max: 200 }),
    count: integerField({ name: 'How many', min: 0, max: 999 }),
  }),
  z.strictObject({
    kind: z.literal('chain'),
    name: textField('Name', 'box of chain'),
    chain: keyField({ name: 'Chain size', table: 'chain-sizes', example: '12B' }),
    links: integerField({ name: 'Links', min: 0, max: 9999 }),
  }),
  z.strictObject({
    kind: z.literal('bevel pair'),
    name: textField('Name', 'bevel pair 14 : 33'),
    teeth: z.tuple([z.number().int().min(5), z.number().int().min(5)]),
    count: integerField({ name: 'How many', min: 0, max: 999 }),
  }),
]);

const shop = z
  .strictObject({
    machines: namedMap('Machines and their limits', machine).optional(),
    stock: namedMap(
      'Stock',
      z.strictObject({
        name: textField('Name', 'bright bar 42CrMo4'),
        diameter: quantityField('length', { name: 'Diameter', example: '50 mm', above: 0 }),
        length: quantityField('length', { name: 'Length', example: '1.2 m', above: 0 }),
      }),
    ).optional(),
    shelf: namedMap('Shelf', shelfItem).optional(),
  })
  .meta({ 'x-field': { name: 'Shop' } });

const suspension = z
  .strictObject({
    pivot: point3,
    bump: quantityField('angle', {
      name: 'Bump, wheel up from where it is drawn',
      example: '8 deg',
      min: 0,
      max: 1,
      recipe:
        'Spring out, lift the wheel until it touches, and measure the rise of the axle; rise over arm length is the sine.',
    }),
    rebound: quantityField('angle', {
      name: 'Rebound, wheel down from where it is drawn',
      example: '5 deg',
      min: 0,
      max: 1,
      recipe: 'On the stand, measure how far the axle drops from its place with the rider on.',
    }),
  })
  .meta({ 'x-field': { name: 'Swinging arm' } });

export const brief = z
  .strictObject({
    engine,
    vehicle,
    wheel,
    suspension: suspension.optional(),
    targets: targets.optional(),
    reference: reference.optional(),
    shop: shop.optional(),
  })
  .meta({ 'x-field': { name: 'Brief' } });
