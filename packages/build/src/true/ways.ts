import { runoutAt } from '@oddwheel/mechanics/runout/axis';
import { bestClockings, type ClockedReading } from '@oddwheel/mechanics/runout/clocking-fit';
import { faceSquareness } from '@oddwheel/mechanics/runout/face';
import { fourJaw } from '@oddwheel/mechanics/runout/hand-ways';
import { pressSet } from '@oddwheel/mechanics/runout/press';
import { formatQuantity } from '@oddwheel/quantity/format';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { clockText } from './clock.ts';
import type { PartView } from './part-view.ts';
import type { TrueRecord } from './record.ts';
import { lengthOf, madeOut, type SetMadeOut } from './section.ts';
import type { TruePart, TrueSet } from './types.ts';
import { lengthWords } from './words.ts';

/** A way of correction other than beads, in words; in order of price, the cheapest and most reversible first. */
export interface WayWords {
  readonly way: 're-clock' | 'shim' | 'four-jaw' | 'press';
  readonly say: string;
}

/** Clockings are only worth the work when they take away this part of the run-out. */
const WORTH = 0.8;
const SAME_STATION = 0.5e-3;

/** Ways that the record knows enough for, before any arc. */
export function otherWays(record: TrueRecord, view: PartView, unit: string): WayWords[] {
  const text = (value: number) => lengthWords(value, unit);
  return [
    ...reClockWords(record, view, text),
    ...shimWords(record, view, text),
    ...jawWords(view, text),
    ...pressWords(view, text),
  ];
}

type Text = (value: number) => string;

function reClockWords(record: TrueRecord, { part, atGoal }: PartView, text: Text): WayWords[] {
  const joints = part.joints ?? [];
  if (joints.length === 0 || !atGoal) return [];
  const readings = clockedReadings(record, part);
  const found = bestClockings(
    readings,
    joints.map(({ positions }) => positions),
    Math.max(atGoal.spread, 1e-7),
  );
  if (!found) {
    const names = joints.map(({ joint }) => joint).join(', ');
    const more = joints.length + 1 - readings.length;
    const say = `Re-clock first: put match marks on, turn one joint on (${names}) and measure again; ${Math.max(1, more)} more ${more > 1 ? 'clockings tell' : 'clocking tells'} all the others.`;
    return [{ way: 're-clock', say }];
  }
  const [best] = found;
  if (!best || best.tir > WORTH * atGoal.tir) return [];
  const moves = joints
    .map(({ joint, positions }, k) => `${joint} at position ${best.positions[k]} of ${positions}`)
    .join(', ');
  return [
    {
      way: 're-clock',
      say: `Re-clock: ${moves}. Expect TIR ${text(best.tir)} ± ${text(4 * best.spread)} instead of ${text(atGoal.tir)}.`,
    },
  ];
}

/** Run-out at the goal station in every clocking whose sets have both seats and that station. */
function clockedReadings(record: TrueRecord, part: TruePart): ClockedReading[] {
  const joints = part.joints ?? [];
  const groups = new Map<string, { positions: number[]; sets: SetMadeOut[] }>();
  for (const kept of record.sets) {
    if (kept.body.part !== part.part || kept.body.face !== undefined) continue;
    const found = madeOut(kept);
    if (!found.ok || found.set.warm) continue;
    const positions = joints.map(({ joint }) => kept.body.clocking?.[joint] ?? 0);
    const group = groups.get(positions.join()) ?? { positions, sets: [] };
    groups.set(positions.join(), { positions, sets: [...group.sets, found.set] });
  }
  const seats = { a: lengthOf(part.seats.a), b: lengthOf(part.seats.b) };
  const goal = lengthOf(part.goal.station);
  return [...groups.values()].flatMap(({ positions, sets }) => {
    const last = (station: number) => sets.filter((set) => Math.abs(set.station - station) < SAME_STATION).at(-1);
    const [a, b, at] = [last(seats.a), last(seats.b), last(goal)];
    if (!a || !b || !at) return [];
    return [{ positions, offset: runoutAt([a.section, b.section, at.section], seats, goal).offset }];
  });
}

function shimWords(record: TrueRecord, { part }: PartView, text: Text): WayWords[] {
  const face = record.sets.filter(({ body }) => body.part === part.part && body.face !== undefined).at(-1);
  const found = face && madeOut(face);
  if (!face || !found?.ok) return [];
  const diameter = lengthOf((face.body as TrueSet & { face: string }).face);
  // The tilt is what once-a-turn part of the face leaves; waves of the face cannot be shimmed away.
  const { x, y } = found.set.section.offset;
  const { shim } = faceSquareness.run({ tir: 2 * Math.hypot(x, y), diameter, shimDiameter: diameter, reach: 0 });
  const low = clockText(Math.atan2(-y, -x));
  return [
    {
      way: 'shim',
      say: `Shim the face: ${text(shim)} at ${low}, tapering to nothing opposite, on a circle of ${face.body.face}.`,
    },
  ];
}

function jawWords({ atGoal, sets }: PartView, text: Text): WayWords[] {
  if (!atGoal || sets.length < 2) return [];
  const { jaws } = fourJaw(atGoal.offset);
  const named = (['12:00', '3:00', '6:00', '9:00'] as const).map((clock, k) => {
    const move = jaws[k] as number;
    return `${clock} ${move >= 0 ? 'in' : 'out'} ${text(Math.abs(move))}`;
  });
  return [
    { way: 'four-jaw', say: `To turn this section true in a four-jaw chuck, move the jaws: ${named.join(', ')}.` },
  ];
}

/** A bend between the seats can be pressed: ram on its high side, rests at the seats. */
function pressWords({ part, diagnosis }: PartView, text: Text): WayWords[] {
  const best = diagnosis?.best;
  if (best?.kind !== 'bend' || best.at === undefined) return [];
  const [low, high] = [lengthOf(part.seats.a), lengthOf(part.seats.b)].sort((a, b) => a - b) as [number, number];
  const [before, after, span] = [best.at - low, high - best.at, high - low];
  const share = (before * after) / span;
  const apex = { x: -best.kink.x * share, y: -best.kink.y * share };
  const wanted = Math.hypot(apex.x, apex.y);
  const place = formatQuantity(best.at, 'length', 'mm', { digits: 4 });
  const where = `Press at ${place}, ram at ${clockText(Math.atan2(apex.y, apex.x))}, rests under both seats; ${text(wanted)} must stay`;
  if (!part.press)
    return [
      {
        way: 'press',
        say: `${where}. Diameter and yield strength would tell how far to push. Not for hardened steel.`,
      },
    ];
  const push = pressSet.run({
    ...{ span, at: before, diameter: lengthOf(part.press.diameter), yieldStress: pressureOf(part.press.yield) },
    ...{ modulus: 2.05e11, wanted },
  });
  return [
    {
      way: 'press',
      say: `${where}: yielding begins at ${text(push.firstYield)}; push ${text(push.pushFirst)} first, let go, measure, then a little further each time, never at once beyond ${text(push.pushMost)}. Stand beside it, not in line with it. Not for hardened steel.`,
    },
  ];
}

function pressureOf(text: string): number {
  const parsed = parseQuantity(text, 'pressure');
  if (!parsed.ok) throw new RangeError(`${text}: ${parsed.problem}`);
  return parsed.si;
}
