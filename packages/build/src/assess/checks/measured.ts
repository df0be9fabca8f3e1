import { RESERVES } from '@oddwheel/mechanics/reserve/reserve';
import type { Value } from '../../model/model.ts';
import type { Used } from '../geometry/types.ts';
import type { Amount, Outcome } from './check.ts';

/** Where the two numbers of a comparison came from: an address, a table row, or a method. */
export interface Origins {
  readonly capacity: string;
  readonly demand: string;
}

/** A demand below this part of the capacity is rounding of places, and a reserve over it would say nothing. */
const NOTHING = 1e-6;

/**
 * A measured outcome: capacity over demand. A demand of nothing is met without limit and gives no number.
 * @param before methods that gave demand and capacity, in order
 */
export function measured(
  demand: Amount,
  capacity: Amount,
  says: () => string,
  uses: readonly Value[],
  before: () => readonly Used[],
  origins: Origins,
): Outcome {
  const kind = demand.kind as keyof typeof RESERVES;
  const method = RESERVES[kind];
  const input = { capacity: capacity.value, demand: demand.value };
  if (!(demand.value > capacity.value * NOTHING)) return { kind: 'plain', holds: true, says, uses, used: before };
  const output = method.run(input);
  const last: Used = { method, input, output, origins: { capacity: origins.capacity, demand: origins.demand } };
  return { kind: 'measured', demand, capacity, reserve: output.reserve, says, uses, used: () => [...before(), last] };
}
