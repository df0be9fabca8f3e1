/** What the vehicle does on the road, line by line in words; each line names the checks that speak of it. */
import type { Known, NotKnown, Road } from '@oddwheel/build/assess/road/types';
import type { Spread, Use } from '@oddwheel/build/assess/types';
import { fromSi } from '@oddwheel/quantity/units';
import { digits, show, shownText, unitOf } from '../numbers/shown.ts';
import { isNotKnown, plainText } from './curves.ts';

type Units = Readonly<Record<string, string>>;

export interface RoadRow {
  readonly name: string;
  /** The number, with the ends it takes over what is not known; or why there is none. */
  readonly value: { readonly main: string; readonly range: string } | NotKnown;
  readonly says: string;
  /** Ids of checks. */
  readonly checks: readonly string[];
}

const certain = (value: number) => ({ value, lo: value, hi: value });
const FIGURES = 3;

/** Distance along the road: a build has no unit for it, so it goes with that of road speed. */
function roadLength(value: number, long: boolean, units: Units): string {
  const miles = unitOf('speed', units) === 'mph';
  const feet = fromSi('length', 'ft', value);
  if (long) return miles ? `${digits(feet / 5280, 2)} miles` : `${digits(value / 1000, 2)} km`;
  return miles ? `${digits(feet, 0)} ft` : `${digits(value, 0)} m`;
}

/** A middle value, and its ends where they differ from it. */
function ranged(spread: Spread, use: Use, units: Units): { main: string; range: string } {
  const one = (value: number) => show(certain(value), use, units, FIGURES);
  const [middle, low, high] = [one(spread.value), one(spread.lo), one(spread.hi)];
  const range = low.number === high.number ? '' : `${low.number} to ${high.number}`;
  return { main: shownText(middle), range };
}

const GEAR = (gear: string): string => `gear ${gear}`;
const list = (words: readonly string[]): string => words.filter((word) => word !== '').join(' ');

