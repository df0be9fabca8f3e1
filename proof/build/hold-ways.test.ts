import { readFileSync } from 'node:fs';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps, trialsOf, wantsHold } from '@oddwheel/build/hold/hold';
import type { Hold } from '@oddwheel/build/hold/types';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const demo = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}/build.json`, import.meta.url), 'utf8');

function open(text: string, patches: readonly Patch[] = []): Session {
  const patched = applyPatches(text, patches);
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

const CART = demo('rail-cart');
const LEFT = 'bearing.static:/path/shafts/countershaft/seats/bearing-left';
const FATIGUE = 'shaft.fatigue:/path/shafts/countershaft';
const SHOP = '/brief/shop/machines';

/** The reserve of a finding in a build, at the middle. */
const reserve = (session: Session, id: string): number =>
  session.assessment.findings.find((one) => one.id === id)?.reserve?.value ?? Number.NaN;

describe('make it hold', () => {
  test('finds the smallest bearing of the table on the same seat, as trying each of them does', () => {
    const { proposals } = hold(open(CART), LEFT);
    const bought = proposals.find(({ effort }) => effort === 'buy');
    const row = '/path/shafts/countershaft/seats/bearing-left/row';
    const tried = ['6006', '6206', '6306'].map((value) => reserve(open(CART, [{ op: 'set', at: row, value }]), LEFT));
    expect(tried.map((one) => one >= 3.75)).toEqual([false, false, true]);
    expect(bought?.patches.find(({ at }) => at === row)).toMatchObject({ value: '6306' });
  });

  test('takes the first step of a shift that does: one step less is not enough', () => {
    const session = open(CART);
    const { proposals, wanted } = hold(session, FATIGUE);
    const moved = proposals.find(({ what }) => what.startsWith('Move bearing R'));
    const [patch] = moved?.patches ?? [];
    if (patch?.op !== 'set') throw new Error('No bearing is moved.');
    const at = Number.parseFloat(String(patch.value));
    const with_ = (station: number): number =>
      reserve(open(CART, [{ op: 'set', at: patch.at, value: `${station} mm` }]), FATIGUE);
    expect(with_(at)).toBeGreaterThanOrEqual(wanted);
    expect(with_(at + 2)).toBeLessThan(wanted);
  });

  test('the smallest comes first, and what makes something fail comes last', () => {
    const order = ['adjust', 're-cut', 'buy', 're-make'];
    const session = open(CART);
    const trials = trialsOf(session);
    for (const { id } of session.assessment.findings.filter(wantsHold)) {
      const steps = holdSteps(session, id, { ends: 'not yet', trials });
      let next = steps.next();
      while (!next.done) next = steps.next();
      const proposals = (next.value?.proposals ?? []).filter(({ reaches }) => reaches);
      const ranks = proposals.map(({ effort, size, harms }) => [
        harms.some(({ after }) => after === 'fails') ? 1 : 0,
        order.indexOf(effort),
        size,
      ]);
      expect(ranks).toEqual([...ranks].sort(compare));
    }
  });

  test('tells which other findings a change harms', () => {
    const { proposals } = hold(open(CART), FATIGUE);
    const moved = proposals.find(({ what }) => what.startsWith('Move bearing R'));
    expect(moved?.harms.some(({ before, after }) => before === 'holds' && after !== 'holds')).toBe(true);
  });

  test('the gearbox’s own shaft and bearings are left as they are', () => {
    const session = open(demo('marsh-hauler'));
    const { proposals } = hold(session, 'bearing.static:/brief/engine/output/seats/bearing');
    const touched = proposals.flatMap(({ patches }) => patches.map(({ at }) => at));
    expect(touched.length).toBeGreaterThan(0);
    expect(touched.filter((at) => /output\/(seats\/bearing|material|pieces)/.test(at))).toEqual([]);
  });

  test('says so where a finding holds, asks for something first, or is not there', () => {
    const session = open(CART);
    expect(hold(session, 'chain.pull:/path/stages/chain')).toMatchObject({ proposals: [], none: 'It holds.' });
    expect(hold(session, 'clear.parts:/brief/wheel').none).toContain('missing');
    expect(holdSteps(session, 'chain.pull:/nowhere', { ends: 'not yet' }).next().value).toBeNull();
  });
});

const compare = (a: readonly number[], b: readonly number[]): number => {
  const k = a.findIndex((x, n) => x !== b[n]);
  return k < 0 ? 0 : (a[k] ?? 0) - (b[k] ?? 0);
};

describe('limits of the shop', () => {
  const id = 'bearing.tilt:/path/shafts/countershaft/seats/bearing-right';
  const told = ({ proposals }: Hold): string => JSON.stringify(proposals.map(({ what }) => what));

  test('a lathe with too little swing or room between centres marks a shaft as bought in', () => {
    const session = open(CART, [
      {
        op: 'set',
        at: SHOP,
        value: { lathe: { kind: 'lathe', name: 'watch lathe', swing: '30 mm', centres: '150 mm' } },
      },
    ]);
    const thicker = hold(session, FATIGUE).proposals.find(({ what }) => what.startsWith('Make all of'));
    expect(thicker?.boughtIn.join(' ')).toMatch(/watch lathe swings 30\smm/);
    expect(thicker?.boughtIn.join(' ')).toMatch(/watch lathe takes 150\smm between centres/);
  });

  test('a welder that is too small rules thicker plates out, and says so', () => {
    const tilt = open(CART, [{ op: 'set', at: '/path/plates/plate-counter/thickness', value: '5 mm' }]);
    expect(told(hold(tilt, id))).toContain('thick instead of');
    const small = open(tilt.text, [
      { op: 'set', at: SHOP, value: { welder: { kind: 'welder', name: 'small welder', thickest: '4 mm' } } },
    ]);
    const { proposals, ruledOut } = hold(small, id);
    expect(proposals.filter(({ what }) => what.includes('thick instead of'))).toEqual([]);
    expect(ruledOut.some(({ why }) => /small welder welds up to 4\smm/.test(why))).toBe(true);
  });

  test('a press without the daylight for the shaft marks a pressed bearing as bought in', () => {
    const session = open(CART, [
      { op: 'set', at: SHOP, value: { press: { kind: 'press', name: 'arbor press', daylight: '120 mm' } } },
    ]);
    const [first] = hold(session, LEFT).proposals;
    expect(first?.boughtIn.join(' ')).toMatch(/arbor press has 120\smm of daylight/);
  });

  test('a sheet that is too small marks a plate as cut elsewhere', () => {
    const session = open(CART, [
      { op: 'set', at: '/path/plates/plate-counter/thickness', value: '5 mm' },
      {
        op: 'set',
        at: SHOP,
        value: { laser: { kind: 'laser cutting', name: 'small laser', sheetLength: '90 mm', sheetWidth: '60 mm' } },
      },
    ]);
    const thicker = hold(session, id).proposals.find(({ what }) => what.includes('thick instead of'));
    expect(thicker?.boughtIn.join(' ')).toContain('small laser');
  });
});
