import { CUTTING_RULES } from '@oddwheel/tables/cutting-rules';
import { rowInSi } from '@oddwheel/tables/table';
import type { CutBy } from '../../../model/strength.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import type { BearingAt } from '../strength/bearings.ts';
import { onSeated, plainly, seated } from './common.ts';
import { loadTurns, plateClass, seatLimits, sizesOf } from './ring-fit.ts';

const BORE = 'Cut the hole 2 to 3 mm smaller and bore it to its fit, after welding.';

function asCut(at: BearingAt, made: CutBy, turning: boolean, scene: Scene): Outcome | null {
  const { outside } = sizesOf(at);
  if (outside === null) return null;
  const code = at.fitted.seating?.plate ?? plateClass(at, scene) ?? 'H7';
  const limits = seatLimits(code, outside, `${at.seat.address}/row`);
  const off = rowInSi(CUTTING_RULES, made).tolerance ?? Number.NaN;
  const { show } = scene;
  return measured(
    { name: 'size as cut may be off by, in all', value: 2 * off, kind: 'length', use: 'length' },
    { name: `width of ${code}`, value: limits.upper - limits.lower, kind: 'length', use: 'length' },
    () =>
      `Its seat is ${made} and not bored: its size may be off by ${show('length', off)} each way, and ${code} is ${show('length', limits.upper - limits.lower)} wide. ${turning ? 'The load goes round against the outer ring, so the ring hammers and turns in it.' : 'The ring sits on high spots and off its place.'} ${BORE}`,
    [],
    () => [limits.used],
    { capacity: 'above', demand: `cutting-rules/${made}, both ways` },
  );
}

function located(at: BearingAt, scene: Scene, turning: boolean): Outcome | null {
  const { plate, seating } = at.fitted;
  if (!plate || (loadTurns(at) !== 'inner ring') !== turning) return null;
  const made = seating?.made ?? null;
  if (seating?.sitsIn === 'a split ring, clamped')
    return plainly(true, () => 'A split ring that is clamped takes the outer ring without play.');
  if (made === null)
    return {
      kind: 'unknown',
      missing: [
        {
          address: `${at.seat.address}/seating/made`,
          says: `how the seat of ${at.seat.name} in the ${plate.name} is made: bored, or left as it was cut`,
        },
      ],
    };
  if (made === 'bored' || made === 'reamed')
    return plainly(
      true,
      () =>
        `Its seat is ${made}. Do that after welding, with both plates in line: a weld draws by a millimetre and more.`,
    );
  return asCut(at, made, turning, scene);
}

const LOCATES = {
  title: 'seat that holds the bearing in place',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: a seat of a bearing is never finished by a flame or a beam' },
  perCase: false,
  subjects: seated,
} as const;

/** A seat under a load that stands still is bored; one that is only cut is poor. */
export const seatLocates: Check = {
  ...LOCATES,
  id: 'seat.made',
  atWorst: 'thin',
  run: onSeated((at, scene) => located(at, scene, false)),
};

/** A seat under a load that goes round against the outer ring must be bored. */
export const seatLocatesTurning: Check = {
  ...LOCATES,
  id: 'seat.made-turning',
  atWorst: 'fails',
  run: onSeated((at, scene) => located(at, scene, true)),
};