/** All lines of the road; parts that do not apply to this vehicle are left out. */
export function roadRows(road: Road, units: Units): readonly RoadRow[] {
  const text = (value: number, use: Use): string => shownText(show(certain(value), use, units, FIGURES));
  const row = <T extends object>(
    name: string,
    part: Known<T> | null,
    checks: readonly string[],
    spread: (known: T) => readonly [Spread, Use],
    says: (known: T) => string,
  ): RoadRow[] => {
    if (part === null) return [];
    if (isNotKnown(part)) return [{ name, value: part, says: '', checks }];
    const [value, use] = spread(part);
    return [{ name, value: ranged(value, use, units), says: says(part), checks }];
  };
  const first = isNotKnown(road.pulls) ? null : (road.pulls.gears[0] ?? null);
  return [
    ...row(
      'Top speed',
      road.top,
      ['target.reach', 'target.top-speed', 'target.cruise'],
      (top) => [top.speed, 'speed'],
      (top) =>
        list([
          top.limit === 'power'
            ? `In ${GEAR(top.gear)}, where pull and road load meet.`
            : `In ${GEAR(top.gear)}, as the engine turns no faster; ${text(top.surplus, 'force')} of pull are left over there.`,
          top.tyreGrowth === null
            ? ''
            : `The tyre grows by ${shownText(show(certain(top.tyreGrowth), 'percent', units, 1))} at that speed.`,
        ]),
    ),
    ...(first === null
      ? []
      : [
          {
            name: 'Steepest climb',
            value: first.grade ? ranged(first.grade, 'percent', units) : { main: 'none', range: '' },
            says:
              first.gradeEnds === 'pull'
                ? 'In first gear at peak torque; there the pull ends.'
                : first.gradeEnds === 'grip'
                  ? 'First gear pulls more than the tyre passes on: the grip ends the climb.'
                  : 'First gear pulls enough to lift the front: that ends the climb.',
            checks: ['target.climb', 'target.climb-grip', 'target.pull'],
          },
        ]),
    ...row(
      isNotKnown(road.sprint) ? 'Standing start' : `Standing start to ${plainText(road.sprint.to, 'speed', units)}`,
      road.sprint,
      ['target.sprint'],
      (sprint) => [sprint.time, 'time'],
      (sprint) =>
        list([
          `Over ${roadLength(sprint.distance.value, false, units)}, ${shiftWords(sprint.shifts, plainText(sprint.shiftTime, 'time', units))}, in ${GEAR(sprint.lastGear)} at the end.`,
          sprint.gripKnown ? '' : 'The grip of the tyre is not known: it may take longer.',
        ]),
    ),
    ...row(
      'Pull that the tyre passes on',
      road.grip,
      ['road.grip'],
      (grip) => [grip.force, 'force'],
      (grip) =>
        `${grip.low.friction === grip.high.friction ? '' : `${text(grip.low.force, 'force')} at a friction of ${grip.low.friction}, ${text(grip.high.force, 'force')} at ${grip.high.friction}. `}${grip.governs === 'grip' ? 'Beyond it the wheel spins.' : 'Beyond it the front lifts.'}`,
    ),
    ...row(
      'Front lifts',
      road.lift,
      ['road.lift'],
      (lift) => [lift.force, 'force'],
      (lift) =>
        `At this pull on the level. The tyre would need a friction of ${text(lift.friction.value, 'number')} to pass it on.`,
    ),
    ...row(
      'Tips sideways',
      road.sideways,
      ['road.tip'],
      (sideways) => [sideways.parts, 'number'],
      () => 'Sideways acceleration, as a part of free fall, that lifts a wheel; a tighter or faster bend tips it over.',
    ).map((tips) =>
      'missing' in tips.value ? tips : { ...tips, value: { ...tips.value, main: `${tips.value.main} g` } },
    ),
    ...row(
      'Heat in the clutch, one start',
      road.clutch,
      ['road.clutch'],
      (clutch) => [clutch.energy, 'energy'],
      (clutch) =>
        `${text(clutch.ratio.value, 'number')} times that of the reference vehicle, ${text(clutch.referenceEnergy.value, 'energy')}. It slips for ${text(clutch.time.value, 'time')}, up to ${text(clutch.syncSpeed.value, 'speed')}.`,
    ),
    ...row(
      'Speedometer',
      road.speedometer,
      ['road.speedometer'],
      (meter) => [meter.speed, 'speed'],
      (meter) =>
        `True speed while it shows ${plainText(meter.indicated, 'speed', units)}; it may show at most ${text(meter.mostIndicated.value, 'speed')} then.`,
    ),
    ...cycleRows(road.cycle, text, units),
    ...row(
      'Wheel as a gyroscope, at the slider',
      road.gyroscopic,
      [],
      (gyro) => [gyro.moment, 'torque'],
      (gyro) =>
        `Asked of the bearings while the axle is swung round by ${plainText(gyro.turnRate, 'angle', units)} in a second.`,
    ),
  ];
}

const shiftWords = (shifts: number, each: string): string =>
  shifts === 0 ? 'without a shift' : shifts === 1 ? `with 1 shift of ${each}` : `with ${shifts} shifts of ${each}`;

/** The cycle is followed or not; its time and energy are told beside. */
function cycleRows(cycle: Road['cycle'], text: (value: number, use: Use) => string, units: Units): RoadRow[] {
  if (cycle === null) return [];
  const named = { name: 'Driving cycle', checks: ['road.cycle'] };
  if (isNotKnown(cycle)) return [{ ...named, value: cycle, says: '' }];
  const { missed, gearTimes } = cycle;
  const short = `${digits(missed.value, 0)} s missed`;
  const range = missed.lo === missed.hi ? '' : `${digits(missed.lo, 0)} to ${digits(missed.hi, 0)} s missed`;
  const gears = gearTimes.filter((one) => one.time > 0).map((one) => `${one.name} ${digits(one.time, 0)} s`);
  return [
    {
      ...named,
      value: { main: missed.value === 0 ? 'followed' : short, range },
      says: `${cycle.title}: ${roadLength(cycle.distance, true, units)} in ${digits(cycle.duration, 0)} s. Engine at ${text(cycle.meanEngineSpeed.value, 'angularSpeed')} on average, ${text(cycle.energy.value, 'energy')} at the wheel. Time in gears: ${gears.join(', ')}.`,
    },
  ];
}
