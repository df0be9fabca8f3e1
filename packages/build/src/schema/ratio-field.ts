import { quantityField } from './field.ts';

export const ratioField = (name: string, example: string, more = {}) =>
  quantityField('ratio', { name, example, range: true, above: 0, max: 100, ...more });
