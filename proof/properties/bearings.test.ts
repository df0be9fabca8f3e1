import { readFileSync } from 'node:fs';
import { shareThrust } from '@oddwheel/build/assess/strength/bearing-loads';
import { dutyBearings } from '@oddwheel/build/assess/strength/duty-bearings';
import type { Seat } from '@oddwheel/build/model/model';
import { openSession } from '@oddwheel/build/session';
import { parseQuantity } from '@oddwheel/quantity/parse';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RUNS } from './build.ts';

type Tree = { [key: string]: Tree };
const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

function opened(change: (build: Tree) => void) {
  const build = JSON.parse(DEMO) as Tree;
  change(build);
  const result = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}

const at = (build: Tree, address: string): Tree => address.split('/').reduce((tree, key) => (tree[key] ??= {}), build);
const put = (build: Tree, address: string, key: string, value: unknown): void => {
  (at(build, address) as Record<string, unknown>)[key] = value;
};

/** Reserves of the checks of bearings, by finding, but for the shaft at the wheel where it is left out. */
function reserves(session: ReturnType<typeof opened>, check: string, but = 'no such shaft'): Map<string, number> {
  return new Map(
    session.assessment.findings
      .filter(({ id }) => id.startsWith(check) && !id.includes(but))
      .flatMap(({ id, reserve }) => (reserve ? [[id, reserve.value] as const] : [])),
  );
}

const row = fc.record({
  gear: fc.constantFrom(1, 2, 3),
  throttle: fc.integer({ min: 5, max: 100 }),
  share: fc.integer({ min: 1, max: 50 }),
});
type Row = { readonly gear: number; readonly throttle: number; readonly share: number };
/** Road speeds that each of these gears can do. */
const SPEEDS: Readonly<Record<number, string>> = { 1: '9 km/h', 2: '14 km/h', 3: '18 km/h' };
const typed = (rows: readonly Row[], by = 1) =>
  rows.map(({ gear, throttle, share }, k) => ({
    name: `part ${k}`,
    gear,
    speed: SPEEDS[gear],
    throttle: `${Math.min(100, throttle * by)} %`,
    share: `${share} %`,
  }));
const driven = (rows: readonly object[]) => opened((build) => put(build, 'brief/duty', 'rows', rows));
const FEW = { ...RUNS, numRuns: 12 };

test('bins of the duty lie on the line between solved cases, as if each were solved by itself', () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 2, maxLength: 6 }), (rows) => {
      const { scene } = driven(typed(rows)).evaluation.middle;
      const duty = scene.duty();
      if (!duty.ok) throw new Error('no duty');
      scene.strength.shafts.forEach(({ bearings }, k) => {
        const found = dutyBearings(scene, duty, k);
        if (!found.ok) throw new Error('not solved');
        duty.bins.forEach((bin, n) => {
          const answer = scene.strength.answer(k, bin.load);
          if (!answer.ok) throw new Error('not solved');
          const { solution } = answer;
          const reactions = bearings.flatMap((_, b) => solution.reactionAt(b) ?? []);
          const alone = shareThrust(
            bearings.map(({ seat }) => seat),
            reactions.map(({ radial }) => radial),
            -reactions.reduce((sum, { axial }) => sum + axial, 0),
          );
          found.bins[n]?.loads.forEach(({ radial, axial }, b) => {
            expect(Math.abs(radial - (alone.loads[b]?.radial ?? 0))).toBeLessThan(1e-6 * (1 + radial));
            expect(Math.abs(axial - (alone.loads[b]?.axial ?? 0))).toBeLessThan(1e-6 * (1 + axial));
          });
        });
      });
    }),
    FEW,
  );
});

test('two rows of half the distance wear as one of the whole', () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), (rows) => {
      const whole = reserves(driven(typed(rows)), 'bearing.life');
      const halves = reserves(driven(typed(rows.flatMap((one) => [one, one]))), 'bearing.life');
      expect(whole.size).toBeGreaterThan(4);
      for (const [id, reserve] of whole) expect(Math.abs((halves.get(id) ?? 0) / reserve - 1)).toBeLessThan(1e-9);
    }),
    FEW,
  );
});

test('more torque never makes a bearing last longer, where nothing else loads it', () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 4 }),
      fc.double({ min: 1.01, max: 1.6, noNaN: true }),
      (rows, by) => {
        const less = reserves(driven(typed(rows)), 'bearing.life', 'axle-c');
        const more = reserves(driven(typed(rows, by)), 'bearing.life', 'axle-c');
        for (const [id, reserve] of less) expect(more.get(id) ?? 0).toBeLessThanOrEqual(reserve * (1 + 1e-9));
      },
    ),
    FEW,
  );
});

/** The same shaft, told from its other end. */
function turnedRound(build: Tree, id: string): void {
  const shaft = at(build, `path/shafts/${id}`) as Record<string, unknown>;
  const metres = (text: unknown): number => {
    const parsed = parseQuantity(String(text), 'length');
    if (!parsed.ok) throw new Error(String(text));
    return parsed.si;
  };
  const back = (text: unknown): string => `${-metres(text) * 1000} mm`;
  shaft.direction = (shaft.direction as number[]).map((x) => -x);
  const swap = (held: Record<string, unknown> | undefined): void => {
    if (held) [held.towardStart, held.towardEnd] = [held.towardEnd, held.towardStart];
  };
  for (const seat of Object.values(shaft.seats as Record<string, Record<string, unknown>>)) {
    seat.station = back(seat.station);
    swap(seat.held as Record<string, unknown> | undefined);
    swap(seat.ring as Record<string, unknown> | undefined);
  }
  for (const notch of Object.values((shaft.notches ?? {}) as Record<string, Record<string, unknown>>))
    notch.station = back(notch.station);
  for (const join of Object.values((shaft.joins ?? {}) as Record<string, Record<string, unknown>>))
    join.station = back(join.station);
  for (const piece of (shaft.pieces ?? []) as Record<string, unknown>[])
    [piece.from, piece.to] = [back(piece.to), back(piece.from)];
}

