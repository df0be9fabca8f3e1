import { parseTyreCode, type TyreFault, type TyreSize } from '@oddwheel/mechanics/vehicle/parse-tyre-code';
import { rowInSi } from '@oddwheel/tables/table';
import { TYRE_ALPHA_WIDTHS } from '@oddwheel/tables/tyre-alpha-widths';
import type { Fault } from '../fault.ts';

const WIDTHS: Readonly<Record<string, number>> = Object.fromEntries(
  Object.keys(TYRE_ALPHA_WIDTHS.rows).flatMap((letters) => {
    const { width } = rowInSi(TYRE_ALPHA_WIDTHS, letters);
    return width === undefined ? [] : [[letters, width]];
  }),
);

export function readTyre(text: string): TyreSize | TyreFault {
  return parseTyreCode(text, WIDTHS);
}

/** Why a tyre size cannot be read, without its address; null when it can. */
export function tyreFault(text: string): Omit<Fault, 'address'> | null {
  const read = readTyre(text);
  return read.ok ? null : { code: 'tyre.size', problem: read.problem, read: read.read, accepted: read.accepted };
}
