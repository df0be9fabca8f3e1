import type { PathElement } from '@oddwheel/build/assess/types';
import { toSi } from '@oddwheel/quantity/units';
import { describe, expect, test } from 'vitest';
import { type Checked, folderOf, spaced } from './command.ts';

/** Checks a build of `proof/builds` and takes its folder away. */
async function checkedOf(name: string, change?: (text: string) => string): Promise<Checked> {
  const build = await folderOf(name, change);
  try {
    return (await build.check()).checked;
  } finally {
    await build.end();
  }
}

const mm = (metres: number | null | undefined): number => (metres ?? Number.NaN) * 1000;
const degrees = (rad: number | null | undefined): number => (rad ?? Number.NaN) / toSi('angle', 'deg', 1);

const stage = (checked: Checked, name: string): PathElement | undefined => checked.path.find((e) => e.name === name);
const fact = (checked: Checked, name: string, key: string): number =>
  stage(checked, name)?.facts.find((x) => x.key === key)?.spread.value ?? Number.NaN;
const finding = (checked: Checked, check: string, element?: string) =>
  checked.findings.find((x) => x.check === check && (element === undefined || x.element === element));

describe('chain: Mott, example 7-3 (read): 17 and 65 teeth of No. 40, trial centres of 15 in, 102.9 links, 104 taken', () => {
  test('links needed, and pitch diameters of 2.721 and 10.349 in', async () => {
    const checked = await checkedOf('chain-of-104-links');
    // The book’s rule gives 102.945 and the exact length 102.956.
    expect(Math.abs(fact(checked, 'Chain', 'links') - 102.9)).toBeLessThan(0.06);
    expect(Math.abs(fact(checked, 'Chain', 'pitch-driver') / toSi('length', 'in', 1) - 2.721)).toBeLessThan(0.0005);
    expect(Math.abs(fact(checked, 'Chain', 'pitch-driven') / toSi('length', 'in', 1) - 10.349)).toBeLessThan(0.0005);
    expect(finding(checked, 'chain.fit')?.severity).toBe('holds');
  });

  test('104 links at its 15.27 in lie within the rounding of taut', async () => {
    const checked = await checkedOf('chain-of-104-links', (text) => text.replace('"15 in"', '"15.27 in"'));
    expect(Math.abs(fact(checked, 'Chain', 'links') - 104)).toBeLessThan(0.01);
  });
});

describe('idler: hull of three pitch circles (SciPy 1.17.1, ConvexHull), 17 and 40 teeth of 12.7 mm at 400 mm, 13 at 180 and 120 mm', () => {
  test('wraps of 141.78, 170.58 and 47.64 degrees and 858.11 mm of spans make 94.937 links; longest span 244.62 mm', async () => {
    const checked = await checkedOf('chain-over-idler');
    expect(fact(checked, 'Chain', 'links')).toBeCloseTo(94.9368, 3);
    expect(mm(fact(checked, 'Chain', 'span'))).toBeCloseTo(244.623, 2);
    expect(degrees(fact(checked, 'Chain', 'wrap'))).toBeCloseTo(141.778, 2);
    expect(finding(checked, 'chain.fit')?.demand?.value).toBeCloseTo(94.9368, 3);
  });

  test('13 teeth over 47.64 degrees are 1.72 in mesh, less than the 3 that makers ask for', async () => {
    const mesh = finding(await checkedOf('chain-over-idler'), 'idler.mesh');
    expect(mesh?.capacity?.value).toBeCloseTo((13 * 47.637365) / 360, 4);
    expect(mesh?.demand?.value).toBe(3);
    expect(mesh?.severity).toBe('fails');
  });

  test('the same idler sprung and put on the strand that pulls is a fault on overrun', async () => {
    const checked = await checkedOf('chain-over-idler', (text) => text.replace('"fixed"', '"sprung"'));
    expect(finding(checked, 'idler.overrun')?.severity).not.toBe('holds');
  });
});

