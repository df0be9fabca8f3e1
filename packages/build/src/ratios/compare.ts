import { assess } from '../assess/assess.ts';
import { launchOf, outputOf } from '../assess/road/drive.ts';
import type { Road } from '../assess/road/types.ts';
import type { GearSpan } from '../assess/types.ts';
import type { Session } from '../session-types.ts';
import { RatiosError } from './find.ts';
import { settle } from './settle.ts';
import type { StagePair } from './types.ts';

/** Trains side by side at most. */
const MOST = 4;

/** One train on the road, as `check` would show it after the change. Numbers are SI, at the middle of the uncertain inputs. */
export interface Compared {
  readonly pairs: readonly StagePair[];
  /** Road speed of each gear from idle to redline. */
  readonly gears: readonly GearSpan[];
  /** Tractive effort in each gear, with the curve for drawing. */
  readonly pulls: Road['pulls'];
  readonly top: Road['top'];
  /** Time and distance to the speed of the targets. */
  readonly sprint: Road['sprint'];
  /** Heat in the clutch in one level start, time that it slips, and road speed at its end; null where it cannot be had. */
  readonly launch: { readonly energy: number; readonly time: number; readonly speed: number } | null;
  /** Time in each gear, mean engine speed and energy at the wheel over the cycle of the targets; null where none is named. */
  readonly cycle: Road['cycle'];
}

/**
 * Up to four trains on the road, each with its chains made to fit. An empty list of pairs is the build as drawn.
 *
 * Errors: `RatiosError` for none or more than four.
 */
export function compareTrains(session: Session, trains: readonly (readonly StagePair[])[]): readonly Compared[] {
  if (trains.length === 0 || trains.length > MOST)
    throw new RatiosError(`${trains.length} trains read; 1 to ${MOST} can be compared.`);
  return trains.map((pairs): Compared => {
    const { model } = settle(session.build, session.evaluation.model, pairs);
    const { assessment, evaluation } = assess(model, session.here, null, 'not yet');
    const { road } = evaluation.middle.scene;
    const launch = outputOf(launchOf(road.ground, road.drive()));
    const { pulls, top, sprint, cycle } = assessment.road;
    return {
      pairs,
      gears: assessment.gears,
      pulls,
      top,
      sprint,
      launch: launch && { energy: launch.energy, time: launch.time, speed: launch.syncSpeed },
      cycle,
    };
  });
}
