import { z } from 'zod';
import { choiceField, quantityField, textField } from './field.ts';
import { namedPoint } from './path.ts';

export const vehicle = z
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

export const wheel = z
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

export const suspension = z
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
