import { z } from 'zod';
import { choiceField, namedMap, quantityField, textField } from './field.ts';
import { namedPoint } from './path.ts';

const body = choiceField('Carried by', ['engine', 'subframe', 'vehicle frame', 'swinging arm']);

export const space = z
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
