import type { Known, NotKnown, Road } from '@oddwheel/build/assess/road/types';
import type { Assessment, Spread } from '@oddwheel/build/assess/types';
import { formatQuantity } from '@oddwheel/quantity/format';
import { table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';
import { spreadText, type Units } from './numbers.ts';

const isKnown = <T extends object>(part: Known<T>): part is T => !('missing' in part);

/** Why a part is not known: blank inputs first. */
function why({ missing, says }: NotKnown): string {
  return missing.length > 0 ? `not known; missing: ${missing.map((m) => m.says).join('; ')}.` : `not possible. ${says}`;
}

const percent = (spread: Spread | null, units: Units): string =>
  spread === null
    ? ''
    : spreadText({ value: spread.value * 100, lo: spread.lo * 100, hi: spread.hi * 100 }, 'number', units).concat(' %');

/** A number in a unit of its own, with half its uncertainty. */
const own = (spread: Spread, scale: number, unit: string): string =>
  `${spreadText({ value: spread.value / scale, lo: spread.lo / scale, hi: spread.hi / scale }, 'number', {})} ${unit}`;

function gearTable({ pulls }: Road, units: Units): string[] {
  if (!isKnown(pulls)) return [`Pull in the gears: ${why(pulls)}`];
  const right = { align: 'right' } as const;
  return table(
    [
      { title: 'Gear' },
      { title: 'Pull at idle', ...right },
      { title: 'at peak torque', ...right },
      { title: 'at redline', ...right },
      { title: 'Steepest slope', ...right },
      { title: 'ended by' },
      { title: 'Mass felt', ...right },
    ],
    pulls.gears.map((gear) => [
      gear.name,
      spreadText(gear.atIdle, 'force', units),
      spreadText(gear.atPeakTorque, 'force', units),
      spreadText(gear.atRedline, 'force', units),
      percent(gear.grade, units),
      gear.grade === null ? '' : gear.gradeEnds,
      `× ${spreadText(gear.massFactor, 'number', units)}`,
    ]),
  );
}

function topLine({ top }: Road, units: Units): string {
  if (!isKnown(top)) return `Top speed on the level: ${why(top)}`;
  const limit = top.limit === 'power' ? 'where pull and road load meet' : 'where the engine turns no faster';
  return `Top speed on the level: ${spreadText(top.speed, 'speed', units)} in gear ${top.gear}, ${limit}.`;
}

function gripLine({ grip }: Road, units: Units): string {
  if (!isKnown(grip)) return `Grip: ${why(grip)}`;
  const end = ({ friction, force, governs }: { friction: number; force: number; governs: string }) =>
    `${governs === 'grip' ? 'the tyre slips' : 'the front lifts'} at ${formatQuantity(force, 'force', units.force ?? 'N')} with a friction of ${formatQuantity(friction, 'number', '')}`;
  return grip.low.friction === grip.high.friction
    ? `Grip: ${end(grip.low)}.`
    : `Grip: ${end(grip.low)}, ${end(grip.high)}.`;
}

function balanceLines({ lift, sideways }: Road, units: Units): string[] {
  return [
    ...(lift && isKnown(lift)
      ? [
          `Front lift: a pull of ${spreadText(lift.force, 'force', units)} lifts the front, ${own(lift.acceleration, 1, 'm/s²')}.`,
        ]
      : []),
    ...(sideways && isKnown(sideways) ? [`In a turn: a wheel lifts at ${own(sideways.parts, 1, 'g')} sideways.`] : []),
  ];
}

function sprintLine({ sprint }: Road, units: Units): string {
  if (!isKnown(sprint)) return `From standstill at full throttle: ${why(sprint)}`;
  const to = formatQuantity(sprint.to, 'speed', units.speed ?? 'km/h');
  const shifts = sprint.shifts === 1 ? 'one shift' : `${sprint.shifts} shifts`;
  const grip = sprint.gripKnown ? '' : ' Grip is not known, so the tyre is taken not to slip.';
  return `From standstill to ${to} at full throttle: ${own(sprint.time, 1, 's')} over ${own(sprint.distance, 1, 'm')}, ${shifts} of ${formatQuantity(sprint.shiftTime, 'time', 's')}.${grip}`;
}

function clutchLine({ clutch }: Road): string[] {
  if (!clutch) return [];
  if (!isKnown(clutch)) return [`Heat in the clutch in a start: ${why(clutch)}`];
  return [
    `Heat in the clutch in a level start: ${own(clutch.energy, 1000, 'kJ')}, ${own(clutch.ratio, 1, 'times')} that of the reference vehicle.`,
  ];
}

function gyroscopicLine({ gyroscopic }: Road, units: Units): string[] {
  if (!isKnown(gyroscopic)) return [];
  const rate = formatQuantity(gyroscopic.turnRate, 'angle', '°');
  return [
    `Gyroscopic moment of the wheel at the slider’s speed, swung round at ${rate} a second: ${spreadText(gyroscopic.moment, 'torque', units)}.`,
  ];
}

function meterLine({ speedometer }: Road, units: Units): string[] {
  if (!speedometer) return [];
  if (!isKnown(speedometer)) return [`Speedometer: ${why(speedometer)}`];
  const { indicated, speed, factor, verdict } = speedometer;
  return [
    `Speedometer: at ${formatQuantity(indicated, 'speed', units.speed ?? 'km/h')} on the dial it truly runs ${spreadText(speed, 'speed', units)}, ${own(factor, 1, 'times')} as fast: ${verdict}.`,
  ];
}

function cycleLines({ cycle }: Road, units: Units): string[] {
  if (!cycle) return [];
  if (!isKnown(cycle)) return [`Driving cycle: ${why(cycle)}`];
  const times = cycle.gearTimes.map(({ name, time }) => `${name} ${formatQuantity(time, 'time', 's')}`).join(', ');
  const missed = cycle.missed.hi === 0 ? 'all of it can be followed' : `not followed for ${own(cycle.missed, 1, 's')}`;
  return [
    `${cycle.title}, ${formatQuantity(cycle.distance, 'length', 'km')}: ${missed}; engine at ${spreadText(cycle.meanEngineSpeed, 'angularSpeed', units)} in the mean, ${own(cycle.energy, 1000, 'kJ')} at the wheel. Time: ${times}.`,
  ];
}

/** What the vehicle does on the road. */
export function roadLines({ road, units }: Assessment): string[] {
  const sentences = [
    topLine(road, units),
    gripLine(road, units),
    ...balanceLines(road, units),
    sprintLine(road, units),
    ...clutchLine(road),
    ...gyroscopicLine(road, units),
    ...meterLine(road, units),
    ...cycleLines(road, units),
  ];
  return [
    '',
    'On the road',
    '',
    ...gearTable(road, units),
    '',
    ...sentences.flatMap((text) => wrap(plainLine(text), WIDTH)),
  ];
}
