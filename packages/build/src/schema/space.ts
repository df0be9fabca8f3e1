import { z } from 'zod';
import { choiceField, namedMap, quantityField, textField } from './field.ts';
import { point3 } from './path.ts';

const body = choiceField('Carried by', ['engine', 'subframe', 'vehicle frame', 'swinging arm']);

export const space = z
  .strictObject({
    keepOuts: namedMap(
      'Keep-outs',
      z.strictObject({
        name: textField('Name', 'engine and gearbox'),
        kind: choiceField('What for', ['solid', 'access']),
        least: point3,
        most: point3,
        body,
      }),
    ).optional(),
    tubes: namedMap(
      'Tubes',
      z.strictObject({
        name: textField('Name', 'left rail'),
        from: point3,
        to: point3,
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
