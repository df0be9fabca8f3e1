import type { Kind } from '@oddwheel/quantity/kinds';
import { toSi } from '@oddwheel/quantity/units';

/** How a number was obtained. */
export type How = 'read' | 'memory' | 'derived' | 'common practice';

/** One column: what stands in it, and in which unit it is published. */
export interface Column {
  readonly kind: Kind;
  /** Published unit, as typed; empty for plain numbers. */
  readonly unit: string;
  readonly meaning: string;
}

/** One row, with the published numbers in the units of the columns. */
export interface Row<C extends string = string> {
  /** A column may be missing where the publication leaves it out. */
  readonly values: Readonly<Partial<Record<C, number>>>;
  readonly how: How;
  /** Source of this row, where it differs from the table's. */
  readonly source?: string;
  readonly note?: string;
}

/** A published table. */
export interface Table<C extends string = string> {
  /** Name in addresses: "chain-sizes". */
  readonly id: string;
  readonly title: string;
  readonly edition?: string;
  /** Number of the table in its publication. */
  readonly table?: string;
  /** What the rows cover, in words. */
  readonly range: string;
  readonly how: How;
  readonly source: string;
  readonly columns: Readonly<Record<C, Column>>;
  readonly rows: Readonly<Record<string, Row<C>>>;
}

/** Declares a table; its rows may only use its columns. */
export function defineTable<const C extends string>(table: Table<C>): Table<C> {
  return table;
}

/** A key that a table does not have. */
export class OffTableError extends Error {
  override readonly name = 'OffTableError';
  readonly table: string;
  readonly key: string;
  readonly nearest: readonly string[];
  constructor(table: Table, key: string) {
    const nearest = nearestKeys(table, key);
    super(`${table.title} has no row "${key}". Nearest: ${nearest.join(', ')}. It covers ${table.range}.`);
    this.table = table.id;
    this.key = key;
    this.nearest = nearest;
  }
}

/** Fewest single-character changes from one text to the other. */
function editDistance(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (before[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, (before[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    before = row;
  }
  return before[b.length] ?? 0;
}

const leadingNumber = (key: string): number => Number.parseFloat(/\d+(\.\d+)?/.exec(key)?.[0] ?? 'NaN');

/** How far a number lies from another, as a part of the larger; 1 where either is missing. */
function numberDistance(a: string, b: string): number {
  const [x, y] = [leadingNumber(a), leadingNumber(b)];
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.isNaN(x) && Number.isNaN(y) ? 0 : 1;
  return x === y ? 0 : Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y));
}

/**
 * Keys of a table most like the one asked for: by spelling, then by the number in them.
 * @param most Greatest number of keys given.
 */
export function nearestKeys(table: Table, key: string, most = 3): readonly string[] {
  const asked = key.trim().toUpperCase();
  return Object.keys(table.rows)
    .map((candidate, order) => ({
      candidate,
      order,
      letters: editDistance(asked, candidate.toUpperCase()),
      number: numberDistance(asked, candidate),
    }))
    .sort((a, b) => a.letters + 2 * a.number - (b.letters + 2 * b.number) || a.order - b.order)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

/**
 * A row as published.
 * @throws OffTableError naming the nearest keys.
 */
export function rowOf<C extends string>(table: Table<C>, key: string): Row<C> {
  const row = Object.hasOwn(table.rows, key) ? table.rows[key] : undefined;
  if (row === undefined) throw new OffTableError(table, key);
  return row;
}

/** Rows in SI units that were asked for, by table and key: published tables do not change. */
const IN_SI = new WeakMap<Table, Map<string, Readonly<Record<string, number>>>>();

/**
 * A row in SI units, by column, in the order of the columns; columns that the row leaves out are left out.
 * @throws OffTableError naming the nearest keys.
 */
export function rowInSi<C extends string>(table: Table<C>, key: string): Readonly<Partial<Record<C, number>>> {
  const kept = IN_SI.get(table);
  const known = kept?.get(key);
  // Only a row of this very table is kept under it, so its columns are those of the table.
  if (known) return known as Readonly<Partial<Record<C, number>>>;
  const row = rowOf(table, key);
  const found: Record<string, number> = {};
  for (const name of Object.keys(table.columns) as C[]) {
    const published = row.values[name];
    if (published === undefined) continue;
    const { kind, unit } = table.columns[name];
    found[name] = toSi(kind, unit, published);
  }
  if (kept) kept.set(key, found);
  else IN_SI.set(table, new Map([[key, found]]));
  return found as Readonly<Partial<Record<C, number>>>;
}

const HOW_WORDS: Readonly<Record<How, string>> = {
  read: '',
  memory: ' (from memory)',
  derived: ' (worked out)',
  'common practice': ' (common practice)',
};

/**
 * Source of a row in one line: title, edition, table, and a mark where it was not read.
 * @throws OffTableError naming the nearest keys.
 */
export function sourceOf(table: Table, key: string): string {
  const row = rowOf(table, key);
  const edition = table.edition === undefined ? '' : `, ${table.edition}`;
  const number = table.table === undefined ? '' : `, ${table.table}`;
  return `${row.source ?? `${table.source}${edition}${number}`}${HOW_WORDS[row.how]}`;
}