describe('spur pairs: Khurmi & Gupta, example 13.3 (read): reverted train of 28/100 and 36/124 teeth, both at 200 mm', () => {
  test('modules of 3.125 and 2.5 mm ask for 200 mm each, and the train makes 12.3', async () => {
    const checked = await checkedOf('reverted-train');
    for (const name of ['First pair', 'Second pair']) {
      const centres = finding(checked, 'spur.centres', name);
      expect(centres?.severity).toBe('holds');
      expect(spaced(centres?.says)).toBe('Centres 200 mm as drawn; the teeth ask for 200 mm.');
    }
    expect(Math.abs((checked.gears[0]?.overall.value ?? 0) - 12.3)).toBeLessThan(0.02);
  });

  test('with the 99 teeth that the stored solution prints, the first pair no longer meets', async () => {
    const checked = await checkedOf('reverted-train', (text) => text.replace('"driven": 100', '"driven": 99'));
    expect(finding(checked, 'spur.centres', 'First pair')?.severity).toBe('fails');
  });
});

describe('swinging arm: rule read (centres farthest apart with sprocket, pivot and axle in line), numbers turned by SciPy', () => {
  test('sprocket 70 mm off the pivot at 8 degrees, arm 560 mm: 629.054, 629.394 and 626.236 mm, 630 mm where tightest', async () => {
    const chain = (await checkedOf('swing-arm')).stroke?.chains[0];
    const at = (name: string) => chain?.places.find((place) => place.name === name);
    expect(mm(at('full rebound')?.centreDistance)).toBeCloseTo(629.053994, 4);
    expect(mm(at('as drawn')?.centreDistance)).toBeCloseTo(629.394166, 4);
    expect(mm(at('full bump')?.centreDistance)).toBeCloseTo(626.236298, 4);
    expect(mm(chain?.tightest?.centreDistance)).toBeCloseTo(630, 6);
    expect(degrees(chain?.tightest?.angle)).toBeCloseTo(-8, 6);
    expect(Math.abs((chain?.tightest?.linksNeeded ?? 0) - 109.945)).toBeLessThan(0.001);
  });

  test('spans lie 35.747 and 57.233 mm off the arm at rebound, 67.477 and 24.972 mm at bump (hull and nearest points, SciPy)', async () => {
    const chain = (await checkedOf('swing-arm')).stroke?.chains[0];
    const room = (place: string, span: string): number =>
      mm(chain?.room.find((x) => x.place === place && x.span === span)?.pulling);
    // The arm takes 15 mm, and half the plates the rest: alike for all four.
    const taken = 35.74746 - room('full rebound', 'upper');
    expect(taken).toBeGreaterThan(15);
    expect(57.2326 - room('full rebound', 'lower')).toBeCloseTo(taken, 3);
    expect(67.47656 - room('full bump', 'upper')).toBeCloseTo(taken, 3);
    expect(24.9715 - room('full bump', 'lower')).toBeCloseTo(taken, 3);
  });

  test('an arm of 40 mm rubs on the lower span at full bump', async () => {
    const rub = finding(await checkedOf('swing-arm', (text) => text.replace('"30 mm"', '"40 mm"')), 'arm.rub');
    expect(rub?.severity).toBe('fails');
    expect(spaced(rub?.says)).toMatch(/^The lower span rubs on the arm by 2\.5\d+ mm at full bump/);
  });

  test('slack is told for the stand and for the wheels, and the slot reaches it', async () => {
    const checked = await checkedOf('swing-arm');
    const chain = checked.stroke?.chains[0];
    expect(chain?.slack?.onStand).toBeGreaterThan(chain?.slack?.wanted ?? Number.NaN);
    expect(chain?.slot?.reaches).toBe(true);
    expect(finding(checked, 'arm.slot')?.severity).toBe('holds');
  });
});
