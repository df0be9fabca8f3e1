import type { LaidBeads } from '../assess/strength/beads.ts';
import { isJsonObject, type Json } from '../document/json.ts';
import type { TrueRecord } from './record.ts';
import { lengthOf } from './section.ts';
import type { TruePart, TrueRound } from './types.ts';

/** Beads nearer to one another along the shaft than this share a place. */
const SAME_STATION = 0.5e-3;

type Fields = { readonly [key: string]: Json };

/** Where a bead of a part stands, along the shaft; as it was noted with the bead, else the weld of the part. Undefined where neither is known. */
export function beadStation({ weld }: TruePart, bead: TrueRound['bead']): number | undefined {
  const text = bead?.station ?? weld?.station;
  return text === undefined ? undefined : lengthOf(text);
}

/** The body of a round with the station of its bead, from the weld of its part as it is now: a later weld elsewhere must not move it. */
export function withStation({ parts }: TrueRecord, body: Fields): Fields {
  const { bead } = body;
  const station = typeof body.part === 'string' ? parts.get(body.part)?.body.weld?.station : undefined;
  if (bead === undefined || !isJsonObject(bead) || bead.station !== undefined || station === undefined) return body;
  return { ...body, bead: { ...bead, station } };
}

/** Weld laid by the rounds that count, on parts that stand for a shaft of the build: one for each place. */
export function laidBeads(record: TrueRecord): LaidBeads[] {
  return [...record.parts.values()].flatMap(({ body: part }) => {
    const { shaft } = part;
    if (shaft === undefined) return [];
    const seats = [lengthOf(part.seats.a), lengthOf(part.seats.b)] as const;
    const places: (Omit<LaidBeads, 'rounds'> & { readonly rounds: number[] })[] = [];
    const order = new Map(record.sequence.map((id, k) => [id, k]));
    const rounds = record.rounds
      .filter(({ body }) => body.part === part.part)
      .sort((one, two) => (order.get(one.id) ?? 0) - (order.get(two.id) ?? 0));
    for (const [k, { body }] of rounds.entries()) {
      const station = body.way === 'bead' ? beadStation(part, body.bead) : undefined;
      if (station === undefined) continue;
      const owed = body.bead?.segment !== undefined;
      const place = places.find((one) => one.owed === owed && Math.abs(one.station - station) <= SAME_STATION);
      if (place) place.rounds.push(k + 1);
      else places.push({ shaft, station, rounds: [k + 1], owed, seats });
    }
    return places;
  });
}
