import { z } from 'zod';
import { choiceField, namedMap, quantityField, textField } from './field.ts';
import { direction3, namedPoint, point3, seats } from './path.ts';
import { shop } from './shop.ts';

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
    launch: quantityField('angularSpeed', {
      name: 'Engine speed held while the clutch slips in a start',
      example: '3000 rpm',
      range: true,
      above: 0,
      recipe: 'Start off as you will with a load and read the tachometer while the clutch still slips.',
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
    contact: choiceField('Wheels on the ground', [
      'two, rear driven',
      'three, single rear driven',
      'three, pair of rears driven',
      'four, rears driven',
      'front driven',
    ]).optional(),
    wheelbase: quantityField('length', {
      name: 'Wheelbase',
      example: '1.65 m',
      range: true,
      above: 0,
      max: 10,
      recipe: 'Wheels straight ahead, drop a plumb line from each axle to the floor and measure between the marks.',
    }).optional(),
    drivenLoad: quantityField('mass', {
      name: 'Laden mass on the driven axle, standing',
      example: '380 kg',
      range: true,
      above: 0,
      recipe:
        'Loaded and with the rider on, bathroom scales under a plank at the driven wheel, the others packed level.',
    }).optional(),
    centreHeight: quantityField('length', {
      name: 'Height of the centre of mass above the ground, laden',
      example: '620 mm',
      range: true,
      above: 0,
      max: 5,
      recipe: 'Lift one end by a known height and weigh the other: the shift of load over the slope gives the height.',
    }).optional(),
    dragArea: quantityField('area', {
      name: 'Drag area, drag coefficient times frontal area',
      example: '0.9 m2',
      range: true,
      above: 0,
      max: 20,
      blank: { row: 'brief-defaults/drag-area' },
      recipe: 'Coast down on a level road on a still day from two speeds and time the loss of each 10 km/h.',
    }).optional(),
    rolling: quantityField('number', {
      name: 'Rolling resistance coefficient of the ground',
      example: '0.02..0.08',
      range: true,
      above: 0,
      max: 1,
      blank: { row: 'brief-defaults/rolling' },
      recipe: 'Pull the vehicle slowly over the ground with a spring balance and divide by its weight.',
    }).optional(),
    friction: quantityField('number', {
      name: 'Grip, friction coefficient of tyre on ground',
      example: '0.8',
      range: true,
      above: 0,
      max: 3,
      blank: { row: 'brief-defaults/friction' },
      recipe: 'Lock the wheel and pull with a balance: pull over load is the friction coefficient.',
    }).optional(),
    wheelInertia: quantityField('inertia', {
      name: 'Moment of inertia of the driven wheel',
      example: '4.5 kg.m2',
      range: true,
      above: 0,
      blank: { row: 'brief-defaults/wheel-inertia' },
      recipe: 'Hang the wheel flat on three equal ropes, twist it a little, and time ten swings.',
    }).optional(),
    engineInertia: quantityField('inertia', {
      name: 'Moment of inertia of crank, flywheel and clutch',
      example: '0.02 kg.m2',
      range: true,
      above: 0,
      blank: { row: 'brief-defaults/engine-inertia' },
      recipe: 'Weigh the flywheel: half its mass times its radius squared is a fair first value.',
    }).optional(),
    otherInertia: quantityField('inertia', {
      name: 'Moment of inertia of all other wheels, as felt at the driven wheel',
      example: '0.6 kg.m2',
      range: true,
      min: 0,
      blank: { row: 'brief-defaults/other-inertia' },
      recipe:
        'Time the swings of one of them, then multiply by their number and by the square of driven roll-out over their roll-out.',
    }).optional(),
    track: quantityField('length', {
      name: 'Track of the pair of wheels',
      example: '1.1 m',
      range: true,
      above: 0,
      max: 5,
      recipe: 'Chalk the middle of both tread marks on the floor and measure across.',
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
    climb: quantityField('fraction', {
      name: 'Grade to climb in first gear, rise over run',
      example: '25 %',
      above: 0,
      max: 2,
    }).optional(),
    sprintTo: quantityField('speed', {
      name: 'Speed to reach from standstill',
      example: '50 km/h',
      above: 0,
    }).optional(),
    sprintIn: quantityField('time', { name: 'Time to reach it in', example: '12 s', above: 0 }).optional(),
    cycle: choiceField('Driving cycle to follow', [
      'cycle-wmtc-part1',
      'cycle-wmtc-part2',
      'cycle-wmtc-part3',
      'cycle-r47',
      'cycle-udc',
      'cycle-nedc',
      'cycle-udds',
      'cycle-hwfet',
    ]).optional(),
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
    mass: quantityField('mass', {
      name: 'Mass with rider',
      example: '265 kg',
      range: true,
      above: 0,
      recipe: 'Take it from the handbook, and add the rider.',
    }).optional(),
    at: quantityField('speed', {
      name: 'Road speed to compare at',
      example: '40 km/h',
      above: 0,
      blank: { row: 'brief-defaults/compare-speed' },
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Reference vehicle' } });

const suspension = z
  .strictObject({
    pivot: namedPoint('Pivot'),
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
    stand: quantityField('angle', {
      name: 'Arm on the stand, wheel down from where it is drawn',
      example: '5 deg',
      min: 0,
      max: 1,
      recipe: 'Full rebound where the wheel hangs free; measure the drop of the axle where a strap or a jack holds it.',
    }).optional(),
    armHeight: quantityField('length', {
      name: 'Height of the arm where the chain passes, with its rubbing strip',
      example: '40 mm',
      min: 0,
      max: 0.5,
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Swinging arm' } });

const speedometer = z
  .strictObject({
    senses: choiceField('Senses the turns of', ['gearbox output', 'driven wheel']),
    madeRatio: ratioField('Turns of what it senses for a turn of the wheel, where it was made for', '2.6', {
      recipe: 'Count the teeth of the old final drive; 1 where it sensed the wheel itself.',
    }),
    madeRollOut: quantityField('length', {
      name: 'Roll-out of the wheel that it was made for',
      example: '1.96 m',
      above: 0.1,
      max: 20,
      recipe: 'Roll the old wheel out, or work it out from its tyre size.',
    }),
  })
  .meta({ 'x-field': { name: 'Speedometer' } });

const body = choiceField('Carried by', ['engine', 'subframe', 'vehicle frame', 'swinging arm']);

const space = z
  .strictObject({
    keepOuts: namedMap(
      'Keep-outs',
      z.strictObject({
        name: textField('Name', 'engine and gearbox'),
        kind: choiceField('What for', ['solid', 'access']),
        least: namedPoint('Corner rearmost, rightmost, lowest'),
        most: namedPoint('Corner foremost, leftmost, highest'),
        body,
      }),
    ).optional(),
    tubes: namedMap(
      'Tubes',
      z.strictObject({
        name: textField('Name', 'left rail'),
        from: namedPoint('One end'),
        to: namedPoint('Other end'),
        size: quantityField('length', { name: 'Outside size', example: '30 mm', above: 0 }),
        body,
      }),
    ).optional(),
    wanted: quantityField('length', {
      name: 'Clearance wanted between moving and still',
      example: '10 mm',
      above: 0,
      blank: { row: 'brief-defaults/clearance' },
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Space' } });

export const brief = z
  .strictObject({
    engine,
    vehicle,
    wheel,
    suspension: suspension.optional(),
    space: space.optional(),
    targets: targets.optional(),
    reference: reference.optional(),
    speedometer: speedometer.optional(),
    shop: shop.optional(),
  })
  .meta({ 'x-field': { name: 'Brief' } });
