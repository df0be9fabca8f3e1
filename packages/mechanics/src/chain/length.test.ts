import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MethodError } from '../method/method.ts';
import { checkMethod } from '../method/proof.ts';
import { chainCentreDistance } from './centre-distance.ts';
import { chainCentreDistanceApprox } from './centre-distance-approx.ts';
import { chainLength } from './length.ts';
import { chainLengthApprox } from './length-approx.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const mm = (metres: number): number => metres * 1000;

/** A drive whose pitch is 1, so that lengths read in pitches. */
const pitches = (teethDriver: number, teethDriven: number, centreDistance: number) => ({
  pitch: 1,
  teethDriver,
  teethDriven,
  centreDistance,
});

describe('links and centre distance, published examples', () => {
  it('chain-len-17-65 — Mott, Machine Elements in Mechanical Design, 4th ed., Example Problem 7-3 (read)', () => {
    const drive = { pitch: 0.0127, teethDriver: 17, teethDriven: 65 };
    const approx = chainLengthApprox.run({ ...drive, centreDistance: 30 * 0.0127 });
    expect(approx.links).toBeCloseTo(102.945, 2);
    const byRule = chainCentreDistanceApprox.run({ ...drive, links: 104 });
    expect(byRule.centreDistance / 0.0127).toBeCloseTo(30.5447, 3);
    expect(mm(byRule.centreDistance)).toBeCloseTo(387.917, 1);
    const exact = chainCentreDistance.run({ ...drive, links: 104 });
    expect(exact.centreDistance / 0.0127).toBeCloseTo(30.5394, 3);
    expect(mm(exact.centreDistance)).toBeCloseTo(387.851, 2);
    expect(degrees(exact.wrapDriver)).toBeCloseTo(151.077, 1);
    expect(degrees(exact.wrapDriven)).toBeCloseTo(208.923, 1);
    expect(mm(2 * exact.pitchRadiusDriver)).toBeCloseTo(69.1158, 1);
    expect(mm(2 * exact.pitchRadiusDriven)).toBeCloseTo(262.867, 1);
  });

  it('chain-len-19-38 — Shigley, 8th/9th ed., ch. 17, no. 80 multi-strand problem, Eqs 17-34 to 17-36 (read)', () => {
    const drive = { pitch: 0.0254, teethDriver: 19, teethDriven: 38 };
    expect(chainLengthApprox.run({ ...drive, centreDistance: 40 * 0.0254 }).links).toBeCloseTo(108.729, 2);
    const byRule = chainCentreDistanceApprox.run({ ...drive, links: 110 });
    expect(byRule.centreDistance / 0.0254).toBeCloseTo(40.6375, 3);
    expect(mm(byRule.centreDistance)).toBeCloseTo(1032.19, 1);
    expect(chainCentreDistance.run({ ...drive, links: 110 }).centreDistance / 0.0254).toBeCloseTo(40.6374, 3);
  });

  it('chain-len-20-63 — paper on computer-aided chain selection (read); it prints 114.305 links from halving 83 as a whole number', () => {
    const at36 = chainLength.run(pitches(20, 63, 36));
    expect(at36.links).toBeCloseTo(114.805, 3);
    expect(Math.abs(at36.links - 114.305)).toBeGreaterThan(0.49);
    expect(chainLengthApprox.run(pitches(20, 63, 36)).links).toBeCloseTo(114.801, 3);
    const exact = chainCentreDistance.run({ pitch: 1, teethDriver: 20, teethDriven: 63, links: 114 });
    expect(exact.centreDistance).toBeCloseTo(35.59, 3);
    const byRule = chainCentreDistanceApprox.run({ pitch: 1, teethDriver: 20, teethDriven: 63, links: 114 });
    expect(byRule.centreDistance).toBeCloseTo(35.592, 3);
    // Counting the arcs as radius times angle overstates the length.
    const { span, wrapDriver, wrapDriven, pitchRadiusDriver, pitchRadiusDriven } = at36;
    const wrong = 2 * span + pitchRadiusDriver * wrapDriver + pitchRadiusDriven * wrapDriven;
    expect(wrong).toBeCloseTo(114.856, 3);
  });

  it('chain-select-08B-pump — British chain designer guide, rotary pump example (read)', () => {
    const drive = { pitch: 0.0127, teethDriver: 19, teethDriven: 76 };
    expect(chainLengthApprox.run({ ...drive, centreDistance: 0.458 }).links).toBeCloseTo(121.908, 1);
    expect(mm(chainCentreDistanceApprox.run({ ...drive, links: 122 }).centreDistance)).toBeCloseTo(458.603, 1);
    expect(mm(chainCentreDistance.run({ ...drive, links: 122 }).centreDistance)).toBeCloseTo(458.523, 2);
  });

  it('chain-pitch-from-pcd — Khurmi & Gupta, Theory of Machines, chain-drive example: 65 links (memory)', () => {
    const drive = { pitch: 0.0470755, teethDriver: 20, teethDriven: 40, centreDistance: 0.8 };
    const found = chainLength.run(drive);
    expect(found.links).toBeCloseTo(64.586, 2);
    expect(Math.ceil(found.links)).toBe(65);
    expect(mm(2 * found.pitchRadiusDriven)).toBeCloseTo(600, 1);
  });

  it('chain-rating-60-2-13T — Shigley, Problem 17-25: centre distance 23.95 pitches for 82 links (memory)', () => {
    const drive = { pitch: 0.01905, teethDriver: 13, teethDriven: 52, links: 82 };
    expect(chainCentreDistanceApprox.run(drive).centreDistance / 0.01905).toBeCloseTo(23.9455, 3);
    expect(chainCentreDistance.run(drive).centreDistance / 0.01905).toBeCloseTo(23.9408, 3);
  });

  it('chain-rating-40-4-life — Shigley, Problem 17-26: 135 links at 20 in (read)', () => {
    const drive = { pitch: 0.0127, teethDriver: 21, teethDriven: 84, centreDistance: 0.508 };
    expect(chainLengthApprox.run(drive).links).toBeCloseTo(135.013, 2);
  });

  it('chain-select-12B-pump-1400 — Bhandari, Introduction to Machine Design, Example 14.4 (read)', () => {
    const drive = { pitch: 0.01905, teethDriver: 17, teethDriven: 34 };
    const found = chainLengthApprox.run({ ...drive, centreDistance: 40 * 0.01905 });
    expect(found.links).toBeCloseTo(105.683, 3);
    const set = chainCentreDistanceApprox.run({ ...drive, links: 106 });
    expect(mm(set.centreDistance) * (1 - 0.002)).toBeCloseTo(763.496, 1);
    const { pitchRadiusDriver, pitchRadiusDriven } = chainCentreDistance.run({ ...drive, links: 106 });
    expect(mm(2 * pitchRadiusDriver)).toBeCloseTo(103.674, 2);
    expect(mm(2 * pitchRadiusDriven)).toBeCloseTo(206.463, 2);
  });
});

