import { SPROCKET_PRACTICE } from '@oddwheel/tables/sprocket-practice';
import { describe, expect, it } from 'vitest';
import { applyEdit, openSession } from '../session.ts';
import type { Session } from '../session-types.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { agreementOf, buyingOf, nearMisses, pitchNear } from './buying.ts';
import { compareTrains } from './compare.ts';
import { findFront, findTrains, RatiosError } from './find.ts';
import { settle } from './settle.ts';
import { USUAL_REQUEST } from './usual.ts';
import { windowsOf } from './windows.ts';

/** The small build with a box that is told whole, and slots for its axle. */
const opened = (brief: Record<string, unknown> = {}): Session => {
  const { engine } = SMALL_BUILD.brief;
  const adjusters = {
    slots: { name: 'slots', sets: 'slack', of: 'chain-1', moves: 'axle', along: [-1, 0, 0], travel: '10 mm' },
  };
  const build = {
    ...SMALL_BUILD,
    brief: { ...SMALL_BUILD.brief, engine: { ...engine, primary: '1' }, ...brief },
    path: { ...SMALL_BUILD.path, adjusters },
  };
  const result = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
};

function whole<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const windows = (targets: Record<string, unknown>, more: Record<string, unknown> = {}) =>
  windowsOf(opened({ targets, ...more }).evaluation.middle.scene, []);

describe('targets as a window of the ratio', () => {
  it('cruising: 3000 to 3600 rpm at 36 km/h on 2 m of roll-out, fifth of the box 5 to 1', () => {
    // 36 km/h are 5 turns a second, 300 a minute: 10 to 12 overall, 2 to 2.4 after the box.
    const { targets, band } = windows({ cruiseSpeed: '36 km/h', cruiseEngine: '3000..3600 rpm' });
    expect(targets[0]?.least).toBeCloseTo(2, 12);
    expect(targets[0]?.most).toBeCloseTo(2.4, 12);
    expect(band?.low).toBeCloseTo(2, 12);
  });

  it('top speed at the redline: 7500 rpm, 90 km/h are 750 turns a minute, 10 overall, 2 after the box', () => {
    expect(windows({ topSpeed: '90 km/h' }).targets[0]?.most).toBeCloseTo(2, 12);
  });

  it('names targets that clash, in pairs, and how far apart they are', () => {
    const found = windows({ cruiseSpeed: '36 km/h', cruiseEngine: '3000..3600 rpm', topSpeed: '120 km/h' });
    expect(found.clashes.map(({ first, second }) => [first, second])).toEqual([['cruise', 'top speed']]);
    expect(found.clashes[0]?.apart).toBeCloseTo(2 / 1.5 - 1, 9);
    expect(found.band?.low).toBeCloseTo(Math.sqrt(2 * 1.5), 9);
  });

  it('the feel of a reference vehicle, within a tenth in each gear', () => {
    const reference = { name: 'donor', overall: ['24', '15'], rollOut: '2 m' };
    const { targets } = windows({}, { reference });
    expect(targets.map(({ key }) => key)).toEqual(['feel']);
    expect(targets[0]?.least).toBeCloseTo(3 / 1.1, 9);
    expect(targets[0]?.most).toBeCloseTo(3 * 1.1, 9);
  });

  it('says what a target lacks, and that no target sets a ratio', () => {
    expect(windows({ cruiseSpeed: '36 km/h' }).open[0]?.says).toContain('both the cruising speed and the engine speed');
    expect(() => whole(findTrains(opened(), USUAL_REQUEST))).toThrow(RatiosError);
  });
});

