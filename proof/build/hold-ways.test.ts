import { readFileSync } from 'node:fs';
import type { Json } from '@oddwheel/build/document/json';
import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import { holdSteps, wantsHold } from '@oddwheel/build/hold/hold';
import type { Needs } from '@oddwheel/build/hold/ladder';
import { shopSays } from '@oddwheel/build/hold/shop-limits';
import { trialsOf } from '@oddwheel/build/hold/trials';
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

  test('pulleys 3 mm out of their plane are set by their screws, or either is moved until the angle is a quarter of a degree', () => {
    const at = '/path/shafts/countershaft/seats/pulley/station';
    const { proposals } = hold(open(CART, [{ op: 'set', at, value: '228 mm' }]), 'belt.angle:/path/stages/belt');
    expect(proposals.map(({ what, reaches }) => [what.replace(/ [a-z]+ by .*| \d.*$/, ''), reaches])).toEqual([
      ['Set the screws of pulley', true],
      ['Move pulley', true],
      ['Move pulley', true],
    ]);
    expect(proposals.flatMap(({ patches }) => patches.map((patch) => patch.at))).toContain(at);
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
  const says = (machines: Record<string, Json>, needs: Needs): ReturnType<typeof shopSays> => {
    const session = open(CART, [{ op: 'set', at: SHOP, value: machines }]);
    const [finding] = session.assessment.findings;
    if (!finding) throw new Error('The demo has no findings.');
    const { model, middle } = session.evaluation;
    return shopSays({ session, model, finding, scene: middle.scene, show: middle.scene.show }, needs);
  };

  test('a lathe with too little swing or room between centres marks a shaft as bought in', () => {
    const machines = { lathe: { kind: 'lathe', name: 'watch lathe', swing: '30 mm', centres: '150 mm' } };
    const { ruledOut, boughtIn } = says(machines, { swing: 0.035, turned: 0.2 });
    expect(ruledOut).toBeNull();
    expect(boughtIn.join(' ')).toMatch(/watch lathe swings 30\smm.*watch lathe takes 150\smm between centres/);
    expect(says(machines, { swing: 0.03, turned: 0.15 }).boughtIn).toEqual([]);
  });

  test('a welder that is too small rules a thicker plate out', () => {
    const welder = { welder: { kind: 'welder', name: 'small welder', thickest: '4 mm' } };
    expect(says(welder, { weld: 0.005 }).ruledOut).toMatch(/small welder welds up to 4\smm/);
    expect(says(welder, { weld: 0.004 }).ruledOut).toBeNull();
    // A second welder whose limit is not told may do it.
    expect(says({ ...welder, other: { kind: 'welder', name: 'other' } }, { weld: 0.005 }).ruledOut).toBeNull();
  });

  test('a press without the daylight for the shaft marks a bearing as pressed on elsewhere', () => {
    const press = { press: { kind: 'press', name: 'arbor press', daylight: '120 mm' } };
    expect(says(press, { pressed: 0.2 }).boughtIn.join(' ')).toMatch(/arbor press has 120\smm of daylight/);
    expect(says(press, { pressed: 0.1 }).boughtIn).toEqual([]);
  });

  test('a sheet that is too small, or a plate that is too thick, is cut elsewhere', () => {
    const laser = {
      laser: {
        kind: 'laser cutting',
        name: 'small laser',
        sheetLength: '600 mm',
        sheetWidth: '300 mm',
        thickest: '8 mm',
      },
    };
    const elsewhere = (width: number, length: number, thickness: number): number =>
      says(laser, { sheet: { width, length, thickness } }).boughtIn.length;
    expect(elsewhere(0.3, 0.6, 0.008)).toBe(0);
    expect(elsewhere(0.6, 0.3, 0.008)).toBe(0);
    expect(elsewhere(0.31, 0.6, 0.008)).toBe(1);
    expect(elsewhere(0.3, 0.6, 0.01)).toBe(1);
  });

  test('a bar that the stock does not hold is to be bought', () => {
    const bar = (diameter: number): number =>
      says({}, { bar: { diameter, length: 0.3, given: 0.035 } }).boughtIn.length;
    expect([bar(0.035), bar(0.05), bar(0.06)]).toEqual([0, 0, 1]);
  });

  test('a bar thinner than its thickest seat is told with the seat, and another bar or the next usual size cures it', () => {
    const found = 'shop.bar-size:/path/shafts/countershaft';
    const thin = (diameter: string, at = '/brief/shop/stock/bright-bar-35/diameter'): Session =>
      open(CART, [{ op: 'set', at, value: diameter }]);
    const told = (session: Session) => session.assessment.findings.find(({ id }) => id === found);
    expect(told(open(CART))).toMatchObject({ severity: 'holds' });
    // Exactly as thick as the seat of 30 mm is thick enough.
    expect(told(thin('30 mm'))).toMatchObject({ severity: 'holds', reserve: { value: 1 } });
    const session = thin('20 mm');
    expect(told(session)).toMatchObject({ severity: 'thin', reserve: { value: expect.closeTo(20 / 30, 12) } });
    expect(told(session)?.says).toMatch(/is 20\smm, the seat at .* needs 30\smm: turn it from a bar of 30\smm or more/);
    const offers = hold(session, found).proposals;
    expect(offers.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^Turn Countershaft from the bright bar, 50 mm/),
      'Buy a bar of 30 mm and turn Countershaft from it',
    ]);
    expect(offers.every(({ reaches, after }) => reaches && after?.severity === 'holds')).toBe(true);
    expect(told(thin('0.001 mm'))).toMatchObject({ severity: 'thin' });
  });

  test('what the shop does not tell rules nothing out, and what it cannot do is shown with the change', () => {
    expect(says({}, { swing: 9, turned: 9, weld: 9, pressed: 9 })).toEqual({ ruledOut: null, boughtIn: [] });
    const press = { press: { kind: 'press', name: 'arbor press', daylight: '120 mm' } };
    const [first] = hold(open(CART, [{ op: 'set', at: SHOP, value: press }]), LEFT).proposals;
    expect(first?.boughtIn.join(' ')).toContain('arbor press');
  });
});
