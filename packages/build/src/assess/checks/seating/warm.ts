import { floatNeeded } from '@oddwheel/mechanics/bearing/float-needed';
import { BEARING_LIMITS } from '@oddwheel/tables/bearing-limits';
import { SEAT_FITS_SOURCE } from '@oddwheel/tables/seat-fits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Used } from '../../geometry/types.ts';
import { growthOf, SHOP, warmed } from '../../strength/warmth.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import type { BearingAt } from '../strength/bearings.ts';
import { fine, onSeated, plainly, seated } from './common.ts';
import { carrier, loadTurns, plateClass, ringPlay, seatLimits, sizesOf, slides } from './ring-fit.ts';

const ALUMINIUM = growthOf('aluminium');

const CURES =
  'Set it in a steel ring that is pressed in and screwed or flanged, or in a split ring that is clamped; bond it with retaining compound; or keep it from turning with a pin or screw.';

interface Seat {
  readonly code: string;
  readonly outside: number;
  readonly play: NonNullable<ReturnType<typeof ringPlay>>;
  readonly used: readonly Used[];
}

/** The outer ring in aluminium at the class typed, or else asked for; null where it does not sit in aluminium. */
function inAluminium(at: BearingAt, scene: Scene): Seat | null {
  const { outside } = sizesOf(at);
  const { seating } = at.fitted;
  if (outside === null || carrier(at) !== 'aluminium' || seating?.sitsIn === 'a split ring, clamped') return null;
  const code = seating?.plate ?? plateClass(at, scene);
  if (code === null) return null;
  const limits = seatLimits(code, outside, seating?.plate ? `${seating.address}/plate` : `${at.seat.address}/row`);
  const play = ringPlay('outside', limits);
  return play && { code, outside, play, used: [limits.used, play.used] };
}

const inSeat = (outside: number, play: number) =>
  ({
    play,
    diameter: outside,
    outer: 'aluminium',
    inner: 'bearing steel',
    from: 'outside diameter of the bearing',
  }) as const;

function whenHot(at: BearingAt, scene: Scene, turning: boolean): Outcome | null {
  const seat = inAluminium(at, scene);
  if (!seat || (loadTurns(at) !== 'inner ring') !== turning) return null;
  const { hot } = scene.model.loads;
  const { keptBy } = at.fitted.seating ?? {};
  const { show } = scene;
  const { play, used } = warmed(inSeat(seat.outside, seat.play.greatest), hot, scene.at);
  const opens = () =>
    `In aluminium its outer ring, ${seat.code}, opens by ${fine(scene, play - seat.play.greatest)} at ${show('temperature', scene.at(hot))}`;
  const more = { uses: [hot], used: () => [...seat.used, used] };
  if (keptBy === 'retaining compound' || keptBy === 'a pin or screw')
    return plainly(
      true,
      () => `${opens()}; ${keptBy} keeps it from turning, with up to ${fine(scene, Math.max(play, 0))} of play.`,
      more,
    );
  if (turning)
    return plainly(
      play <= 0,
      () =>
        play <= 0
          ? `${opens()} and stays tight.`
          : `${opens()} and comes loose, up to ${fine(scene, play)}, under a load that goes round against it: it turns in its seat. ${CURES}`,
      more,
    );
  const loosest = seatLimits('G7', seat.outside, 'loosest class that is asked for');
  const most = ringPlay('outside', loosest);
  if (!most) return null;
  return measured(
    { name: 'play when hot', value: Math.max(play, 0), kind: 'length', use: 'runOut' },
    { name: 'loosest seat, G7', value: most.greatest, kind: 'length', use: 'runOut' },
    () =>
      play > most.greatest
        ? `${opens()}, to as much as ${fine(scene, play)} of play; the loosest seat asked for, G7, has ${fine(scene, most.greatest)}. The ring creeps round and wears its seat. ${CURES}`
        : `${opens()}, to ${fine(scene, play)} of play at most; the loosest seat asked for, G7, has ${fine(scene, most.greatest)}.`,
    [hot],
    () => [...seat.used, used, loosest.used, most.used],
    { capacity: 'above', demand: 'above' },
  );
}

const HOT = {
  title: 'outer ring in aluminium when hot',
  consequence: 'wears out',
  wanted: { reserve: 1, from: SEAT_FITS_SOURCE },
  perCase: false,
  subjects: seated,
} as const;

