import type { ShaftLine } from '@oddwheel/build/assess/strength/shaft-lines';
import type { Assessment } from '@oddwheel/build/assess/types';
import type { Beside } from './beside.ts';

/**
 * The assessment as JSON, format 1: the keys of `Assessment` below `format`, in a fixed order, SI units throughout.
 *
 * With another build put beside it, the rows of both stand under `beside`; shafts told along their length, where asked for, under `shaftLines`.
 *
 * `reserves` is one list, a row of `cases` for each finding in the order of its `row`. A number that does not apply or is
 * not known is null there, as is a number without an end.
 */
export function assessmentJson(
  assessment: Assessment,
  beside: Beside | null,
  shaftLines: readonly ShaftLine[] | null = null,
): string {
  const { name, about, here, hereNote, path, gears, cases, findings, reserves, ...after } = assessment;
  const { assumed, findOut, closure, parts, reference, shafts, units, notes, ...more } = after;
  return JSON.stringify(
    {
      format: 1,
      ...{ name, about, here, hereNote, path, gears, cases, findings },
      reserves: Array.from(reserves),
      ...{ assumed, findOut, closure, parts, reference, shafts, units, notes },
      ...more,
      ...(beside ? { beside } : {}),
      ...(shaftLines ? { shaftLines } : {}),
    },
    null,
    2,
  );
}