describe('trains of a small build', () => {
  const session = opened({ targets: { topSpeed: '60 km/h', pull: '600 N' } });

  it('come in the order asked for, and links come out even', () => {
    const { trains, size, stages } = whole(
      findTrains(session, { ...USUAL_REQUEST, best: 20, order: ['ratio', 'links', 'chordal'] }),
    );
    expect(trains).toHaveLength(20);
    expect(size).toBe(stages[0]?.choices);
    const keys = trains.map(({ error, terms }) => [Math.floor(error / 0.005), terms.links, terms.chordal] as const);
    const sorted = [...keys].sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
    expect(keys).toEqual(sorted);
    for (const { stages: settled } of trains) expect((settled[0]?.links ?? 1) % 2).toBe(0);
  });

  it('from ranges and pairs asked for, and the shelf alone', () => {
    const asked = {
      'chain-1': {
        from: 'pairs',
        pairs: [
          [15, 45],
          [16, 45],
        ],
      },
    } as const;
    const { trains } = whole(findTrains(session, { ...USUAL_REQUEST, stages: asked }));
    for (const { pairs } of trains) expect([15, 16]).toContain(pairs[0]?.driver);
    expect(whole(findTrains(session, { ...USUAL_REQUEST, shelfOnly: true })).trains).toEqual([]);
  });

  it('ranked by price, which every part to buy must have', () => {
    const asked = {
      'chain-1': {
        from: 'pairs',
        pairs: [
          [15, 45],
          [15, 44],
        ],
      },
    } as const;
    const request = { ...USUAL_REQUEST, order: ['price'] as const, stages: asked };
    expect(() => whole(findTrains(session, request))).toThrow('3 parts have none');
    const prices = { 'sprocket 520 15': 10, 'sprocket 520 44': 20, 'sprocket 520 45': 25 };
    for (const { terms } of whole(findTrains(session, { ...request, prices })).trains)
      expect([30, 35]).toContain(terms.price);
  });

  it('prices stand on the shelf, of parts that are there and of those that are not', () => {
    const part = (teeth: number, count: number, price: string) => ({
      kind: 'sprocket',
      name: `sprocket ${teeth}`,
      chain: '520',
      teeth,
      count,
      price,
    });
    const shelf = { a: part(15, 1, '8'), b: part(44, 0, '20.50'), c: part(45, 0, '25') };
    const asked = {
      'chain-1': {
        from: 'pairs',
        pairs: [
          [15, 45],
          [15, 44],
        ],
      },
    } as const;
    const priced = opened({ targets: { topSpeed: '60 km/h', pull: '600 N' }, shop: { shelf } });
    const { trains } = whole(findTrains(priced, { ...USUAL_REQUEST, order: ['price'], stages: asked }));
    expect(trains.map(({ toBuy, terms }) => [toBuy, terms.price])).toEqual([
      [['sprocket 520 44'], 20.5],
      [['sprocket 520 45'], 25],
    ]);
  });

  it('the strength beside a train is the lowest reserve that check gives after the change', () => {
    const [train] = whole(findTrains(session, { ...USUAL_REQUEST, best: 1 })).trains;
    const after = applyEdit(session, train?.patches ?? [], 'not yet');
    if (!after.ok) throw new Error(JSON.stringify(after.faults));
    const found = after.session.assessment.findings.find(({ id }) => id === train?.strength.weakest?.finding);
    expect(train?.strength.weakest?.reserve).toBe(found?.reserve?.value);
    expect(train?.strength.weakest?.severity).toBe(found?.severity);
  });

  it('the front of mass and chordal variation falls in the one as it rises in the other', () => {
    const { trains } = whole(findFront(session, { ...USUAL_REQUEST, best: 12 }, 'chordal', 'mass'));
    expect(trains.length).toBeGreaterThan(3);
    trains.slice(1).forEach(({ terms }, k) => {
      expect(terms.chordal).toBeGreaterThan(trains[k]?.terms.chordal ?? Number.NaN);
      expect(terms.mass).toBeLessThan(trains[k]?.terms.mass ?? Number.NaN);
    });
  });

  it('side by side on the road: the drawn one is what check shows, and a longer gearing is slower off and turns less', () => {
    const [drawn, longer] = compareTrains(session, [[], [{ stage: 'chain-1', driver: 17, driven: 45 }]]);
    expect(drawn?.top).toEqual(session.assessment.road.top);
    expect(drawn?.pulls).toEqual(session.assessment.road.pulls);
    expect(longer?.gears[0]?.overall.value).toBeCloseTo((8 * 45) / 17, 9);
    expect(longer?.launch?.energy ?? 0).toBeGreaterThan(drawn?.launch?.energy ?? Number.POSITIVE_INFINITY);
    expect(() => compareTrains(session, [[], [], [], [], []])).toThrow('5 trains read; 1 to 4 can be compared.');
  });

  it('nothing changes where no teeth do', () => {
    expect(settle(session.build, session.evaluation.model, []).patches).toEqual([]);
  });
});

