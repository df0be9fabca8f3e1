import { type AdviceState, beginAdvice, learn, learnCooled } from '@oddwheel/mechanics/runout/advice-state';
import { advise } from '@oddwheel/mechanics/runout/advise';
import type { Advice, Offset } from '@oddwheel/mechanics/runout/adviser-types';
import { type Diagnosis, diagnose, type RunoutAt, runoutAt, type Section } from '@oddwheel/mechanics/runout/axis';
import { clockAngle } from './clock.ts';
import type { TrueRecord } from './record.ts';
import { lengthOf, madeOut, type SetMadeOut } from './section.ts';
import type { Kept, TruePart, TrueRound, TrueSet, TrueWeld } from './types.ts';

/** Where a part stands: its axis, what is known, and what is missing. */
export interface PartView {
  readonly part: TruePart;
  /** Latest set that counts at each station, in order of station. */
  readonly sets: readonly SetMadeOut[];
  readonly runouts: readonly RunoutAt[];
  readonly atGoal?: RunoutAt;
  readonly goal: number;
  readonly diagnosis?: Diagnosis;
  /** Run-out at the goal station after each set there, oldest first. */
  readonly history: readonly { readonly id: string; readonly tir: number; readonly warm: boolean }[];
  readonly advice?: Advice;
  readonly state?: AdviceState;
  /** What to measure or note before more can be said. */
  readonly missing: readonly string[];
  /** Sets that do not count now, and why. */
  readonly leftOut: readonly { readonly id: string; readonly why: string }[];
}

/** Stations nearer than this are one. */
const SAME_STATION = 0.5e-3;
/**
 * Answer of a part nobody has welded yet: about a tenth of a millimetre for a bead of 20 mm. A stated default of this project (common practice);
 * the wide factor is what makes it safe to begin with.
 */
const PRIOR = {
  pull: 0.005,
  pullFactor: 3,
  lag: (15 * Math.PI) / 180,
  scatter: 0.18,
  relaxation: { mean: 0.1, spread: 0.07 },
};
const ROUNDS = 12;
const BEAD_STEP = 1e-3;
const PLACES = 24;

/** State of one part by the record; undefined when the record has no such part. */
export function partView(record: TrueRecord, id: string): PartView | undefined {
  const part = record.parts.get(id)?.body;
  if (!part) return undefined;
  const { good, leftOut } = usable(record, id);
  const events = sequenceOf(record, id, good);
  const sets = latestPerStation(good);
  const seats = { a: lengthOf(part.seats.a), b: lengthOf(part.seats.b) };
  const goalStation = lengthOf(part.goal.station);
  const goal = lengthOf(part.goal.tir);
  const missing = missingSeats(sets, part);
  const whole = missing.length === 0;
  const sections = sets.map(({ section }) => section);
  const runouts = whole ? sets.map(({ station }) => runoutAt(sections, seats, station)) : [];
  const measured = sets.some(({ station }) => same(station, goalStation));
  if (!measured) missing.push(`Measure the station that matters, at ${part.goal.station}.`);
  const history = whole ? historyOf(events, part) : [];
  const drives = part.use === undefined || part.use === 'drive';
  const weld = drives && whole && measured && part.weld ? weldAdvice(part, part.weld, events) : undefined;
  if (weld?.missing) missing.push(weld.missing);
  return {
    part,
    sets,
    runouts,
    ...(whole && sections.length > 1 ? { atGoal: runoutAt(sections, seats, goalStation) } : {}),
    goal,
    ...(whole && sections.length > 2 ? { diagnosis: diagnose(sections, seats, jointsOf(part)) } : {}),
    history,
    ...(weld?.state ? { state: weld.state, advice: advise(weld.state) } : {}),
    missing,
    leftOut,
  };
}

const same = (a: number, b: number): boolean => Math.abs(a - b) < SAME_STATION;
const jointsOf = (part: TruePart): number[] => (part.joints ?? []).map(({ station }) => lengthOf(station));

type Event = { readonly set: SetMadeOut } | { readonly round: Kept<TrueRound> };

/** Sets that count: they make a section, are radial, and have the clocking of the last one. */
function usable(record: TrueRecord, id: string): { good: SetMadeOut[]; leftOut: { id: string; why: string }[] } {
  const own = record.sets.filter(({ body }) => body.part === id);
  const clocking = clockingText(own.at(-1)?.body);
  const good: SetMadeOut[] = [];
  const leftOut: { id: string; why: string }[] = [];
  for (const kept of own) {
    const found = madeOut(kept);
    if (!found.ok) leftOut.push({ id: kept.id, why: found.problem });
    else if (clockingText(kept.body) !== clocking)
      leftOut.push({ id: kept.id, why: 'It was taken in another clocking.' });
    else if (found.set.face !== undefined)
      leftOut.push({ id: kept.id, why: 'It is of a face; its tilt stands by itself.' });
    else if (found.set.form && !found.set.form.closes) leftOut.push({ id: kept.id, why: found.set.doubts.join(' ') });
    else good.push(found.set);
  }
  return { good, leftOut };
}

