/** Adjusters: set otherwise, or given more travel. */
import type { Patch } from '../../document/patch.ts';
import type { Adjuster } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, lengthText, put, range, type Step } from '../ladder.ts';
import { stageOf } from './parts.ts';

/** Adjusters that set something of the stage of a finding. */
function adjustersOf(ground: Ground): readonly Adjuster[] {
  const stage = stageOf(ground);
  if (!stage) return [];
  const seats = [stage.from, stage.to].map(({ shaft, seat }) => `${shaft}/${seat}`);
  return ground.model.adjusters.filter(({ of }) => of === stage.id || seats.includes(of));
}

const AXES = ['x', 'y', 'z'] as const;
/** Steps of a setting, m. */
const STEP = 2.5e-4;
const STEPS = 48;

/** Patches that set an adjuster on by a length; null where what it moves is not found. */
function setOn(ground: Ground, { moves, along }: Adjuster, by: number): readonly Patch[] | null {
  const [id = '', seatId] = moves.split('/');
  const shaft = ground.model.shafts.find((one) => one.id === id);
  if (!shaft) return null;
  if (seatId === undefined)
    return AXES.flatMap((axis, k) => {
      const way = (along[k] ?? 0) * by;
      const address = `${shaft.address}/origin/${axis}`;
      return Math.abs(way) < 1e-7
        ? []
        : [put(ground, address, lengthText(ground, address, (shaft.origin[k] ?? 0) + way))];
    });
  const seat = shaft.seats.find((one) => one.id === seatId);
  if (!seat) return null;
  const way = by * along.reduce((sum, x, k) => sum + x * (shaft.direction[k] ?? 0), 0);
  const address = `${seat.address}/station`;
  return [put(ground, address, lengthText(ground, address, seat.station + way))];
}

/** An adjuster of the stage set on, either way, as far as it goes. */
export function setOtherwise(ground: Ground): readonly Ladder[] {
  return adjustersOf(ground).flatMap((adjuster) =>
    [1, -1].flatMap((sign) =>
      ladder(
        'adjust',
        range(STEP, Math.min(adjuster.travel, STEP * STEPS), STEP).flatMap((by): Step[] => {
          const patches = setOn(ground, adjuster, sign * by);
          return patches && patches.length > 0
            ? [
                {
                  what: `Set the ${adjuster.name} ${ground.show('length', by)} ${sign > 0 ? 'on' : 'back'}`,
                  patches,
                  size: by / 0.1,
                },
              ]
            : [];
        }),
      ),
    ),
  );
}

/** Adjusters of the stage with more travel each way. */
export function moreTravel(ground: Ground): readonly Ladder[] {
  return adjustersOf(ground).flatMap((adjuster) => {
    const address = `${adjuster.address}/travel`;
    return ladder(
      're-cut',
      range(1, 30, 1).map((by): Step => {
        const to = adjuster.travel + by * 1e-3;
        const text = lengthText(ground, address, to);
        return {
          what: `Give the ${adjuster.name} ${text} of travel each way`,
          patches: [put(ground, address, text)],
          size: change(Math.max(adjuster.travel, 0.01), to),
        };
      }),
    );
  });
}
