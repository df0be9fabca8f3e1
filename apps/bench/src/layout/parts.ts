import type { Placed } from '@oddwheel/build/placing/types';
import type { DrawnNote, DrawnPart } from '@oddwheel/sheets/drawing';

/** Whether an address is that of an element or of something within it. */
export const within = (address: string | null, holder: string): boolean =>
  address !== null && (address === holder || address.startsWith(`${holder}/`));

/** Whether a drawn part belongs to what is chosen: the thing itself, and all that a chosen shaft carries. */
export const belongsTo = ({ of, moves }: Pick<DrawnPart, 'of' | 'moves'>, chosen: string): boolean =>
  within(of, chosen) || moves === chosen;

/** A chosen seat of the wheel takes the wheel along, which is drawn under an address of its own. */
const isWheel = (of: string): boolean => of === '/brief/wheel';

/** A note that stands for one place of a thing goes with it; a dimension does not, since it measures. */
export const goesAlong = (note: DrawnNote, chosen: string): boolean =>
  within(note.of, chosen) && !isMeasuring(note) && note.finding === null;

export const isMeasuring = ({ elements }: DrawnNote): boolean => elements.some(({ kind }) => kind === 'dimension');

/**
 * What a press on a drawn part chooses: first the shaft that carries it, and on the chosen shaft the part itself.
 * @param chosen what was chosen before; null for nothing
 */
export function choiceOf(part: Pick<DrawnPart, 'of' | 'moves'>, chosen: string | null): string {
  if (part.moves === null) return part.of;
  if (
    chosen !== null &&
    (chosen === part.moves || within(chosen, part.moves)) &&
    part.of !== part.moves &&
    !isWheel(part.of)
  )
    return part.of;
  return part.moves;
}

/** The thing that a drag of what is chosen moves; null where it has no place of its own. */
export const placedAt = (placed: readonly Placed[], chosen: string | null): Placed | null =>
  placed.find(({ address }) => address === chosen) ?? null;