describe('links and centre distance, constructed cases', () => {
  it('chain-polygon-13-39 — rigid links over two polygons, 48 positions: mean and both ends (computed)', () => {
    const exact = chainCentreDistance.run({ pitch: 1, teethDriver: 13, teethDriven: 39, links: 76 }).centreDistance;
    expect(exact).toBeCloseTo(24.6519, 3);
    expect(exact).toBeGreaterThan(24.6502);
    expect(exact).toBeLessThan(24.653);
    const byRule = chainCentreDistanceApprox.run({ pitch: 1, teethDriver: 13, teethDriven: 39, links: 76 });
    expect(byRule.centreDistance).toBeCloseTo(24.6527, 3);
  });

  it('chain-len-11-88-close — the handbook rule is 0.27 pitch short at a large ratio and short centres (computed)', () => {
    expect(chainLengthApprox.run(pitches(11, 88, 20)).links).toBeCloseTo(97.0092, 3);
    const exact = chainLength.run(pitches(11, 88, 20));
    expect(exact.links).toBeCloseTo(97.2762, 3);
    expect(degrees(exact.wrapDriver)).toBeCloseTo(104.576, 2);
  });

  it('chain-takeup-3pct — 110 links on 15 and 45 teeth, p 15.875 (computed)', () => {
    const drive = { pitch: 0.015875, teethDriver: 15, teethDriven: 45 };
    const exact = chainCentreDistance.run({ ...drive, links: 110 });
    expect(mm(exact.centreDistance)).toBeCloseTo(630.438, 2);
    const added = 0.03 * 110 * 0.015875;
    expect(mm(added)).toBeCloseTo(52.3875, 4);
    expect(mm(added / (2 * Math.cos(exact.tangentAngle)))).toBeCloseTo(26.3842, 1);
    // Two pitches taken out of the new chain.
    const shorter = chainCentreDistance.run({ ...drive, links: 108 });
    expect(mm(exact.centreDistance - shorter.centreDistance)).toBeCloseTo(15.9904, 1);
  });

  it('chain-suspension-a — links needed as a swinging arm moves (computed)', () => {
    const drive = { pitch: 0.015875, teethDriver: 15, teethDriven: 45 };
    const centres = [629.054, 630, 629.394, 626.236];
    const links = [109.8269, 109.9452, 109.8695, 109.4745];
    centres.forEach((centre, k) => {
      expect(chainLength.run({ ...drive, centreDistance: centre / 1000 }).links).toBeCloseTo(links[k] as number, 3);
    });
  });

  it('chain-shaftload-520 — tangent angle and span of 15 and 45 teeth at 453.982 mm (computed)', () => {
    const found = chainLength.run({ pitch: 0.015875, teethDriver: 15, teethDriven: 45, centreDistance: 0.453982 });
    expect(degrees(found.tangentAngle)).toBeCloseTo(9.58738, 3);
    expect(mm(found.span)).toBeCloseTo(447.641, 2);
  });
});

