import { readFileSync } from 'node:fs';
import type { Ends } from '@oddwheel/build/assess/evaluation';
import type { Assessment } from '@oddwheel/build/assess/types';
import type { BuildFile } from '@oddwheel/build/schema/build-file';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { parseQuantity } from '@oddwheel/quantity/parse';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import fc from 'fast-check';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

/** Any JSON that can be written into. */
export type Tree = { [key: string]: Tree } & { [index: number]: Tree };

/** Numbers and words of the demo build that a property may vary; every draw is a readable build. */
export interface Variation {
  readonly gear: string;
  /** Part of the way from idle to redline. */
  readonly slide: number;
  readonly chain1: readonly [driver: number, driven: number, links: number];
  readonly chain2: readonly [driver: number, driven: number, links: number];
  readonly bevel: readonly [driver: number, driven: number];
  /** Efficiency of the bevel pair, %. */
  readonly efficiency: number;
  /** Roll-out of the wheel, m. */
  readonly rollOut: number;
  /** Mass without load, kg. */
  readonly mass: number;
  /** Height of shaft A above where it is drawn, mm. */
  readonly rise: number;
}

export const variations: fc.Arbitrary<Variation> = fc.record({
  gear: fc.constantFrom('1', '2', '3', '4', '5'),
  slide: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  chain1: fc.tuple(
    fc.integer({ min: 13, max: 21 }),
    fc.integer({ min: 22, max: 36 }),
    fc.integer({ min: 56, max: 70 }),
  ),
  chain2: fc.tuple(
    fc.integer({ min: 13, max: 19 }),
    fc.integer({ min: 36, max: 52 }),
    fc.integer({ min: 78, max: 96 }),
  ),
  bevel: fc.tuple(fc.integer({ min: 13, max: 20 }), fc.integer({ min: 21, max: 40 })),
  efficiency: fc.double({ min: 85, max: 99.5, noNaN: true }),
  rollOut: fc.double({ min: 2.5, max: 4, noNaN: true }),
  mass: fc.double({ min: 200, max: 500, noNaN: true }),
  rise: fc.double({ min: -8, max: 8, noNaN: true }),
});

/** Runs of each property, and the seed that makes them the same every time. */
export const RUNS = { seed: 20_261_125, numRuns: 60 } as const;
/** Fewer of them where the ends of all ranges are tried as well. */
export const RUNS_TO_ENDS = { ...RUNS, numRuns: 6 } as const;

/** The demo build with the variation written in. */
export function varied(v: Variation): BuildFile {
  const build = JSON.parse(DEMO) as BuildFile;
  const tree = build as unknown as Tree;
  const set = (at: string, value: unknown): void => {
    const keys = at.split('/');
    const last = keys.pop() ?? '';
    const parent = keys.reduce<Tree>((node, key) => node[key] as Tree, tree);
    (parent as Record<string, unknown>)[last] = value;
  };
  for (const [stage, [driver, driven, links]] of [
    ['chain-1', v.chain1],
    ['chain-2', v.chain2],
  ] as const) {
    set(`path/stages/${stage}/teeth`, { driver, driven });
    set(`path/stages/${stage}/links`, links);
  }
  set('path/stages/bevel/teeth', { driver: v.bevel[0], driven: v.bevel[1] });
  set('path/stages/bevel/efficiency', `${v.efficiency.toFixed(6)} %`);
  set('brief/wheel/rollOut', `${v.rollOut.toFixed(6)} m`);
  set('brief/vehicle/mass', `${v.mass.toFixed(6)} kg`);
  set('path/shafts/shaft-a/origin/z', `${(482.5 + v.rise).toFixed(6)} mm`);
  set('path/shafts/shaft-b/origin/z', `${(482.5 + v.rise).toFixed(6)} mm`);
  return build;
}

