/** Each proposal does what it shows: the build with its patches, read and assessed afresh, against what was told before. */
import { readFileSync } from 'node:fs';
import type { Ends } from '@oddwheel/build/assess/evaluation';
import type { Finding } from '@oddwheel/build/assess/types';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps } from '@oddwheel/build/hold/hold';
import type { Trials } from '@oddwheel/build/hold/trials';
import type { Hold, Proposal } from '@oddwheel/build/hold/types';
import { branchFor, walkSchema } from '@oddwheel/build/schema/describe';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import fc from 'fast-check';

export const DEMOS = ['marsh-hauler', 'hill-trike', 'rail-cart'] as const;

export const textOf = (demo: string): string =>
  readFileSync(new URL(`../../examples/${demo}/build.json`, import.meta.url), 'utf8');

/** A text read and assessed; null where it has faults. */
export function open(text: string, ends: Ends, cache = true): Session | null {
  const opened = openSession(text, { ends, cache });
  return opened.ok ? opened.session : null;
}

/** What would make a finding hold, worked to its end. */
export function held(trials: Trials, id: string, ends: Ends): Hold {
  const steps = holdSteps(trials.base, id, { trials, ends });
  let next = steps.next();
  while (!next.done) next = steps.next();
  if (!next.value) throw new Error(`There is no ${id}.`);
  return next.value;
}

const byId = (findings: readonly Finding[]): Map<string, Finding> => new Map(findings.map((one) => [one.id, one]));

/** Findings that a change harms or betters by another word, told from two whole assessments in the plainest way. */
function changed(before: Session, after: Session, own: string): Map<string, string> {
  const rank = { holds: 0, thin: 1, unknown: 2, fails: 3 } as const;
  const was = byId(before.assessment.findings);
  const is = byId(after.assessment.findings);
  const out = new Map<string, string>();
  for (const id of new Set([...was.keys(), ...is.keys()])) {
    if (id === own) continue;
    const [from, to] = [rank[was.get(id)?.severity ?? 'holds'], rank[is.get(id)?.severity ?? 'holds']];
    // A new finding that holds is no change of a word.
    if (from !== to) out.set(id, to > from ? 'worse' : 'better');
  }
  return out;
}

const sorted = (words: Iterable<readonly [string, string]>): string =>
  JSON.stringify([...words].sort(([a], [b]) => (a < b ? -1 : 1)));

/**
 * Applies a proposal to the text, reads the result without any cache, and compares; then undoes it.
 * @returns what differs, in words; nothing where all is as shown
 */
export function differences(session: Session, hold: Hold, proposal: Proposal, ends: Ends): readonly string[] {
  const { what, patches } = proposal;
  const patched = applyPatches(session.text, patches);
  if (!patched.ok) return [`${what}: ${JSON.stringify(patched.faults)}`];
  const after = open(patched.text, ends, false);
  if (!after) return [`${what}: makes the file faulty`];
  const is = byId(after.assessment.findings);
  const own = is.get(hold.finding) ?? null;
  const told = own && { severity: own.severity, reserve: own.reserve, says: own.says };
  const words = [
    ...proposal.harms.filter((one) => one.before !== one.after).map((one) => [one.finding, 'worse'] as const),
    ...proposal.cures.map((one) => [one.finding, 'better'] as const),
  ];
  const undone = applyPatches(patched.text, patched.inverse);
  return [
    ...(JSON.stringify(told) === JSON.stringify(proposal.after) ? [] : [`${what}: the finding itself`]),
    ...(proposal.reaches && own && own.severity !== 'holds' ? [`${what}: does not reach`] : []),
    ...(sorted(words) === sorted(changed(session, after, hold.finding)) ? [] : [`${what}: other findings`]),
    ...proposal.harms
      .filter((harm) => !Object.is(is.get(harm.finding)?.reserve?.lo ?? null, harm.reserveAfter))
      .map((harm) => `${what}: reserve of ${harm.finding}`),
    ...(undone.ok && undone.text === session.text ? [] : [`${what}: is not undone`]),
  ];
}

/** Numbers of a demo that a variant changes by some percent either way. */
function editsOf(text: string): readonly ((by: number) => Patch)[] {
  const out: ((by: number) => Patch)[] = [];
  walkSchema(JSON.parse(text), (at, value, node) => {
    const facts = branchFor(node, value)?.['x-field'];
    if (!facts || !/^\/(path\/(plates|shafts|stages)|brief\/(vehicle|duty|engine\/curve))/.test(at)) return;
    const [, number = '', unit = ''] = typeof value === 'string' ? (/^([\d.]+)( \S+)$/.exec(value) ?? []) : [];
    if (facts.quantity && number !== '')
      out.push((by) => ({ op: 'set', at, value: `${(Number(number) * by).toFixed(2)}${unit}` }));
  });
  return out;
}

export interface Variant {
  readonly of: string;
  readonly session: Session;
  /** Any number, to pick by. */
  readonly pick: number;
}

/** So many sound builds, each a demo with two to five of its numbers changed; the same ones each time. */
export function variants(count: number, demos: readonly string[] = DEMOS): readonly Variant[] {
  const known = demos.map((demo) => ({ demo, text: textOf(demo), edits: editsOf(textOf(demo)) }));
  const draw = fc.tuple(
    fc.nat(known.length - 1),
    fc.array(fc.tuple(fc.nat(10_000), fc.double({ min: 0.93, max: 1.08, noNaN: true })), {
      minLength: 2,
      maxLength: 5,
    }),
    fc.nat(10_000),
  );
  const out: Variant[] = [];
  for (const [k, changes, pick] of fc.sample(draw, { seed: 20_261_126, numRuns: 4 * count })) {
    if (out.length === count) break;
    const { demo, text, edits } = known[k] ?? { demo: '', text: '', edits: [] };
    const patched = applyPatches(
      text,
      changes.flatMap(([n, by]) => edits[n % edits.length]?.(by) ?? []),
    );
    const session = patched.ok ? open(patched.text, 'not yet') : null;
    if (session) out.push({ of: demo, session, pick });
  }
  return out;
}
