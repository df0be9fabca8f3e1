/** Sizes that are bought or turned as usual. */
import { BEARINGS } from '@oddwheel/tables/bearings';
import { SHAFT_STEELS } from '@oddwheel/tables/shaft-steels';
import { rowInSi } from '@oddwheel/tables/table';
import { factsOf } from '../model/resolve-strength.ts';
import type { BearingFacts } from '../model/strength.ts';

const MM = 1e-3;
const INCH = 0.0254;

/** Diameters of shafts and bores, mm: common practice. */
const DIAMETERS = [
  10, 12, 15, 17, 18, 20, 22, 24, 25, 28, 30, 32, 35, 36, 38, 40, 42, 45, 48, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95,
  100,
];
/** Thicknesses of sheet and flat bar, mm and eighths of an inch: common practice. */
const THICKNESSES = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 50];
const THICKNESSES_INCH = [1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1, 1.25, 1.5, 2];
/** Root radii of shoulders, mm: common practice. */
const RADII = [0.4, 0.6, 0.8, 1, 1.2, 1.6, 2, 2.5, 3, 4];

const above = (sizes: readonly number[], unit: number, from: number, most: number): readonly number[] =>
  sizes.map((size) => size * unit).filter((si) => si > from * 1.0001 && si <= most);

/** Usual diameters above one, up to so many times it; inches in sixteenths to two inches, in eighths above. SI. */
export function diametersAbove(from: number, times: number, inches: boolean): readonly number[] {
  if (!inches) return above(DIAMETERS, MM, from, from * times);
  const sixteenths = Array.from({ length: 64 }, (_, k) => (k + 1) / 16).filter((x) => x <= 2 || (x * 8) % 1 === 0);
  return above(sixteenths, INCH, from, from * times);
}

/** Usual thicknesses of plate above one, up to three times it. SI. */
export const thicknessesAbove = (from: number, inches: boolean): readonly number[] =>
  above(inches ? THICKNESSES_INCH : THICKNESSES, inches ? INCH : MM, from, from * 3);

/** Usual root radii above one, up to a limit. SI. */
export const radiiAbove = (from: number, most: number): readonly number[] => above(RADII, MM, from, most);

/** A row of the table of bearings, with its corner, m. */
export interface Listed {
  readonly row: string;
  readonly facts: BearingFacts & { readonly bore: number; readonly outside: number; readonly width: number };
}

/** Deep groove bearings of the table. */
const DEEP_GROOVE: readonly Listed[] = Object.keys(BEARINGS.rows).flatMap((row) => {
  const facts = factsOf({ row });
  const { bore, outside, width } = facts ?? { bore: null, outside: null, width: null };
  return facts?.kind === 'deep groove' && bore !== null && outside !== null && width !== null
    ? [{ row, facts: { ...facts, bore, outside, width } }]
    : [];
});

const byOutside = (a: Listed, b: Listed): number => a.facts.outside - b.facts.outside || a.facts.width - b.facts.width;

/** Deep groove bearings of one bore, the smallest outside first. */
export const sameBore = (bore: number): readonly Listed[] =>
  DEEP_GROOVE.filter(({ facts }) => Math.abs(facts.bore - bore) < 1e-6).sort(byOutside);

/** Deep groove bearings of the same series with a larger bore. */
export const largerBores = (row: string): readonly Listed[] => {
  const own = DEEP_GROOVE.find((one) => one.row === row);
  return own
    ? DEEP_GROOVE.filter(
        (one) => one.row.slice(0, -2) === row.slice(0, -2) && one.facts.bore > own.facts.bore * 1.0001,
      ).sort((a, b) => a.facts.bore - b.facts.bore)
    : [];
};

/** Corner of a bearing, which the radius of its shoulder must stay under, m; null where no table gives it. */
export const cornerOf = (row: string | null): number | null =>
  row !== null && Object.hasOwn(BEARINGS.rows, row)
    ? (rowInSi(BEARINGS, row as keyof typeof BEARINGS.rows).corner ?? null)
    : null;

/** Largest diameter that a row of steel is given for, m; null where it names none. */
function mostDiameter(key: string): number | null {
  const found = /-to-(\d+)$/.exec(key);
  return found ? Number(found[1]) * MM : null;
}

/** Steels with a higher yield and tensile strength, for a bar of a diameter; the least better first. */
export function strongerSteels(
  tensile: number,
  yielding: number,
  diameter: number,
): readonly { readonly key: string; readonly tensile: number }[] {
  return Object.keys(SHAFT_STEELS.rows)
    .flatMap((key) => {
      const si = rowInSi(SHAFT_STEELS, key as keyof typeof SHAFT_STEELS.rows);
      const most = mostDiameter(key);
      const fits = most === null || diameter <= most;
      const better = (si.tensile ?? 0) > tensile && (si.yield ?? 0) > yielding;
      return fits && better ? [{ key, tensile: si.tensile ?? 0 }] : [];
    })
    .sort((a, b) => a.tensile - b.tensile || (a.key < b.key ? -1 : 1));
}
