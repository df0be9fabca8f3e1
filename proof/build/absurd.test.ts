/** Input that no shop means: nothing, less than nothing, far too much. The build says what is wrong, or what follows from it; it never gives up. */
import { readFileSync } from 'node:fs';
import { pointerKey } from '@oddwheel/build/schema/describe';
import {
  applyEdit,
  explainFinding,
  openSession,
  rangePass,
  roadCurvesOf,
  shaftDiagrams,
} from '@oddwheel/build/session';
import type { Opened, Session } from '@oddwheel/build/session-types';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trainOf } from '../perf/trains.ts';

type Json = { [key: string]: Json } & Json[];
interface Typed {
  readonly at: string;
  readonly typed: string | number;
}

const textOf = (demo: string): string =>
  readFileSync(new URL(`../../examples/${demo}/build.json`, import.meta.url), 'utf8');

/** Every typed number of a build with its address. */
function numbersOf(value: unknown, at = ''): Typed[] {
  if (typeof value === 'number') return [{ at, typed: value }];
  if (typeof value === 'string') return /^-?\d/.test(value) ? [{ at, typed: value }] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${at}/${pointerKey(key)}`));
}

/** The same with another number before its unit; of a fraction or range the first number alone is kept. */
function written(typed: string | number, by: (n: number) => number): string | number {
  if (typeof typed === 'number') return by(typed);
  const unit = typed.replace(/^-?\d[\d.]*(?: \d+\/\d+|\/\d+|\.\.-?[\d.]+)?/, '');
  return `${by(Number.parseFloat(typed))}${unit}`;
}

const ABSURD: readonly ((n: number) => number)[] = [
  () => 0,
  (n) => -n,
  (n) => n * 1e3,
  (n) => n / 1e3,
  (n) => n * 1e9,
  (n) => n / 1e9,
  () => 1e300,
];

/** Words anywhere in a result that are no words for a builder. */
function broken(value: unknown, at = ''): string[] {
  if (typeof value === 'string')
    return /\b(NaN|Infinity|undefined)\b|∞|\[object/.test(value) ? [`${at}: ${value}`] : [];
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => broken(inner, `${at}/${key}`));
}

/** A build that is refused names place and fix; one that is read says all in words, and no finding passes without its number. */
function sound(opened: Opened | ReturnType<typeof applyEdit>): Session | null {
  if (!opened.ok) {
    expect(opened.faults.length).toBeGreaterThan(0);
    for (const { address, problem, accepted } of opened.faults) {
      expect(address).toMatch(/^\//);
      expect(problem.length).toBeGreaterThan(10);
      expect(accepted.length).toBeGreaterThan(5);
      expect(broken([problem, accepted])).toEqual([]);
    }
    return null;
  }
  const { assessment } = opened.session;
  expect(broken(assessment)).toEqual([]);
  expect(assessment.findings.length).toBeGreaterThan(0);
  for (const { id, severity, reserve } of assessment.findings)
    if (severity !== 'unknown' && reserve !== null) expect([id, Number.isNaN(reserve.value)]).toEqual([id, false]);
  return opened.session;
}

/** Also what is worked out only when it is opened: workings, diagrams, curves of the road. */
function soundWhenOpened(session: Session): void {
  expect(broken(shaftDiagrams(session))).toEqual([]);
  expect(broken(roadCurvesOf(session))).toEqual([]);
  for (const { id } of session.assessment.findings) expect(broken(explainFinding(session, id))).toEqual([]);
}

const read = (build: unknown): Opened => openSession(JSON.stringify(build), { ends: 'not yet' });

describe.each([
  ['marsh-hauler', 35],
  ['hill-trike', 35],
  ['rail-cart', 35],
] as const)('%s', (demo, runs) => {
  test('absurd numbers in any field are faults at their place, or findings in words', () => {
    const session = sound(openSession(textOf(demo), { ends: 'not yet' }));
    if (!session) throw new Error('The demo is refused.');
    const numbers = numbersOf(JSON.parse(session.text));
    let [refused, taken] = [0, 0];
    fc.assert(
      fc.property(fc.constantFrom(...numbers), fc.constantFrom(...ABSURD), ({ at, typed }, by) => {
        const edited = applyEdit(session, [{ op: 'set', at, value: written(typed, by) }], 'not yet');
        if (sound(edited)) taken += 1;
        else refused += 1;
      }),
      { numRuns: runs, seed: 5 },
    );
    expect(Math.min(refused, taken)).toBeGreaterThan(5);
  });
});

const DEMO = JSON.parse(textOf('marsh-hauler'));
const changed = (change: (build: Json) => void): Json => {
  const build = structuredClone(DEMO);
  change(build);
  return build;
};
const shafts = (build: Json): Json[] => Object.values(build.path?.shafts ?? {});
const set = (build: Json, at: string, value: unknown): void => {
  const keys = at.split('/');
  const last = keys.pop() ?? '';
  const holder = keys.reduce<Json | undefined>((one, key) => one?.[key], build);
  if (!holder) throw new Error(`There is no ${at}.`);
  Object.assign(holder, { [last]: value });
};
const setting = (at: string, value: unknown): Json => changed((build) => set(build, at, value));
const everySeat = (change: (seats: Json, id: string) => void): Json =>
  changed((build) => {
    for (const { seats } of shafts(build)) for (const id of Object.keys(seats ?? {})) change(seats as Json, id);
  });

const BEARING_REAR = 'path/shafts/shaft-a/seats/bearing-rear/station';
/** What each comes to: a fault at this place, or, with null, findings. */
const NAMED: Readonly<Record<string, readonly [Json, string | null]>> = {
  'a shaft of 10 m': [setting(BEARING_REAR, '10 m'), null],
  'a bearing off the shaft': [setting(BEARING_REAR, '-400 mm'), null],
  'a bearing 500 m off': [setting(BEARING_REAR, '500 m'), `/${BEARING_REAR}`],
  'no teeth': [setting('path/stages/chain-1/teeth/driver', 0), '/path/stages/chain-1/teeth/driver'],
  'no efficiency': [setting('path/stages/bevel/efficiency', '0 %'), '/path/stages/bevel/efficiency'],
  'hardly any efficiency': [setting('path/stages/bevel/efficiency', '0.01 %'), null],
  'a module past all numbers': [setting('path/stages/bevel/module', '1e300 mm'), '/path/stages/bevel/module'],
  'gears as large as houses': [setting('path/stages/bevel/module', '5000 m'), null],
  'no direction': [setting('path/shafts/shaft-a/direction', [0, 0, 0]), '/path/shafts/shaft-a/direction'],
  'no gears': [setting('brief/engine/gears', []), '/brief/engine/gears'],
  'gears all alike': [setting('brief/engine/gears', ['2', '2', '2']), null],
  'torque past all engines': [setting('brief/engine/curve/rows/2/1', 1e300), '/brief/engine/curve/rows/2'],
  'idle above the redline': [setting('brief/engine/idle', '9000 rpm'), '/brief/engine/idle'],
  'an engine without torque': [
    changed((build) => {
      for (const row of Object.values(build.brief?.engine?.curve?.rows ?? {})) Object.assign(row, { 1: 0 });
    }),
    null,
  ],
  'far too much chain': [setting('path/stages/chain-1/links', 300), null],
  'no bearings': [
    everySeat((seats, id) => {
      if (id.startsWith('bearing')) delete seats[id];
    }),
    null,
  ],
  'all seats at one station': [everySeat((seats, id) => set(seats, `${id}/station`, '0 mm')), null],
  'seats of a hair’s width': [everySeat((seats, id) => set(seats, `${id}/diameter`, '0.001 mm')), null],
  'all shafts in one place': [
    changed((build) => {
      for (const shaft of shafts(build)) set(shaft, 'origin', { x: '0 mm', y: '0 mm', z: '0 mm' });
    }),
    null,
  ],
};

test.each(Object.entries(NAMED))('%s', (_, [build, place]) => {
  const opened = read(build);
  expect(opened.ok ? null : opened.faults[0]?.address).toBe(place);
  sound(opened);
});

test('a face no rating covers leaves the rating unknown and says how wide it may be', () => {
  const trike = sound(openSession(textOf('hill-trike'), { ends: 'not yet' }));
  const edited =
    trike && applyEdit(trike, [{ op: 'set', at: '/path/stages/spur/faceWidth', value: '30 m' }], 'not yet');
  const after = edited && sound(edited);
  const missing = after?.assessment.findings.flatMap((finding) => finding.missing) ?? [];
  expect(missing.filter(({ address }) => address === '/path/stages/spur/faceWidth').length).toBeGreaterThan(0);
});

test('40 stages are assessed whole', () => {
  const session = sound(read(trainOf({ stages: 40, seats: 3, gears: 1 })));
  expect(session?.assessment.path.filter(({ kind }) => kind === 'chain')).toHaveLength(40);
  expect(session?.assessment.closure?.power).toBeLessThan(1e-9);
});

test('a shaft of 10 m fails where the same shaft held, and every working of it opens', () => {
  const [before, after] = [sound(read(DEMO)), sound(read(setting(BEARING_REAR, '10 m')))];
  const fails = (session: Session | null) => session?.assessment.findings.filter((f) => f.severity === 'fails').length;
  expect(fails(after)).toBeGreaterThan(fails(before) ?? Number.NaN);
  if (after) soundWhenOpened(after);
});

test('the ends of the ranges of an absurd build can be tried', () => {
  const opened = sound(openSession(textOf('rail-cart'), { ends: 'not yet' }));
  const at = '/path/shafts/axle/joins/wheel-left/spigot/diameter';
  const edited = opened && applyEdit(opened, [{ op: 'set', at, value: '0.04 mm' }], 'not yet');
  if (!edited?.ok) throw new Error('The rail cart is refused.');
  const pass = rangePass(edited.session);
  let step = pass.next();
  while (!step.done) step = pass.next();
  expect(broken(step.value.assessment)).toEqual([]);
  const found = step.value.assessment.findings.find(
    ({ severity, says }) => severity === 'unknown' && /0\.003 m/.test(says),
  );
  expect(found?.says).toContain('Diameter of the fit');
});
