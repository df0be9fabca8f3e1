import type { Finding } from '@oddwheel/build/assess/types';
import { expect, test } from 'vitest';
import { folderOf } from './command.ts';

/**
 * Worked examples of bearings, typed as builds and read from `check --json`. Dirt is severe and the bearings are open, so the standard’s factor of conditions is at
 * its least, 0.1 (ISO 281:2007, e_C = 0), and every life is a tenth of the printed one. The weight on an axle without torque is the only load on it.
 */
const LEAST = 0.1;
const BALL = 'Ball and Roller Bearings, catalogue 2203/E, section 4.5';

type Tree = { [key: string]: Tree };

const found = async (change: (build: Tree) => void): Promise<(check: string, seat: string) => Finding> => {
  const folder = await folderOf('bearings', (text) => {
    const build = JSON.parse(text) as Tree;
    change(build);
    return JSON.stringify(build);
  });
  try {
    const { checked } = await folder.check();
    return (check, seat) => {
      const one = checked.findings.find(({ id }) => id.startsWith(`${check}:`) && id.endsWith(`/seats/${seat}`));
      if (!one) throw new Error(`no ${check} at ${seat}`);
      return one;
    };
  } finally {
    await folder.end();
  }
};

const put = (build: Tree, at: string, value: unknown): void => {
  const keys = at.split('/');
  const last = keys.pop() ?? '';
  const holder = keys.reduce<Tree>((tree, key) => (tree[key] ??= {}), build);
  (holder as Record<string, unknown>)[last] = value;
};

/** The books round their factors, or read them off charts. */
const PRINTED = 0.02;
const off = (read: number, printed: number): number => Math.abs(read / printed - 1);

/** Hours at a road speed, as kilometres in metres. */
const road = (hours: number, kmPerHour: number): number => LEAST * hours * kmPerHour * 1000;

test(`a 6208 under 3.2 kN at 650 rpm lasts 27 000 h: ${BALL}, example 1`, async () => {
  const read = await found((build) => {
    for (const seat of ['left', 'right'])
      put(build, `path/shafts/axle/seats/${seat}/ratings`, { dynamic: '32.5 kN', static: '17.8 kN' });
  });
  for (const seat of ['left', 'right'])
    expect(off(read('bearing.life', seat).capacity?.value ?? 0, road(27000, 78))).toBeLessThan(PRINTED);
});

test('a 6208 under 2.5 kN at 900 rpm lasts 29 000 h: a maker’s catalogue of rolling bearings, section 5.7, example 1', async () => {
  const read = await found((build) => {
    // 2 · 2.5 kN over free fall, and 900 turns of 2 m in a minute.
    put(build, 'brief/vehicle/drivenLoad', '509.858 kg');
    put(build, 'brief/duty/rows/0/speed', '108 km/h');
    put(build, 'path/shafts/axle/seats/left/ratings', { dynamic: '29.1 kN', static: '17.9 kN' });
  });
  expect(off(read('bearing.life', 'left').capacity?.value ?? 0, road(29000, 108))).toBeLessThan(PRINTED);
});

test(`two tapered bearings against each other last 1900 h and 7550 h: ${BALL}, example 4`, async () => {
  const read = await found((build) => {
    // 10.16 kN between them, 5.98 on the one and 4.18 on the other; 2000 turns of 2 m in a minute.
    put(build, 'brief/vehicle/drivenLoad', '1036.03 kg');
    put(build, 'brief/duty/rows/0/speed', '240 km/h');
    const seat = (name: string, station: string, dynamic: string) => {
      const at = `path/shafts/axle/seats/${name}`;
      put(build, `${at}/station`, station);
      put(build, `${at}/row`, '30208');
      put(build, `${at}/ratings`, { dynamic, static: '40 kN' });
    };
    seat('right', '-41.8 mm', '30.5 kN');
    seat('left', '59.8 mm', '36 kN');
  });
  const [first, second] = ['right', 'left'].map((seat) => read('bearing.life', seat).capacity?.value ?? 0);
  expect(off(first ?? 0, road(1900, 240))).toBeLessThan(PRINTED);
  expect(off(second ?? 0, road(7550, 240))).toBeLessThan(PRINTED);
});

test('a duty of 650, 750 and 250 lb over 30, 10 and 20 minutes wears like 597 lb: Mott, Machine Elements, Example Problem 14-6', async () => {
  const row = (throttle: number, share: number) => ({
    name: `${throttle} parts`,
    gear: 1,
    speed: '78 km/h',
    throttle: `${throttle / 10} %`,
    share: `${share} %`,
  });
  const steps = await found((build) =>
    put(build, 'brief/duty/rows', [row(650, 50), row(750, 16.666667), row(250, 33.333333)]),
  );
  const steady = await found((build) => put(build, 'brief/duty/rows', [row(597, 100)]));
  const life = (read: typeof steps) => read('bearing.life', 'near').capacity?.value ?? 0;
  expect(off(life(steps), life(steady))).toBeLessThan(0.001);
});

test('reliability of 95 of a hundred takes the life to 0.64: ISO 281:2007, table 12', async () => {
  const of90 = await found(() => {});
  const of95 = await found((build) => put(build, 'brief/loads/reliability', '95'));
  expect(
    (of95('bearing.life', 'left').capacity?.value ?? 0) / (of90('bearing.life', 'left').capacity?.value ?? 0),
  ).toBeCloseTo(0.64, 9);
});
