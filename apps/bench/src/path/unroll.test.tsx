import type { ElementKind, Fact, PathElement, ShaftPlace } from '@oddwheel/build/assess/types';
import { renderToString } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { UnrolledDrive } from './UnrolledDrive.tsx';
import { type StageSign, shaftThickness, unroll } from './unroll.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });
const nothing = { angularSpeed: null, torque: null, power: null, lineSpeed: null, force: null };

function element(kind: ElementKind, address: string, ratio: number | null, torque: number | null): PathElement {
  return {
    address,
    kind,
    name: address,
    teeth: null,
    ratio: ratio === null ? null : certain(ratio),
    here: { ...nothing, torque: torque === null ? null : certain(torque) },
    reserveHere: null,
    worst: null,
    facts: [],
  };
}

const uneven = (method: string): Fact => ({
  key: 'unevenness',
  name: '',
  kind: 'fraction',
  use: 'percent',
  spread: certain(0.01),
  text: '',
  method,
});

const KIND_OF: Readonly<Record<StageSign, ElementKind>> = {
  chain: 'chain',
  belt: 'belt',
  bevel: 'bevel',
  spur: 'spur',
  unit: 'unit',
  coupling: 'coupling',
  joint: 'coupling',
  'two joints': 'coupling',
};
const SYMBOLS = Object.keys(KIND_OF) as StageSign[];

function stage(symbol: StageSign, k: number, ratio = 2): PathElement {
  const bare = element(KIND_OF[symbol], `/path/stages/s${k}`, ratio, null);
  if (symbol === 'joint') return { ...bare, facts: [uneven('coupling.universalRatio')] };
  return symbol === 'two joints' ? { ...bare, facts: [uneven('coupling.universalPair')] } : bare;
}

function drive(symbols: readonly StageSign[], heights: readonly number[], bearings = 2) {
  const address = (k: number) => (k === 0 ? '/brief/engine/output' : `/path/shafts/shaft-${k}`);
  const path = [
    element('engine', '/brief/engine', null, 10),
    element('gearbox', address(0), 3, 30),
    ...symbols.flatMap((symbol, k) => [stage(symbol, k), element('shaft', address(k + 1), null, 30 * 2 ** (k + 1))]),
    element('ground', '/brief/wheel', null, null),
  ];
  const shafts = heights.map(
    (z, k): ShaftPlace => ({
      address: address(k),
      name: address(k),
      origin: [0, 0, z],
      direction: [0, 1, 0],
      sense: 1,
      seats: Array.from({ length: bearings }, (_, index) => ({
        address: `${address(k)}/seats/b${index}`,
        name: 'bearing',
        kind: 'bearing',
        at: [0, index * 0.1, z] as const,
      })),
    }),
  );
  return { path, shafts };
}

/** Every list of `count` symbols that has a given one at each of its places. */
const runs = (symbol: StageSign, count: number): StageSign[][] =>
  SYMBOLS.map((other) => Array.from({ length: count }, (_, k) => (k % 2 === 0 ? symbol : other)));

/** Heights that no two shafts share, in an order that goes up and down. */
const HEIGHTS = [0.2, 0.5, 0.1, 0.7, 0.3, 0.6, 0];

const at = (column: number, columns: number): string => `${Number((((column + 0.5) / columns) * 100).toFixed(4))}%`;

