import { z } from 'zod';
import { duty, loads } from './duty.ts';
import { engine } from './engine.ts';
import { choiceField, quantityField, textField } from './field.ts';
import { mounts } from './mounts.ts';
import { ratioField } from './ratio-field.ts';
import { shop } from './shop.ts';
import { space } from './space.ts';
import { suspension, vehicle, wheel } from './vehicle.ts';

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

export const brief = z
  .strictObject({
    engine,
    vehicle,
    wheel,
    suspension: suspension.optional(),
    mounts: mounts.optional(),
    space: space.optional(),
    targets: targets.optional(),
    reference: reference.optional(),
    speedometer: speedometer.optional(),
    duty: duty.optional(),
    loads: loads.optional(),
    shop: shop.optional(),
  })
  .meta({ 'x-field': { name: 'Brief' } });
