import { z } from 'zod';
import { choiceField, integerField, quantityField } from './field.ts';
import { efficiency, ends, teeth } from './stage-parts.ts';

/** A toothed belt on two pulleys. */
export const belt = z.strictObject({
  kind: z.literal('belt'),
  ...ends,
  pitch: quantityField('length', { name: 'Belt pitch', example: '8 mm', above: 0 }),
  teeth: teeth(8),
  length: integerField({ name: 'Belt teeth', min: 20, max: 2000 }).optional(),
  profile: choiceField('Profile', [
    'XL',
    'L',
    'H',
    'XH',
    'XXH',
    'T5',
    'T10',
    'T20',
    'AT10',
    'curved teeth',
    'another',
  ]).optional(),
  width: quantityField('length', { name: 'Belt width', example: '25 mm', above: 0 }).optional(),
  ...efficiency('belt'),
});
