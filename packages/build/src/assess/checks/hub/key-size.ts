import { KEY_SIZES } from '@oddwheel/tables/key-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import type { HubKey } from '../../../model/hub.ts';
import type { Seat } from '../../../model/model.ts';
import { type Within, within } from '../../../model/within.ts';

/** A key as it stands in its slots. */
export interface KeySize {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  /** Row of the table of keys where the standard gives it; null where the builder typed all of it. */
  readonly row: string | null;
}

const ROUND = 1e-9;

/** Row of the standard for a shaft; null off the table. */
export function standardKey(diameter: number, inch: boolean): string | null {
  const rows = Object.keys(KEY_SIZES.rows).filter((key) => key.startsWith('inch-') === inch);
  const fits = rows.find((key) => {
    const { over = 0, upTo = 0 } = rowInSi(KEY_SIZES, key);
    return diameter > over + ROUND && diameter <= upTo + ROUND;
  });
  return fits ?? null;
}

/** The key of a seat: what is typed, and the standard for its shaft for the rest; null where neither says it. */
export function keySize(key: HubKey, seat: Seat): KeySize | null {
  return within(SIZES, [key, seat], () => sizeOf(key, seat));
}

/** By key and seat: it is asked for in every case. */
const SIZES: Within<KeySize | null> = new WeakMap();

function sizeOf(key: HubKey, { diameter }: Seat): KeySize | null {
  const row = diameter === null ? null : standardKey(diameter, key.inch);
  const standard = row === null ? {} : rowInSi(KEY_SIZES, row);
  const width = key.width ?? standard.width;
  const height = key.height ?? standard.height;
  const depth = key.depth ?? standard.depth;
  if (width === undefined || height === undefined || depth === undefined) return null;
  const typed = key.width !== null && key.height !== null && key.depth !== null;
  return { width, height, depth, row: typed ? null : row };
}
