/** Adjusters: set otherwise, or given more travel. */

import { rateOf, settingsOf } from '../../assess/adjusters/settings.ts';
import type { Patch } from '../../document/patch.ts';
import type { Adjuster, Stage } from '../../model/model.ts';
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
/** Steps of a setting, m, each a quarter more than the one before: slack hangs on little. */
const SETTINGS = Array.from({ length: 34 }, (_, k) => Math.round(2 * 1.25 ** k) * 1e-5);

/** As above, and what the setting uses up of its travel is gone. Null where it does not reach. */
function setWithin(ground: Ground, adjuster: Adjuster, by: number): readonly Patch[] | null {
  const left = adjuster.travel - Math.abs(by);
  const set = left < 0 ? null : setOn(ground, adjuster, by);
  const address = `${adjuster.address}/travel`;
  return set && set.length > 0 ? [...set, put(ground, address, lengthText(ground, address, left))] : null;
}

/** The adjuster of a chain's slack set so that it takes up so many links; null where none reaches. */
export function takenUp(ground: Ground, { address }: Stage, links: number): readonly Patch[] | null {
  if (Math.abs(links) < 1e-3) return [];
  const { model } = ground;
  const setting = settingsOf(model).find((one) => one.sets === 'slack' && one.address === address);
  if (!setting) return null;
  for (const adjuster of model.adjusters.filter((one) => setting.adjusters.includes(one.address))) {
    const rate = rateOf(model, setting, adjuster);
    const set = rate ? setWithin(ground, adjuster, links / rate) : null;
    if (set) return set;
  }
  return null;
}

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
        SETTINGS.flatMap((by): Step[] => {
          const patches = setWithin(ground, adjuster, sign * by);
          return patches
            ? [
                {
                  what: `Set the ${adjuster.name} ${sign > 0 ? 'on' : 'back'} by ${ground.show('length', by)}`,
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
