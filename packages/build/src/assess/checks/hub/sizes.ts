import { KEY_SIZES } from '@oddwheel/tables/key-sizes';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Check } from '../check.ts';
import { keySize, standardKey } from './key-size.ts';
import { impossible } from './possible.ts';
import { plainly, seatsWith, torqueSeatOf } from './seats.ts';

/** More than this over the shaft's diameter and a key no longer carries along its length (common practice). */
const LONGEST = 1.5;

/** The key is the one that the standard gives for its shaft. */
export const hubSize: Check = {
  id: 'hub.size',
  title: 'size of the key',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'DIN 6885-1 or ANSI B17.1; common practice for the length' },
  atWorst: 'thin',
  perCase: false,
  subjects: seatsWith(({ torqueBy, key }) => torqueBy === 'key' && key !== null),
  run: ({ model, show }, subject) => {
    const found = torqueSeatOf(model, subject);
    const key = found?.hub.key;
    if (!found || !key || found.seat.diameter === null || impossible(found.hub, found.seat, show)) return null;
    const { diameter } = found.seat;
    const size = keySize(key, found.seat);
    const row = standardKey(diameter, key.inch);
    if (!size || row === null) return null;
    const standard = rowInSi(KEY_SIZES, row);
    const mm = (x: number) => show('length', x);
    const own = `${mm(size.width)} x ${mm(size.height)}`;
    const given = `${mm(standard.width ?? 0)} x ${mm(standard.height ?? 0)}`;
    if (own !== given || Math.abs(size.depth - (standard.depth ?? 0)) > 1e-4)
      return plainly(
        false,
        () =>
          `A key of ${own} with a slot of ${mm(size.depth)}; the standard has ${given} with ${mm(standard.depth ?? 0)} for a shaft of ${mm(diameter)} (${sourceOf(KEY_SIZES, row)}).`,
      );
    const longest = LONGEST * diameter;
    return plainly(key.length <= longest, () =>
      key.length <= longest
        ? `A key of ${own} as the standard has it for a shaft of ${mm(diameter)}.`
        : `The key is ${mm(key.length)} long on a shaft of ${mm(diameter)}. Beyond ${mm(longest)} its far end carries little: the shaft twists away from it. Take two keys or a thicker shaft.`,
    );
  },
};
