/** The vehicle itself: where its weight lies, and how wide and long it stands. */
import { type Ground, type Ladder, range } from '../ladder.ts';
import { movedField } from './fields.ts';

const VEHICLE = '/brief/vehicle';

/** Kilograms that the load is shifted by. */
const SHIFTS = range(5, 120, 5);

/** Load set farther back, over the driven axle. */
export const loadBack = (ground: Ground): readonly Ladder[] =>
  movedField(ground, `${VEHICLE}/drivenLoad`, {
    kind: 'mass',
    by: SHIFTS,
    says: (to) => `Set the load so that ${to} stand on the driven axle`,
    effort: 'adjust',
  });

/** Load set farther forward. */
export const loadForward = (ground: Ground): readonly Ladder[] =>
  movedField(ground, `${VEHICLE}/drivenLoad`, {
    kind: 'mass',
    by: SHIFTS.map((kg) => -kg),
    says: (to) => `Set the load forward, so that ${to} stand on the driven axle`,
    effort: 'adjust',
  });

/** Rider and load sit lower. */
export const lower = (ground: Ground): readonly Ladder[] =>
  movedField(ground, `${VEHICLE}/centreHeight`, {
    kind: 'length',
    by: range(0.01, 0.4, 0.01).map((m) => -m),
    says: (to, from) => `Bring the centre of mass down to ${to} instead of ${from}`,
    effort: 're-make',
  });

export const wider = (ground: Ground): readonly Ladder[] =>
  movedField(ground, `${VEHICLE}/track`, {
    kind: 'length',
    by: range(0.02, 1, 0.02),
    says: (to, from) => `Set the wheels ${to} apart instead of ${from}`,
    effort: 're-make',
  });

export const longerBase = (ground: Ground): readonly Ladder[] =>
  movedField(ground, `${VEHICLE}/wheelbase`, {
    kind: 'length',
    by: range(0.02, 0.8, 0.02),
    says: (to, from) => `Make the wheelbase ${to} instead of ${from}`,
    effort: 're-make',
  });

/** Pivot of the swinging arm moved along one axis, toward the chain's driver or away. */
export const otherPivot = (ground: Ground): readonly Ladder[] =>
  (['x', 'z'] as const).flatMap((axis) =>
    [1, -1].flatMap((sign) =>
      movedField(ground, `/brief/suspension/pivot/${axis}`, {
        kind: 'length',
        by: range(0.005, 0.1, 0.005).map((m) => sign * m),
        says: (to, from) => `Set the pivot of the arm at ${to} instead of ${from} ${axis === 'x' ? 'forward' : 'up'}`,
        effort: 're-make',
      }),
    ),
  );
