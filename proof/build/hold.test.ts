/** Each proposal does what it shows: the build with its patches, read and assessed afresh, against what was told before. */
import { readFileSync } from 'node:fs';
import type { Ends } from '@oddwheel/build/assess/evaluation';
import type { Finding } from '@oddwheel/build/assess/types';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps, wantsHold } from '@oddwheel/build/hold/hold';
import { trialsOf } from '@oddwheel/build/hold/trials';
import type { Hold, Proposal } from '@oddwheel/build/hold/types';
import { branchFor, walkSchema } from '@oddwheel/build/schema/describe';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const DEMOS = ['marsh-hauler', 'hill-trike', 'rail-cart'] as const;
const textOf = (demo: string): string =>
  readFileSync(new URL(`../../examples/${demo}/build.json`, import.meta.url), 'utf8');

function open(text: string, ends: Ends, cache = true): Session | null {
  const opened = openSession(text, { ends, cache });
  return opened.ok ? opened.session : null;
}

function held(session: Session, id: string, trials: ReturnType<typeof trialsOf>, ends: Ends): Hold {
  const steps = holdSteps(session, id, { trials, ends });
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
    if (from !== to) out.set(id, to > from ? 'worse' : 'better');
  }
  return out;
}

const cold = new Map<string, Session | null>();

/** A text read and assessed without any cache, once. */
function afresh(text: string, ends: Ends): Session | null {
  const key = `${ends} ${text}`;
  const known = cold.get(key);
  if (known !== undefined) return known;
  const session = open(text, ends, false);
  cold.set(key, session);
  return session;
}

/** Applies a proposal to the text, reads the result without any cache, and compares; then undoes it. */
function verify(session: Session, hold: Hold, proposal: Proposal, ends: Ends): void {
  const patched = applyPatches(session.text, proposal.patches);
  if (!patched.ok) throw new Error(`${proposal.what}: ${JSON.stringify(patched.faults)}`);
  const after = afresh(patched.text, ends);
  if (!after) throw new Error(`${proposal.what} makes the file faulty.`);
  const own = byId(after.assessment.findings).get(hold.finding) ?? null;
  const told = own && { severity: own.severity, reserve: own.reserve, says: own.says };
  expect(proposal.after, proposal.what).toEqual(told);
  if (proposal.reaches && own) expect(own.severity).toBe('holds');
  const words = [
    ...proposal.harms.filter((one) => one.before !== one.after).map((one) => [one.finding, 'worse'] as const),
    ...proposal.cures.map((one) => [one.finding, 'better'] as const),
  ];
  // A new finding that holds is no change of a word.
  expect(new Map(words), proposal.what).toEqual(changed(session, after, hold.finding));
  for (const harm of proposal.harms)
    expect(byId(after.assessment.findings).get(harm.finding)?.reserve?.lo ?? null).toBe(harm.reserveAfter);
  expect(applyPatches(patched.text, patched.inverse)).toMatchObject({ ok: true, text: session.text });
}

describe('make it hold', () => {
  test.each(DEMOS)(
    '%s: what is shown for every finding at the middle of the ranges is what comes of it',
    (demo) => {
      const session = open(textOf(demo), 'not yet');
      if (!session) throw new Error(demo);
      const trials = trialsOf(session);
      let proposals = 0;
      for (const { id } of session.assessment.findings.filter(wantsHold)) {
        const hold = held(session, id, trials, 'not yet');
        if (hold.none !== null) expect(hold.proposals).toEqual([]);
        for (const proposal of hold.proposals) {
          proposals += 1;
          verify(session, hold, proposal, 'not yet');
        }
      }
      expect(proposals).toBeGreaterThan(10);
    },
    180_000,
  );

  test.each([
    ['marsh-hauler', 'bearing.static:/path/shafts/shaft-a/seats/bearing-front'],
    ['hill-trike', 'bearing.static:/path/shafts/jackshaft/seats/bearing-left'],
    ['rail-cart', 'shaft.fatigue:/path/shafts/countershaft'],
  ])('%s: %s with the ends of all ranges tried', (demo, id) => {
    const session = open(textOf(demo), 'tried');
    if (!session) throw new Error(demo);
    const hold = held(session, id, trialsOf(session), 'tried');
    expect(hold.proposals.length).toBeGreaterThan(0);
    for (const proposal of hold.proposals) verify(session, hold, proposal, 'tried');
  });
});

/** Numbers of a demo that a variant changes by a tenth either way. */
function editsOf(text: string): readonly ((by: number) => Patch)[] {
  const out: ((by: number) => Patch)[] = [];
  walkSchema(JSON.parse(text), (at, value, node) => {
    const facts = branchFor(node, value)?.['x-field'];
    if (!facts || !/^\/(path\/(plates|shafts)|brief\/(vehicle|duty|engine\/curve))/.test(at)) return;
    const [, number = '', unit = ''] = typeof value === 'string' ? (/^([\d.]+)( \S+)$/.exec(value) ?? []) : [];
    if (facts.quantity && number !== '')
      out.push((by) => ({ op: 'set', at, value: `${(Number(number) * by).toFixed(2)}${unit}` }));
  });
  return out;
}

describe('make it hold on variants', () => {
  test('what is shown is what comes of it on 50 variants of the demos', () => {
    const demos = ['rail-cart', 'rail-cart', 'hill-trike', 'rail-cart', 'rail-cart', 'marsh-hauler'].map((demo) => {
      const text = textOf(demo);
      return { text, edits: editsOf(text) };
    });
    const draw = fc.tuple(
      fc.nat(demos.length - 1),
      fc.array(fc.tuple(fc.nat(10_000), fc.double({ min: 0.93, max: 1.08, noNaN: true })), {
        minLength: 2,
        maxLength: 5,
      }),
      fc.nat(10_000),
    );
    let variants = 0;
    let proposals = 0;
    for (const [demo, changes, pick] of fc.sample(draw, { seed: 20_261_126, numRuns: 200 })) {
      if (variants === 50) break;
      const { text, edits } = demos[demo] ?? { text: '', edits: [] };
      const patches = changes.flatMap(([k, by]) => edits[k % edits.length]?.(by) ?? []);
      const patched = applyPatches(text, patches);
      const session = patched.ok ? open(patched.text, 'not yet') : null;
      const short = session?.assessment.findings.filter(wantsHold) ?? [];
      const finding = short[pick % Math.max(1, short.length)];
      if (!session || !finding) continue;
      variants += 1;
      const hold = held(session, finding.id, trialsOf(session), 'not yet');
      for (const proposal of hold.proposals.slice(0, 1)) {
        proposals += 1;
        verify(session, hold, proposal, 'not yet');
      }
    }
    expect(variants).toBe(50);
    expect(proposals).toBeGreaterThan(25);
  }, 180_000);
});
