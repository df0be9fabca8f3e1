import { describe, expect, test } from 'vitest';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

type Json = { [key: string]: Json | string | number | boolean | readonly unknown[] };

/** The small build with bearings, changed by `change`. */
function typed(change: (build: { output: Json; shafts: Json; stages: Json; brief: Json }) => void): string {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as { brief: Json; path: { shafts: Json; stages: Json } };
  const { engine } = build.brief as { engine: { output: Json } };
  change({ output: engine.output, brief: build.brief, ...build.path });
  return JSON.stringify(build);
}

function assessed(text: string) {
  const opened = openSession(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session.assessment;
}

const finding = (text: string, id: string) => assessed(text).findings.find((f) => f.id === id);

const bearing = (station: string, body: string) => ({ kind: 'bearing', name: `bearing at ${station}`, station, body });

const axleSeats = (seats: Json) => (shafts: Json) => {
  const axle = shafts.axle as Json;
  axle.seats = { ...(axle.seats as Json), ...seats };
};

describe('bearings of one shaft line (common practice: one body, two bearings)', () => {
  const AXLE = 'bodies.wheel:/path/shafts/axle';
  const withBearings = (...bodies: readonly string[]) =>
    typed(({ shafts }) =>
      axleSeats(Object.fromEntries(bodies.map((body, k) => [`b${k}`, bearing(`${30 * k - 40} mm`, body)])))(shafts),
    );

  test('two on one body hold; two bodies fail and lock the wheel; three on one fail', () => {
    expect(finding(withBearings('subframe', 'subframe'), AXLE)?.severity).toBe('holds');
    const apart = finding(withBearings('subframe', 'vehicle frame'), AXLE);
    expect(apart).toMatchObject({ severity: 'fails', consequence: 'locks the wheel' });
    expect(apart?.says.replaceAll(/\s/gu, ' ')).toContain('3 mm offset, 1° and 3 mm along the shaft');
    expect(finding(withBearings('subframe', 'subframe', 'subframe'), AXLE)?.severity).toBe('fails');
  });

  test('bearings that are not named are asked for', () => {
    expect(finding(withBearings(), AXLE)?.missing[0]?.address).toBe('/path/shafts/axle/seats');
    expect(finding(withBearings('subframe'), AXLE)?.missing[0]?.says).toContain('second bearing');
  });

  /** Chain to a shaft in the subframe, joined to the axle in the vehicle frame end to end. */
  const coupled = (joint: string, takes: Json | null, body = 'vehicle frame') =>
    typed(({ shafts, stages }) => {
      shafts.middle = {
        name: 'Middle',
        origin: { x: '0 mm', y: '200 mm', z: '0 mm' },
        direction: [0, -1, 0],
        seats: {
          sprocket: { kind: 'sprocket', name: 'sprocket 45', station: '111.1 mm' },
          a: bearing('20 mm', 'subframe'),
          b: bearing('90 mm', 'subframe'),
          joint: { kind: 'joint', name: 'joint', station: '140 mm' },
        },
      };
      const axle = shafts.axle as Json;
      axle.direction = [0, -1, 0];
      axle.seats = {
        joint: { kind: 'joint', name: 'joint', station: '-55 mm' },
        a: bearing('-40 mm', body),
        wheel: { kind: 'wheel', name: 'wheel', station: '0 mm' },
        b: bearing('40 mm', body),
      };
      (stages['chain-1'] as Json).to = 'middle/sprocket';
      stages.joint = {
        kind: 'coupling',
        name: 'Joint',
        from: 'middle/joint',
        to: 'axle/joint',
        joint,
        ...(takes ? { takes } : {}),
      };
    });
  const TAKES = 'coupling.takes:/path/stages/joint';

  test('a rigid coupling makes one line of two shafts: two bodies fail', () => {
    const text = coupled('rigid', null);
    expect(finding(text, 'bodies.wheel:/path/shafts/middle')?.severity).toBe('fails');
    expect(assessed(text).layout.lines.map(({ name }) => name)).toEqual(['Output', 'Middle with Axle']);
  });

  test('an elastic coupling parts the line; what it takes must be known', () => {
    const text = coupled('elastic', null);
    expect(finding(text, 'bodies.wheel:/path/shafts/axle')?.severity).toBe('holds');
    expect(finding(text, TAKES)?.missing.map(({ address }) => address)).toEqual(
      ['angle', 'offset', 'axial'].map((key) => `/path/stages/joint/takes/${key}`),
    );
  });

  test('used parts add up: 3 of 12 mm, 1 of 4°, 3 of 12 mm is 0.75 (subframe to vehicle frame)', () => {
    const wide = finding(coupled('elastic', { angle: '4 deg', offset: '12 mm', axial: '12 mm' }), TAKES);
    expect(wide?.reserve?.value).toBeCloseTo(1 / 0.75, 9);
    const jaw = finding(coupled('elastic', { angle: '1 deg', offset: '0.28 mm', axial: '1.8 mm' }), TAKES);
    expect(jaw?.severity).toBe('fails');
    expect(finding(coupled('elastic', { angle: '1 deg', offset: '0 mm', axial: '1.8 mm' }), TAKES)?.severity).toBe(
      'fails',
    );
    expect(
      finding(coupled('elastic', { angle: '1 deg', offset: '1.8 mm', axial: '1.8 mm' }, 'subframe'), TAKES)?.severity,
    ).toBe('holds');
  });

  test('a swinging arm must be described; a joint on its pivot only turns, one behind it moves by the chord', () => {
    const arm = (pivot: string | null) => {
      const text = coupled('elastic', { angle: '4 deg', offset: '60 mm', axial: '12 mm' }, 'swinging arm');
      if (pivot === null) return text;
      const build = JSON.parse(text) as { brief: Json };
      build.brief.suspension = { pivot: { x: pivot, y: '0 mm', z: '0 mm' }, bump: '6 deg', rebound: '5 deg' };
      return JSON.stringify(build);
    };
    expect(finding(arm(null), TAKES)?.missing[0]?.address).toBe('/brief/suspension');
    const offset = (pivot: string) =>
      assessed(arm(pivot)).layout.crossings.find(({ name }) => name === 'Joint')?.movement?.offset;
    expect(offset('0 mm')).toBeCloseTo(0.003, 12);
    expect(offset('400 mm')).toBeCloseTo(0.003 + 2 * 0.4 * Math.sin((3 * Math.PI) / 180), 12);
  });
});

describe('what passes between bodies', () => {
  const onSubframe = (links: number) =>
    typed(({ shafts, stages }) => {
      axleSeats({ a: bearing('-40 mm', 'subframe'), b: bearing('40 mm', 'subframe') })(shafts);
      (stages['chain-1'] as Json).links = links;
    });
  const ID = 'bodies.slack:/path/stages/chain-1';

  test('a chain is noted, with the slack that the movement asks for: dC = dL/(2 cos a)', () => {
    const tight = finding(onSubframe(106), ID);
    const loose = finding(onSubframe(108), ID);
    const room = (says = ''): number => Number(/apart by ([−\d.]+)/.exec(says)?.[1]?.replace('−', '-')) / 1000;
    expect(tight?.says).toContain('up to 3\u2009mm');
    expect(tight?.severity).toBe('thin');
    const [p, c] = [0.015875, Math.hypot(0.6, 0.05)];
    const radius = (teeth: number): number => p / (2 * Math.sin(Math.PI / teeth));
    const cosine = Math.cos(Math.asin((radius(45) - radius(15)) / c));
    // Printed to four figures, so the difference is good to a hundredth of a millimetre.
    expect(Math.abs(room(loose?.says) - room(tight?.says) - (2 * p) / (2 * cosine))).toBeLessThan(1e-5);
    expect(loose?.severity).toBe('holds');
  });

  test('gears in mesh on two bodies fail', () => {
    const text = typed(({ output, shafts, stages }) => {
      output.seats = { gear: { kind: 'gear', name: 'gear 15', station: '90 mm' } };
      const axle = shafts.axle as Json;
      axle.seats = {
        wheel: { kind: 'wheel', name: 'wheel', station: '0 mm' },
        gear: { kind: 'gear', name: 'gear 45', station: '90 mm' },
        a: bearing('-40 mm', 'subframe'),
        b: bearing('40 mm', 'subframe'),
      };
      delete stages['chain-1'];
      stages.pair = {
        kind: 'spur',
        name: 'Pair',
        from: 'output/gear',
        to: 'axle/gear',
        teeth: { driver: 15, driven: 45 },
      };
    });
    expect(finding(text, 'bodies.mesh:/path/stages/pair')?.severity).toBe('fails');
  });
});

describe('side pull on an output made for torque only', () => {
  const ID = 'output.side-pull:/brief/engine/output';
  const output = (seats: Json) =>
    typed(({ output: end }) => {
      end.madeFor = 'torque only';
      end.seats = { ...(end.seats as Json), ...seats };
    });

  test('overhung it fails and both ways out are named', () => {
    const says = finding(output({ box: bearing('20 mm', 'engine') }), ID)?.says ?? '';
    expect(says).toContain('outboard bearing');
    expect(says).toContain('coupling');
    expect(finding(output({ box: bearing('20 mm', 'engine') }), ID)?.severity).toBe('fails');
  });

  test('an outboard bearing on the engine is accepted; on the subframe it is not, and the line stands on two bodies', () => {
    const engine = output({ box: bearing('20 mm', 'engine'), out: bearing('120 mm', 'engine') });
    expect(finding(engine, ID)?.severity).toBe('holds');
    expect(finding(engine, 'bodies.supports:/brief/engine/output')?.severity).toBe('holds');
    const subframe = output({ box: bearing('20 mm', 'engine'), out: bearing('120 mm', 'subframe') });
    expect(finding(subframe, ID)?.severity).toBe('fails');
    expect(finding(subframe, 'bodies.supports:/brief/engine/output')?.severity).toBe('fails');
  });
});

describe('ground sense: every fix that is named works', () => {
  const spur = typed(({ output, shafts, stages }) => {
    output.seats = { gear: { kind: 'gear', name: 'gear 20', station: '50 mm' } };
    shafts.middle = {
      name: 'Middle',
      origin: { x: '520 mm', y: '0 mm', z: '50 mm' },
      direction: [0, 1, 0],
      seats: {
        gear: { kind: 'gear', name: 'gear 20', station: '50 mm' },
        sprocket: { kind: 'sprocket', name: 'sprocket 15', station: '3 1/2 in' },
      },
    };
    stages.pair = {
      kind: 'spur',
      name: 'Pair',
      from: 'output/gear',
      to: 'middle/gear',
      teeth: { driver: 20, driven: 20 },
      module: '4 mm',
    };
    (stages['chain-1'] as Json).from = 'middle/sprocket';
  });

  test('a spur pair then a chain turns the wheel backward: chain or idler gear, spur for chain, engine end for end', () => {
    const { layout, findings } = assessed(spur);
    const says = findings.find(({ check }) => check === 'path.forward');
    expect(says?.severity).toBe('fails');
    expect(layout.senseFixes.map(({ address }) => address)).toEqual([
      '/path/stages/pair',
      '/path/stages/pair',
      '/path/stages/chain-1',
      '/brief/engine/output',
    ]);
    for (const { text } of layout.senseFixes) expect(says?.says).toContain(text);
  });

  test('with the chain that is named in its place the wheel rolls forward, and nothing more is named', () => {
    const build = JSON.parse(spur) as { brief: { engine: { output: Json } }; path: { shafts: Json; stages: Json } };
    build.brief.engine.output.seats = { sprocket: { kind: 'sprocket', name: 'sprocket 20', station: '50 mm' } };
    (build.path.shafts.middle as { seats: Json }).seats.gear = {
      kind: 'sprocket',
      name: 'sprocket 20',
      station: '50 mm',
    };
    build.path.stages.pair = {
      kind: 'chain',
      name: 'Pair',
      from: 'output/sprocket',
      to: 'middle/gear',
      chain: '25',
      teeth: { driver: 20, driven: 20 },
    };
    const { layout, findings } = assessed(JSON.stringify(build));
    expect(findings.find(({ check }) => check === 'path.forward')?.severity).toBe('holds');
    expect(layout.senseFixes).toEqual([]);
  });

  test('a bevel gear on the other side of the apex: the edits are made, and the wheel rolls forward', () => {
    const bevel = typed(({ output, shafts, stages }) => {
      output.direction = [-1, 0, 0];
      output.seats = { gear: { kind: 'gear', name: 'pinion 15', station: '500 mm' } };
      const axle = shafts.axle as Json;
      axle.origin = { x: '0 mm', y: '0 mm', z: '50 mm' };
      axle.seats = {
        wheel: { kind: 'wheel', name: 'wheel', station: '0 mm' },
        gear: { kind: 'gear', name: 'gear 45', station: '-40 mm' },
      };
      delete stages['chain-1'];
      stages.pair = {
        kind: 'bevel',
        name: 'Pair',
        from: 'output/gear',
        to: 'axle/gear',
        teeth: { driver: 15, driven: 45 },
      };
    });
    const sense = (text: string) => finding(text, 'path.forward:/path/shafts/axle')?.severity;
    // One of the two sides is wrong; start from that one.
    const other = JSON.parse(bevel) as { path: { shafts: { axle: { seats: { gear: { station: string } } } } } };
    other.path.shafts.axle.seats.gear.station = '40 mm';
    const [wrong] = [bevel, JSON.stringify(other)].filter((text) => sense(text) === 'fails');
    const fixes = assessed(wrong ?? '').layout.senseFixes.filter(({ edits }) => edits.length > 0);
    expect(fixes.map(({ address }) => address)).toEqual([
      '/path/shafts/axle/seats/gear',
      '/brief/engine/output/seats/gear',
    ]);
    for (const { edits } of fixes) {
      const build = JSON.parse(wrong ?? '') as Json;
      for (const { address, text } of edits) {
        const keys = address.split('/').slice(1);
        const holder = keys.slice(0, -1).reduce((at, key) => at[key] as Json, build);
        holder[keys.at(-1) ?? ''] = text;
      }
      expect(sense(JSON.stringify(build))).toBe('holds');
    }
  });
});
