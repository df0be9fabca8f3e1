import { ISO_DEVIATIONS, LETTER_STEPS, type Letter } from './iso-deviations.ts';
import { GRADE_STEPS, type GradeName, ISO_GRADES, stepKey } from './iso-grades.ts';
import { rowInSi } from './table.ts';

/** What makes up the limits of a class at a size, SI: the inputs of `fit.limits`, and the rows they came from. */
export interface IsoClass {
  readonly grade: number;
  /** Limit nearest the nominal size. */
  readonly deviation: number;
  /** Step of the grade that a tight hole adds. */
  readonly delta: number;
  readonly from: 'lower' | 'upper' | 'both';
  readonly rows: { readonly grade: string; readonly deviation: string };
}

const MM = 1e-3;
const MOST = 500;
/** Sizes typed in other units may miss the end of a step by a rounding. */
const ROUNDING = 1e-9;

function stepOf(ends: readonly number[], millimetres: number): string {
  return stepKey(
    ends,
    ends.findIndex((end) => millimetres <= end + ROUNDING),
  );
}

/**
 * Class of a shaft (small letter) or hole (capital) by ISO 286 at a nominal size.
 * Steps are "over, up to and including". Holes mirror the shafts; K to N up to IT8 and P to X up to IT7 add a step of the grade.
 *
 * @param code "H7", "k6", "js5"
 * @param size metres, up to 0.5
 * @throws RangeError naming what is not covered.
 */
export function isoClass(code: string, size: number): IsoClass {
  const [, letters = '', digits = ''] = /^([A-Za-z]{1,2})(0?\d{1,2})$/.exec(code) ?? [];
  const name = `IT${digits}` as GradeName;
  const mm = size / MM;
  if (letters === '' || !Object.hasOwn(ISO_GRADES.columns, name))
    throw new RangeError(`"${code}" is not a class of ISO 286; write it as H7 or k6.`);
  if (!(mm > 0 && mm <= MOST + ROUNDING))
    throw new RangeError(`The classes of ISO 286 are tabled up to 500 mm; ${mm} mm lies outside.`);
  const gradeKey = stepOf(GRADE_STEPS, mm);
  const widths = rowInSi(ISO_GRADES, gradeKey);
  const grade = widths[name] ?? Number.NaN;
  const key = stepOf(LETTER_STEPS, mm);
  const row = rowInSi(ISO_DEVIATIONS, key);
  const rows = { grade: `iso-grades/${gradeKey}`, deviation: `iso-deviations/${key}` };
  const of = (column: string): number => {
    const own = row[column as Letter];
    if (own === undefined)
      throw new RangeError(`ISO 286 has no ${code} at ${mm} mm; take the letter next to it, or another grade.`);
    return own;
  };
  const found = (from: IsoClass['from'], deviation: number, delta = 0): IsoClass => ({
    grade,
    deviation,
    delta,
    from,
    rows,
  });
  const n = Number(digits);
  const small = letters.toLowerCase();
  if (small === 'js') return found('both', 0);
  if (small === 'j') return found(letters === 'j' ? 'lower' : 'upper', of(`${letters}${digits}`));
  const loose = small.length === 1 && small <= 'h';
  if (letters === small) {
    if (loose) return found('upper', of(small));
    return found('lower', small === 'k' && (n < 4 || n > 7) ? 0 : of(small));
  }
  if (loose) return found('lower', 0 - of(small));
  const fine = n <= (small <= 'n' ? 8 : 7);
  if (!fine && small === 'n') return found('upper', mm <= 3 ? of('n') * -1 : 0);
  if (!fine && small === 'k' && mm > 3) throw new RangeError(`ISO 286 has no ${code} over 3 mm; K ends at grade 8.`);
  if (code === 'M6' && mm > 250 && mm <= 315) return found('upper', -9e-6);
  const finer = widths[`IT${n - 1}` as GradeName];
  const delta = fine && mm > 3 && n >= 3 && finer !== undefined ? grade - finer : 0;
  return found('upper', 0 - of(small), delta);
}
