import { z } from 'zod';
import { choiceField, integerField, quantityField, textField } from './field.ts';
import { direction3, point3, seats, shaftStrength } from './path.ts';
import { ratioField } from './ratio-field.ts';

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

export const engine = z
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
    cylinders: integerField({ name: 'Cylinders', min: 1, max: 16 }).optional(),
    strokes: choiceField('Strokes of a working cycle', ['two', 'four']).optional(),
    clutchTorque: quantityField('torque', {
      name: 'Torque at which the clutch slips, at the crank',
      example: '60..80 N.m',
      range: true,
      above: 0,
      recipe:
        'In top gear, brake held, let the clutch in at full throttle on the stand: it slips at the torque of that speed or it stalls. Stay clear of the drive.',
    }).optional(),
    drag: quantityField('torque', {
      name: 'Torque that the closed engine takes at its redline',
      example: '8..14 N.m',
      range: true,
      above: 0,
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
        ...shaftStrength,
      })
      .meta({ 'x-field': { name: 'Output shaft' } }),
  })
  .meta({ 'x-field': { name: 'Engine and gearbox' } });
