import { acceptedFor } from '@oddwheel/quantity/accepted';
import { type Kind, siUnit } from '@oddwheel/quantity/kinds';
import type { Method, Param, Range } from './method.ts';

/** Any JSON value. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** A JSON Schema, draft 2020-12. */
export type JsonSchema = { readonly [key: string]: Json };

const DRAFT = 'https://json-schema.org/draft/2020-12/schema';

const ROW: JsonSchema = {
  type: 'object',
  description: 'A row of a table; the field is the one named like the input, unless another is named.',
  properties: {
    row: { type: 'string', description: '"<table>/<key>"', pattern: '^[^/]+/.+$' },
    field: { type: 'string', minLength: 1 },
  },
  required: ['row'],
  additionalProperties: false,
};

const ROW_REFERENCE: JsonSchema = { $ref: '#/$defs/row' };

function limits(range: Range | undefined): JsonSchema {
  const open = range?.open === true;
  return {
    ...(range?.min === undefined ? {} : { [open ? 'exclusiveMinimum' : 'minimum']: range.min }),
    ...(range?.max === undefined ? {} : { [open ? 'exclusiveMaximum' : 'maximum']: range.max }),
  };
}

function siDescription(kind: Kind): string {
  const unit = siUnit(kind);
  return unit === '' ? 'A plain number.' : `A plain number is in ${unit}.`;
}

function quantityForms(kind: Kind, range: Range | undefined): JsonSchema[] {
  const accepted = acceptedFor(kind);
  return [
    { type: 'string', description: `${accepted.charAt(0).toUpperCase()}${accepted.slice(1)}.` },
    { type: 'number', description: siDescription(kind), ...limits(range) },
  ];
}

function inputProperty(param: Param): JsonSchema {
  const description = `${param.symbol}: ${param.meaning}`;
  switch (param.form) {
    case 'value':
      return {
        description,
        oneOf: [...quantityForms(param.kind, param.range), ROW_REFERENCE],
        ...(param.default === undefined ? {} : { default: param.default }),
      };
    case 'integer':
      return {
        description,
        oneOf: [{ type: 'integer', ...limits(param.range) }, ROW_REFERENCE],
        ...(param.default === undefined ? {} : { default: param.default }),
      };
    case 'vector':
      return {
        description,
        type: 'array',
        items: { oneOf: quantityForms(param.kind, undefined) },
        minItems: 3,
        maxItems: 3,
      };
    case 'list':
      return {
        description,
        type: 'array',
        items: { oneOf: quantityForms(param.kind, param.range) },
        ...(param.atLeast === undefined ? {} : { minItems: param.atLeast }),
      };
    case 'choice':
      return {
        description,
        enum: param.choices,
        ...(param.default === undefined ? {} : { default: param.default }),
      };
    case 'text':
      return { description, type: 'string', minLength: 1, examples: [param.example] };
  }
}

function outputProperty(param: Param): JsonSchema {
  const description = `${param.symbol}: ${param.meaning}`;
  switch (param.form) {
    case 'value':
      return { description, type: 'number', 'x-unit': siUnit(param.kind) };
    case 'integer':
      return { description, type: 'integer', 'x-unit': '' };
    case 'vector':
      return {
        description,
        type: 'array',
        items: { type: 'number' },
        minItems: 3,
        maxItems: 3,
        'x-unit': siUnit(param.kind),
      };
    case 'list':
      return { description, type: 'array', items: { type: 'number' }, 'x-unit': siUnit(param.kind) };
    case 'choice':
      return { description, enum: param.choices };
    case 'text':
      return { description, type: 'string' };
  }
}

/** Whether an input must be given. */
export function isRequired(param: Param): boolean {
  return !('default' in param) || param.default === undefined;
}

/** JSON Schema of what a method takes: unit texts, plain SI numbers, or rows of tables; no other keys. */
export function inputSchema(method: Method): JsonSchema {
  const inputs = Object.entries(method.inputs);
  return {
    $schema: DRAFT,
    title: `${method.id}, input`,
    description: method.gives,
    type: 'object',
    properties: Object.fromEntries(inputs.map(([key, param]) => [key, inputProperty(param)])),
    required: inputs.filter(([, param]) => isRequired(param)).map(([key]) => key),
    additionalProperties: false,
    ...(inputs.some(([, param]) => param.form === 'value' || param.form === 'integer') ? { $defs: { row: ROW } } : {}),
  };
}

/** JSON Schema of what a method gives: all outputs in SI units, which `x-unit` names. */
export function outputSchema(method: Method): JsonSchema {
  const outputs = Object.entries(method.outputs);
  return {
    $schema: DRAFT,
    title: `${method.id}, output`,
    description: method.gives,
    type: 'object',
    properties: Object.fromEntries(outputs.map(([key, param]) => [key, outputProperty(param)])),
    required: outputs.map(([key]) => key),
    additionalProperties: false,
  };
}
