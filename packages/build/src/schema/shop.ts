import { z } from 'zod';
import { integerField, keyField, namedMap, quantityField, textField } from './field.ts';

const machine = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('lathe'),
    name: textField('Name', 'bench lathe'),
    swing: quantityField('length', { name: 'Swing over the bed', example: '330 mm', above: 0 }).optional(),
    centres: quantityField('length', { name: 'Between centres', example: '600 mm', above: 0 }).optional(),
  }),
  z.strictObject({
    kind: z.literal('press'),
    name: textField('Name', 'hydraulic press'),
    daylight: quantityField('length', { name: 'Daylight under the ram', example: '600 mm', above: 0 }).optional(),
  }),
  z.strictObject({
    kind: z.literal('welder'),
    name: textField('Name', 'stick welder'),
    thickest: quantityField('length', { name: 'Thickest plate it welds', example: '12 mm', above: 0 }).optional(),
  }),
  z.strictObject({
    kind: z.enum(['laser cutting', 'waterjet cutting']),
    name: textField('Name', 'laser cutting in town'),
    sheetLength: quantityField('length', { name: 'Largest sheet, length', example: '3 m', above: 0 }).optional(),
    sheetWidth: quantityField('length', { name: 'Largest sheet, width', example: '1.5 m', above: 0 }).optional(),
    thickest: quantityField('length', { name: 'Thickest plate it cuts', example: '20 mm', above: 0 }).optional(),
  }),
  z.strictObject({
    kind: z.enum(['drill press', 'mill', 'saw']),
    name: textField('Name', 'pillar drill'),
  }),
]);

/** A part that is not there yet may stand on the shelf with none of it and its price. */
const price = quantityField('number', { name: 'Price of one, in your money', example: '12.50', min: 0 }).optional();

const shelfItem = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sprocket'),
    name: textField('Name', 'sprocket 17'),
    chain: keyField({ name: 'Chain size', table: 'chain-sizes', example: '12B' }),
    teeth: integerField({ name: 'Teeth', min: 6, max: 200 }),
    count: integerField({ name: 'How many', min: 0, max: 999 }),
    price,
  }),
  z.strictObject({
    kind: z.literal('chain'),
    name: textField('Name', 'box of chain'),
    chain: keyField({ name: 'Chain size', table: 'chain-sizes', example: '12B' }),
    links: integerField({ name: 'Links', min: 0, max: 9999 }),
  }),
  z.strictObject({
    kind: z.literal('bevel pair'),
    name: textField('Name', 'bevel pair 14 : 33'),
    teeth: z
      .tuple([z.number().int().min(5), z.number().int().min(5)])
      .meta({ 'x-field': { name: 'Teeth, pinion and gear', example: '14 33' } }),
    count: integerField({ name: 'How many', min: 0, max: 999 }),
    price,
  }),
]);

export const shop = z
  .strictObject({
    machines: namedMap('Machines and their limits', machine).optional(),
    stock: namedMap(
      'Stock',
      z.strictObject({
        name: textField('Name', 'bright bar 42CrMo4'),
        diameter: quantityField('length', { name: 'Diameter', example: '50 mm', above: 0 }),
        length: quantityField('length', { name: 'Length', example: '1.2 m', above: 0 }),
      }),
    ).optional(),
    shelf: namedMap('Shelf', shelfItem).optional(),
  })
  .meta({ 'x-field': { name: 'Shop' } });
