/** The example of the issue: a 47 mm bearing in a plate 2 in wide, a gear of unknown hardness, and keys that cannot be. The build is our own. */
import { readFileSync } from 'node:fs';
import type { Finding } from '@oddwheel/build/assess/types';
import type { Json } from '@oddwheel/build/document/json';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps } from '@oddwheel/build/hold/hold';
import type { Hold } from '@oddwheel/build/hold/types';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const TEXT = readFileSync(new URL('../../examples/hill-trike/build.json', import.meta.url), 'utf8');
const SEATS = '/path/shafts/jackshaft/seats';
const BEARING = `${SEATS}/bearing-right`;
const set = (at: string, value: Json): Patch => ({ op: 'set', at, value });

const EXAMPLE: readonly Patch[] = [
  set('/path/plates/small', {
    name: 'small plates',
    thickness: '6.35 mm',
    material: 'steel',
    width: '2 in',
    span: '130 mm',
  }),
  ...Object.entries({ row: '6204', diameter: '20 mm', outside: '47 mm', width: '14 mm', plate: 'small' }).map(
    ([key, value]) => set(`${BEARING}/${key}`, value),
  ),
  { op: 'remove', at: `${BEARING}/opening` },
  { op: 'remove', at: `${BEARING}/seating` },
  { op: 'remove', at: '/path/stages/spur/made/driven' },
];

const withKey = (key: Json): readonly Patch[] => [set(`${SEATS}/gear/hub/key`, key)];

function open(patches: readonly Patch[]): Session {
  const patched = applyPatches(TEXT, patches);
  if (!patched.ok) throw new Error(JSON.stringify(patched.faults));
  const opened = openSession(patched.text, { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function finding(session: Session, id: string): Finding {
  const found = session.assessment.findings.find((one) => one.id === id);
  if (!found) throw new Error(`There is no ${id}.`);
  return found;
}

function hold(session: Session, id: string): Hold {
  const steps = holdSteps(session, id, { ends: 'not yet' });
  let next = steps.next();
  while (!next.done) next = steps.next();
  if (!next.value) throw new Error(`There is no ${id}.`);
  return next.value;
}

/** Spaces of all widths alike. */
const plain = (text: string): string => text.replaceAll(/[\u2009\u00a0\u202f]/g, ' ');

const session = open([...EXAMPLE, ...withKey({ length: '40 mm', ends: 'square', fit: 'tight' })]);
const CUT = `plate.cut:${BEARING}`;
const POSSIBLE = `hub.possible:${SEATS}/gear`;

describe('a 47 mm bearing in a plate 2 in wide', () => {
  test('its web of 1.9 mm is under the rule for plasma and for laser, and thin, as a shop may still laser it', () => {
    const { severity, says, reserve } = finding(session, CUT);
    expect(severity).toBe('thin');
    // (50.8 − 47) / 2 = 1.9 mm; laser asks for one thickness, plasma for one and a half.
    expect(reserve?.value).toBeCloseTo(1.9 / 6.35, 6);
    expect(plain(says)).toBe(
      'The web beside the 47 mm hole is 1.9 mm in 6.35 mm plate: under the published rule for plasma, 9.525 mm and for laser, 6.35 mm. A shop may still laser it. Make the plate at least 2 3/8 in wide, or the hole smaller than the bearing, up to 38 mm: then the plate is its shoulder, and rings welded or bolted on are its seat.',
    );
  });

  test('is offered a plate 2 3/8 in wide, the least eighth that does, or a smaller hole with the plate as its shoulder', () => {
    const { proposals } = hold(session, CUT);
    const reached = proposals.filter(({ reaches }) => reaches).map(({ what }) => plain(what));
    expect(reached).toContain('Make the small plates 2 3/8 in wide instead of 2 in');
    expect(reached).toContain(
      'Cut the hole in the small plates 38 mm, smaller than bearing R: the plate is its shoulder, and a steel ring welded or bolted on is its seat',
    );
    const less = open([...EXAMPLE, set('/path/plates/small/width', '2 1/4 in')]);
    expect(finding(less, CUT).severity).toBe('thin');
  });

  test('a plate typed in millimetres is widened by whole millimetres', () => {
    const metric = open([...EXAMPLE, set('/path/plates/small/width', '50 mm')]);
    // 47 + 2 · 6.35 = 59.7 mm.
    expect(plain(hold(metric, CUT).proposals[0]?.what ?? '')).toBe('Make the small plates 60 mm wide instead of 50 mm');
  });

  test('a hole that leaves the inner ring no room is not offered', () => {
    const plasma = open([...EXAMPLE, set('/path/plates/small/cut', 'plasma cut')]);
    expect(finding(plasma, CUT).says).not.toContain('smaller than the bearing');
    const proposals = hold(plasma, CUT).proposals.filter(({ reaches }) => reaches);
    expect(proposals.some(({ what }) => what.includes('smaller than bearing R'))).toBe(false);
  });
});

describe('a gear of unknown hardness', () => {
  test('is unknown, and names the field and how to fill it', () => {
    const { severity, missing } = finding(session, 'gear.contact:/path/stages/spur');
    const address = '/path/stages/spur/made/driven/hardness';
    expect(severity).toBe('unknown');
    expect(missing.map((one) => one.address)).toEqual([address]);
    expect(missing[0]?.says).toMatch(/^the steel or hardness of the driven gear/);
    const how = session.assessment.findOut.find((one) => one.address === address);
    expect(how?.findings).toContain('gear.contact:/path/stages/spur');
    expect(how?.recipe).toMatch(/machine shop press it.*new file over the tip of a tooth/);
  });

  test('is given no changes to make: it asks first', () => {
    expect(hold(session, 'gear.contact:/path/stages/spur').none).toContain('missing');
  });
});

describe('keys that cannot be', () => {
  test.each([
    [{ length: '40 mm', ends: 'square' }, /40 mm long in a part that is 30 mm wide.*30 mm at most/],
    [{ length: '28 mm', width: '25 mm' }, /25 mm is wider than half of the shaft, 40 mm.*key of the standard/],
    [{ length: '28 mm', height: '50 mm', depth: '45 mm' }, /45 mm deep in a shaft of 40 mm.*key of the standard/],
    [{ length: '28 mm', height: '4 mm' }, /5 mm deep and the key only 4 mm high.*higher key or a shallower slot/],
    [{ length: '10 mm' }, /10 mm is shorter than its round ends, 12 mm.*longer key or one with square ends/],
  ])('%o fails with the place and the fix, and a change that cures it', (key, says) => {
    const build = open(withKey({ ...key, fit: 'tight' }));
    const found = finding(build, POSSIBLE);
    expect(found.severity).toBe('fails');
    expect(found.address).toBe(`${SEATS}/gear`);
    expect(plain(found.says)).toMatch(says);
    // What cannot be is judged no further.
    expect(build.assessment.findings.some(({ id }) => id === `hub.torque:${SEATS}/gear`)).toBe(false);
    const [first] = hold(build, POSSIBLE).proposals;
    expect(first?.reaches).toBe(true);
  });

  test('a key that is too long is cut to the longest usual one that its hub takes', () => {
    const [first] = hold(session, POSSIBLE).proposals;
    expect(first?.patches).toMatchObject([{ at: `${SEATS}/gear/hub/key/length`, value: '28 mm' }]);
  });
});
