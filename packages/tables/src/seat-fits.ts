/**
 * Classes of bearing seats by which ring the load goes round against, and by how heavy it is.
 *
 * Source: Rolling bearings, catalogue 17000/1 EN, 2018, tables 4, 5 and 8, pages 147 to 151 (read): radial ball bearings of the
 * normal class on solid steel shafts, in steel or cast-iron housings.
 */
export const SEAT_FITS_SOURCE = 'Rolling bearings, catalogue 17000/1 EN, 2018, tables 4, 5 and 8';

/** Classes that a seat on a shaft can be given, loosest first. */
export const SHAFT_CLASSES = ['g6', 'h7', 'h6', 'js6', 'js5', 'j6', 'j5', 'k6', 'k5', 'm6', 'm5', 'n6', 'p6'] as const;
/** Classes that a seat in a plate can be given, loosest first. */
export const PLATE_CLASSES = ['G7', 'H8', 'H7', 'J7', 'JS7', 'K7', 'M7', 'N7', 'P7'] as const;
export type ShaftClass = (typeof SHAFT_CLASSES)[number];
export type PlateClass = (typeof PLATE_CLASSES)[number];

/** Against which ring the load goes round. A load that stands still in the frame goes round against a turning shaft’s inner ring. */
export type LoadTurns = 'inner ring' | 'outer ring' | 'both';

const LIGHT = 0.05;
const MEDIUM = 0.1;

/**
 * Class of the shaft’s seat; null where the table ends.
 * @param part equivalent load over the dynamic rating
 * @param bore metres
 */
export function shaftSeat(turns: LoadTurns, part: number, bore: number): ShaftClass | null {
  if (turns === 'outer ring') return 'h6';
  const mm = bore * 1e3;
  if (mm > 100) return null;
  if (part <= LIGHT) return mm <= 17 ? 'js5' : 'j6';
  if (mm <= 10) return 'js5';
  if (mm <= 17) return 'j5';
  return part <= MEDIUM ? 'k5' : 'm5';
}

/**
 * Class of the plate’s seat.
 * @param part equivalent load over the dynamic rating
 * @param slides whether the outer ring must be free to slide along the shaft
 */
export function plateSeat(turns: LoadTurns, part: number, slides: boolean): PlateClass {
  if (turns === 'inner ring') return 'H7';
  if (turns === 'outer ring') return part <= LIGHT ? 'M7' : part <= MEDIUM ? 'N7' : 'P7';
  return part > MEDIUM ? 'M7' : slides ? 'J7' : 'K7';
}
