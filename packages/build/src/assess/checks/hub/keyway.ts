import { widthOf } from '../../strength/diameters.ts';
import { notchesOf } from '../../strength/notches.ts';
import type { Check } from '../check.ts';
import { perModel } from '../per-model.ts';
import { plainly, seatsWith, torqueSeatOf } from './seats.ts';

const KEYWAYS: readonly string[] = ['keyway-end-milled', 'keyway-disc-milled'];
/** m: a keyway runs out beside its hub. */
const BESIDE = 10e-3;

/** A key needs a keyway in the shaft, and the shaft is weaker there. */
export const hubKeyway: Check = {
  id: 'hub.keyway',
  title: 'keyway among the notches of the shaft',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'a shaft breaks first at its notches' },
  atWorst: 'thin',
  perCase: false,
  subjects: seatsWith(({ torqueBy }) => torqueBy === 'key'),
  run: perModel(({ model }, subject) => {
    const found = torqueSeatOf(model, subject);
    if (!found) return null;
    const { seat, shaft } = found;
    const reach = Math.max(widthOf(seat), found.hub.key?.length ?? 0) / 2 + BESIDE;
    const entered = notchesOf(shaft).some(
      ({ sort, station }) => KEYWAYS.includes(sort) && Math.abs(station - seat.station) <= reach,
    );
    if (entered) return null;
    return plainly(
      false,
      () =>
        `The keyway of ${seat.name} is not entered as a notch of ${shaft.name}, so the fatigue check of the shaft does not count it. Enter it at the station of the part.`,
    );
  }),
};