test('a shaft told from its other end says the same of its bearings', () => {
  const straight = reserves(
    opened(() => {}),
    'bearing.',
  );
  for (const id of ['shaft-a', 'shaft-b', 'axle-c']) {
    const turned = reserves(
      opened((build) => turnedRound(build, id)),
      'bearing.',
    );
    expect([...turned.keys()].sort()).toEqual([...straight.keys()].sort());
    for (const [finding, reserve] of straight)
      expect(Math.abs((turned.get(finding) ?? 0) / reserve - 1)).toBeLessThan(1e-6);
  }
});

test('the bearing that holds the shaft takes its whole push, and a mirrored shaft pushes the other way', () => {
  const { scene } = opened(() => {}).evaluation.middle;
  const seats = (scene.strength.shafts[2]?.bearings ?? []).map(({ seat }) => seat);
  const [right, left] = seats;
  const radial = [4000, 9000];
  const push = shareThrust(seats, radial, 1500);
  expect(push.said).toBe(true);
  expect(push.loads.map(({ axial }) => axial)).toEqual([0, 1500]);
  const mirrored = (seat: Seat | undefined): Seat => {
    if (!seat) throw new Error('no seat');
    const turned = <T extends { readonly towardStart: unknown; readonly towardEnd: unknown }>(stops: T | null) =>
      stops && { ...stops, towardStart: stops.towardEnd, towardEnd: stops.towardStart };
    return {
      ...seat,
      held: turned(seat.held),
      bearing: seat.bearing && { ...seat.bearing, ring: turned(seat.bearing.ring) },
    };
  };
  expect(shareThrust([mirrored(right), mirrored(left)], radial, -1500)).toEqual(push);
});

test('a gap in the way of the push fails and says where; what is not said is asked for', () => {
  const gap = opened((build) => put(build, 'path/shafts/shaft-b/seats/gear/held', 'towardEnd', 'nothing'));
  const finding = (session: ReturnType<typeof opened>, id: string) =>
    session.assessment.findings.find((one) => one.id === id);
  const thrust = 'bearing.thrust:/path/shafts/shaft-b';
  expect(finding(gap, thrust)?.severity).toBe('fails');
  expect(finding(gap, thrust)?.says).toContain('gear 33 on the shaft, toward its end');
  const open = opened((build) => {
    const gear = at(build, 'path/shafts/shaft-b/seats/gear') as Record<string, unknown>;
    delete gear.held;
  });
  expect(finding(open, thrust)?.severity).toBe('unknown');
  expect(finding(open, thrust)?.missing[0]?.address).toBe('/path/shafts/shaft-b/seats/gear/held');
  const both = opened((build) => {
    const right = at(build, 'path/shafts/shaft-b/seats/bearing-right') as Record<string, unknown>;
    right.held = { towardStart: 'shoulder', towardEnd: 'shoulder' };
    put(build, 'path/shafts/shaft-b/seats/bearing-right/ring', 'towardStart', 'shoulder');
    put(build, 'path/shafts/shaft-b/seats/bearing-right/ring', 'towardEnd', 'shoulder');
  });
  const location = finding(both, 'bearing.location:/path/shafts/shaft-b');
  expect(location?.severity).toBe('thin');
  expect(location?.says).toContain('hold the shaft against each other');
});

test('a pressed gear that nothing else stops passes its push on by friction, as much as the joint holds hot', () => {
  const thrust = 'bearing.thrust:/path/shafts/shaft-b';
  const pressed = (metal: string, hot: string, press?: string) => {
    const session = opened((build) => {
      const brief = at(build, 'brief') as Record<string, unknown>;
      brief.loads = { ...(brief.loads as object | undefined), hot };
      put(build, 'path/shafts/shaft-b/seats/gear/held', 'towardEnd', 'press fit');
      const hub = { torqueBy: 'press fit', metal };
      const sizes = { interference: press, length: '40 mm', outside: '90 mm', roughness: '0.006 mm' };
      put(build, 'path/shafts/shaft-b/seats/gear', 'hub', press ? { ...hub, press: sizes } : hub);
    });
    const found = session.assessment.findings.find(({ id }) => id === thrust);
    if (!found) throw new Error('No such finding.');
    return found;
  };
  expect(pressed('hardened steel', '80 degC').severity).toBe('unknown');
  expect(pressed('hardened steel', '80 degC', '0.06 mm').says).toMatch(/press fit of gear 33 on the shaft \(bears /);
  const bears = (says: string): string => says.match(/press fit of gear 33 on the shaft \(bears ([^)]*)\)/)?.[1] ?? '';
  const steel = (hot: string) => bears(pressed('hardened steel', hot, '0.06 mm').says);
  expect(steel('120 degC')).toBe(steel('30 degC'));
  // 12e-6 · 48 mm · 100 K = 57.6 µm are more than the 50.4 µm that press.
  const loose = pressed('wrought aluminium', '120 degC', '0.06 mm');
  expect(bears(loose.says)).toMatch(/^0/);
  expect(loose.severity).toBe('fails');
});
