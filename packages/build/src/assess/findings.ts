import { reuse } from '../model/cache.ts';
import type { Value } from '../model/model.ts';
import { type Amount, looksAt, type Outcome, outcomeOf, wantedReserve } from './checks/check.ts';
import { type CornerResult, type Evaluation, leastAt, lowest, PLAIN_HOLDS, type Row } from './evaluation.ts';
import { CONSEQUENCES, type Finding, type Measured, type Severity, type Spread } from './types.ts';
import { moverOf } from './uncertainty.ts';

const ORDER: readonly Severity[] = ['fails', 'unknown', 'thin', 'holds'];

export const findingId = (row: Row): string => `${row.check.id}:${row.subject.address}`;

/** Outcome of a row at one corner and column, computed anew: for its words, which the reserves do not hold. */
export function outcomeAt(evaluation: Evaluation, result: CornerResult, row: Row, column: number): Outcome | null {
  const { scene, atSlider } = result;
  if (!row.check.perCase) return outcomeOf(row.check, scene, row.subject, null);
  const load = column === evaluation.columns - 1 ? atSlider : (scene.cases[column] ?? null);
  return load && looksAt(row.check, load) ? outcomeOf(row.check, scene, row.subject, load) : null;
}

/** Severity of one number against its design reserve. */
function severityOf(number: number, wanted: number, atWorst: 'fails' | 'thin', plain: boolean): Severity {
  if (Number.isNaN(number)) return 'unknown';
  if (number < 1) return atWorst;
  if (plain || number >= wanted) return 'holds';
  return 'thin';
}

const text = (evaluation: Evaluation, amount: Amount): Measured => ({
  name: amount.name,
  value: amount.value,
  kind: amount.kind,
  text: evaluation.middle.scene.show(amount.use, amount.value),
});

interface Ends {
  readonly spread: Spread;
  readonly low: Severity;
  readonly high: Severity;
  /** An end of an uncertain input leaves the check without an answer. */
  readonly open: boolean;
}

function endsOf(evaluation: Evaluation, r: number, wanted: number, atWorst: 'fails' | 'thin', plain: boolean): Ends {
  const value = leastAt(evaluation.middle, r);
  let [lo, hi, open] = [Number.isNaN(value) ? Number.POSITIVE_INFINITY : value, value, false];
  if (Number.isNaN(value)) hi = Number.NEGATIVE_INFINITY;
  for (const other of evaluation.others) {
    const x = leastAt(other, r);
    if (Number.isNaN(x)) open = true;
    if (x < lo) lo = x;
    if (x > hi) hi = x;
  }
  const spread = { value, lo, hi };
  return {
    spread,
    low: severityOf(spread.lo, wanted, atWorst, plain),
    high: severityOf(spread.hi, wanted, atWorst, plain),
    open,
  };
}

const SINGLES = new WeakMap<Evaluation, ReadonlyMap<string, readonly CornerResult[]>>();

/** Corners that move one unknown alone, by its name. */
function singles(evaluation: Evaluation): ReadonlyMap<string, readonly CornerResult[]> {
  const known = SINGLES.get(evaluation);
  if (known) return known;
  const found = new Map<string, CornerResult[]>();
  for (const other of evaluation.others) {
    const [mover] = other.corner.keys();
    if (mover !== undefined && other.corner.size === 1) found.set(mover, [...(found.get(mover) ?? []), other]);
  }
  SINGLES.set(evaluation, found);
  return found;
}

/** Uncertain inputs that move a row at all, by the size of their part. */
function movers(evaluation: Evaluation, r: number): { readonly value: Value; readonly swing: number }[] {
  if (evaluation.others.length === 0) return [];
  const middle = leastAt(evaluation.middle, r);
  const single = singles(evaluation);
  const swings = evaluation.uncertain.map((value) => {
    const alone = single.get(moverOf(value)) ?? [];
    const swing = Math.max(0, ...alone.map((other) => Math.abs(leastAt(other, r) - middle)));
    return { value, swing };
  });
  return swings.filter((x) => x.swing > 0).sort((a, b) => b.swing - a.swing);
}

/** Inputs whose part in the spread is a twentieth of the largest, or more: the rest would not settle anything. */
function settling(all: readonly { readonly value: Value; readonly swing: number }[]): Value[] {
  const most = all[0]?.swing ?? 0;
  return all.filter((x) => x.swing >= most / 20).map((x) => x.value);
}

const list = (words: readonly string[]): string =>
  words.length <= 1 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const WORDS: Readonly<Record<Severity, string>> = {
  holds: 'holds',
  thin: 'is thin',
  fails: 'fails',
  unknown: 'is unknown',
};

function eitherWay(ends: Ends, depends: readonly Value[]): { severity: Severity; either: string | null } {
  const { low, high, spread } = ends;
  if (spread.lo === spread.hi) return { severity: low, either: null };
  const names = list(depends.map((v) => v.name));
  if (low === high) return { severity: low, either: `${WORDS[low]} either way` };
  if (low === 'fails')
    return { severity: 'unknown', either: `fails at one end and ${WORDS[high]} at the other: depends on ${names}` };
  return { severity: low, either: `${WORDS[low]} at one end and ${WORDS[high]} at the other: depends on ${names}` };
}

