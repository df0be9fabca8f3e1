import { z } from 'zod';
import { choiceField, quantityField } from './field.ts';

const NEAR =
  'Measure, guard off, from the nearest tooth or run to the edge that stops the body: seat, rail, side of the tub, or for a bystander the outside of the vehicle. Where nobody is ever, write 5 m.';

const near = (name: string, example: string) =>
  quantityField('length', { name, example, min: 0, recipe: NEAR }).optional();

/** Who can reach a chain, belt or mesh, and what stands between. */
export const guard = z
  .strictObject({
    rider: near('Rider is as near as', '300 mm'),
    passenger: near('Passenger is as near as', '400 mm'),
    bystander: near('A bystander is as near as', '150 mm'),
    kind: choiceField('Guard', ['none', 'one side only', 'with openings', 'closed']).optional(),
    opening: quantityField('length', {
      name: 'Opening: width of a slot, side of a square, diameter of a hole',
      example: '8 mm',
      above: 0,
    }).optional(),
    shape: choiceField('Openings are', ['slots', 'squares', 'round holes']).optional(),
    slotLength: quantityField('length', { name: 'Length of the slots', example: '60 mm', above: 0 }).optional(),
    stands: quantityField('length', {
      name: 'Guard stands off the nearest tooth or run by',
      example: '40 mm',
      min: 0,
    }).optional(),
    toe: choiceField('Toe guard where the run meets the wheel’s sprocket', ['none', 'fitted']).optional(),
    holds: choiceField('Would hold a broken chain or belt in', ['no', 'yes']).optional(),
  })
  .meta({ 'x-field': { name: 'Who can reach it, and its guard' } });
