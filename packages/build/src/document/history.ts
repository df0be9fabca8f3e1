/** The history of a build: what was changed, how to take it back, and which changes never reached the disk. */
import { diffJson } from './diff.ts';
import { hashText } from './hash.ts';
import { isJsonObject, type Json } from './json.ts';
import { parseJsonText } from './json-text.ts';
import { type BadLine, parseLines } from './ndjson.ts';
import { applyPatches, type Patch } from './patch.ts';
import { parsePatches } from './patch-shape.ts';

const KINDS = ['base', 'edit', 'undo', 'redo', 'foreign'] as const;

/** One line of the history. */
export interface HistoryEntry {
  readonly v: 1;
  readonly id: string;
  /** base: a whole text to start from. foreign: a change made in another program. */
  readonly kind: (typeof KINDS)[number];
  /** What was done, for the builder. */
  readonly name: string;
  /** When, as an ISO 8601 time; for show only, the order comes from the hashes. */
  readonly at: string;
  readonly who?: string;
  /** Hash of the text before and after. */
  readonly before: string;
  readonly after: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  /** The edit that is undone or redone. */
  readonly of?: string;
  /** The whole text after: of a base, and of a foreign change that its patches don't give byte for byte. */
  readonly text?: string;
}

export interface History {
  readonly entries: HistoryEntry[];
  /** Lines that are no entries; they are passed over. */
  readonly bad: BadLine[];
}

/** Reads a history file. A line that is no entry costs the steps that hang on it, nothing else. */
export function parseHistory(text: string): History {
  const { values, bad, torn } = parseLines(text);
  const unusable = [...bad, ...(torn ? [torn] : [])];
  const entries: HistoryEntry[] = [];
  for (const { line, text: content, value } of values) {
    const entry = entryOf(value);
    if (entry) entries.push(entry);
    else unusable.push({ line, text: content, problem: 'The line is no history entry.' });
  }
  return { entries, bad: unusable };
}

function entryOf(value: Json): HistoryEntry | undefined {
  if (!isJsonObject(value) || value.v !== 1) return undefined;
  const { kind, patches, inverse } = value;
  const texts = [value.id, value.name, value.at, value.before, value.after];
  const optional = [value.who, value.of, value.text];
  const fits =
    KINDS.some((known) => known === kind) &&
    texts.every((text) => typeof text === 'string') &&
    optional.every((text) => text === undefined || typeof text === 'string') &&
    [patches, inverse].every((list) => list !== undefined && parsePatches(list).ok) &&
    (kind !== 'base' || typeof value.text === 'string') &&
    ((kind !== 'undo' && kind !== 'redo') || typeof value.of === 'string');
  return fits ? (value as unknown as HistoryEntry) : undefined;
}

export interface HistoryFold {
  /** Entries that can be undone, the latest last. */
  readonly undo: HistoryEntry[];
  /** Entries that can be redone, the next one last. */
  readonly redo: HistoryEntry[];
  /** Ids of entries whose result never reached the disk. */
  readonly void: string[];
  /** True when no entry leads to the current text: it was changed outside, or there is no history. */
  readonly unknown: boolean;
}

/**
 * Undo and redo lists for the text with hash `currentHash`.
 *
 * An entry is written before the text it makes, so the last one may be void; and so may any whose successor starts from
 * where it started. The chain of hashes decides that, not clocks. Where the chain breaks, steps before the break are
 * gone. An edit, and a foreign change of any value, clear the redo list.
 *
 * `reached` is the hash of a text that is known to have been on the disk: the entry that made it is not void. Without it, a
 * last step that another program took back exactly looks as if it had never been done.
 */
export function foldHistory(entries: readonly HistoryEntry[], currentHash: string, reached?: string): HistoryFold {
  const { chain, voided } = chainOf(entries);
  const tip = chain.at(-1);
  const arrived = tip?.after === currentHash;
  const lost = tip !== undefined && !arrived && canBeVoid(tip, reached) && tip.before === currentHash;
  if (lost) {
    voided.push(tip.id);
    chain.pop();
  }
  const undo: HistoryEntry[] = [];
  let redo: HistoryEntry[] = [];
  for (const entry of chain) {
    if (entry.kind === 'undo') move(entry.of, undo, redo);
    else if (entry.kind === 'redo') move(entry.of, redo, undo);
    else if (entry.kind !== 'base' && entry.patches.length > 0) {
      undo.push(entry);
      redo = [];
    }
  }
  return { undo, redo, void: voided, unknown: !arrived && !lost };
}

