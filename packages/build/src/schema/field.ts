import type { Kind } from '@oddwheel/quantity/kinds';
import { z } from 'zod';

/** What a blank input stands on: a row of a table in `packages/tables`, by key, with its low and high end. */
export interface BlankRow {
  readonly row: string;
}

/** Facts of a field beyond its JSON type; carried in the JSON Schema under `x-field`. */
export interface FieldFacts {
  /** Label, sentence case, no unit. */
  readonly name: string;
  /** Kind of quantity; absent for text, choices and plain JSON numbers. */
  readonly quantity?: Kind;
  /** A right example as it would be typed. */
  readonly example?: string;
  /** May be a range `low..high`. */
  readonly range?: boolean;
  /** Smallest and largest value accepted, SI; `above` excludes the limit itself. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Sourced row that a blank input stands on. */
  readonly blank?: BlankRow;
  /** How a builder measures it in a workshop. */
  readonly recipe?: string;
  /** Names a table whose keys are accepted. */
  readonly table?: string;
  /** Names a seat: "shaft/seat". */
  readonly seat?: boolean;
  /** Names an entry of another map: "/brief/shop/stock". */
  readonly refersTo?: string;
}

/** Limits of a place on a vehicle or along a shaft, m: past them the unit is mistaken, and rounding eats what lies close together. */
export const IN_REACH = { min: -100, max: 100 } as const satisfies Partial<FieldFacts>;

/** A dimensional input, kept as the builder wrote it. */
export function quantityField(kind: Kind, facts: Omit<FieldFacts, 'quantity'>): z.ZodString {
  return z.string().meta({ 'x-field': { ...facts, quantity: kind } });
}

export function textField(name: string, example: string): z.ZodString {
  return z
    .string()
    .regex(/\S/, 'Here stand no words.')
    .meta({ 'x-field': { name, example } satisfies FieldFacts });
}

export function integerField(facts: FieldFacts): z.ZodNumber {
  let field = z.number().int();
  if (facts.min !== undefined) field = field.min(facts.min);
  if (facts.max !== undefined) field = field.max(facts.max);
  return field.meta({ 'x-field': facts });
}

export function choiceField<const T extends readonly [string, ...string[]]>(
  name: string,
  choices: T,
  more: Pick<FieldFacts, 'recipe'> = {},
): z.ZodEnum<{ [K in T[number]]: K }> {
  return z.enum(choices).meta({ 'x-field': { name, ...more } satisfies FieldFacts }) as z.ZodEnum<{
    [K in T[number]]: K;
  }>;
}

/** A key of a table, of another map, or a seat. */
export function keyField(facts: FieldFacts): z.ZodString {
  return z.string().min(1).meta({ 'x-field': facts });
}

/** Permanent id of a named thing. */
export const idPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** A map of named things by permanent id. */
export function namedMap<T extends z.ZodType>(name: string, entry: T): z.ZodRecord<z.ZodString, T> {
  return z.record(z.string().regex(idPattern), entry).meta({ 'x-field': { name } satisfies FieldFacts });
}
