import { z } from 'zod';
import { integerField, keyField, quantityField, textField } from './field.ts';

/** Name and seats of a stage. */
export const ends = {
  name: textField('Stage', 'Chain 1'),
  from: keyField({ name: 'Driver sits on', seat: true, example: 'output/sprocket' }),
  to: keyField({ name: 'Driven sits on', seat: true, example: 'shaft-a/sprocket' }),
};

/** Efficiency of a stage, blank on the row of its kind. */
export const efficiency = (row: string) => ({
  efficiency: quantityField('fraction', {
    name: 'Efficiency',
    example: '98 %',
    range: true,
    above: 0,
    max: 1,
    blank: { row: `stage-efficiencies/${row}` },
    recipe: 'It cannot be measured without a dynamometer: leave it blank and keep the published range.',
  }).optional(),
});

/** Teeth of driver and driven wheel, each at least so many. */
export const teeth = (least: number) =>
  z
    .strictObject({
      driver: integerField({ name: 'Driver teeth', min: least, max: 300 }),
      driven: integerField({ name: 'Driven teeth', min: least, max: 300 }),
    })
    .meta({ 'x-field': { name: 'Teeth' } });
