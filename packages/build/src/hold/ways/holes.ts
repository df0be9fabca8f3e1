/** The plate around a bearing: wider, with a smaller hole, of more sheets, or cut otherwise. */
import { CUTTING_RULES } from '@oddwheel/tables/cutting-rules';
import { rowInSi } from '@oddwheel/tables/table';
import { sizesOf } from '../../assess/checks/seating/ring-fit.ts';
import { holeOf, leastShoulderHole } from '../../assess/checks/seating/web.ts';
import type { Plate } from '../../model/strength.ts';
import {
  change,
  type Ground,
  inInches,
  type Ladder,
  ladder,
  lengthText,
  put,
  putIn,
  range,
  type Step,
  single,
  tradeText,
  typedAt,
} from '../ladder.ts';
import { bearingOf, boredIfCut } from './seats.ts';

const EIGHTH = 0.0254 / 8;
const MM = 1e-3;
const ROUNDING = 1e-9;
/** Most that a plate is widened or its tubes are set apart, as a factor. */
const MOST = 2;

const stepOf = (ground: Ground, address: string): number => (inInches(ground, address) ? EIGHTH : MM);

/** Trade steps above a length, up to so many times it. */
function above(from: number, times: number, step: number): readonly number[] {
  const first = (Math.floor(from / step + ROUNDING) + 1) * step;
  return range(first, from * times, step);
}

const sheetOf = (plate: Plate, change: Partial<{ width: number; span: number }>) => ({
  sheet: {
    width: change.width ?? plate.width,
    length: change.span ?? plate.span,
    thickness: plate.thickness / plate.sheets,
  },
});

/** A plate wider by trade steps: an eighth of an inch or a millimetre. */
export function widerPlate(ground: Ground): readonly Ladder[] {
  const plate = bearingOf(ground)?.fitted.plate;
  if (!plate) return [];
  const address = `${plate.address}/width`;
  return ladder(
    're-cut',
    above(plate.width, MOST, stepOf(ground, address)).map((si): Step => {
      const text = tradeText(ground, address, si);
      return {
        what: `Make the ${plate.name} ${text} wide instead of ${typedAt(ground, address)}`,
        patches: [put(ground, address, text)],
        size: change(plate.width, si),
        needs: sheetOf(plate, { width: si }),
      };
    }),
  );
}

/** Tubes of a plate farther apart, so that more of it stands beyond the hole. */
export function longerPlate(ground: Ground): readonly Ladder[] {
  const plate = bearingOf(ground)?.fitted.plate;
  if (!plate) return [];
  const address = `${plate.address}/span`;
  return ladder(
    're-cut',
    above(plate.span, MOST, stepOf(ground, address)).map((si): Step => {
      const text = tradeText(ground, address, si);
      return {
        what: `Set the tubes of the ${plate.name} ${text} apart instead of ${typedAt(ground, address)}`,
        patches: [put(ground, address, text)],
        size: change(plate.span, si),
        needs: sheetOf(plate, { span: si }),
      };
    }),
  );
}

/** A hole smaller than the bearing: the plate is its shoulder, and a ring welded or bolted on is its seat. It stays clear of the inner ring. */
export function smallerHole(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  const plate = at?.fitted.plate;
  const hole = at && holeOf(at);
  if (!at || !plate || !hole) return [];
  const least = leastShoulderHole(at);
  const { outside } = sizesOf(at);
  if (least === null || outside === null) return [];
  const address = `${at.seat.address}/opening`;
  const largest = Math.floor((Math.min(outside, hole.size) - MM) / MM + ROUNDING) * MM;
  const holes = range(least, largest, MM).map((_, k) => largest - k * MM);
  return ladder(
    're-cut',
    holes.map((si): Step => {
      const text = lengthText(ground, address, si);
      return {
        what: `Cut the hole in the ${plate.name} ${text}, smaller than ${at.seat.name}: the plate is its shoulder, and a steel ring welded or bolted on is its seat`,
        patches: [
          put(ground, address, text),
          ...putIn(ground, `${at.seat.address}/seating`, { sitsIn: 'a steel ring', ...boredIfCut(at) }),
        ],
        size: change(hole.size, si),
      };
    }),
  );
}

/** Most sheets that are stacked. */
const SHEETS = 4;
/** Thinner sheets are not stacked: common practice. */
const THINNEST = 2e-3;

/** The same thickness from thinner sheets, each of which needs less web. */
export function moreSheets(ground: Ground): readonly Ladder[] {
  const plate = bearingOf(ground)?.fitted.plate;
  if (!plate) return [];
  const counts = range(plate.sheets + 1, SHEETS, 1).filter((count) => plate.thickness / count >= THINNEST);
  return ladder(
    're-cut',
    counts.map(
      (count): Step => ({
        what: `Make the ${plate.name} up from ${count} sheets of ${ground.show('length', plate.thickness / count)} instead of ${plate.sheets === 1 ? 'one' : plate.sheets}`,
        patches: [put(ground, `${plate.address}/sheets`, count)],
        size: 0.2 * (count - plate.sheets),
      }),
    ),
  );
}

const CUTS = ['laser cut', 'waterjet cut'] as const;

/** Cut by what leaves a narrower web, where the build says how it is cut. */
export function cutFiner(ground: Ground): readonly Ladder[] {
  const plate = bearingOf(ground)?.fitted.plate;
  const now = plate?.cut ?? null;
  if (!plate || now === null) return [];
  const web = (by: string): number => rowInSi(CUTTING_RULES, by).web ?? Number.NaN;
  return CUTS.filter((by) => web(by) < web(now)).flatMap((by, k) =>
    single('buy', {
      what: `Have the ${plate.name} ${by} instead of ${now}`,
      patches: [put(ground, `${plate.address}/cut`, by)],
      size: 0.1 * (k + 1),
      needs: sheetOf(plate, {}),
    }),
  );
}
