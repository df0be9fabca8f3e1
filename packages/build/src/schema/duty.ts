import { z } from 'zod';
import { choiceField, integerField, keyField, quantityField, textField } from './field.ts';

const dutyRow = z.strictObject({
  name: textField('Part of the duty', 'field tracks'),
  gear: integerField({ name: 'Gear', min: 1, max: 12 }),
  speed: quantityField('speed', { name: 'Road speed', example: '18 km/h', above: 0 }),
  throttle: quantityField('fraction', { name: 'Part of the full torque there', example: '60 %', min: 0, max: 1 }),
  share: quantityField('fraction', { name: 'Part of the distance', example: '30 %', above: 0, max: 1 }),
});

export const duty = z
  .strictObject({
    distance: quantityField('length', {
      name: 'Distance that the drive shall last',
      example: '20000 km',
      above: 0,
      blank: { row: 'brief-defaults/life-distance' },
    }).optional(),
    rows: z
      .array(dutyRow)
      .min(1)
      .meta({ 'x-field': { name: 'How it is driven' } })
      .optional(),
  })
  .meta({ 'x-field': { name: 'Duty' } });

export const loads = z
  .strictObject({
    grip: quantityField('number', {
      name: 'Highest friction that the tyre may find',
      example: '1.2',
      above: 0,
      max: 3,
      blank: { row: 'brief-defaults/highest-friction' },
    }).optional(),
    shock: quantityField('number', {
      name: 'Shock factor on the engine’s torque in a start',
      example: '1.5..2',
      range: true,
      min: 1,
      max: 5,
      blank: { row: 'brief-defaults/start-shock' },
    }).optional(),
    brake: z
      .strictObject({
        at: keyField({ name: 'Brake disc or drum sits at', seat: true, example: 'axle-c/wheel' }),
        torque: quantityField('torque', { name: 'Greatest torque', example: '600 N.m', above: 0 }),
      })
      .meta({ 'x-field': { name: 'Brake on the drive' } })
      .optional(),
    criterion: choiceField('Fatigue criterion', ['Goodman', 'Gerber', 'ASME elliptic', 'Soderberg']).optional(),
    reliability: choiceField('Parts that must last, of a hundred', ['50', '90', '95', '99', '99.9']).optional(),
    oil: quantityField('viscosity', {
      name: 'Viscosity of the oil or grease, at work',
      example: '30 mm2/s',
      range: true,
      above: 0,
      blank: { row: 'brief-defaults/bearing-oil' },
      recipe:
        'Read the grade on the tin: of a grease, that of its oil. At 70 °C ISO VG 100 has about 28 mm²/s, ISO VG 150 about 38 mm²/s.',
    }).optional(),
    cold: quantityField('temperature', {
      name: 'Coldest that it runs',
      example: '-10 degC',
      min: 173.15,
      max: 323.15,
      blank: { row: 'brief-defaults/cold' },
    }).optional(),
    hot: quantityField('temperature', {
      name: 'Hottest that seats and shafts become',
      example: '80 degC',
      min: 273.15,
      max: 473.15,
      blank: { row: 'brief-defaults/hot' },
      recipe: 'Hold a contact thermometer to the plate beside the bearing after a long climb.',
    }).optional(),
    dirt: choiceField('Dirt at the bearings', ['clean', 'normal', 'dirt from outside', 'severe']).optional(),
  })
  .meta({ 'x-field': { name: 'Loads and lasting' } });
