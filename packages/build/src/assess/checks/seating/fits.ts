import { type LoadTurns, SEAT_FITS_SOURCE } from '@oddwheel/tables/seat-fits';
import type { Check, Outcome, Scene } from '../check.ts';
import type { BearingAt } from '../strength/bearings.ts';
import { fine, limitsText, onSeated, plainly, seated } from './common.ts';
import {
  loadTurns,
  partOfRating,
  plateClass,
  ringPlay,
  type SeatLimits,
  seatLimits,
  shaftClass,
  sizesOf,
  slides,
} from './ring-fit.ts';

const WANTED = { reserve: 1, from: `${SEAT_FITS_SOURCE}; ordinary ball bearings on solid steel shafts` } as const;
/** m; less is rounding. */
const ROUNDING = 1e-9;

const AGAINST: Readonly<Record<LoadTurns, string>> = {
  'inner ring': 'the load goes round against the inner ring',
  'outer ring': 'the load goes round against the outer ring',
  both: 'it is not clear against which ring the load goes round',
};

function why(at: BearingAt, { show }: Scene, part: number): string {
  return `${AGAINST[loadTurns(at)]}, at ${show('percent', part)} of its rating in the hardest steady case`;
}

function judged(
  at: BearingAt,
  scene: Scene,
  of: 'bore' | 'outside',
  typed: SeatLimits | null,
  wanted: SeatLimits,
): Outcome | null {
  const part = partOfRating(at, scene);
  if (part === null) return null;
  const { show } = scene;
  const seat = `${of === 'bore' ? 'Its seat on the shaft' : 'The seat of its outer ring'}, ${show('length', wanted.size)}`;
  const own = typed ?? wanted;
  const play = ringPlay(of, own);
  const more = { used: () => [wanted.used, ...(typed ? [typed.used] : []), ...(play ? [play.used] : [])] };
  const comesTo = play ? ` With the limits of the ring that is ${tightness(play.least, play.greatest, scene)}.` : '';
  if (!typed)
    return plainly(
      true,
      () =>
        `${seat}, is to be ${of === 'bore' ? 'turned' : 'made'} to ${limitsText(wanted)}: ${why(at, scene, part)}.${comesTo}`,
      more,
    );
  // A hole is tighter the smaller it is.
  const [looser, tighter] =
    of === 'bore'
      ? [typed.lower < wanted.lower - ROUNDING, typed.lower > wanted.upper + ROUNDING]
      : [typed.upper > wanted.upper + ROUNDING, typed.upper < wanted.lower - ROUNDING];
  const turned = loadTurns(at) === 'both' || (loadTurns(at) === 'inner ring') === (of === 'bore');
  if (looser && turned)
    return plainly(
      false,
      () =>
        `${seat}, is ${limitsText(typed)}; make it ${limitsText(wanted)}, as ${why(at, scene, part)}. A looser ring creeps round and wears its seat.${comesTo}`,
      more,
    );
  if (of === 'outside' && tighter && slides(at))
    return plainly(
      false,
      () =>
        `${seat}, is ${limitsText(typed)}: too tight for a bearing that must slide as the shaft grows. Make it ${limitsText(wanted)}.${comesTo}`,
      more,
    );
  const roomy = at.fitted.clearance === 'C3' || at.fitted.clearance === 'C4';
  if (tighter && !roomy)
    return plainly(
      false,
      () =>
        `${seat}, is ${limitsText(typed)}, tighter than ${limitsText(wanted)}, which would do. It takes up the clearance inside: take a bearing with clearance C3, or the looser class.${comesTo}`,
      more,
    );
  return plainly(true, () => `${seat}, is ${limitsText(typed)}; ${limitsText(wanted)} is asked for.${comesTo}`, more);
}

function tightness(least: number, greatest: number, scene: Scene): string {
  const size = (si: number): string => fine(scene, si);
  if (greatest <= 0) return `tight by ${size(-greatest)} to ${size(-least)}`;
  if (least >= 0)
    return least > 0 ? `loose by ${size(least)} to ${size(greatest)}` : `loose by ${size(greatest)} at most`;
  return `from ${size(-least)} tight to ${size(greatest)} loose`;
}

/** The seat on the shaft is made to the class that its load asks for. */
export const seatOnShaft: Check = {
  id: 'seat.shaft',
  title: 'fit of the bearing on its shaft',
  consequence: 'wears out',
  wanted: WANTED,
  atWorst: 'thin',
  perCase: false,
  subjects: seated,
  run: onSeated((at, scene) => {
    const { bore } = sizesOf(at);
    const wanted = shaftClass(at, scene);
    if (bore === null || wanted === null) return null;
    const typed = at.fitted.seating?.shaft ?? null;
    const address = `${at.seat.address}/seating/shaft`;
    return judged(
      at,
      scene,
      'bore',
      typed && seatLimits(typed, bore, address),
      seatLimits(wanted, bore, `${at.seat.address}/row`),
    );
  }),
};

/** The seat of the outer ring is made to the class that its load asks for. */
export const seatInPlate: Check = {
  id: 'seat.plate',
  title: 'fit of the outer ring',
  consequence: 'wears out',
  wanted: WANTED,
  atWorst: 'thin',
  perCase: false,
  subjects: seated,
  run: onSeated((at, scene) => {
    const { outside } = sizesOf(at);
    const wanted = plateClass(at, scene);
    if (outside === null || wanted === null || at.fitted.seating?.sitsIn === 'a split ring, clamped') return null;
    const typed = at.fitted.seating?.plate ?? null;
    const address = `${at.seat.address}/seating/plate`;
    return judged(
      at,
      scene,
      'outside',
      typed && seatLimits(typed, outside, address),
      seatLimits(wanted, outside, `${at.seat.address}/row`),
    );
  }),
};