function move(id: string | undefined, from: HistoryEntry[], to: HistoryEntry[]): void {
  const at = from.findLastIndex((entry) => entry.id === id);
  if (at >= 0) to.push(...from.splice(at, 1));
}

function canBeVoid({ kind, after }: HistoryEntry, reached?: string): boolean {
  if (after === reached) return false;
  return kind === 'edit' || kind === 'undo' || kind === 'redo';
}

/** The last unbroken chain of entries, without those that its later entries show to be void. */
function chainOf(entries: readonly HistoryEntry[]): { chain: HistoryEntry[]; voided: string[] } {
  let chain: HistoryEntry[] = [];
  const voided: string[] = [];
  for (const entry of entries) {
    const tip = chain.at(-1);
    if (tip && tip.after !== entry.before) {
      if (canBeVoid(tip) && tip.before === entry.before) {
        voided.push(tip.id);
        chain.pop();
      } else {
        chain = [];
      }
    }
    chain.push(entry);
  }
  return { chain, voided };
}

/**
 * The text with hash `hash`, rebuilt from the nearest whole text before it and the patches since. Without `hash`, the last
 * text the history leads to. Undefined when the history does not hold it; what is returned always has that hash.
 */
export function replay(entries: readonly HistoryEntry[], hash = entries.at(-1)?.after): string | undefined {
  const steps: HistoryEntry[] = [];
  let wanted = hash;
  for (const entry of entries.toReversed()) {
    if (entry.after !== wanted) continue;
    steps.push(entry);
    if (entry.text !== undefined) break;
    wanted = entry.before;
  }
  const start = steps.pop()?.text;
  if (start === undefined) return undefined;
  const lists = steps.toReversed().map(({ patches }) => patches);
  // All at once reads the text once. One by one is exact also where a step changed the layout of the file.
  const isWanted = (text: string | undefined) => text !== undefined && hashText(text) === hash;
  const quick = applyAll(start, [lists.flat()]);
  if (isWanted(quick)) return quick;
  const exact = applyAll(start, lists);
  return isWanted(exact) ? exact : undefined;
}

function applyAll(start: string, lists: readonly (readonly Patch[])[]): string | undefined {
  let text = start;
  for (const patches of lists) {
    const next = applyPatches(text, patches);
    if (!next.ok) return undefined;
    text = next.text;
  }
  return text;
}

/** Name of the entry for a change that was made outside. */
export const FOREIGN_NAME = 'Edited in another program';

/**
 * The entry to add so that the history leads to the current text: a base when there is none to start from, else a
 * foreign change from the last known text. Undefined when the history leads there already.
 *
 * `text` is the current text (whole JSON), `at` the time as ISO 8601, `id` the id for the entry,
 * `reached` as in `foldHistory`.
 */
export function catchUp(
  entries: readonly HistoryEntry[],
  text: string,
  at: string,
  id: string,
  reached?: string,
): HistoryEntry | undefined {
  const after = hashText(text);
  if (!foldHistory(entries, after, reached).unknown) return undefined;
  const current = parseJsonText(text);
  if (!current.ok) return undefined;
  const tip = chainOf(entries).chain.at(-1);
  const starts = tip === undefined ? [] : [tip.after, ...(canBeVoid(tip, reached) ? [tip.before] : [])];
  // The last entry may be void. The nearer text is the one that the other program had before it.
  const nearest = starts
    .flatMap((before) => {
      const start = replay(entries, before);
      const parsed = start === undefined ? undefined : parseJsonText(start);
      if (start === undefined || !parsed?.ok) return [];
      return [{ before, start, value: parsed.value, patches: diffJson(parsed.value, current.value) }];
    })
    .reduce<Start | undefined>((a, b) => (a && a.patches.length <= b.patches.length ? a : b), undefined);
  const common = { v: 1, id, at, after } as const;
  if (!nearest) return { ...common, kind: 'base', name: 'Opened', before: after, patches: [], inverse: [], text };
  const { before, start, value, patches } = nearest;
  const patched = applyPatches(start, patches);
  const exact = patched.ok && patched.text === text;
  return {
    ...common,
    kind: 'foreign',
    name: FOREIGN_NAME,
    before,
    patches,
    inverse: exact ? patched.inverse : diffJson(current.value, value),
    ...(exact ? {} : { text }),
  };
}

interface Start {
  readonly before: string;
  readonly start: string;
  readonly value: Json;
  readonly patches: Patch[];
}