function clockingText(set: TrueSet | undefined): string {
  return Object.entries(set?.clocking ?? {})
    .filter(([, mark]) => mark !== 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([joint, mark]) => `${joint}:${mark}`)
    .join(' ');
}

function sequenceOf(record: TrueRecord, id: string, good: readonly SetMadeOut[]): Event[] {
  const sets = new Map(good.map((set) => [set.id, set]));
  const rounds = new Map(record.rounds.filter(({ body }) => body.part === id).map((round) => [round.id, round]));
  return record.sequence.flatMap((entry): Event[] => {
    const set = sets.get(entry);
    const round = rounds.get(entry);
    return set ? [{ set }] : round ? [{ round }] : [];
  });
}

function latestPerStation(sets: readonly SetMadeOut[]): SetMadeOut[] {
  const latest: SetMadeOut[] = [];
  for (const set of sets) {
    const k = latest.findIndex(({ station }) => same(station, set.station));
    if (k < 0) latest.push(set);
    else latest[k] = set;
  }
  return latest.sort((one, two) => one.station - two.station);
}

function missingSeats(sets: readonly SetMadeOut[], { seats }: TruePart): string[] {
  return [seats.a, seats.b]
    .filter((seat) => !sets.some(({ station }) => same(station, lengthOf(seat))))
    .map((seat) => `Measure the bearing seat at ${seat}: run-out is stated against the line through both seats.`);
}

/** Run-out at the goal station by what was known after each set there. */
function historyOf(
  events: readonly Event[],
  part: TruePart,
): { id: string; tir: number; warm: boolean; offset: Offset; spread: number }[] {
  const seats = { a: lengthOf(part.seats.a), b: lengthOf(part.seats.b) };
  const station = lengthOf(part.goal.station);
  const so: SetMadeOut[] = [];
  // Seats measured later stand for those not yet measured: a set inherits them.
  const all = events.flatMap((event) => ('set' in event ? [event.set] : []));
  return events.flatMap((event) => {
    if (!('set' in event)) return [];
    so.push(event.set);
    if (!same(event.set.station, station)) return [];
    const known = latestPerStation(so);
    const sections: Section[] = known.map(({ section }) => section);
    for (const seat of [seats.a, seats.b])
      if (!known.some((one) => same(one.station, seat)))
        sections.push(
          ...all
            .filter((one) => same(one.station, seat))
            .slice(0, 1)
            .map(({ section }) => section),
        );
    const { tir, offset, spread } = runoutAt(sections, seats, station);
    return [{ id: event.set.id, tir, warm: event.set.warm, offset, spread }];
  });
}

/** The adviser's state, taught by every bead that has a reading before and after. */
function weldAdvice(
  part: TruePart,
  weld: TrueWeld,
  events: readonly Event[],
): { state?: AdviceState; missing?: string } {
  const moments = new Map(historyOf(events, part).map((moment) => [moment.id, moment]));
  let state: AdviceState | undefined;
  let last: Offset | undefined;
  let bead: TrueRound['bead'];
  for (const event of events) {
    if ('round' in event) {
      if (event.round.body.way !== 'bead') state = undefined;
      else if (bead)
        return { missing: 'A bead has no reading before the next one: strike it out, or measure after each bead.' };
      else bead = event.round.body.bead;
      continue;
    }
    const moment = moments.get(event.set.id);
    if (!moment) continue;
    state ??= moment.warm ? undefined : beginAdvice(beadPart(part, weld, moment.offset, moment.spread));
    if (!state) continue;
    if (bead && last) {
      const laid = { clock: clockAngle(bead.clock) ?? 0, length: lengthOf(bead.length), ...segmentOf(bead) };
      state = learn(state, laid, last, moment.offset, moment.warm ? 'warm' : 'cold');
      bead = undefined;
    } else if (state.warm && !moment.warm) state = learnCooled(state, moment.offset);
    else if (!moment.warm) state = { ...state, now: moment.offset };
    last = moment.offset;
  }
  if (bead) return { missing: 'Measure after the last bead, once the part has cooled.' };
  return state ? { state } : { missing: 'Measure the part cold before the first bead.' };
}

const segmentOf = (bead: NonNullable<TrueRound['bead']>) =>
  bead.segment === undefined ? {} : { segment: bead.segment };

function beadPart(part: TruePart, weld: TrueWeld, measured: Offset, spread: number) {
  const [a, b] = [lengthOf(part.seats.a), lengthOf(part.seats.b)];
  const watched = lengthOf(part.goal.station);
  const between = watched > Math.min(a, b) && watched < Math.max(a, b);
  return {
    mode: weld.mode,
    measured,
    readingSpread: Math.max(spread, 1e-7),
    goal: lengthOf(part.goal.tir),
    lies: between ? ('between' as const) : ('beyond' as const),
    beads: { smallest: lengthOf(weld.smallest), largest: lengthOf(weld.largest), step: BEAD_STEP, places: PLACES },
    prior: PRIOR,
    rounds: ROUNDS + (weld.owed?.length ?? 0),
    owed: (weld.owed ?? []).map(({ clock, length }) => ({ clock: clockAngle(clock) ?? 0, length: lengthOf(length) })),
  };
}
