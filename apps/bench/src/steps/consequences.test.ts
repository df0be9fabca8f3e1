import { CHECK_IDS } from '@oddwheel/build/assess/check-ids';
import { CHECKS } from '@oddwheel/build/assess/checks/all';
import { explainFinding, openSession } from '@oddwheel/build/session';
import { consequencesPage } from '@oddwheel/build/signs/page';
import { SIGNS, signsOf, WITHOUT_SIGN } from '@oddwheel/build/signs/signs';
import { expect, test } from 'vitest';
import demo from '../../../../examples/hill-trike/build.json?raw';
import { stepOfCheck } from './belongs.ts';

const known = new Set<string>(CHECK_IDS);

test('every finding that a sign names exists, and no two signs share an id', () => {
  const named = [...SIGNS.flatMap(({ checks }) => checks), ...Object.keys(WITHOUT_SIGN)];
  expect(named.filter((id) => !known.has(id))).toEqual([]);
  expect(new Set(SIGNS.map(({ id }) => id)).size).toBe(SIGNS.length);
});

test('every check of strength that can fail has a sign, or is said to have none; never both', () => {
  const failing = CHECKS.filter(({ id, atWorst }) => atWorst === 'fails' && stepOfCheck(id) === 'strength');
  expect(failing.length).toBeGreaterThan(30);
  const without = Object.keys(WITHOUT_SIGN);
  expect(failing.map(({ id }) => id).filter((id) => signsOf(id, null).length === 0 && !without.includes(id))).toEqual(
    [],
  );
  expect(without.filter((id) => signsOf(id, null).length > 0)).toEqual([]);
});

test('a sign that no finding judges says so', () => {
  for (const { id, checks, notJudged } of SIGNS)
    expect([id, checks.length > 0 || notJudged !== undefined]).toEqual([id, true]);
});

test('each link of the page ends at a place on it', () => {
  const page = consequencesPage();
  const ends = new Set([...page.matchAll(/<a id="([^"]+)">/g)].map((match) => match[1]));
  const links = [...page.matchAll(/\]\(#([^)]+)\)/g)].map((match) => match[1]);
  expect(links.length).toBeGreaterThan(50);
  expect(links.filter((to) => !ends.has(to))).toEqual([]);
});

test('an opened finding tells the signs of its own joint and no other', () => {
  const opened = openSession(demo);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { session } = opened;
  const told = (id: string) => explainFinding(session, id)?.signs.map((sign) => sign.id);
  expect(told('hub.torque:/path/shafts/jackshaft/seats/sprocket')).toEqual(['wallowed-keyway']);
  expect(told('hub.torque:/path/shafts/axle/seats/sprocket')).toEqual(['cracked-weld']);
  expect(told('chain.wear:/path/stages/chain')).toEqual(['worn-chain']);
});