/** The finding of one row; null where the check does not apply. */
function toFinding(evaluation: Evaluation, row: Row, r: number): Finding | null {
  const { columns, middle, model } = evaluation;
  const worst = lowest(evaluation.reserves, r, columns);
  const column = Math.max(worst.column, 0);
  const standing = column < columns - 1 || !row.check.perCase ? evaluation.found[r] : null;
  const outcome = standing ?? (row.check.perCase ? outcomeAt(evaluation, middle, row, columns - 1) : null);
  if (!outcome) {
    // A check by load cases, and there are none: the engine's torque is not known.
    if (!row.check.perCase || middle.scene.cases.length > 0) return null;
    return openFinding(evaluation, row, r, 'No load case can be made.', [
      { address: '/brief/engine/curve', says: 'the torque curve, or peak torque and peak power with their speeds' },
    ]);
  }
  if (outcome.kind === 'unknown')
    return openFinding(evaluation, row, r, `Missing: ${list(outcome.missing.map((m) => m.says))}.`, outcome.missing);
  const id = findingId(row);
  const wanted = wantedReserve(row.check, model.overrides[id]);
  const plain = outcome.kind === 'plain';
  const ends = endsOf(evaluation, r, wanted.reserve, row.check.atWorst, plain);
  const depends = settling(movers(evaluation, r));
  const { severity, either } = eitherWay(ends, depends);
  // One literal each: hundreds of findings are written at every edit, and copies of a common part take longer.
  return {
    id,
    check: row.check.id,
    address: row.subject.address,
    element: row.subject.element,
    title: row.check.title,
    consequence: row.check.consequence,
    wanted: wanted.reserve,
    wantedFrom: wanted.from,
    row: r,
    severity: ends.open && severity !== 'fails' ? 'unknown' : severity,
    says: outcome.says(),
    either,
    governing: row.check.perCase ? caseId(evaluation, column) : null,
    demand: plain ? null : text(evaluation, outcome.demand),
    capacity: plain ? null : text(evaluation, outcome.capacity),
    reserve: plain ? null : ends.spread,
    missing: [],
    dependsOn: ends.low === ends.high ? [] : depends.map((v) => v.address),
    assumed: outcome.uses.filter((v) => v.origin === 'assumed').map((v) => v.address),
  };
}

/** A finding that has no answer yet. */
function openFinding({ model }: Evaluation, row: Row, r: number, says: string, missing: Finding['missing']): Finding {
  const id = findingId(row);
  const wanted = wantedReserve(row.check, model.overrides[id]);
  return {
    id,
    check: row.check.id,
    address: row.subject.address,
    element: row.subject.element,
    title: row.check.title,
    consequence: row.check.consequence,
    wanted: wanted.reserve,
    wantedFrom: wanted.from,
    row: r,
    severity: 'unknown',
    says,
    either: null,
    governing: null,
    demand: null,
    capacity: null,
    reserve: null,
    missing,
    dependsOn: [],
    assumed: [],
  };
}

export function caseId(evaluation: Evaluation, column: number): string {
  return evaluation.middle.scene.cases[column]?.point.id ?? 'here';
}

/** Severity that one column of a row shows, against the finding's design reserve. */
export function severityAt(evaluation: Evaluation, finding: Finding, row: Row, column: number): Severity {
  const number = evaluation.reserves[finding.row * evaluation.columns + column] ?? Number.NaN;
  const plain = finding.reserve === null && (number === PLAIN_HOLDS || number < 1);
  return severityOf(number, finding.wanted, row.check.atWorst, plain);
}

/** Whether the slider sets a row's lowest number anywhere, or may; else the row says the same wherever it stands. */
function atSlider({ middle, others }: Evaluation, { check }: Row, r: number): boolean {
  if (!check.perCase) return false;
  return [middle, ...others].some(({ standing, slider }) => {
    const least = standing[r] ?? Number.NaN;
    return Number.isNaN(least) || (slider[r] ?? Number.NaN) < least;
  });
}

/** Finding of a row, kept while the build stays and the slider does not come to govern it. */
function kept(evaluation: Evaluation, row: Row, r: number): Finding | null {
  const { cache, model, ends } = evaluation;
  return atSlider(evaluation, row, r)
    ? toFinding(evaluation, row, r)
    : reuse(cache, `finding:${r}`, [model, ends], () => toFinding(evaluation, row, r));
}

/** All findings, ranked: severity, then worst consequence, then lowest reserve, then id. */
export function findingsOf(evaluation: Evaluation): readonly Finding[] {
  const found = evaluation.rows.flatMap((row, r) => kept(evaluation, row, r) ?? []);
  return reuse(evaluation.cache, 'ranked', found, () => ranked(found));
}

function ranked(found: readonly Finding[]): readonly Finding[] {
  const size = (f: Finding): number => f.reserve?.lo ?? (f.severity === 'fails' ? 0 : Number.POSITIVE_INFINITY);
  return [...found].sort(
    (a, b) =>
      ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity) ||
      CONSEQUENCES.indexOf(a.consequence) - CONSEQUENCES.indexOf(b.consequence) ||
      // Two plain findings are both without limit, and infinity less infinity is no order.
      (size(a) === size(b) ? 0 : size(a) - size(b)) ||
      (a.id < b.id ? -1 : 1),
  );
}
