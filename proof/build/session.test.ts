import { readFileSync } from 'node:fs';
import type { Assessment } from '@oddwheel/build/assess/types';
import { branchFor, nodeAt, pointerKey, walkSchema } from '@oddwheel/build/schema/describe';
import { applyEdit, explainFinding, moveHere, openSession, rangePass } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

function open(text: string, cache = true): Session {
  const opened = openSession(text, { cache, here: { gear: '2', roadSpeed: 5 } });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

/** Every number and word of an assessment; JSON keeps a double's every bit, and NaN is named. */
const exactly = (a: Assessment): string =>
  JSON.stringify({ ...a, reserves: Array.from(a.reserves, (x) => (Number.isNaN(x) ? 'NaN' : x)) }, (_, v) =>
    typeof v === 'number' && !Number.isFinite(v) ? String(v) : v,
  );

describe('the demo build', () => {
  const session = open(DEMO);
  const { assessment } = session;

  test('runs from engine to ground', () => {
    expect(assessment.path.map((e) => e.kind)).toEqual([
      'engine',
      'gearbox',
      'chain',
      'shaft',
      'bevel',
      'shaft',
      'chain',
      'shaft',
      'ground',
    ]);
  });

  test('power balances and torques close to rounding', () => {
    expect(assessment.closure?.power).toBeLessThan(1e-12);
    expect(assessment.closure?.torque).toBeLessThan(1e-12);
  });

  test('the ratios of the stages multiply to the overall ratio of every gear', () => {
    const [, box, ...rest] = assessment.path;
    const product = rest.reduce((p, e) => p * (e.ratio?.value ?? 1), box?.ratio?.value ?? 1);
    const gear = assessment.gears.find((g) => g.id === assessment.here.gear);
    expect(product).toBeCloseTo(gear?.overall.value ?? 0, 12);
  });

  test('the working of every finding ends in the very reserve that the finding holds', () => {
    for (const finding of assessment.findings) {
      const explanation = explainFinding(session, finding.id);
      expect(explanation).not.toBeNull();
      expect(explanation?.reserve ?? null).toBe(finding.reserve?.value ?? null);
      if (!finding.reserve) continue;
      const last = explanation?.workings.at(-1);
      expect(last?.symbols.find((s) => s.key === 'reserve')?.value).toBe(finding.reserve.value);
    }
  });
});

/** Edits that keep the file readable, drawn from every typed number of the demo. */
const editable: { at: string; make: (n: number) => string | number }[] = [];
walkSchema(JSON.parse(DEMO), (at, value, node) => {
  const facts = node['x-field'];
  if (!facts || at.startsWith('/overrides')) return;
  if (node.type === 'integer' && typeof value === 'number')
    editable.push({ at, make: (n) => Math.max(facts.min ?? 1, Math.round(value * n)) });
  else if (facts.quantity && typeof value === 'string' && /^-?[\d.]+( \S+)?$/.test(value)) {
    const [, number = '', unit = ''] = /^(-?[\d.]+)(.*)$/.exec(value) ?? [];
    editable.push({ at, make: (n) => `${(Number(number) * n).toFixed(3)}${unit}` });
  }
});

/** Every word of the demo that is one of a list, with the others of that list. */
const worded: { at: string; old: string; others: readonly string[] }[] = [];
walkSchema(JSON.parse(DEMO), (at, value, node) => {
  const words = (node.enum ?? []).filter((word): word is string => typeof word === 'string' && word !== value);
  if (typeof value === 'string' && node.enum && words.length > 0 && !at.startsWith('/overrides'))
    worded.push({ at, old: value, others: words });
});

describe('reuse', () => {
  test('warm and cold assessments agree bit for bit when a word is changed for another, and back again', () => {
    let warm = open(DEMO);
    let applied = 0;
    const agree = ({ assessment, text, here }: Session): void => {
      const cold = openSession(text, { cache: false, here, ends: 'not yet' });
      if (!cold.ok) throw new Error('cold');
      expect(exactly({ ...assessment, hereNote: null })).toBe(exactly({ ...cold.session.assessment, hereNote: null }));
    };
    for (const { at, old, others } of worded)
      for (const word of at.endsWith('/body') ? others : others.slice(0, 1)) {
        const edited = applyEdit(warm, [{ op: 'set', at, value: word }], 'not yet');
        if (!edited.ok) continue;
        applied += 1;
        agree(edited.session);
        const back = applyEdit(edited.session, [{ op: 'set', at, value: old }], 'not yet');
        if (!back.ok) throw new Error(`${at} cannot be set back.`);
        warm = back.session;
      }
    agree(warm);
    expect(applied).toBeGreaterThan(40);
    expect(worded.some(({ at }) => at.endsWith('/body'))).toBe(true);
  }, 240_000);

  test('warm and cold assessments agree bit for bit over 500 random edits', () => {
    let warm = open(DEMO);
    let applied = 0;
    const draw = fc.tuple(
      fc.nat(editable.length - 1),
      fc.double({ min: 0.9, max: 1.12, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    for (const [pick, by, slide] of fc.sample(draw, { seed: 20_261_125, numRuns: 500 })) {
      const field = editable[pick];
      if (!field) continue;
      // The ends of ranges cost most; they are tried at every fiftieth edit.
      const ends = applied % 50 === 49 ? 'tried' : 'not yet';
      const edited = applyEdit(warm, [{ op: 'set', at: field.at, value: field.make(by) }], ends);
      if (!edited.ok) continue;
      applied += 1;
      warm = slide > 0.7 ? moveHere(edited.session, { roadSpeed: 2 + slide * 10 }) : edited.session;
      const cold = openSession(warm.text, { cache: false, here: warm.here, ends });
      if (!cold.ok) throw new Error('cold');
      expect(exactly({ ...warm.assessment, hereNote: null })).toBe(
        exactly({ ...cold.session.assessment, hereNote: null }),
      );
      if (applied % 40 === 0) warm = open(DEMO);
    }
    expect(applied).toBeGreaterThan(300);
  }, 600_000);

  test('the ends of ranges tried step by step, after an answer from the middle, are those tried at once', () => {
    const first = openSession(DEMO, { ends: 'not yet' });
    if (!first.ok) throw new Error('open');
    expect(first.session.assessment.ends).toBe('not yet');
    const edited = applyEdit(
      first.session,
      [{ op: 'set', at: '/path/stages/chain-1/teeth/driver', value: 16 }],
      'not yet',
    );
    if (!edited.ok) throw new Error('edit');
    expect(
      edited.session.assessment.findings.every(({ reserve }) => reserve === null || reserve.lo === reserve.hi),
    ).toBe(true);
    const pass = rangePass(edited.session);
    let steps = 0;
    let step = pass.next();
    for (; !step.done; step = pass.next()) steps += 1;
    expect(steps).toBeGreaterThan(20);
    const at = openSession(edited.session.text, { cache: false, here: edited.session.here });
    if (!at.ok) throw new Error('cold');
    expect(exactly({ ...step.value.assessment, hereNote: null })).toBe(
      exactly({ ...at.session.assessment, hereNote: null }),
    );
  });

  test('an edit and its inverse give back the same text and the same assessment', () => {
    const session = open(DEMO);
    const edited = applyEdit(session, [{ op: 'set', at: '/path/stages/chain-1/teeth/driver', value: 16 }]);
    if (!edited.ok) throw new Error('edit');
    expect(edited.session.text).not.toBe(DEMO);
    const back = applyEdit(edited.session, edited.inverse);
    if (!back.ok) throw new Error('back');
    expect(back.session.text).toBe(DEMO);
    expect(exactly(back.session.assessment)).toBe(exactly(session.assessment));
  });

  test('a faulty edit changes nothing', () => {
    const session = open(DEMO);
    const edited = applyEdit(session, [{ op: 'set', at: '/path/stages/chain-1/links', value: -4 }]);
    expect(edited).toMatchObject({ ok: false, faults: [{ address: '/path/stages/chain-1/links' }] });
  });
});

describe('optional keys', () => {
  const optional: string[] = [];
  walkSchema(JSON.parse(DEMO), (at, value, node) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const branch = branchFor(node, value);
    for (const key of Object.keys(value))
      if (branch?.properties && !branch.required?.includes(key)) optional.push(`${at}/${pointerKey(key)}`);
  });

  test('the demo has many', () => expect(optional.length).toBeGreaterThan(25));

  const before = open(DEMO).assessment;
  const opened = openSession(DEMO, { ends: 'not yet' });
  if (!opened.ok) throw new Error('demo');
  const middle = opened.session;
  test.each(optional)(
    'taking %s out changes a number, adds an assumed, makes unknown, or is refused as still in use',
    (at) => {
      const edited = applyEdit(middle, [{ op: 'remove', at }], 'not yet');
      if (!edited.ok) {
        // A part that others stand on cannot be taken alone; the fault says which.
        expect(edited.faults.every((f) => f.code.startsWith('reference.'))).toBe(true);
        expect(nodeAt(JSON.parse(DEMO), at)).toBeDefined();
        return;
      }
      // Most show at the middle of the ranges; the ends are tried where nothing does.
      if (exactly(edited.session.assessment) !== exactly(middle.assessment)) return;
      const whole = applyEdit(open(DEMO), [{ op: 'remove', at }]);
      if (!whole.ok) throw new Error(at);
      expect(exactly(whole.session.assessment)).not.toBe(exactly(before));
    },
  );
});
