import type { RunoutAt } from '@oddwheel/mechanics/runout/axis';
import { formatQuantity } from '@oddwheel/quantity/format';
import { type LogEntry, parseLogLines } from '../document/log.ts';
import type { Session } from '../session-types.ts';
import { uncountedBeads } from './bead-effect.ts';
import { budgetView, countedSections, faceSwing } from './budget-view.ts';
import { clockText } from './clock.ts';
import { drawnSet } from './drawn-set.ts';
import { nextSheet } from './next-sheet.ts';
import { type PartView, partView } from './part-view.ts';
import { readTrue, type TrueRecord } from './record.ts';
import { chuckWords, refitsOf, refitWords } from './refits.ts';
import { lengthOf, madeOut } from './section.ts';
import type { EntrySheet, PartSheet, RoundSheet, StationSheet, TrueSheet } from './sheet-types.ts';
import { dialText, withSpread } from './spread.ts';
import { swingWords } from './swing.ts';
import type { Kept, TruePart, TrueRound, TrueSet } from './types.ts';
import { otherWays } from './ways.ts';
import { budgetWords, diagnosisWords, lengthWords, refusedUse } from './words.ts';

const SAME_STATION = 0.5e-3;

/**
 * Everything that a sheet of run-out shows of a record, as plain data.
 * @param session the build that the parts are of, with the beads of the record; null when none is open
 */
export function trueSheet(text: string, session: Session | null): TrueSheet {
  const record = readTrue(text);
  const lines = parseLogLines(text).entries;
  return {
    parts: [...record.parts.keys()].flatMap((id) => {
      const view = partView(record, id);
      return view ? [partSheet(record, view, lines, session)] : [];
    }),
    odd: [
      ...record.bad.map(({ line, problem }) => `Line ${line} of the record cannot be used: ${problem}`),
      ...record.unusable.map(
        ({ id, faults }) =>
          `Entry ${id} cannot be used: ${faults.map(({ address, problem }) => `${address} ${problem}`).join(' ')}`,
      ),
      ...record.clashes.map((id) => `Two different entries have the id ${id}; the first counts.`),
    ],
  };
}

