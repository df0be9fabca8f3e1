import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';
import { DEMOS, reserves, sweptRooms, textOf } from './recompute.mjs';

/** Two reserves agree within this part of the script's. */
const CLOSE = 0.02;

/** Findings with a wider tolerance, by how far the bench may lie below the script; it may never lie further above than `CLOSE`. */
const WIDER: Readonly<Record<string, { below: number; why: string }>> = {
  'rail-cart shaft.fatigue:/path/shafts/countershaft': {
    below: 0.05,
    why: 'The bench leaves 0.94 of the diameter under a retaining ring, 28.2 mm of 30; the groove of DIN 471 leaves 28.6 mm.',
  },
  'rail-cart shaft.fatigue:/brief/engine/output': {
    below: 0.05,
    why: 'The bench leaves 0.94 of the diameter under a retaining ring, 28.2 mm of 30; the groove of DIN 471 leaves 28.6 mm.',
  },
};

/**
 * Rooms beside a chain, by how much nearer the bench may draw it: it reckons a chain’s width from pitch and inner link, to the safe
 * side of the riveted pin and fastener of ISO 606.
 */
const CHAIN_WIDER = 0.0026;

/** Findings of which the script says something else, and why; the last test tells when one of them has come to agree. */
const APART: Readonly<Record<string, string>> = {
  'marsh-hauler shaft.fatigue:/path/shafts/shaft-b':
    'The bench finds the thread of a nut; the script knows steps, grooves and keyways.',
};

function firstReserves(demo: string) {
  const opened = openSession(textOf(demo));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment.findings.flatMap(({ id, reserve }) =>
    reserve === null ? [] : [{ id, reserve: reserve.value }],
  );
}

const besideChain = (demo: string, id: string): boolean =>
  id.startsWith('clear.parts:') &&
  id !== 'clear.parts:/path/stages/bevel' &&
  id !== 'clear.parts:/path/shafts/shaft-a' &&
  !(demo === 'hill-trike' && id === 'clear.parts:/brief/engine/output');

describe.each(DEMOS)('%s, worked out again from build.json', (demo) => {
  const mine = reserves(demo);
  const bench = firstReserves(demo);
  const swept = sweptRooms(demo);
  const apart = Object.keys(APART).filter((key) => key.startsWith(`${demo} `));

  test('has its ten first findings in the script', () => {
    const first = bench.slice(0, 10).map(({ id }) => id);
    expect(first).toHaveLength(10);
    expect(first.filter((id) => mine[id] === undefined)).toEqual([]);
  });

  test.each(bench.filter(({ id }) => mine[id] !== undefined && APART[`${demo} ${id}`] === undefined))(
    '$id',
    ({ id, reserve }) => {
      const own = mine[id] ?? Number.NaN;
      const below = besideChain(demo, id) ? CHAIN_WIDER / 0.01 : own * (WIDER[`${demo} ${id}`]?.below ?? CLOSE);
      expect(reserve).toBeGreaterThan(own - below);
      expect(reserve).toBeLessThan(own * (1 + CLOSE));
    },
  );

  test.runIf(Object.keys(swept).length > 0)(
    'never finds more room beside a chain than the ring that its plates sweep leaves',
    () => {
      for (const [address, room] of Object.entries(swept)) {
        const found = bench.find(({ id }) => id === `clear.parts:${address}`);
        expect((found?.reserve ?? Number.NaN) * 0.01).toBeLessThan(room * (1 + CLOSE));
      }
    },
  );

  test.runIf(apart.length > 0)('still differs where it is said to', () => {
    const agreed = apart.filter((key) => {
      const id = key.slice(demo.length + 1);
      const found = bench.find((row) => row.id === id)?.reserve ?? Number.NaN;
      return Math.abs(found / (mine[id] ?? Number.NaN) - 1) < CLOSE;
    });
    expect(agreed).toEqual([]);
  });
});
