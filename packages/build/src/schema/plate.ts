import { PLATE_CLASSES, SHAFT_CLASSES } from '@oddwheel/tables/seat-fits';
import { z } from 'zod';
import { choiceField, integerField, quantityField, textField } from './field.ts';

const CUTS = ['plasma cut', 'laser cut', 'waterjet cut', 'oxy-fuel cut'] as const;

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
  sheets: integerField({ name: 'Sheets joined to make up its thickness', min: 1, max: 8 }).optional(),
  cut: choiceField('Outline and holes', CUTS, {
    recipe: 'Left blank, both plasma and laser are tried.',
  }).optional(),
  runs: choiceField('Runs from tie to tie', ['fore and aft', 'from side to side', 'up and down'], {
    recipe: 'Left blank, the load is taken in its worst direction.',
  }).optional(),
});

/** How the rings of a bearing sit. */
export const seating = z
  .strictObject({
    shaft: choiceField('Seat on the shaft turned to', SHAFT_CLASSES).optional(),
    plate: choiceField('Seat of the outer ring made to', PLATE_CLASSES).optional(),
    made: choiceField('Seat of the outer ring', ['bored', 'reamed', ...CUTS], {
      recipe: 'Bored or reamed after welding is true; what a flame, a beam or water leaves is not.',
    }).optional(),
    sitsIn: choiceField('Outer ring sits in', [
      'the plate',
      'a steel ring',
      'an aluminium ring',
      'a split ring, clamped',
    ]).optional(),
    keptBy: choiceField('Outer ring kept from turning by', [
      'its fit alone',
      'retaining compound',
      'a pin or screw',
    ]).optional(),
    turns: choiceField('Load goes round against', ['inner ring', 'outer ring', 'both'], {
      recipe:
        'Chains and gears pull one way while the shaft turns: the inner ring. A hub that turns on a still axle: the outer ring. Leave it blank for the inner ring.',
    }).optional(),
    float: quantityField('length', {
      name: 'Way that the outer ring can move along the shaft',
      example: '0.5 mm',
      min: 0,
      recipe: 'Push the shaft one way and the other with the bearing in place, and read a dial gauge on its end.',
    }).optional(),
  })
  .meta({ 'x-field': { name: 'How its rings sit' } });
