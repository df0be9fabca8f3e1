/** Changes for torque joints, seats, chains and gears: what is found is the smallest of its sort, tried by hand. */
import { readFileSync } from 'node:fs';
import type { Json } from '@oddwheel/build/document/json';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps } from '@oddwheel/build/hold/hold';
import type { Hold, Proposal } from '@oddwheel/build/hold/types';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const TEXT = readFileSync(new URL('../../examples/hill-trike/build.json', import.meta.url), 'utf8');
const JACK = '/path/shafts/jackshaft';
const GEAR = `${JACK}/seats/gear`;
const WHEEL = '/path/shafts/axle/seats/wheel';
const RIGHT = `${JACK}/seats/bearing-right`;
const CHAIN = '/path/stages/chain';
const set = (at: string, value: Json): Patch => ({ op: 'set', at, value });
const remove = (at: string): Patch => ({ op: 'remove', at });

function open(...patches: readonly Patch[]): Session {
  const patched = applyPatches(TEXT, patches);
  if (!patched.ok) throw new Error(JSON.stringify(patched.faults));
  const opened = openSession(patched.text, { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function hold(session: Session, id: string): Hold {
  const steps = holdSteps(session, id, { ends: 'not yet' });
  let next = steps.next();
  while (!next.done) next = steps.next();
  if (!next.value) throw new Error(`There is no ${id}.`);
  return next.value;
}

/** A proposal that changes one address, and the value that it puts there. */
function putting(found: Hold, at: string): { readonly proposal: Proposal; readonly value: unknown } {
  const proposal = found.proposals.find(({ patches }) => patches.some((patch) => patch.at === at));
  const patch = proposal?.patches.find((one) => one.at === at);
  if (!proposal || patch?.op !== 'set') throw new Error(`Nothing puts ${at}: ${JSON.stringify(found.proposals)}`);
  expect(proposal.reaches).toBe(true);
  return { proposal, value: patch.value };
}

const value = (session: Session, id: string): number =>
  session.assessment.findings.find((one) => one.id === id)?.reserve?.value ?? Number.NaN;

describe('torque joints', () => {
  const key = { length: '16 mm', ends: 'square', fit: 'tight' };
  const torque = `hub.torque:${GEAR}`;

  test('a short key of a mild hub is made longer to the least usual length that does', () => {
    const base = [set(`${GEAR}/hub/metal`, 'mild steel'), set(`${GEAR}/width`, '60 mm')];
    const found = hold(open(...base, set(`${GEAR}/hub/key`, key)), torque);
    const { value: length } = putting(found, `${GEAR}/hub/key/length`);
    const lengths = [16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56];
    const reserves = lengths.map((mm) =>
      value(open(...base, set(`${GEAR}/hub/key`, { ...key, length: `${mm} mm` })), torque),
    );
    expect(length).toBe(`${lengths[reserves.findIndex((one) => one >= found.wanted)]} mm`);
  });

  test('setscrews alone become a keyed hub, its keyway entered among the notches', () => {
    const session = open(
      remove(`${GEAR}/hub/key`),
      set(`${GEAR}/hub/torqueBy`, 'setscrews'),
      set(`${GEAR}/hub/screws`, { size: 'M8', count: 2 }),
      set(`${GEAR}/hub/locking`, 'thread locker'),
    );
    const { proposal } = putting(hold(session, `hub.alone:${GEAR}`), `${GEAR}/hub/torqueBy`);
    const puts = proposal.patches.map(({ at }) => at);
    expect(puts).toContain(`${GEAR}/hub/key`);
    expect(puts.some((at) => at.startsWith(`${JACK}/notches/`))).toBe(true);
    expect(proposal.harms.map(({ finding }) => finding)).not.toContain(`hub.keyway:${GEAR}`);
  });

  test('a fastener that nothing locks is locked, and a keyway is entered, as one change each', () => {
    const loose = hold(open(set(`${WHEEL}/hub/locking`, 'nothing')), `hub.locked:${WHEEL}`);
    expect(putting(loose, `${WHEEL}/hub/locking`).value).toBe('thread locker');
    const bare = hold(open(remove(`${JACK}/notches/keyway-gear`)), `hub.keyway:${GEAR}`);
    expect(bare.proposals[0]?.reaches).toBe(true);
  });

  test('thicker bolts are tightened as hard for their size', () => {
    const session = open(set(`${WHEEL}/hub/bolts/tightening`, '50 N.m'), set(`${WHEEL}/hub/bolts/faces`, 'oiled'));
    const { proposal, value: thread } = putting(hold(session, `hub.slip:${WHEEL}`), `${WHEEL}/hub/bolts/thread`);
    const size = Number(String(thread).slice(1));
    const tightening = proposal.patches.find(({ at }) => at === `${WHEEL}/hub/bolts/tightening`);
    // Torque over the cube of the diameter stays, in two figures.
    expect(Number.parseFloat(String(tightening?.op === 'set' && tightening.value))).toBeCloseTo(
      Number((50 * (size / 12) ** 3).toPrecision(2)),
      6,
    );
  });
});

describe('seats of bearings', () => {
  test('a seat that is turned too loose is given the loosest class that does', () => {
    const session = open(set(`${RIGHT}/seating/shaft`, 'h6'));
    const { value: given } = putting(hold(session, `seat.shaft:${RIGHT}`), `${RIGHT}/seating/shaft`);
    const holds = (code: string): boolean =>
      open(set(`${RIGHT}/seating/shaft`, code)).assessment.findings.find(({ id }) => id === `seat.shaft:${RIGHT}`)
        ?.severity === 'holds';
    const tighter = ['js6', 'js5', 'j6', 'j5', 'k6', 'k5', 'm6', 'm5'];
    expect(given).toBe(tighter.find(holds));
  });

  test('a bearing that must slide is not bonded in or clamped', () => {
    const free = { towardStart: 'nothing', towardEnd: 'nothing' };
    const session = open(
      set(`${RIGHT}/ring`, free),
      set(`${RIGHT}/seating`, { made: 'bored', plate: 'G7', turns: 'outer ring' }),
    );
    const found = hold(session, `seat.hot-turning:${RIGHT}`);
    expect(found.proposals.length).toBeGreaterThan(0);
    const words = found.proposals.map(({ what }) => what).join(' ');
    expect(words).not.toMatch(/compound|split ring/);
  });
});

describe('chains and gears', () => {
  test('a chain is not cured by one that no method rates', () => {
    const found = hold(open(), `chain.rating:${CHAIN}`);
    expect(found.proposals.some(({ patches }) => patches.some((one) => one.op === 'set' && one.value === '630'))).toBe(
      false,
    );
  });

  test('a joining link is riveted, and an open chain oiled in a bath', () => {
    expect(putting(hold(open(), `chain.service:${CHAIN}`), `${CHAIN}/joint`).value).toBe('riveted link');
    expect(putting(hold(open(), `chain.oil:${CHAIN}`), `${CHAIN}/oiled`).value).toBe('oil bath or stream');
  });

  test('a soft gear is hardened to the least step that does', () => {
    const contact = 'gear.contact:/path/stages/spur';
    const hardness = '/path/stages/spur/made/driven/hardness';
    const { value: given } = putting(hold(open(), contact), hardness);
    const least = [320, 340, 360, 380, 400].find((hb) => value(open(set(hardness, String(hb))), contact) >= 1);
    expect(given).toBe(String(least));
  });

  test('a pair made anew leaves what was known of the old one behind', () => {
    const session = open(set('/path/stages/spur/card', { pitting: 'many', chips: 'some' }));
    const found = hold(session, 'gear.card:/path/stages/spur');
    expect(found.proposals[0]?.patches).toContainEqual({ op: 'remove', at: '/path/stages/spur/card' });
    expect(found.proposals[0]?.reaches).toBe(true);
  });
});

test('an idler that stands beside the chain is moved along the shaft to where it runs', () => {
  const [driver, driven] = ['jackshaft', 'axle'].map((id) => {
    const seat = open()
      .evaluation.model.shafts.find((one) => one.id === id)
      ?.seats.find((one) => one.id === 'sprocket');
    if (!seat) throw new Error(`${id} has no sprocket.`);
    return seat.at;
  });
  if (!driver || !driven) throw new Error('The demo has two sprockets.');
  const mm = (si: number): string => `${(si * 1e3).toFixed(1)} mm`;
  // Shafts lie along y; the idler presses the run below from outside, 6.3 mm beside it.
  const idler = {
    at: {
      x: mm((driver[0] + driven[0]) / 2),
      y: mm(driver[1] + 6.3e-3),
      z: mm((driver[2] + driven[2]) / 2 - 0.05),
    },
    teeth: 12,
    span: 'slack span',
    runs: 'outside the chain',
    hold: 'fixed',
  };
  const session = open(set(`${CHAIN}/idler`, idler));
  const { proposal, value: y } = putting(hold(session, `idler.plane:${CHAIN}`), `${CHAIN}/idler/at/y`);
  expect(Number.parseFloat(String(y))).toBeCloseTo((driver[1] ?? 0) * 1e3, 9);
  expect(proposal.patches).toHaveLength(1);
  expect(proposal.what).toContain('Move the idler of Chain 6.3');
});
