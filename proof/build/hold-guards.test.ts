import { readFileSync } from 'node:fs';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps } from '@oddwheel/build/hold/hold';
import type { Proposal } from '@oddwheel/build/hold/types';
import { applyEdit, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const STAGE = '/path/stages/chain';
const TRIKE = readFileSync(new URL('../../examples/hill-trike/build.json', import.meta.url), 'utf8');

/** The invented trike, its chain behind another guard. */
function guarded(guard: Readonly<Record<string, string>>): Session {
  const patches: Patch[] = Object.entries(guard).map(([key, value]) => ({
    op: 'set',
    at: `${STAGE}/guard/${key}`,
    value,
  }));
  const patched = applyPatches(TRIKE, patches);
  if (!patched.ok) throw new Error(JSON.stringify(patched.faults));
  const opened = openSession(patched.text, { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function offers(session: Session, check: string): readonly Proposal[] {
  const steps = holdSteps(session, `${check}:${STAGE}`, { ends: 'not yet' });
  let next = steps.next();
  while (!next.done) next = steps.next();
  return next.value?.proposals ?? [];
}

/** What `check` says of the guard once an offer is taken. */
function taken(session: Session, check: string, { patches }: Proposal): string | undefined {
  const edited = applyEdit(session, patches, 'not yet');
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  return edited.session.assessment.findings.find(({ id }) => id === `${check}:${STAGE}`)?.severity;
}

/** ISO 13857, 2019, table 4, as restated on an engineer’s page: square openings of 12 to 20 mm 120 mm off, of 10 to 12 mm 80 mm, of 8 to 10 mm 25 mm. */
const SQUARES = { kind: 'with openings', opening: '16 mm', shape: 'squares', stands: '80 mm' } as const;

describe('a guard that does not keep hands out', () => {
  test('with openings is set as far off as the table asks, or gets the largest openings that do where it is, or is closed', () => {
    const session = guarded(SQUARES);
    const found = offers(session, 'guard.reach');
    expect(found.map(({ what }) => what.replaceAll(' ', ' '))).toEqual([
      'Guard Chain with squares of 12 mm instead of 16 mm',
      'Set the guard of Chain 120 mm off instead of 80 mm',
      'Close Chain in a guard on all sides',
    ]);
    for (const one of found) {
      expect(one.reaches, one.what).toBe(true);
      expect(taken(session, 'guard.reach', one), one.what).toBe('holds');
    }
  });

  test('is never set beyond whoever comes nearest: a bystander at 250 mm, openings that ask for 850 mm', () => {
    const found = offers(guarded({ ...SQUARES, opening: '60 mm', stands: '100 mm' }), 'guard.reach');
    expect(found.map(({ what }) => what).join()).not.toContain('off instead');
    expect(found.length).toBeGreaterThan(0);
  });

  test('open on a side is closed', () => {
    expect(offers(guarded({}), 'guard.reach').map(({ what }) => what)).toEqual(['Close Chain in a guard on all sides']);
  });
});

test('toes are kept out by a fin or a closed guard', () => {
  const session = guarded({});
  const found = offers(session, 'guard.toe');
  expect(found.map(({ patches }) => patches[0]?.at)).toEqual([`${STAGE}/guard/toe`, `${STAGE}/guard/kind`]);
  for (const one of found) expect(taken(session, 'guard.toe', one), one.what).toBe('holds');
});

test('a broken chain is held in by a plate or hoop', () => {
  const session = guarded({});
  const [one, ...others] = offers(session, 'guard.hold');
  expect(others).toEqual([]);
  expect(one?.what).toContain('hoop at the driver');
  expect(one && taken(session, 'guard.hold', one)).toBe('holds');
});
