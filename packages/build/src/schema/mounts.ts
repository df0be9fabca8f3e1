import { z } from 'zod';
import { choiceField, namedMap, quantityField, textField } from './field.ts';
import { namedPoint } from './path.ts';

/** What holds engine and subframe to the frame of the vehicle. */
export const mounts = namedMap(
  'Mounts',
  z.strictObject({
    name: textField('Mount', 'front mount, left'),
    body: choiceField('Holds', ['engine', 'subframe']),
    at: namedPoint('Middle of its rubber'),
    stiffness: quantityField('stiffness', {
      name: 'Stiffness, the same in each direction',
      example: '150..300 N/mm',
      range: true,
      above: 0,
      recipe:
        'Hang a known weight on it and read a dial gauge; where it is softer one way than another, give both as a range. Metal bolted on metal is 20 kN/mm or more (common practice).',
    }).optional(),
  }),
);
