import type { Hub } from '../../../model/hub.ts';
import type { Seat } from '../../../model/model.ts';
import type { Check } from '../check.ts';
import { perModel } from '../per-model.ts';
import { plainly, seatsWith, torqueSeatOf, unknown } from './seats.ts';

const WORDS = { taper: 'nut', 'bolted flange': 'bolts', setscrews: 'setscrews' } as const;
const FASTENED: Readonly<Record<string, string>> = WORDS;

/** A nut or setscrews that hold the part along the shaft. */
const heldBy = ({ held }: Seat): 'nut' | 'setscrews' | null =>
  [held?.towardStart, held?.towardEnd].find((one) => one === 'nut' || one === 'setscrews') as
    | 'nut'
    | 'setscrews'
    | null;

/** Every fastener of a torque joint is locked by something with a name. */
export const hubLocked: Check = {
  id: 'hub.locked',
  title: 'fastener locked',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: on a machine that shakes every fastener of the drive is locked' },
  atWorst: 'fails',
  perCase: false,
  subjects: seatsWith((hub: Hub, seat) => hub.torqueBy in WORDS || Boolean(heldBy(seat))),
  run: perModel(({ model }, subject) => {
    const found = torqueSeatOf(model, subject);
    if (!found) return null;
    const { hub, seat } = found;
    const own = FASTENED[hub.torqueBy];
    const holding = heldBy(seat);
    if (own !== undefined && hub.locking === null)
      return unknown({ address: `${hub.address}/locking`, says: `what locks the ${own} of ${seat.name}` });
    if (own === undefined && holding && (seat.held?.locking ?? hub.locking) === null)
      return unknown({ address: `${seat.address}/held/locking`, says: `what locks the ${holding} of ${seat.name}` });
    const locking = own === undefined ? (seat.held?.locking ?? hub.locking) : hub.locking;
    const word = own ?? holding;
    return plainly(locking !== 'nothing', () =>
      locking === 'nothing'
        ? `Nothing locks the ${word}: it works loose as the drive shakes. Use a tab washer, lock wire or thread locker.`
        : `The ${word}: locked by ${locking}.`,
    );
  }),
};