describe('the drive unrolled', () => {
  for (const count of [2, 3, 4, 5, 6])
    it(`puts each symbol of ${count} stages, whatever their kinds, over its own column, and joins them by shafts`, () => {
      for (const symbol of SYMBOLS)
        for (const symbols of runs(symbol, count)) {
          const { path, shafts } = drive(symbols, HEIGHTS.slice(0, count + 1));
          const page = renderToString(
            <UnrolledDrive path={path} shafts={shafts} selected={null} onSelect={() => undefined} />,
          );
          const columns = path.length;
          const drawn = [...page.matchAll(/x="([\d.]+%)"[^>]*data-symbol="([a-z ]+)"/g)].map(([, x, name]) => ({
            x,
            name,
          }));
          const of = (name: string) => drawn.filter((one) => one.name === name).map((one) => one.x);
          expect(of('crank')).toEqual([at(0, columns)]);
          expect(of('wheel')).toEqual([at(columns - 1, columns)]);
          for (const name of SYMBOLS) {
            const places = symbols.flatMap((one, k) => (one === name ? [at(2 + 2 * k, columns)] : []));
            expect(of(name), `${name} in ${symbols}`).toEqual(name === 'spur' ? [at(1, columns), ...places] : places);
          }
          const lines = [...page.matchAll(/data-shaft="([^"]+)"><line class="shaft" x1="([\d.]+%)" x2="([\d.]+%)"/g)];
          expect(lines.map(([, address, from, to]) => [address, from, to])).toEqual(
            shafts.map((shaft, k) => [
              shaft.address,
              at(2 * k + (k === 0 ? 1 : 0), columns),
              at(k === count ? columns - 1 : 2 * k + 2, columns),
            ]),
          );
          expect(page).not.toContain('NaN');
        }
    });

  it('keeps the real order of height, whatever it is', () => {
    const { path, shafts } = drive(['chain', 'bevel', 'spur', 'belt', 'unit', 'joint'], HEIGHTS);
    const y = unroll(path, shafts).shafts.map((shaft) => shaft.y);
    for (const [a, za] of HEIGHTS.entries())
      for (const [b, zb] of HEIGHTS.entries()) if (za > zb) expect(y[a], `${a} over ${b}`).toBeLessThan(y[b] ?? 0);
  });

  it('gives shafts that lie equally high the room that their stage needs, and one line to those that are coupled', () => {
    for (const symbol of SYMBOLS) {
      const { path, shafts } = drive([symbol, symbol], [0.3, 0.3, 0.3]);
      const [a, b, c] = unroll(path, shafts).shafts.map((shaft) => shaft.y);
      if (symbol === 'coupling' || symbol === 'unit') expect([b, c]).toEqual([a, a]);
      else {
        expect(b, symbol).toBeGreaterThan(a ?? 0);
        expect(c, symbol).toBe(a);
      }
    }
  });

  it('keeps a coupled shaft in line though it is measured a little lower', () => {
    const { path, shafts } = drive(['coupling', 'chain'], [0.3, 0.299, 0.1]);
    const [a, b, c] = unroll(path, shafts).shafts.map((shaft) => shaft.y);
    expect(b).toBe(a);
    expect(c).toBeGreaterThan(b ?? 0);
  });

  it('stays inside its height, with the wheel on the ground, also where the axle is the highest shaft', () => {
    const { path, shafts } = drive(['chain', 'chain', 'chain', 'chain'], [0, 0.1, 0.2, 0.3, 0.9]);
    const drawn = unroll(path, shafts);
    const { wheel, crank } = drawn;
    if (!wheel) throw new Error('no wheel');
    expect(wheel.y - wheel.radius).toBeGreaterThanOrEqual(0);
    expect(wheel.y + wheel.radius).toBeLessThan(drawn.height);
    for (const shaft of drawn.shafts) expect(shaft.y).toBeLessThan(wheel.y + wheel.radius);
    expect(crank.y).toBeGreaterThan(42);
  });

  it('draws as many bearings as the build names, none where it names none, and one for the output that the engine carries', () => {
    for (const bearings of [0, 1, 2, 3, 9]) {
      const { path, shafts } = drive(['chain'], [0, 0.2], bearings);
      expect(unroll(path, shafts).shafts.map((shaft) => shaft.bearings)).toEqual([1, Math.min(4, bearings)]);
    }
  });
});

describe('thickness of a shaft', () => {
  it('is 1.5 px at the crank, grows with torque to the power 0.34, and ends at 6 px', () => {
    expect(shaftThickness(1)).toBe(1.5);
    expect(shaftThickness(10)).toBeCloseTo(1.5 * 10 ** 0.34, 12);
    expect(shaftThickness(1000)).toBe(6);
    expect(shaftThickness(0.2)).toBe(1.5);
    expect(shaftThickness(Number.NaN)).toBe(1.5);
  });

  it('goes by the ratios where no torque is known', () => {
    const { path, shafts } = drive(['chain', 'bevel'], [0, 0.2, 0.1]);
    const still = path.map((one) => ({ ...one, here: nothing }));
    expect(unroll(still, shafts).shafts.map((shaft) => shaft.thickness)).toEqual(
      [3, 6, 12].map((ratio) => shaftThickness(ratio)),
    );
  });
});
