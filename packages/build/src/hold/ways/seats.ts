/** How the rings of a bearing sit: class, what carries the outer ring, and what keeps it from turning. */
import { PLATE_CLASSES, SHAFT_CLASSES } from '@oddwheel/tables/seat-fits';
import { plateClass, shaftClass, slides } from '../../assess/checks/seating/ring-fit.ts';
import { type BearingAt, bearingAt } from '../../assess/checks/strength/bearings.ts';
import type { Json } from '../../document/json.ts';
import { change, type Ground, type Ladder, ladder, lengthText, put, putIn, range, single } from '../ladder.ts';

/** The bearing that a finding stands on; null where its number is not known. */
export function bearingOf({ scene, finding }: Ground): BearingAt | null {
  const found = bearingAt(scene, finding.address);
  return found?.kind === 'known' ? found.at : null;
}

const named = ({ seat, shaft }: BearingAt): string => `${seat.name} of ${shaft.name}`;

const seatingOf = ({ seat }: BearingAt): string => `${seat.address}/seating`;

/** A seat that was left as it was cut is bored where it is made anew. */
export const boredIfCut = ({ fitted }: BearingAt): Readonly<Record<string, Json>> =>
  fitted.seating?.made?.endsWith(' cut') ? { made: 'bored' } : {};

/** Tighter and looser classes of the seat on the shaft, or of the outer ring. */
export const otherClass =
  (of: 'shaft' | 'plate') =>
  (ground: Ground): readonly Ladder[] => {
    const at = bearingOf(ground);
    const own = at && (at.fitted.seating?.[of] ?? (of === 'shaft' ? shaftClass : plateClass)(at, ground.scene));
    if (!at || !own) return [];
    const classes: readonly string[] = of === 'shaft' ? SHAFT_CLASSES : PLATE_CLASSES;
    const now = classes.indexOf(own);
    const what =
      of === 'shaft' ? `Turn the seat of ${named(at)} to` : `Make the seat of the outer ring of ${named(at)} to`;
    return [classes.slice(now + 1), classes.slice(0, now).reverse()].flatMap((way) =>
      ladder(
        're-cut',
        way.map((to, k) => ({
          what: `${what} ${to} instead of ${own}`,
          patches: putIn(ground, seatingOf(at), { [of]: to }),
          size: 0.05 * (k + 1),
        })),
      ),
    );
  };

/** A bearing with more clearance inside, which a tight seat takes up. */
export function roomier(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  const now = at?.fitted.clearance;
  if (!at || now === 'C3' || now === 'C4') return [];
  return single('buy', {
    what: `Fit ${named(at)} with inner clearance C3 instead of ${now ?? 'one that is not told'}`,
    patches: [put(ground, `${at.seat.address}/clearance`, 'C3')],
    size: 0.05,
  });
}

/** Seat of the outer ring bored, where it was left as it was cut. */
export function bored(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  if (!at?.fitted.seating?.made?.endsWith(' cut')) return [];
  return single('re-cut', {
    what: `Cut the hole for ${named(at)} 2 to 3 mm smaller, and bore its seat to its fit after welding`,
    patches: putIn(ground, seatingOf(at), { made: 'bored' }),
    size: 0.1,
  });
}

/** Outer ring in a split ring, which is clamped; not for a bearing that must slide. */
export function clamped(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  if (!at || slides(at) || at.fitted.seating?.sitsIn === 'a split ring, clamped') return [];
  return single('re-make', {
    what: `Hold the outer ring of ${named(at)} in a split ring that is clamped`,
    patches: putIn(ground, seatingOf(at), { sitsIn: 'a split ring, clamped' }),
    size: 0.3,
  });
}

/** Outer ring in a ring of steel instead of aluminium, which grows as the bearing does. */
export function inSteel(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  if (!at || at.fitted.seating?.sitsIn === 'a steel ring') return [];
  return single('re-make', {
    what: `Set the outer ring of ${named(at)} in a steel ring that is pressed in and screwed or flanged`,
    patches: putIn(ground, seatingOf(at), { sitsIn: 'a steel ring', ...boredIfCut(at) }),
    size: 0.2,
  });
}

/** Outer ring kept from turning by more than its fit. A bonded ring cannot slide. */
export function keptFromTurning(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  if (!at) return [];
  const ways = [
    ['a pin or screw', 're-cut', `Keep the outer ring of ${named(at)} from turning by a pin or screw`],
    ['retaining compound', 'adjust', `Bond the outer ring of ${named(at)} in with retaining compound`],
  ] as const;
  return ways.flatMap(([keptBy, effort, what], k) =>
    keptBy === 'retaining compound' && slides(at)
      ? []
      : single(effort, { what, patches: putIn(ground, seatingOf(at), { keptBy }), size: 0.05 * (k + 1) }),
  );
}

const FLOAT = 1e-4;

/** More way for the free bearing along the shaft. */
export function moreFloat(ground: Ground): readonly Ladder[] {
  const at = bearingOf(ground);
  const now = at?.fitted.seating?.float ?? null;
  if (!at || now === null) return [];
  const address = `${seatingOf(at)}/float`;
  return ladder(
    're-cut',
    range(FLOAT, 40 * FLOAT, FLOAT).map((by) => {
      const to = now + by;
      return {
        what: `Let the outer ring of ${named(at)} move ${ground.show('length', to)} along the shaft: shorten its spacer, or deepen the seat`,
        patches: [put(ground, address, lengthText(ground, address, to))],
        size: change(Math.max(now, 5 * FLOAT), to) / 10,
      };
    }),
  );
}
