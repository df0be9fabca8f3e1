import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { chainPull } from './pull.ts';
import { chainSlack } from './slack.ts';
import { chainStaticReserve } from './static-reserve.ts';
import { chainWearSpread } from './wear-spread.ts';

const radius = (pitch: number, teeth: number): number => pitch / (2 * Math.sin(Math.PI / teeth));

describe('pull of the tight span', () => {
  it('veh-mount-chain — 240 N·m on 16 teeth, p 15.875: 5898.8 N (computed)', () => {
    expect(chainPull.run({ torque: 240, pitchRadius: radius(0.015875, 16) }).pull).toBeCloseTo(5898.8, 0);
  });

  it('chain-vehicle-520 — 45 N·m × 7.5 on 15 teeth: 8840.34 N (computed)', () => {
    expect(
      Math.abs(chainPull.run({ torque: 337.5, pitchRadius: radius(0.015875, 15) }).pull / 8840.34 - 1),
    ).toBeLessThan(5e-3);
  });

  it('chain-rating-60-2-13T — Shigley, Problem 17-25: 744 lbf at 1164 lbf·in (memory)', () => {
    expect(
      Math.abs(chainPull.run({ torque: 130.988, pitchRadius: radius(0.01905, 13) }).pull / 3291.08 - 1),
    ).toBeLessThan(1e-2);
    expect(checkMethod(chainPull, { torque: 130.988, pitchRadius: 0.0398 })).toEqual([]);
  });
});

describe('reserve against half the tensile strength', () => {
  it('chain-vehicle-520 — 26.4 kN against a pull of 4903.83 N: static safety 5.38, so 2.69 of half (limits read)', () => {
    const found = chainStaticReserve.run({ pull: 4903.83, minTensile: 26400, strands: 1 });
    expect(2 * found.reserve).toBeCloseTo(5.38355, 2);
    expect(found.limit).toBe(13200);
  });

  it('chain-select-08B-pump — 17.8 kN against 1295.07 N: static safety 13.74 (read)', () => {
    expect(2 * chainStaticReserve.run({ pull: 1295.07, minTensile: 17800, strands: 1 }).reserve).toBeCloseTo(
      13.7444,
      1,
    );
  });

  it('chain-10B-power-tension — Bhandari, Example 14.7: safety 12.06 (read)', () => {
    expect(2 * chainStaticReserve.run({ pull: 1840.56, minTensile: 22200, strands: 1 }).reserve).toBeCloseTo(12.062, 2);
  });

  it('strength grows with the strands', () => {
    expect(chainStaticReserve.run({ pull: 1000, minTensile: 10000, strands: 3 }).reserve).toBe(15);
    expect(checkMethod(chainStaticReserve, { pull: 1000, minTensile: 10000, strands: 3 })).toEqual([]);
    expect(() => chainStaticReserve.run({ pull: 0, minTensile: 10000, strands: 1 })).toThrow(
      'Greatest pull: 0 N is out of range; it must be more than 0 N.',
    );
  });
});

describe('slack', () => {
  it('chain-slack-normal — total movement 47.2 mm on a span of 1181.1 mm is 4 % (maker’s installation data, read)', () => {
    // Excess of a V with that total movement, by the triangle: 2 √((s/2)² + (m/2)²) − s.
    const [span, movement] = [1.1811, 0.047244];
    const excess = 2 * Math.hypot(span / 2, movement / 2) - span;
    const found = chainSlack.run({ pitch: 0.0254, linksFitted: 100, linksNeeded: 100 - excess / 0.0254, span });
    expect(found.handMovement).toBeCloseTo(movement, 6);
    expect(found.movementOverSpan).toBeCloseTo(0.04, 6);
    expect(found.deflection).toBeCloseTo(0.023622, 6);
  });

  it('chain-suspension-a — 110 links where 109.8269 are needed: 2.75 mm excess; 1.87825 mm where 109.9452 is the tightest', () => {
    const span = 0.62;
    const loose = chainSlack.run({ pitch: 0.015875, linksFitted: 110, linksNeeded: 109.8269, span });
    const tight = chainSlack.run({ pitch: 0.015875, linksFitted: 110, linksNeeded: 109.9452, span });
    expect((loose.excess - tight.excess) * 1000).toBeCloseTo(1.87825, 1);
  });

  it('a small excess follows 2 s²/span for the deflection s', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (part, span) => {
          const found = chainSlack.run({
            pitch: 0.01,
            linksFitted: 100,
            linksNeeded: 100 - (part * span) / 0.01,
            span,
          });
          expect((2 * found.deflection ** 2) / span / found.excess).toBeCloseTo(1, 2);
          expect(checkMethod(chainSlack, { pitch: 0.01, linksFitted: 100, linksNeeded: 99.9, span })).toEqual([]);
        },
      ),
      { seed: 24, numRuns: 100 },
    );
  });

  it('a chain too short has a negative excess and does not move', () => {
    const short = { pitch: 0.0127, linksFitted: 99, linksNeeded: 99.5, span: 0.5 };
    const found = chainSlack.run(short);
    expect(found.excess).toBeCloseTo(-0.00635, 12);
    expect(found.handMovement).toBe(0);
    expect(checkMethod(chainSlack, short)).toEqual([]);
  });
});

describe('spread of wear', () => {
  it('chain-hunting-110-17 — no common factor: a tooth meets all 110 links (number theory)', () => {
    expect(chainWearSpread.run({ links: 110, teeth: 17 })).toEqual({
      commonFactor: 1,
      linksMet: 110,
      turnsToRepeat: 110,
      passesToRepeat: 17,
    });
  });

  it('chain-hunting-110-20 — common factor 10: a tooth meets 11 links (number theory)', () => {
    expect(chainWearSpread.run({ links: 110, teeth: 20 })).toEqual({
      commonFactor: 10,
      linksMet: 11,
      turnsToRepeat: 11,
      passesToRepeat: 2,
    });
    expect(checkMethod(chainWearSpread, { links: 110, teeth: 20 })).toEqual([]);
  });

  it('a tooth, followed link by link, meets as many different links', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 160 }), fc.integer({ min: 6, max: 60 }), (links, teeth) => {
        const met = new Set(Array.from({ length: links }, (_, turn) => (turn * teeth) % links));
        expect(chainWearSpread.run({ links, teeth }).linksMet).toBe(met.size);
      }),
      { seed: 25, numRuns: 200 },
    );
  });
});
