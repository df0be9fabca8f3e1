import { z } from 'zod';
import { choiceField, IN_REACH, integerField, quantityField, textField } from './field.ts';

const station = quantityField('length', { name: 'Station along the shaft', example: '58 mm', ...IN_REACH });

/** A place where a shaft is built up of two parts. */
export const join = z.strictObject({
  name: textField('Joint', 'stub in the sleeve'),
  station,
  torqueBy: choiceField('Torque passes by', ['spline', 'key', 'weld', 'press fit', 'bolts', 'pin']),
  centredBy: choiceField('Centred by', ['spigot', 'press fit', 'spline', 'bolts', 'weld alone'], {
    recipe: 'A spline that fits on its flanks has play and does not centre: look for a smooth turned seat beside it.',
  }),
  axialBy: choiceField('Held along the shaft by', [
    'draw bolt',
    'weld',
    'press fit',
    'retaining ring',
    'bolts',
    'nothing',
  ]),
  positions: integerField({ name: 'Positions it goes together in', min: 1, max: 200 }).optional(),
  diameter: quantityField('length', {
    name: 'Diameter that passes the torque: mean of the spline, weld circle, bolt circle',
    example: '25 mm',
    above: 0,
  }).optional(),
  length: quantityField('length', {
    name: 'Length in mesh, of the fit, or weld leg',
    example: '30 mm',
    above: 0,
  }).optional(),
  teeth: integerField({ name: 'Teeth of the spline, or number of bolts', min: 1, max: 200 }).optional(),
  height: quantityField('length', {
    name: 'Height of tooth flank in contact, or diameter of a bolt',
    example: '2 mm',
    above: 0,
  }).optional(),
  spigot: z
    .strictObject({
      diameter: quantityField('length', { name: 'Diameter', example: '30 mm', above: 0 }),
      length: quantityField('length', { name: 'Length', example: '20 mm', above: 0 }),
      play: quantityField('length', { name: 'Play across', example: '0.02 mm', range: true, min: 0 }).optional(),
    })
    .meta({ 'x-field': { name: 'Spigot that centres it' } })
    .optional(),
});
