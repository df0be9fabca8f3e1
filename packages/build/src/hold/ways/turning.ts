/** Swings of the drive: a cush, and the idle. */
import { fromSi } from '@oddwheel/quantity/units';
import type { Seat, Shaft } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, put, range, type Step } from '../ladder.ts';
import { movedField } from './fields.ts';

const turn = (perMinute: number): number => (perMinute * 2 * Math.PI) / 60;

export const fasterIdle = (ground: Ground): readonly Ladder[] =>
  movedField(ground, '/brief/engine/idle', {
    kind: 'angularSpeed',
    by: range(turn(50), turn(500), turn(50)),
    says: (to, from) => `Raise the idle to ${to} from ${from}`,
    effort: 'adjust',
  });

/** Stiffnesses of a cush, N·m/rad, the stiffest first. */
const CUSHES = [8000, 6000, 4000, 3000, 2000, 1500, 1000, 750, 500, 300];

function wheelSeat({ model }: Ground): { readonly shaft: Shaft; readonly seat: Seat } | null {
  for (const shaft of model.shafts) for (const seat of shaft.seats) if (seat.kind === 'wheel') return { shaft, seat };
  return null;
}

/** A cush between the wheel and its axle, softer step by step; one that is there already softer than it is. */
export function softer(ground: Ground): readonly Ladder[] {
  const { cush } = ground.model;
  const wheel = wheelSeat(ground);
  if (cush) {
    const now = cush.stiffness;
    if (!now) return [];
    return ladder(
      'buy',
      CUSHES.filter((stiffness) => stiffness < now.lo).map(
        (stiffness): Step => ({
          what: `Fit a softer cush, ${fromSi('turningStiffness', 'N·m/rad', stiffness)} N·m/rad`,
          patches: [put(ground, '/path/cush/stiffness', `${stiffness} N.m/rad`)],
          size: change(now.si, stiffness),
        }),
      ),
    );
  }
  return wheel
    ? ladder(
        're-make',
        CUSHES.map(
          (stiffness, k): Step => ({
            what: `Put a cush of ${stiffness} N·m/rad between the wheel and ${wheel.shaft.name}`,
            patches: [
              put(ground, '/path/cush', {
                at: `${wheel.shaft.id}/${wheel.seat.id}`,
                stiffness: `${stiffness} N.m/rad`,
              }),
            ],
            size: 0.1 * (k + 1),
          }),
        ),
      )
    : [];
}