/** The session of a build with the slider in the gear of the variation. */
export function openAt(build: BuildFile, { gear, slide }: Variation, ends: Ends = 'not yet'): Session {
  const text = JSON.stringify(build);
  const opened = openSession(text, { cache: false, here: { gear }, ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const span = opened.session.assessment.gears.find(({ id }) => id === gear);
  if (span === undefined) throw new Error(`There is no gear ${gear}.`);
  const [low, high] = [span.speedAtIdle.value, span.speedAtRedline.value];
  const placed = openSession(text, { cache: false, here: { gear, roadSpeed: low + slide * (high - low) }, ends });
  if (!placed.ok) throw new Error(JSON.stringify(placed.faults));
  return placed.session;
}

function metres(text: unknown): number {
  const read = parseQuantity(String(text), 'length');
  if (!read.ok) throw new Error(`${String(text)}: ${read.problem}`);
  return read.si;
}

/** Every shaft of a build, the engine's output among them. */
export function shaftsOf(build: BuildFile): Tree[] {
  const tree = build as unknown as Tree;
  const shafts = (tree.path?.shafts ?? {}) as Tree;
  const output = tree.brief?.engine?.output;
  return [...(output === undefined ? [] : [output]), ...Object.values(shafts)];
}

/** Moves the origin of every shaft, the pivot of the arm, what stands around, and the mounts. */
export function moveOrigins(build: BuildFile, move: (place: Vec3) => Vec3): void {
  const { pivot } = (build as unknown as Tree).brief?.suspension ?? {};
  const { keepOuts, tubes } = build.brief.space ?? {};
  const around = [
    ...Object.values(keepOuts ?? {}).flatMap(({ least, most }) => [least, most]),
    ...Object.values(tubes ?? {}).flatMap(({ from, to }) => [from, to]),
    ...Object.values(build.brief.mounts ?? {}).map(({ at }) => at),
  ];
  const places = [...shaftsOf(build).map((shaft) => shaft.origin), ...around, ...(pivot === undefined ? [] : [pivot])];
  for (const place of places) {
    const origin = place as unknown as { x: string; y: string; z: string };
    const [x, y, z] = move([metres(origin.x), metres(origin.y), metres(origin.z)]);
    Object.assign(origin, { x: `${x.toFixed(12)} m`, y: `${y.toFixed(12)} m`, z: `${z.toFixed(12)} m` });
  }
}

/** What a build says but for places: every number of path, gears, cases and findings, by name. */
export function numbersOf(assessment: Assessment): Map<string, number> {
  const numbers = new Map<string, number>();
  const put = (name: string, value: unknown): void => {
    if (typeof value === 'number') numbers.set(name, value);
    else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) put(`${name}.${key}`, inner);
  };
  for (const { address, ratio, here, facts } of assessment.path) {
    put(address, { ratio, here });
    for (const { key, spread } of facts) put(`${address}.${key}`, spread);
  }
  for (const gear of assessment.gears) put(`gear ${gear.id}`, gear);
  const columns = assessment.cases.length;
  for (const one of assessment.cases) put(`case ${one.id}`, one);
  for (const { id, row, demand, capacity, reserve } of assessment.findings) {
    put(id, { reserve, demand: demand?.value, capacity: capacity?.value });
    for (const [c, one] of assessment.cases.entries()) put(`${id} ${one.id}`, assessment.reserves[row * columns + c]);
  }
  return numbers;
}

/** Names of the numbers that differ by more than a billionth, absolute and relative. */
export function differences(a: Assessment, b: Assessment): string[] {
  const [ours, theirs] = [numbersOf(a), numbersOf(b)];
  const missing = [...theirs.keys()].filter((name) => !ours.has(name));
  const apart = [...ours].filter(([name, x]) => {
    const y = theirs.get(name);
    if (y === undefined) return true;
    if (Object.is(x, y) || (Number.isNaN(x) && Number.isNaN(y))) return false;
    return !(Math.abs(x - y) <= 1e-9 * Math.max(1, Math.abs(x), Math.abs(y)));
  });
  return [...missing, ...apart.map(([name, x]) => `${name}: ${x} and ${theirs.get(name)}`)];
}

/** Severity of every finding, by id. */
export const severitiesOf = (assessment: Assessment): Record<string, string> =>
  Object.fromEntries(assessment.findings.map(({ id, severity }) => [id, severity]));
