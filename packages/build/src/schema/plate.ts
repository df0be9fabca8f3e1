import { z } from 'zod';
import { choiceField, quantityField, textField } from './field.ts';

/** A plate that holds bearings. */
export const plate = z.strictObject({
  name: textField('Plate', 'left plates'),
  thickness: quantityField('length', { name: 'Thickness in all', example: '1/2 in', above: 0 }),
  material: choiceField('Made of', ['steel', 'aluminium']),
  width: quantityField('length', { name: 'Width across the bearing', example: '120 mm', above: 0 }),
  span: quantityField('length', {
    name: 'Free span between the tubes that tie it',
    example: '160 mm',
    above: 0,
  }),
  ends: choiceField('Tied to its tubes', ['as if hinged', 'as if built in'], {
    recipe:
      'One bolt or a short weld at each end lets it tilt as on a hinge; two rows of bolts or a weld all round build it in. In between, leave this blank.',
  }).optional(),
});
