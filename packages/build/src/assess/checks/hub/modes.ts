import type { Value } from '../../../model/model.ts';
import type { Used } from '../../geometry/types.ts';
import type { Amount, Outcome } from '../check.ts';
import { measured, type Origins } from '../measured.ts';

/** One way in which a joint may fail. */
export interface Mode {
  readonly name: string;
  readonly demand: Amount;
  readonly capacity: Amount;
  readonly uses: readonly Value[];
  readonly origins: Origins;
}

/** The way of failing with the least reserve, told; the others stand in the working. */
export function worstOf(modes: readonly Mode[], says: (mode: Mode) => string, used: () => readonly Used[]): Outcome {
  const [first, ...others] = modes;
  if (!first) throw new Error('A joint without a way of failing was judged.');
  const reserve = ({ demand, capacity }: Mode) => capacity.value / demand.value;
  const worst = others.reduce((best, mode) => (reserve(mode) < reserve(best) ? mode : best), first);
  const uses = [...new Set(modes.flatMap((mode) => mode.uses))];
  return measured(worst.demand, worst.capacity, () => says(worst), uses, used, worst.origins);
}

export const pressure = (name: string, value: number): Amount => ({ name, value, kind: 'pressure', use: 'pressure' });
export const force = (name: string, value: number): Amount => ({ name, value, kind: 'force', use: 'force' });
export const torque = (name: string, value: number): Amount => ({ name, value, kind: 'torque', use: 'torque' });