const drives = fc.record({
  pitch: fc.double({ min: 0.006, max: 0.04, noNaN: true }),
  teethDriver: fc.integer({ min: 9, max: 60 }),
  teethDriven: fc.integer({ min: 9, max: 120 }),
  clear: fc.double({ min: 1.05, max: 6, noNaN: true }),
});

describe('properties', () => {
  it('centre distance and links undo each other', () => {
    fc.assert(
      fc.property(drives, ({ pitch, teethDriver, teethDriven, clear }) => {
        const centreDistance = (clear * pitch * (teethDriver + teethDriven + 8)) / 6;
        const { links } = chainLength.run({ pitch, teethDriver, teethDriven, centreDistance });
        const back = chainCentreDistance.run({ pitch, teethDriver, teethDriven, links });
        expect(back.centreDistance / centreDistance).toBeCloseTo(1, 12);
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it('driver and driven swapped: same links and span, wraps and radii swapped', () => {
    fc.assert(
      fc.property(drives, ({ pitch, teethDriver, teethDriven, clear }) => {
        const centreDistance = (clear * pitch * (teethDriver + teethDriven + 8)) / 6;
        const one = chainLength.run({ pitch, teethDriver, teethDriven, centreDistance });
        const other = chainLength.run({ pitch, teethDriver: teethDriven, teethDriven: teethDriver, centreDistance });
        expect(other.links).toBeCloseTo(one.links, 10);
        expect(other.span).toBeCloseTo(one.span, 14);
        expect(other.wrapDriver).toBeCloseTo(one.wrapDriven, 13);
        expect(other.pitchRadiusDriven).toBe(one.pitchRadiusDriver);
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  it('every formula shown gives the value returned', () => {
    fc.assert(
      fc.property(drives, ({ pitch, teethDriver, teethDriven, clear }) => {
        const centreDistance = (clear * pitch * (teethDriver + teethDriven + 8)) / 6;
        const drive = { pitch, teethDriver, teethDriven };
        const { links } = chainLength.run({ ...drive, centreDistance });
        expect(checkMethod(chainLength, { ...drive, centreDistance })).toEqual([]);
        expect(checkMethod(chainLengthApprox, { ...drive, centreDistance })).toEqual([]);
        expect(checkMethod(chainCentreDistance, { ...drive, links })).toEqual([]);
        expect(checkMethod(chainCentreDistanceApprox, { ...drive, links })).toEqual([]);
      }),
      { seed: 23, numRuns: 100 },
    );
  });
});

describe('refusals', () => {
  it('sprockets that overlap', () => {
    expect(() => chainLength.run({ pitch: 0.0127, teethDriver: 17, teethDriven: 34, centreDistance: 0.1 })).toThrow(
      /The sprockets overlap: their tooth tips need a centre distance of more than 0\.110\d* m; read 0\.1 m\./,
    );
    expect(() =>
      chainLengthApprox.run({ pitch: 0.0127, teethDriver: 17, teethDriven: 34, centreDistance: 0.1 }),
    ).toThrow(MethodError);
  });

  it('too few links, with the number needed', () => {
    expect(() => chainCentreDistance.run({ pitch: 0.0127, teethDriver: 17, teethDriven: 34, links: 40 })).toThrow(
      /^Links of the chain must be more than 4\d\.\d+, else the tooth tips/,
    );
    expect(() => chainCentreDistanceApprox.run({ pitch: 0.0127, teethDriver: 17, teethDriven: 34, links: 20 })).toThrow(
      'Links of the chain are too few to reach round 17 and 34 teeth; read 20.',
    );
  });

  it('teeth that are no whole number, a pitch of zero', () => {
    expect(() => chainLength.run({ pitch: 0.0127, teethDriver: 17.5, teethDriven: 34, centreDistance: 1 })).toThrow(
      'Teeth of the driver: 17.5 is not a whole number; it must be at least 6.',
    );
    expect(() => chainLength.run({ pitch: 0, teethDriver: 17, teethDriven: 34, centreDistance: 1 })).toThrow(
      'Chain pitch: 0 m is out of range; it must be more than 0 m.',
    );
    expect(() =>
      chainLength.run({ pitch: 0.0127, teethDriver: 17, teethDriven: 34, centreDistance: Number.NaN }),
    ).toThrow('Centre distance: NaN m is not a finite number.');
  });
});