function partSheet(record: TrueRecord, view: PartView, lines: readonly LogEntry[], session: Session | null): PartSheet {
  const { part, goal, runouts, atGoal, diagnosis } = view;
  const own = record.sets.filter(({ body }) => body.part === part.part);
  const unit = own.at(-1)?.body.unit ?? (part.goal.tir.includes('mm') ? 'mm' : 'thou');
  const drawn = own.flatMap((kept) => drawnSet(kept, unit) ?? []).at(-1);
  const budget = budgetView(part, atGoal, countedSections(view), faceSwing(record, part.part));
  const refused = refusedUse(part);
  const uncounted = uncountedBeads(session, record, part);
  return {
    id: part.part,
    name: part.name ?? part.part,
    part,
    unit,
    goal,
    goalWords: lengthWords(goal, unit),
    ...(atGoal && view.sets.some(({ station }) => near(station, lengthOf(part.goal.station)))
      ? { now: stationSheet(atGoal, part, unit) }
      : {}),
    ...(view.swing ? { swing: swingWords(view.swing, unit) } : {}),
    stations: runouts.map((one) => stationSheet(one, part, unit)),
    ...(diagnosis ? { diagnosis: diagnosisWords(diagnosis) } : {}),
    ...(diagnosis?.best.at === undefined ? {} : { kink: diagnosis.best.at }),
    ...(drawn ? { drawn } : {}),
    rounds: roundSheets(record, view, unit),
    ...(uncounted === null ? {} : { uncounted }),
    next: nextSheet(view, unit, session),
    ways: refused === undefined && view.good !== true ? otherWays(record, view, unit) : [],
    budget: budget ? budgetWords(budget, unit) : [],
    repeats: [...chuckWords(record, view, unit), ...refitWords(refitsOf(record, view), unit)],
    repeatable: [
      ...(own.at(-1)?.body.setup === 'chuck' ? ['turned' as const] : []),
      ...((part.joints ?? []).length > 0 && atGoal ? ['refit' as const] : []),
    ],
    entries: entrySheets(view, lines, unit),
  };
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < SAME_STATION;

function stationSheet(runout: RunoutAt, part: TruePart, unit: string): StationSheet {
  const { station, tir, spread, high, offset } = runout;
  const is = (text: string) => near(lengthOf(text), station);
  const role = is(part.seats.a) || is(part.seats.b) ? 'seat' : is(part.goal.station) ? 'goal' : 'other';
  const name = formatQuantity(station, 'length', 'mm', { digits: 4 });
  const words = `At ${name}: TIR ${withSpread(tir, 4 * spread, unit)}, high spot at ${clockText(high)} (offset ${dialText(tir / 2, unit)}\u2009${unit}).`;
  return { station, name, role, tir, spread, high, offset, words };
}

/** The history at the station that matters, with what was done in between. */
function roundSheets(record: TrueRecord, { part, history }: PartView, unit: string): RoundSheet[] {
  const rounds = new Map(
    record.rounds.filter(({ body }) => body.part === part.part).map((round) => [round.id, round.body]),
  );
  const refitted = new Set(record.sets.filter(({ body }) => body.refit).map(({ id }) => id));
  const points = new Map(history.map((moment) => [moment.id, moment]));
  const sheets: RoundSheet[] = [];
  let count = 0;
  let did: string[] = [];
  for (const id of record.sequence) {
    const round = rounds.get(id);
    if (round) {
      count += 1;
      did.push(roundText(round));
    }
    const moment = points.get(id);
    if (!moment) continue;
    const before = sheets.at(-1);
    const label = before !== undefined && did.length === 0 ? 'again' : count === 0 ? 'start' : String(count);
    const came =
      before === undefined
        ? 'first reading'
        : `TIR ${lengthWords(before.tir, unit)} to ${lengthWords(moment.tir, unit)}`;
    const worse =
      before !== undefined && moment.tir > before.tir && did.length > 0 ? '; worse, which it learns from too' : '';
    const warm = moment.warm ? '; read warm, so it is taken with care' : '';
    sheets.push({
      id,
      label,
      tir: moment.tir,
      words: lengthWords(moment.tir, unit),
      warm: moment.warm,
      did: `${did.length > 0 ? did.join(', ') : refitted.has(id) ? 'put together again' : 'measured'}: ${came}${worse}${warm}`,
    });
    did = [];
  }
  return sheets;
}

const roundText = ({ way, bead }: TrueRound): string => (bead ? `bead ${bead.length} at ${bead.clock}` : way);

/** All entries of a part, those struck out too, in the order they were made. */
function entrySheets({ part, leftOut }: PartView, lines: readonly LogEntry[], unit: string): EntrySheet[] {
  const whys = new Map(leftOut.map(({ id, why }) => [id, why]));
  const struck = struckMap(lines);
  const seen = new Set<string>();
  const sheets: EntrySheet[] = [];
  for (const { id, kind, taken, body } of lines) {
    if (seen.has(id) || typeof body !== 'object' || body === null || !('part' in body) || body.part !== part.part)
      continue;
    seen.add(id);
    const shown = KINDS[kind as keyof typeof KINDS];
    if (!shown) continue;
    const why = whys.get(id);
    const by = struck.get(id);
    // Entries that cannot be used are told apart from the parts: they have nothing to show here.
    const says = entryText(kind, { id, taken, body: body as unknown }, unit);
    if (says === undefined) continue;
    sheets.push({
      ...{ id, kind: shown, taken, says },
      ...(kind === 'true-set' && 'picture' in body && typeof body.picture === 'string'
        ? { picture: body.picture }
        : {}),
      ...(why === undefined || by !== undefined ? {} : { why }),
      ...(by === undefined ? {} : { struckBy: by }),
    });
  }
  return sheets.sort((a, b) => (a.taken < b.taken ? -1 : a.taken > b.taken ? 1 : 0));
}

const KINDS = { 'true-part': 'part', 'true-set': 'set', 'true-round': 'round' } as const;

/** Which entry is struck by which strike, strikes that are struck themselves left out. */
function struckMap(lines: readonly LogEntry[]): Map<string, string> {
  const by = new Map<string, string>();
  for (const { id, kind, body } of lines)
    if (kind === 'strike' && typeof body === 'object' && body !== null && 'of' in body && typeof body.of === 'string')
      by.set(body.of, id);
  const holds = (strike: string, depth = 0): boolean => {
    const of = by.get(strike);
    return of === undefined || depth > by.size || !holds(of, depth + 1);
  };
  return new Map([...by].filter(([, strike]) => holds(strike)));
}

function entryText(kind: string, { id, taken, body }: Kept<unknown>, unit: string): string | undefined {
  if (kind === 'true-part') {
    const { seats, goal } = body as TruePart;
    return `Seats at ${seats.a} and ${seats.b}; wanted at ${goal.station}: TIR ${goal.tir}`;
  }
  if (kind === 'true-round') {
    const round = body as TrueRound;
    return `Done: ${roundText(round)}${round.note ? `; ${round.note}` : ''}`;
  }
  const set = body as TrueSet;
  const found = madeOut({ id, taken, body: set });
  const what = set.face === undefined ? `At ${set.station}` : `Face at ${set.station}`;
  if (!found.ok) return `${what}: ${found.problem}`;
  const many = set.readings ? `${set.readings.length} readings` : 'highest and lowest';
  const { offset } = found.set.section;
  const high = clockText(Math.atan2(offset.y, offset.x));
  return `${what}: TIR ${lengthWords(found.set.tir, unit)} as read, high spot ${high}; ${set.setup}, ${many}${set.note ? `; ${set.note}` : ''}`;
}
