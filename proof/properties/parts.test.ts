import { readFileSync } from 'node:fs';
import type { Assessment } from '@oddwheel/build/assess/types';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';
import { differences, severitiesOf, type Tree } from './build.ts';

const read = (path: string): string => readFileSync(new URL(`../../${path}/build.json`, import.meta.url), 'utf8');
const HAULER = read('examples/marsh-hauler');
const TRIKE = read('examples/hill-trike');
const FAMILIES = readFileSync(new URL('../builds/every-family.json', import.meta.url), 'utf8');

function assessed(text: string, change: (build: Tree) => void = () => {}): Assessment {
  const build = JSON.parse(text) as Tree;
  change(build);
  const opened = openSession(JSON.stringify(build), { cache: false, ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment;
}

/** Writes a value at an address. */
function put(build: Tree, address: string, value: unknown): void {
  const keys = address.split('/');
  const last = keys.pop() ?? '';
  const parent = keys.reduce<Tree>((node, key) => node[key] as Tree, build);
  (parent as Record<string, unknown>)[last] = value;
}

const seat = (shaft: string, name: string) => `path/shafts/${shaft}/seats/${name}`;

describe('a larger part of marsh-hauler leaves a larger reserve', () => {
  const sprocket = seat('axle-c', 'sprocket');
  test.each([
    ['chain of one pitch', 'chain.pull', 'path/stages/chain-1', 'chain', ['06B', '08B', '10B', '12B', '16B']],
    ['key', 'hub.torque', seat('shaft-b', 'gear'), 'hub/key/length', ['24 mm', '30 mm', '38 mm']],
    ['shaft under a key', 'hub.torque', seat('shaft-b', 'gear'), 'diameter', ['40 mm', '48 mm', '55 mm']],
    ['bolt', 'hub.torque', sprocket, 'hub/bolts/thread', ['M8', 'M10', 'M12', 'M14']],
    ['bolt circle', 'hub.torque', sprocket, 'hub/bolts/circle', ['110 mm', '120 mm', '130 mm']],
    ['count of bolts', 'hub.torque', sprocket, 'hub/bolts/count', [4, 6, 8]],
    ['bearing', 'bearing.static', seat('shaft-b', 'bearing-left'), 'row', ['6010', '6210', '6310']],
  ] as const)('%s', (_, check, address, key, sizes) => {
    const found = sizes.map((size) => {
      const { findings } = assessed(HAULER, (build) => {
        // A box that gives its own strength would hide the size.
        if (check === 'chain.pull') put(build, `${address}/strength`, undefined);
        put(build, `${address}/${key}`, size);
      });
      return findings.find((one) => one.check === check && one.address === `/${address}`)?.reserve?.value ?? Number.NaN;
    });
    for (const [k, reserve] of found.entries()) if (k > 0) expect(reserve).toBeGreaterThan(found[k - 1] ?? Number.NaN);
  });
});

test('all lengths, torques and masses in inches, foot-pounds and pounds: no number and no verdict changes', () => {
  const units = { mm: ['in', 25.4], 'N.m': ['lbf.ft', 0.3048 * 4.4482216152605], kg: ['lb', 0.45359237] } as const;
  const inches = (text: string): string =>
    text.replaceAll(
      /"(-?\d+(?:\.\d+)?)(?:\.\.(\d+(?:\.\d+)?))? (mm|N\.m|kg)"/g,
      (_, low: string, high: string | undefined, unit: keyof typeof units) => {
        const [name, size] = units[unit];
        return `"${[low, high].flatMap((x) => (x === undefined ? [] : [Number(x) / size])).join('..')} ${name}"`;
      },
    );
  for (const text of [HAULER, TRIKE]) {
    expect(inches(text)).not.toBe(text);
    const [metric, inch] = [assessed(text), assessed(inches(text))];
    expect(differences(metric, inch)).toEqual([]);
    expect(severitiesOf(inch)).toEqual(severitiesOf(metric));
  }
});

test('a spiral pair in a mirror pushes the other way unless its hand is mirrored with it', () => {
  const mirror = (build: Tree): void => {
    const shafts = [build.brief?.engine?.output, ...Object.values(build.path?.shafts ?? {})] as Tree[];
    for (const shaft of shafts) {
      const [x, y, z] = shaft.direction as unknown as [number, number, number];
      put(shaft, 'direction', [x, y === 0 ? 0 : -y, z]);
      const origin = shaft.origin as unknown as { y: string };
      origin.y = origin.y.startsWith('-') ? origin.y.slice(1) : `-${origin.y}`;
    }
    const output = build.brief?.engine?.output as unknown as { sense: string };
    output.sense = output.sense === 'positive' ? 'negative' : 'positive';
  };
  const otherHand = (build: Tree): void => put(build, 'path/stages/spiral/hand', 'left');
  const said = (change: (build: Tree) => void): string =>
    assessed(FAMILIES, change).findings.find(({ check }) => check === 'bevel.hand')?.says ?? 'nothing';
  const here = said(() => {});
  const other = said(otherHand);
  expect([here, other].filter((text) => text.includes('draws it into mesh with')).length).toBeGreaterThan(0);
  expect(other).not.toBe(here);
  expect(said(mirror)).toBe(other);
  expect(
    said((build) => {
      mirror(build);
      otherHand(build);
    }),
  ).toBe(here);
});

test('a spur pair driven from its larger gear, with the same force on its teeth, is stressed as from its smaller one', () => {
  const numbers = (swap: boolean): readonly (readonly [string, number])[] =>
    assessed(TRIKE, (build) => {
      const pair = build.path?.stages?.spur as unknown as {
        teeth: { driver: number; driven: number };
        made: { driver: object; driven: object };
      };
      const { teeth, made } = pair;
      const ratio = teeth.driven / teeth.driver;
      put(build, 'brief/wheel', { rollOut: `${swap ? 2 / ratio : 2} m` });
      if (!swap) return;
      // The shaft before brings as much more as its gear is larger, and the smaller wheel the same push on the road.
      put(build, 'brief/engine/primary', String((61 / 20) * ratio));
      pair.teeth = { driver: teeth.driven, driven: teeth.driver };
      pair.made = { driver: made.driven, driven: made.driver };
    })
      .findings.filter(({ check }) => /^gear\.(bending|contact|peak)$/.test(check))
      .map(
        ({ check, address, element, reserve }) =>
          [`${check} ${address} ${element}`, reserve?.value ?? Number.NaN] as const,
      );
  const [plain, swapped] = [numbers(false), numbers(true)];
  expect(plain.length).toBe(3);
  for (const [k, [name, reserve]] of plain.entries()) {
    expect(swapped[k]?.[0]).toBe(name);
    expect((swapped[k]?.[1] ?? Number.NaN) / reserve).toBeCloseTo(1, 9);
  }
});
