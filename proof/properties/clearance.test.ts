import { readFileSync } from 'node:fs';
import { openSession } from '@oddwheel/build/session';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Tree } from './build.ts';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

function rowsOf(change: (build: Tree) => void) {
  const build = JSON.parse(DEMO) as Tree;
  change(build);
  const opened = openSession(JSON.stringify(build), { cache: false, ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment.clearance.rows;
}

const named = (rows: ReturnType<typeof rowsOf>, first: string, second: string) => {
  const row = rows.find((one) => one.first.name === first && one.second.name === second);
  if (!row) throw new Error(`${first} to ${second} stands in no row`);
  return row;
};

describe('clearances of marsh-hauler', () => {
  const still = rowsOf(() => undefined);

  test('stand smallest first, and never above what is drawn', () => {
    const smallest = still.map((row) => row.smallest);
    expect(smallest).toEqual([...smallest].sort((a, b) => a - b));
    for (const row of still) expect(row.smallest).toBeLessThanOrEqual(row.drawn + 1e-12);
  });

  test('left tube of the subframe to the new tyre, worked by hand', () => {
    // The tube is square, 20 mm, its middle at z = 400 mm from x = 480 to 715 mm and y = 75 mm; the tyre of 110/85R36 is 1101.4 mm in diameter
    // and 110 mm wide about y = 0, with rounded edges. So the gap is at least that of the circle seen from the side, and at most
    // that to the tread at its middle.
    const row = named(still, 'tyre', 'left tube of the subframe');
    const side = Math.hypot(0.48, 0.39) - 0.5507;
    expect(row.drawn).toBeGreaterThan(side - 0.001);
    expect(row.drawn).toBeLessThan(Math.hypot(side + 0.02, 0.065));
  });

  test('a tube that grows never leaves more room to anything', () => {
    const tube = (mm: number) =>
      rowsOf((build) => {
        const tubes = (build.brief as unknown as { space: { tubes: Record<string, { size: string }> } }).space.tubes;
        const left = tubes['subframe-left'];
        if (left) left.size = `${mm} mm`;
      });
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 24 }), fc.integer({ min: 1, max: 6 }), (size, more) => {
        const [small, large] = [tube(size), tube(size + more)];
        for (const row of small) {
          const grown = large.find((one) => one.first.name === row.first.name && one.second.name === row.second.name);
          if (grown) expect(grown.smallest).toBeLessThanOrEqual(row.smallest + 1e-12);
        }
      }),
      { seed: 11, numRuns: 12 },
    );
  });

  test('a larger sprocket that shall go on, and more travel of the arm, never leave more room', () => {
    const larger = rowsOf((build) => {
      const stages = build.path?.stages as unknown as Record<string, { largest?: { driver: number; driven: number } }>;
      const chain = stages['chain-2'];
      if (chain) chain.largest = { driver: 19, driven: 60 };
    });
    const travel = rowsOf((build) => {
      (build.brief as unknown as { suspension: { bump: string } }).suspension.bump = '11 deg';
    });
    for (const row of still)
      for (const rows of [larger, travel]) {
        const grown = rows.find((one) => one.first.name === row.first.name && one.second.name === row.second.name);
        if (grown) expect(grown.smallest).toBeLessThanOrEqual(row.smallest + 1e-12);
      }
  });

  test('the axle slot: gear 33 to tyre loses what the slot brings the axle toward the gear, by hand', () => {
    const travel = (mm: number) =>
      rowsOf((build) => {
        const { adjusters } = build.path as unknown as { adjusters: Record<string, { travel: string }> };
        const slot = adjusters['axle-slots'];
        if (slot) slot.travel = `${mm} mm`;
      });
    const room = (mm: number) => named(travel(mm), 'gear 33', 'tyre').smallest;
    const fixed = room(0);
    // The slot runs along (0.67, 0.74) and the gear stands along (440, 482.5) from the axle: nearly one line, so the tyre comes nearer by the travel.
    const cosine = (0.67 * 440 + 0.74 * 482.5) / (Math.hypot(0.67, 0.74) * Math.hypot(440, 482.5));
    for (const mm of [3, 6, 12]) {
      expect(fixed - room(mm)).toBeGreaterThan(mm * 1e-3 * cosine - 2e-4);
      expect(fixed - room(mm)).toBeLessThan(mm * 1e-3 + 2e-4);
    }
    expect(named(travel(12), 'gear 33', 'tyre').takes.map(({ by }) => by)).toContain('axle slot');
    expect(named(travel(0), 'gear 33', 'tyre').takes.map(({ by }) => by)).not.toContain('axle slot');
  });
});
