import { readFileSync } from 'node:fs';
import type { LaidBeads } from '@oddwheel/build/assess/strength/beads';
import type { Json } from '@oddwheel/build/document/json';
import { applyPatches } from '@oddwheel/build/document/patch';
import { explainFinding, layBeads, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { beadEffect } from '@oddwheel/build/true/bead-effect';
import { laidBeads, withStation } from '@oddwheel/build/true/laid-beads';
import { appendTrue, readTrue } from '@oddwheel/build/true/record';
import { trueSheet } from '@oddwheel/build/true/sheet';
import { beforeAll, describe, expect, it } from 'vitest';

const TEXT = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');
const WELD = {
  ...{ station: '70 mm', steel: '4140', hardness: '28 HRC', coating: 'none', smallest: '3 mm', largest: '25 mm' },
};
const PART = {
  ...{
    part: 'shaft-a',
    shaft: 'shaft-a',
    seats: { a: '85 mm', b: '10 1/4 in' },
    goal: { station: '40 mm', tir: '3 thou' },
  },
  weld: { mode: 'correct' as const, ...WELD },
};
const bead = (more = {}) => ({ part: 'shaft-a', way: 'bead', bead: { clock: '6:00', length: '6 mm', ...more } });
const readings = (tir: number) =>
  Array.from({ length: 12 }, (_, k) => ({ at: 30 * k, value: Math.round(tir * Math.cos((k * Math.PI) / 6)) / 2 }));
const set = (station: string, tir: number) => ({
  ...{ part: 'shaft-a', station, setup: 'own bearings', unit: 'thou', step: 0.5, sign: 'out', readings: readings(tir) },
});

function recordOf(bodies: readonly object[]): string {
  const kind = (body: object) =>
    'of' in body ? 'strike' : 'seats' in body ? 'true-part' : 'way' in body ? 'true-round' : 'true-set';
  const entries = bodies.map((body, k) => ({
    ...{ id: `desk.${k + 1}`, kind: kind(body), taken: '2031-05-04T16:20:00Z', logged: '2031-05-04T16:20:00Z' },
    ...{ after: k === 0 ? null : `desk.${k}`, body: body as Json },
  }));
  const added = appendTrue('', entries);
  if (!added.ok) throw new Error(JSON.stringify(added.faults));
  return added.text;
}
const laid = (bodies: readonly object[]): LaidBeads[] => laidBeads(readTrue(recordOf(bodies)));

let session: Session;
beforeAll(() => {
  session = opened(TEXT);
});
function opened(text: string): Session {
  const result = openSession(text, { ends: 'not yet' });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}
const fatigue = (of: Session, shaft = 'shaft-a') =>
  of.assessment.findings.find(({ id }) => id === `shaft.fatigue:/path/shafts/${shaft}`);

describe('beads in the strength of a shaft', () => {
  it('each round that counts is told by its number and place; struck out and other ways are not', () => {
    expect(laid([PART, bead(), { part: 'shaft-a', way: 'press' }, bead()])).toEqual([
      { shaft: 'shaft-a', station: 0.07, rounds: [1, 3], owed: false, seats: [0.085, 0.26035] },
    ]);
    expect(laid([PART, bead(), bead(), { of: 'desk.2' }])[0]?.rounds).toEqual([1]);
    expect(laid([{ ...PART, shaft: undefined }, bead()].map((one) => JSON.parse(JSON.stringify(one))))).toEqual([]);
  });

  it('a bead stays where it was laid when the part is welded elsewhere later', () => {
    const noted = withStation(readTrue(recordOf([PART])), bead() as unknown as { [key: string]: Json });
    const moved = { ...PART, weld: { ...PART.weld, station: '230 mm' } };
    expect(laid([PART, noted, moved, bead()]).map(({ station }) => station)).toEqual([0.07, 0.23]);
  });

  it('the shaft is judged with a weld toe there, named in the finding and its working', () => {
    const beads = laid([PART, { part: 'shaft-a', way: 'press' }, bead()]);
    const other = { ...beads[0], shaft: 'shaft-b', station: 0.165, seats: [0.02, 0.15] } as LaidBeads;
    const after = layBeads(session, [other], 'not yet');
    const found = fatigue(after, 'shaft-b');
    expect(found?.reserve?.value).toBeLessThan(fatigue(session, 'shaft-b')?.reserve?.value ?? 0);
    expect(found?.says).toMatch(/the bead of round 2 at 165\smm, where 45\smm are left, softened by its heat/);
    const working = explainFinding(after, found?.id ?? '')?.workings.at(-1);
    const origin = (key: string) => working?.symbols.find((symbol) => symbol.key === key)?.origin;
    expect(origin('diameter')).toMatch(/^the bead of round 2 at 165\smm$/);
    expect(origin('notchBending')).toBe('shaft-notches/weld-toe');
    // Its heat takes the temper out of the steel beside it.
    expect(fatigue(layBeads(session, beads, 'not yet'))?.says).toContain('softened by the bead of round 2');
    // Struck out, all is as before.
    expect(fatigue(layBeads(after, [], 'not yet'))).toEqual(fatigue(session));
  });

  it('counts the weld that a joint owes once', () => {
    const owed = laid([
      { ...PART, weld: { ...PART.weld, mode: 'weld-up', owed: [{ clock: '6:00', length: '6 mm' }] } },
      bead({ segment: 0 }),
    ]);
    const toe = { name: 'weld at the flange', kind: 'weld toe', station: '71 mm' };
    const patched = applyPatches(TEXT, [{ op: 'set', at: '/path/shafts/shaft-a/notches/flange', value: toe }]);
    if (!patched.ok) throw new Error('the notch was expected to fit');
    const welded = opened(patched.text);
    expect(layBeads(welded, owed, 'not yet').evaluation.model.shafts[1]?.notches).toHaveLength(4);
    expect(layBeads(session, owed, 'not yet').evaluation.model.shafts[1]?.notches).toHaveLength(4);
    expect(beadEffect(welded, { ...PART, weld: { ...PART.weld, mode: 'weld-up' } })).toMatchObject({ judged: true });
  });

  it('says beforehand what the next bead does, and why it cannot where it cannot', () => {
    const effect = beadEffect(session, PART);
    const beads = [{ shaft: 'shaft-a', station: 0.07, rounds: [1], owed: false, seats: [0.085, 0.26035] as const }];
    const then = fatigue(layBeads(session, beads, 'not yet'))?.reserve?.value;
    expect(effect).toEqual({ judged: true, before: fatigue(session)?.reserve?.value, after: then, wanted: 1.3 });
    const text = recordOf([PART, set('85 mm', 0), set('10 1/4 in', 0), set('40 mm', 40)]);
    const cautions = (of: Session | null) => trueSheet(text, of).parts[0]?.next.words.cautions.join(' ') ?? '';
    expect(cautions(session)).toMatch(/goes from 1\.61 to 0\.97, so it may break in time; at least 1\.30 is wanted\./);
    expect(cautions(null)).toContain('not judged: no build is open');
    const why = (part: object) => beadEffect(session, { ...PART, ...part });
    expect(why({ shaft: 'shaft-z' })).toMatchObject({ why: expect.stringContaining('no shaft “shaft-z”') });
    expect(why({ seats: { a: '0 mm', b: '175 mm' } })).toMatchObject({
      why: expect.stringContaining('no bearing at 0'),
    });
    expect(why({ weld: { ...PART.weld, station: '900 mm' } })).toMatchObject({
      why: expect.stringContaining('does not reach to 900'),
    });
  });

  it('says why beads that are booked do not count', () => {
    const uncounted = (part: object, ...more: object[]) =>
      trueSheet(recordOf([JSON.parse(JSON.stringify(part)), ...more]), session).parts[0]?.uncounted;
    expect(uncounted(PART, bead())).toBeUndefined();
    expect(uncounted({ ...PART, shaft: undefined })).toBeUndefined();
    expect(uncounted({ ...PART, shaft: undefined }, bead())).toContain('does not say which shaft');
    expect(uncounted({ ...PART, seats: { a: '0 mm', b: '175 mm' } }, bead())).toContain('no bearing at 0');
    expect(uncounted({ ...PART, weld: undefined }, bead())).toContain('station is not known');
  });
});