describe('what to look at when buying', () => {
  const words = (chain: string, sprocket: string) =>
    agreementOf(chain, sprocket).map(({ what, agrees }) => `${what} ${agrees}`);

  it('pitch, roller and inner width are three facts', () => {
    expect(words('60', '12A')).toEqual(['pitch true', 'roller true', 'inner width true']);
    expect(words('60', '12B')).toEqual(['pitch true', 'roller false', 'inner width false']);
    expect(words('520', '530')).toEqual(['pitch true', 'roller true', 'inner width false']);
    expect(words('60', '50')).toEqual(['pitch false', 'roller false', 'inner width false']);
  });

  it('names chains of one pitch that differ in width or roller', () => {
    const found = nearMisses('520');
    expect(found.find(({ other }) => other === '530')?.why).toBe('same pitch, other width');
    expect(nearMisses('12B').find(({ other }) => other === '60')?.why).toBe('same pitch, other roller');
    expect(found.some(({ other }) => other === '520')).toBe(false);
  });

  it('19.05 mm and 20 mm are taken for each other', () => {
    const near = pitchNear(0.02).map(({ size }) => size);
    expect(near).toContain('belt T20 or AT20');
    expect(near).toContain('chain 60');
  });

  it('a blank: largest bore by hub and wall, pilot hole, hardened teeth', () => {
    const session = opened({ targets: { topSpeed: '60 km/h', pull: '600 N' } });
    const asked = { 'chain-1': { from: 'pairs', pairs: [[15, 45]] } } as const;
    const [train] = whole(findTrains(session, { ...USUAL_REQUEST, best: 1, stages: asked })).trains;
    expect(train?.blanks.map(({ part }) => part)).toEqual(['sprocket 520 15', 'sprocket 520 45']);
    const [small, large] = train?.blanks ?? [];
    // By hand, inches: pitch 5/8, PD 3.0060, hub 5/8 (cot 12° − 1) − 0.03 = 2.2855; walls 2 (0.187 + 0.0301), and a third of the bore.
    expect(small?.hub).toBeCloseTo(0.0254 * (0.625 * (1 / Math.tan(Math.PI / 15) - 1) - 0.76 / 25.4), 9);
    expect((small?.largestBore ?? 0) / 0.0254).toBeCloseTo((2.2855 - 2 * (0.187 + 0.03006)) / (4 / 3), 3);
    // 7500 rpm at the redline, 5 to 1 in the longest gear: 1500 rpm; the large one turns too with 45 teeth.
    expect([small?.hardened, large?.hardened]).toEqual([true, false]);
    expect(SPROCKET_PRACTICE.rows.hardened?.values).toEqual({ teeth: 25, turns: 600 });
  });

  it('sprockets on the shelf that are cut for another chain', () => {
    const part = { kind: 'sprocket', name: 'old', chain: '530', teeth: 15, count: 1 };
    const { shelf, nearMisses: near } = buyingOf(opened({ shop: { shelf: { part } } }).evaluation.model);
    expect(shelf.map(({ chain, sprocket }) => [chain, sprocket])).toEqual([['520', '530']]);
    expect(shelf[0]?.agreement.map(({ agrees }) => agrees)).toEqual([true, true, false]);
    expect(near.some(({ other }) => other === '530')).toBe(true);
  });
});
