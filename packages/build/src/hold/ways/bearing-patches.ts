import type { Patch } from '../../document/patch.ts';
import type { Seat } from '../../model/model.ts';
import { type Ground, lengthText, put, typedAt } from '../ladder.ts';
import type { Listed } from '../sizes.ts';

/** Fits another bearing: its number, and those of its sizes that the build types. A typed hole in the plate follows where it was the bearing's own. */
export function bearingPatches(ground: Ground, seat: Seat, { row, facts }: Listed): readonly Patch[] {
  const sizes = [
    ['diameter', facts.bore],
    ['width', facts.width],
    ['outside', facts.outside],
  ] as const;
  const was = seat.outside ?? seat.bearing?.facts?.outside ?? null;
  const opening = `${seat.address}/opening`;
  const follows = seat.opening !== null && was !== null && Math.abs(seat.opening - was) < 1e-4;
  return [
    put(ground, `${seat.address}/row`, row),
    ...sizes.flatMap(([key, si]) => {
      const address = `${seat.address}/${key}`;
      return typedAt(ground, address) === undefined ? [] : [put(ground, address, lengthText(ground, address, si))];
    }),
    ...(follows ? [put(ground, opening, lengthText(ground, opening, facts.outside))] : []),
  ];
}
