import { describe, expect, test } from 'vitest';
import { openSession, validateText } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';
import { orderOf } from './order.ts';

const axle = {
  name: 'axle slots',
  sets: 'slack',
  of: 'chain-1',
  moves: 'axle',
  along: [-1, 0, 0],
  travel: '20 mm',
};
const rings = {
  name: 'rings',
  sets: 'sprocket line',
  of: 'axle/sprocket',
  moves: 'axle/sprocket',
  along: [0, 1, 0],
  travel: '3 mm',
};

const text = (adjusters: object | null, chain: object = {}): string => {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as {
    path: { stages: Record<string, object>; adjusters?: object };
  };
  build.path.stages['chain-1'] = { ...build.path.stages['chain-1'], tensioner: 'none', ...chain };
  if (adjusters) build.path.adjusters = adjusters;
  return JSON.stringify(build);
};

function assessed(adjusters: object | null, chain: object = {}) {
  const opened = openSession(text(adjusters, chain));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment;
}

const finding = (assessment: ReturnType<typeof assessed>, check: string) =>
  assessment.findings.find((f) => f.check === check);

const number = (value: number | null | undefined): number => value ?? Number.NaN;

describe('take-up of a chain', () => {
  // Chain 520, p = 15.875 mm, 15:45, sprocket centres 600 mm forward and 50 mm up of the axle.
  const [p, x, z] = [15.875, 600, 50];
  const centre = Math.hypot(x, z);
  const radius = (teeth: number): number => p / (2 * Math.sin(Math.PI / teeth));
  const cosine = Math.cos(Math.asin((radius(45) - radius(15)) / centre));
  // dC = dL/(2 cos a) (chain reference, "Adjustment"); the axle's slot lies level, the line of centres does not.
  const perTravel = 2 * cosine * (x / centre);
  const assessment = assessed({ axle, rings });

  test('two pitches can be taken out (a chain maker’s answers, read): slot of 20 mm each way', () => {
    const found = finding(assessment, 'adjust.fitting');
    expect(found?.demand?.value).toBeCloseTo((2 * p) / 1000, 12);
    expect(number(found?.capacity?.value)).toBeCloseTo((40 * perTravel) / 1000, 4);
    expect(found?.severity).toBe('holds');
  });

  test('wear to 3 % of 106 links is 50.5 mm; two links come out before that', () => {
    const found = finding(assessment, 'adjust.wear');
    expect(number(found?.demand?.value)).toBeCloseTo((2 * p) / perTravel / 1000, 4);
    expect(found?.reserve?.value).toBeCloseTo((40 * perTravel) / (2 * p), 2);
    expect(found?.says).toContain('50.48');
  });

  test('an endless chain has to be followed all the way: dC = dL/(2 cos a), less the slack it has as drawn', () => {
    const found = finding(assessed({ axle, rings }, { joint: 'endless' }), 'adjust.wear');
    expect(number(found?.demand?.value)).toBeCloseTo((0.03 * 106 * p) / perTravel / 1000, 4);
    expect(found?.severity).toBe('thin');
  });

  test('200 % over the teeth of a large sprocket ends it before 3 %', () => {
    const found = finding(
      assessed({ axle, rings }, { joint: 'endless', teeth: { driver: 15, driven: 80 }, links: 126 }),
      'adjust.wear',
    );
    expect(found?.says).toMatch(/^At 2\.5/);
  });
});

