import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Assessment } from '@oddwheel/build/assess/types';
import { compareTrains } from '@oddwheel/build/ratios/compare';
import { findTrains, roadSpeedOf } from '@oddwheel/build/ratios/find';
import { swapTable } from '@oddwheel/build/ratios/swap';
import type { Effect } from '@oddwheel/build/ratios/types';
import { USUAL_REQUEST } from '@oddwheel/build/ratios/usual';
import { applyEdit, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, it } from 'vitest';

const demo = (name: string): Session => {
  const at = fileURLToPath(new URL(`../../examples/${name}/build.json`, import.meta.url));
  const opened = openSession(readFileSync(at, 'utf8'), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
};

function whole<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** What `check` says after the edit, against what was foretold. */
function expectEqual(session: Session, effect: Effect, roadSpeed: number): Assessment {
  const edited = applyEdit(session, effect.patches, 'not yet');
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  const { assessment, evaluation } = edited.session;
  const { pulls } = assessment.road;
  effect.gears.forEach((gear, k) => {
    expect(gear.overall).toBeCloseTo(assessment.gears[k]?.overall.value ?? Number.NaN, 12);
    const { rollOut } = evaluation.middle.scene;
    expect(gear.engineSpeed).toBeCloseTo((roadSpeed / (rollOut ?? Number.NaN)) * 2 * Math.PI * gear.overall, 9);
    expect(gear.force).toBeCloseTo(
      'gears' in pulls ? (pulls.gears[k]?.atPeakTorque.value ?? Number.NaN) : Number.NaN,
      6,
    );
  });
  for (const { finding, severity, says } of effect.stops) {
    const found = assessment.findings.find(({ id }) => id === finding);
    expect({ finding, severity, says }).toEqual({ finding, severity: found?.severity, says: found?.says });
  }
  const bad = (check: string): boolean =>
    assessment.findings.some((one) => one.check === check && (one.severity === 'fails' || one.severity === 'thin'));
  const stopped = new Set<string>(effect.stops.map(({ check }) => check));
  for (const check of [
    'chain.fit',
    'chain.wrap',
    'chain.clear',
    'belt.fit',
    'clear.touch',
    'assembly.enter',
    'adjust.wear',
  ])
    expect({ check, bad: bad(check) }).toEqual({ check, bad: stopped.has(check) });
  for (const { address, links, fits } of effect.stages) {
    if (links === null) continue;
    const fit = assessment.findings.find(
      ({ check, address: at }) => at === address && (check === 'chain.fit' || check === 'belt.fit'),
    );
    expect(fit?.says).toMatch(new RegExp(`\\b${links} `));
    if (fits) expect(fit?.severity).toBe('holds');
  }
  return assessment;
}

const SWAPS = [
  ['marsh-hauler', 'chain-1', 'driver', [15, 19]],
  ['marsh-hauler', 'chain-1', 'driven', [26, 34]],
  ['marsh-hauler', 'bevel', 'driven', [30, 34]],
  ['marsh-hauler', 'chain-2', 'driver', [11, 19]],
  ['marsh-hauler', 'chain-2', 'driven', [46, 52]],
  ['hill-trike', 'chain', 'driver', [13, 21]],
  ['hill-trike', 'chain', 'driven', [42, 48]],
  ['hill-trike', 'spur', 'driven', [40, 44]],
  ['rail-cart', 'belt', 'driver', [24, 32]],
  ['rail-cart', 'belt', 'driven', [66, 76]],
  ['rail-cart', 'chain', 'driver', [13, 21]],
] as const;

describe('each row of a swap table is what check says after the swap', () => {
  it.each(SWAPS)('%s, %s, %s', (name, stage, end, teeth) => {
    const session = demo(name);
    const rows = whole(swapTable(session, stage, end, teeth, 10));
    expect(rows.length).toBeGreaterThanOrEqual(teeth[1] - teeth[0] + 1);
    for (const row of rows) {
      expectEqual(session, row, 10);
      expect(row.drawn).toBe(row.patches.length === 0);
    }
  });

  it('the shelf alone, with what lies on it', () => {
    const rows = whole(swapTable(demo('marsh-hauler'), 'chain-1', 'driven', 'shelf', 10));
    expect(rows.map(({ teeth, onShelf, drawn }) => [teeth, onShelf, drawn])).toEqual([
      [17, 1, false],
      [30, 1, true],
    ]);
  });

  it('names the stages that have teeth', () => {
    expect(() => whole(swapTable(demo('rail-cart'), 'chian', 'driver', 'shelf', 10))).toThrow(
      'Stage chian read; a stage with teeth is accepted: belt, chain.',
    );
  });
});

describe('each ranked train is what check says after it is applied', () => {
  it.each(['marsh-hauler', 'hill-trike', 'rail-cart'])('%s', (name) => {
    const session = demo(name);
    const { trains, windows } = whole(findTrains(session, USUAL_REQUEST));
    expect(trains).toHaveLength(10);
    expect(windows.clashes).toEqual([]);
    for (const train of trains) {
      const after = expectEqual(session, train, roadSpeedOf(session));
      expect(train.stages.every(({ fits }) => fits)).toBe(true);
      const { weakest } = train.strength;
      expect(weakest?.reserve).toBe(after.findings.find(({ id }) => id === weakest?.finding)?.reserve?.value);
    }
    // A builder buys a pair of sprockets, not a new drive.
    expect(trains[0]?.toBuy.length).toBeLessThanOrEqual(2);
  });
});

describe('a comparison is what check says after the train is applied', () => {
  it.each(['marsh-hauler', 'hill-trike', 'rail-cart'])('%s', (name) => {
    const session = demo(name);
    const [train] = whole(findTrains(session, { ...USUAL_REQUEST, best: 2 })).trains.slice(-1);
    if (!train) throw new Error('No train.');
    const [compared] = compareTrains(session, [train.pairs]);
    const { gears, road } = expectEqual(session, train, roadSpeedOf(session));
    const { top, sprint, cycle, pulls } = road;
    expect(compared).toMatchObject({ gears, top, sprint, cycle, pulls });
  });
});
