import { formatQuantity } from '@oddwheel/quantity/format';
import { parseInput } from '@oddwheel/quantity/range';
import type { Fault } from '../fault.ts';
import { walkSchema } from '../schema/describe.ts';
import type { FieldFacts } from '../schema/field.ts';

/** Greatest size of any input in SI units; above it, or as far below one, the unit or a digit is mistaken and numbers overflow. */
const BEYOND = 1e15;

/** One fault of a typed quantity, or null when it is accepted. */
export function quantityFault(address: string, text: string, facts: FieldFacts): Fault | null {
  const kind = facts.quantity;
  if (kind === undefined) return null;
  const example = facts.example === undefined ? '' : ` Write ${JSON.stringify(facts.example)}.`;
  const parsed = parseInput(text, kind);
  if (!parsed.ok)
    return {
      code: `quantity.${parsed.code}`,
      address,
      problem: `${facts.name}: ${parsed.problem}`,
      read: text,
      accepted: `${parsed.accepted.replace(/\.?$/, '.')}${example}`,
    };
  if (parsed.isRange && !facts.range)
    return {
      code: 'quantity.no-range',
      address,
      problem: `${facts.name} takes one value, not a range.`,
      read: text,
      accepted: `One value.${example}`,
    };
  const unit = parsed.unit;
  const say = (si: number) => formatQuantity(si, kind, unit);
  if (facts.above !== undefined && parsed.lo <= facts.above)
    return {
      code: 'quantity.too-small',
      address,
      problem: `${facts.name} must be more than ${say(facts.above)}.`,
      read: text,
      accepted: `More than ${say(facts.above)}.${example}`,
    };
  if (facts.min !== undefined && parsed.lo < facts.min)
    return {
      code: 'quantity.too-small',
      address,
      problem: `${facts.name} must be at least ${say(facts.min)}.`,
      read: text,
      accepted: `At least ${say(facts.min)}.${example}`,
    };
  if (facts.max !== undefined && parsed.hi > facts.max)
    return {
      code: 'quantity.too-large',
      address,
      problem: `${facts.name} must be at most ${say(facts.max)}.`,
      read: text,
      accepted: `At most ${say(facts.max)}.${example}`,
    };
  const beyond = [parsed.lo, parsed.hi].some((x) => x !== 0 && (Math.abs(x) > BEYOND || Math.abs(x) < 1 / BEYOND));
  if (beyond)
    return {
      code: 'quantity.beyond',
      address,
      problem: `${facts.name} is beyond anything that a vehicle has.`,
      read: text,
      accepted: `A size between ${say(1 / BEYOND)} and ${say(BEYOND)}, or 0 where nothing is meant.${example}`,
    };
  return null;
}

/**
 * Second pass: every dimensional string has a number and a unit of the right kind, within its limits.
 * @param before a value without faults; parts that it has in common with `value` are not looked at again
 */
export function quantityFaults(value: unknown, before?: unknown): Fault[] {
  const faults: Fault[] = [];
  const visit: Parameters<typeof walkSchema>[1] = (address, read, node) => {
    const facts = node['x-field'];
    if (facts?.quantity === undefined || typeof read !== 'string') return;
    const fault = quantityFault(address, read, facts);
    if (fault) faults.push(fault);
  };
  walkSchema(value, visit, before);
  return faults;
}