describe('a missing adjuster is a finding', () => {
  test('none named at all: not known, and the place to name it is given', () => {
    const found = finding(assessed(null), 'adjust.slack');
    expect(found?.severity).toBe('unknown');
    expect(found?.missing.map(({ address }) => address)).toEqual(['/path/adjusters']);
  });

  test('another named and this one not: slack fails, the sprocket line is thin', () => {
    expect(finding(assessed({ rings }), 'adjust.slack')?.severity).toBe('fails');
    expect(finding(assessed({ axle }), 'adjust.line')?.severity).toBe('thin');
  });

  test('an adjuster that moves, but not what it is there for, fails', () => {
    const found = finding(assessed({ rings, axle: { ...axle, along: [0, 1, 0] } }), 'adjust.slack');
    expect(found?.severity).toBe('fails');
    expect(found?.says).toContain('does not change it');
    expect(finding(assessed({ rings, axle: { ...axle, travel: '0 mm' } }), 'adjust.slack')?.severity).toBe('fails');
  });

  test('a tensioner takes the slack up by itself', () => {
    expect(finding(assessed({ rings }, { tensioner: 'slack side' }), 'adjust.slack')).toBeUndefined();
  });
});

describe('what a moved shaft upsets', () => {
  const { moves, disturbances } = assessed({ axle, rings }).adjustment;
  const upsets = (shaft: string, axis: string) =>
    moves.find((m) => m.shaft === shaft && m.axis === axis)?.upsets.map(({ what, takenUpBy }) => [what, takenUpBy]);

  test('5 mm along the axle leaves the planes apart, past the rings’ 3 mm; 5 mm across asks for links that the slots give', () => {
    expect(upsets('/path/shafts/axle', 'y')).toEqual([['planes', null]]);
    expect(upsets('/path/shafts/axle', 'x')).toEqual([['links needed', '/path/adjusters/axle']]);
    expect(upsets('/brief/engine/output', 'y')).toEqual([['planes', null]]);
  });

  test('both ends of the chain moved one way and the other ask for the same links', () => {
    const change = (shaft: string) => moves.find((m) => m.shaft === shaft && m.axis === 'x')?.upsets[0]?.change;
    expect(number(change('/path/shafts/axle'))).toBeCloseTo(-number(change('/brief/engine/output')), 3);
  });

  test('a level slot does not disturb the line, nor rings the slack', () => {
    expect(disturbances).toEqual([]);
  });
});

describe('order of setting', () => {
  test('what disturbs comes before what it disturbs', () => {
    // The axle as a whole is shifted to line it up askew, which changes the slack.
    const skew = { ...rings, moves: 'axle', along: [1, 1, 0] };
    const { order, rings: circles } = assessed({ axle, rings: skew }).adjustment;
    expect(order.map((step) => step.adjuster)).toEqual(['/path/adjusters/rings', '/path/adjusters/axle']);
    expect(circles).toEqual([]);
  });

  test('two that disturb each other are a finding that names both', () => {
    const assessment = assessed({
      axle: { ...axle, along: [-1, 0.5, 0] },
      rings: { ...rings, moves: 'axle', along: [1, 1, 0] },
    });
    const found = finding(assessment, 'adjust.order');
    expect(found?.severity).toBe('thin');
    expect(found?.says).toContain('axle slots upsets rings upsets axle slots');
  });

  test('a ring of three among five is found, the rest ordered round it', () => {
    const upsets = new Set(['0>1', '1>2', '2>0', '3>0', '2>4']);
    const { order, rings: circles } = orderOf(5, (a, b) => upsets.has(`${a}>${b}`));
    expect(order).toEqual([3, 0, 1, 2, 4]);
    expect(circles).toEqual([[0, 1, 2]]);
  });
});

describe('adjusters that name nothing are faults', () => {
  test.each([
    ['of', { ...axle, of: 'chain-9' }, 'reference.adjuster-of'],
    ['of', { ...rings, of: 'axle/wheel' }, 'reference.adjuster-of'],
    ['moves', { ...axle, moves: 'shaft-x' }, 'reference.adjuster-moves'],
    ['along', { ...axle, along: [0, 0, 0] }, 'geometry.direction'],
    ['along', { ...rings, along: [1, 0, 0] }, 'geometry.adjuster-along'],
  ])('%s of %o', (key, adjuster, code) => {
    const faults = validateText(text({ adjuster }));
    expect(faults.map((fault) => [fault.code, fault.address])).toEqual([[code, `/path/adjusters/adjuster/${key}`]]);
  });
});
