import { FRACTION_UNIT, formatFraction, formatQuantity } from '@oddwheel/quantity/format';

/** Figures that show a hundredth of a millimetre on a drive a few metres long. */
const FIGURES = 6;

/** A moved length is written to a hundredth of a millimetre. */
const FINEST = 1e-5;

/** Prints a length in the unit of the build, finer than a drawing does: for what is being moved. */
export function lengthShown(units: Readonly<Record<string, string>>, si: number): string {
  const unit = units.length ?? 'mm';
  const rounded = unit === FRACTION_UNIT ? si : Math.round(si / FINEST) * FINEST;
  return unit === FRACTION_UNIT
    ? formatFraction(rounded)
    : formatQuantity(rounded, 'length', unit, { digits: FIGURES });
}
