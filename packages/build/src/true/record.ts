import type { Json } from '../document/json.ts';
import { entryContent, foldLog, type LogEntry, parseLogEntry, parseLogLines } from '../document/log.ts';
import { appendedLines, type BadLine } from '../document/ndjson.ts';
import type { Fault } from '../fault.ts';
import { bodyFaults } from './read-body.ts';
import type { Kept, TruePart, TrueRound, TrueSet } from './types.ts';

/** What the lines of `true.ndjson` say, whatever their order. */
export interface TrueRecord {
  /** Latest word on each part, by id. */
  readonly parts: ReadonlyMap<string, Kept<TruePart>>;
  /** Sets and rounds in sequence, those struck out left out. */
  readonly sets: readonly Kept<TrueSet>[];
  readonly rounds: readonly Kept<TrueRound>[];
  /** Ids of sets and rounds in the sequence they were made in. */
  readonly sequence: readonly string[];
  readonly struck: readonly string[];
  /** Lines and entries that could not be used; they stay in the file. */
  readonly bad: readonly BadLine[];
  readonly unusable: readonly { readonly id: string; readonly faults: readonly Fault[] }[];
  /** Ids that stand for more than one content; the first in sequence counts. */
  readonly clashes: readonly string[];
}

/** Reads the record. The same for any order of the lines, and for lines that stand there twice. */
export function readTrue(text: string): TrueRecord {
  const { entries, bad, torn } = parseLogLines(text);
  const folded = foldLog(entries);
  const struck = new Set(folded.struck);
  const parts = new Map<string, Kept<TruePart>>();
  const sets: Kept<TrueSet>[] = [];
  const rounds: Kept<TrueRound>[] = [];
  const sequence: string[] = [];
  const unusable: { id: string; faults: Fault[] }[] = [];
  const seen = new Set<string>();
  for (const { id, kind, taken, body } of folded.entries) {
    if (struck.has(id) || seen.has(id)) continue;
    seen.add(id);
    const faults = bodyFaults(kind, body);
    if (faults.length > 0) unusable.push({ id, faults });
    // The body was checked just before, key by key.
    else if (kind === 'true-part')
      parts.set((body as unknown as TruePart).part, { id, taken, body: body as unknown as TruePart });
    else if (kind === 'true-set') sets.push({ id, taken, body: body as unknown as TrueSet });
    else if (kind === 'true-round') rounds.push({ id, taken, body: body as unknown as TrueRound });
    if (faults.length === 0 && (kind === 'true-set' || kind === 'true-round')) sequence.push(id);
  }
  return {
    parts,
    sets,
    rounds,
    sequence,
    struck: folded.struck,
    bad: torn ? [...bad, torn] : bad,
    unusable,
    clashes: folded.clashes,
  };
}

export type Append =
  | { readonly ok: true; readonly text: string; readonly added: readonly string[]; readonly known: readonly string[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Text to add to the record so that it holds these entries, each once; those already there add nothing.
 * Nothing is added when any of them is wrong, or its id already stands for something else.
 * @param existing text of the file as it is
 */
export function appendTrue(existing: string, values: readonly Json[]): Append {
  const faults: Fault[] = [];
  const known = new Map(parseLogLines(existing).entries.map((entry) => [entry.id, entryContent(entry)]));
  const fresh: LogEntry[] = [];
  const repeated: string[] = [];
  for (const [k, value] of values.entries()) {
    const parsed = parseLogEntry(value);
    const found = parsed.ok
      ? bodyFaults(parsed.entry.kind, parsed.entry.body).map((fault) => ({
          ...fault,
          address: `/body${fault.address}`,
        }))
      : parsed.faults;
    faults.push(...found.map((fault) => ({ ...fault, address: `/${k}${fault.address}` })));
    if (!parsed.ok || found.length > 0) continue;
    const { entry } = parsed;
    const content = entryContent(entry);
    const before = known.get(entry.id);
    if (before === undefined) fresh.push(entry);
    else if (before === content) repeated.push(entry.id);
    else
      faults.push({
        code: 'true.clash',
        address: `/${k}/id`,
        problem: 'This id already stands for another entry.',
        read: entry.id,
        accepted: 'an id that was never used: device, point, counter',
      });
    known.set(entry.id, content);
  }
  if (faults.length > 0) return { ok: false, faults };
  const text = fresh.length === 0 ? '' : appendedLines(existing, fresh as unknown as Json[]);
  return { ok: true, text, added: fresh.map(({ id }) => id), known: repeated };
}

/** Next counter of a device in this record, so that its ids are never used twice. */
export function nextCounter(text: string, device: string): number {
  const counters = parseLogLines(text)
    .entries.filter(({ id }) => id.startsWith(`${device}.`))
    .map(({ id }) => Number(id.slice(device.length + 1)));
  return counters.length === 0 ? 1 : Math.max(...counters) + 1;
}

/** Id of the last set or round of a part, for `after`; null for a first one. */
export function lastOf(record: TrueRecord, part: string): string | null {
  const own = new Set([...record.sets, ...record.rounds].filter(({ body }) => body.part === part).map(({ id }) => id));
  return record.sequence.filter((id) => own.has(id)).at(-1) ?? record.parts.get(part)?.id ?? null;
}
