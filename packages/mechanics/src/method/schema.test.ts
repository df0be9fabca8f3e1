import { describe, expect, it } from 'vitest';
import { inputSchema, outputSchema } from './schema.ts';
import { lever, pulleys } from './testing/samples.ts';

describe('the JSON Schema of an input', () => {
  it('takes unit texts, SI numbers in range, and table rows', () => {
    const schema = inputSchema(pulleys);
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      required: ['speed', 'driver', 'driven'],
      additionalProperties: false,
      properties: {
        driver: {
          description: 'd_1: diameter of the driver',
          oneOf: [
            { type: 'string', description: 'A length, such as "6.35 mm", "1 1/4 in" or "30 thou".' },
            { type: 'number', description: 'A plain number is in m.', exclusiveMinimum: 0 },
            { $ref: '#/$defs/row' },
          ],
        },
        slip: { default: 0.02, oneOf: [{}, { minimum: 0, maximum: 0.1, description: 'A plain number.' }, {}] },
      },
      $defs: { row: { required: ['row'], additionalProperties: false } },
    });
  });
  it('knows vectors, lists, whole numbers, choices and texts', () => {
    expect(inputSchema(lever).properties).toMatchObject({
      arm: { type: 'array', minItems: 3, maxItems: 3, items: { oneOf: [{ type: 'string' }, { type: 'number' }] } },
      ratios: { type: 'array', minItems: 1, items: { oneOf: [{}, { exclusiveMinimum: 0 }] } },
      trains: { oneOf: [{ type: 'integer', minimum: 1, maximum: 4 }, {}], default: 1 },
      side: { enum: ['left', 'right'], default: 'left' },
      name: { type: 'string', minLength: 1, examples: ['brake lever'] },
    });
    expect(inputSchema(lever).required).toEqual(['arm', 'force', 'ratios', 'name']);
  });
});

describe('the JSON Schema of an output', () => {
  it('names the unit of each number', () => {
    expect(outputSchema(lever)).toEqual({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'sample.lever, output',
      description: 'Moment of a force about a point, through a gear train',
      type: 'object',
      properties: {
        moment: {
          description: 'M: moment about the point',
          type: 'array',
          items: { type: 'number' },
          minItems: 3,
          maxItems: 3,
          'x-unit': 'N·m',
        },
        size: { description: 'T: size of the moment behind the train', type: 'number', 'x-unit': 'N·m' },
        label: { description: 'n: what it is', type: 'string' },
        trainCount: { description: 'Z: trains counted', type: 'integer', 'x-unit': '' },
      },
      required: ['moment', 'size', 'label', 'trainCount'],
      additionalProperties: false,
    });
  });
});