/** An outer ring under a load that stands still does not rattle when its aluminium seat has grown. */
export const seatWhenHot: Check = {
  ...HOT,
  id: 'seat.hot',
  atWorst: 'thin',
  run: onSeated((at, scene) => whenHot(at, scene, false)),
};

/** An outer ring that the load goes round against stays tight when its aluminium seat has grown. */
export const seatWhenHotTurning: Check = {
  ...HOT,
  id: 'seat.hot-turning',
  atWorst: 'fails',
  run: onSeated((at, scene) => whenHot(at, scene, true)),
};

/** A bearing that must slide is not gripped when its aluminium seat has shrunk. */
export const seatWhenCold: Check = {
  id: 'seat.cold',
  title: 'free bearing in aluminium when cold',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: what is gripped cannot slide' },
  atWorst: 'thin',
  perCase: false,
  subjects: seated,
  run: onSeated((at, scene) => {
    const seat = slides(at) ? inAluminium(at, scene) : null;
    if (!seat) return null;
    const { cold } = scene.model.loads;
    const { play, used } = warmed(inSeat(seat.outside, seat.play.least), cold, scene.at);
    const { show } = scene;
    const cools = () =>
      `At ${show('temperature', scene.at(cold))} its aluminium seat, ${seat.code}, closes by ${fine(scene, seat.play.least - play)}`;
    return plainly(
      play >= 0,
      () =>
        play >= 0
          ? `${cools()} and the outer ring can still slide.`
          : `${cools()} and may grip the outer ring by ${fine(scene, -play)}, so that it cannot slide until it is warm. Make the seat ${fine(scene, -play)} larger and keep the ring from turning with a pin or screw, or set it in a steel ring.`,
      { uses: [cold], used: () => [...seat.used, used] },
    );
  }),
};

const GROWTH = 'bearing-limits/growth';

/** The free bearing has the way that growth and tolerances take. */
export const seatFloats: Check = {
  id: 'seat.float',
  title: 'way of the free bearing along the shaft',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(BEARING_LIMITS, 'growth') },
  atWorst: 'thin',
  perCase: false,
  subjects: seated,
  run: onSeated((at, scene) => {
    const float = at.fitted.seating?.float ?? null;
    if (float === null || !slides(at)) return null;
    const stations = at.structure.bearings.map(({ seat }) => seat.station);
    const spacing = Math.max(...stations) - Math.min(...stations);
    if (!(spacing > 0)) return null;
    const { expansion = Number.NaN, degrees = Number.NaN, stack = Number.NaN } = rowInSi(BEARING_LIMITS, 'growth');
    const { cold, hot } = scene.model.loads;
    // A shaft may run warmer than its frame; in an aluminium engine or plate the frame outgrows it as both warm up.
    const light = at.seat.body === 'engine' || carrier(at) === 'aluminium';
    const far = Math.max(scene.at(hot) - SHOP, SHOP - scene.at(cold));
    const apart = ALUMINIUM - growthOf('steel');
    const byMetal = light && apart * far > expansion * degrees;
    const input = {
      spacing,
      expansion: byMetal ? apart : expansion,
      warmer: byMetal ? far : degrees,
      stack,
    };
    const output = floatNeeded.run(input);
    const { show } = scene;
    return measured(
      { name: 'growth and tolerances take', value: output.float, kind: 'length', use: 'length' },
      { name: 'way it has', value: float, kind: 'length', use: 'length' },
      () =>
        `Its outer ring can move ${show('length', float)} along the shaft; growth takes ${show('length', output.growth)} of it${byMetal ? `, aluminium against steel from ${show('temperature', scene.at(cold))} to ${show('temperature', scene.at(hot))}` : ''}, and tolerances ${show('length', stack)}${output.float > float ? ': the bearings push against each other. Shorten the spacer, or deepen the seat' : ''}.`,
      byMetal ? [cold, hot] : [],
      () => [
        {
          method: floatNeeded,
          input,
          output,
          origins: {
            spacing: `${at.shaft.address}/seats`,
            expansion: byMetal ? 'fit-metals/aluminium less fit-metals/steel' : GROWTH,
            warmer: byMetal ? `${cold.address} and ${hot.address}, from 20 °C` : GROWTH,
            stack: GROWTH,
          },
        },
      ],
      { capacity: `${at.seat.address}/seating/float`, demand: 'above' },
    );
  }),
};
