import { describe, expect, test } from 'vitest';
import { explainFinding, openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

const DEGREE = Math.PI / 180;
const mm = (metres: number | undefined): number => (metres ?? Number.NaN) * 1000;

interface Wanted {
  readonly suspension?: Readonly<Record<string, unknown>>;
  readonly chain?: Readonly<Record<string, unknown>>;
  readonly adjusters?: object;
  /** The vehicle seen in a mirror, fore and aft: the arm leads. */
  readonly leads?: boolean;
  /** Sprocket from the pivot, mm and degrees. */
  readonly sprocket?: readonly [number, number];
}

/**
 * chain-suspension-a of the chain reference: sprocket 70 mm off the pivot at 8°, arm 560 mm level as drawn, 18° of rebound and 12° of bump,
 * 15 : 45 teeth on chain 520 (p = 15.875 mm), 110 links.
 */
function opened({ suspension = {}, chain = {}, adjusters, leads = false, sprocket = [70, 8] }: Wanted = {}) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as {
    brief: { engine: { output: { origin: object } }; suspension: object };
    path: { shafts: { axle: { seats: object } }; stages: { 'chain-1': object }; adjusters?: object };
  };
  const side = leads ? -1 : 1;
  const [off, angle] = sprocket;
  const x = side * (560 + off * Math.cos(angle * DEGREE));
  build.brief.engine.output.origin = { x: `${x} mm`, y: '0 mm', z: `${off * Math.sin(angle * DEGREE)} mm` };
  build.brief.suspension = {
    pivot: { x: `${side * 560} mm`, y: '0 mm', z: '0 mm' },
    bump: '12 deg',
    rebound: '18 deg',
    ...suspension,
  };
  const bearing = (station: string) => ({ kind: 'bearing', name: 'bearing', station, body: 'swinging arm' });
  build.path.shafts.axle.seats = {
    ...build.path.shafts.axle.seats,
    right: bearing('-100 mm'),
    left: bearing('120 mm'),
  };
  build.path.stages['chain-1'] = { ...build.path.stages['chain-1'], links: 110, ...chain };
  if (adjusters) build.path.adjusters = adjusters;
  const session = openSession(JSON.stringify(build));
  if (!session.ok) throw new Error(JSON.stringify(session.faults));
  return session.session;
}

const overStroke = (wanted: Wanted = {}) => {
  const chain = opened(wanted).assessment.stroke?.chains[0];
  if (!chain) throw new Error('no chain over the stroke');
  return chain;
};

const finding = (wanted: Wanted, check: string) =>
  opened(wanted).assessment.findings.find((one) => one.check === check);

describe('chain-suspension-a as a build: the centres are farthest apart with sprocket, pivot and axle in line', () => {
  const chain = overStroke();

  test('nine places from full rebound to full bump; 629.054 mm at −18°, 629.394 at 0°, 626.236 at 12°', () => {
    expect(chain.places.map(({ angle }) => Number((angle / DEGREE).toFixed(9)))).toEqual([
      -18, -13.5, -9, -4.5, 0, 3, 6, 9, 12,
    ]);
    const at = (name: string) => chain.places.find((place) => place.name === name);
    expect(Math.abs(mm(at('full rebound')?.centreDistance) - 629.054)).toBeLessThan(0.01);
    expect(Math.abs(mm(at('as drawn')?.centreDistance) - 629.394)).toBeLessThan(0.01);
    expect(Math.abs(mm(at('full bump')?.centreDistance) - 626.236)).toBeLessThan(0.01);
    expect(Math.abs((at('full rebound')?.linksNeeded ?? 0) - 109.8269)).toBeLessThan(0.001);
    expect(Math.abs((at('as drawn')?.linksNeeded ?? 0) - 109.8695)).toBeLessThan(0.001);
    expect(Math.abs((at('full bump')?.linksNeeded ?? 0) - 109.4745)).toBeLessThan(0.001);
  });

  test('tightest at −8°, C = 70 + 560 = 630 mm, 109.945 links', () => {
    expect(chain.tightest?.at).toBe('in line');
    expect((chain.tightest?.angle ?? 0) / DEGREE).toBeCloseTo(-8, 9);
    expect(mm(chain.tightest?.centreDistance)).toBeCloseTo(630, 9);
    expect(Math.abs((chain.tightest?.linksNeeded ?? 0) - 109.945)).toBeLessThan(0.001);
    expect(chain.tightest?.text).toContain('8° below where it is drawn');
  });

  test('hand movement by Pythagoras from the excess: at −18° (110 − 109.8269) p = 2.748 mm into a span of 624.1 mm', () => {
    const [at] = chain.places;
    const [r1, r2] = [15, 45].map((n) => 15.875 / (2 * Math.sin(Math.PI / n))) as [number, number];
    const span = Math.sqrt(629.054 ** 2 - (r2 - r1) ** 2);
    const excess = (110 - 109.8269) * 15.875;
    expect(mm(at?.movement ?? 0)).toBeCloseTo(Math.sqrt((span + excess) ** 2 - span ** 2), 1);
    expect(at?.movementOverSpan).toBeCloseTo(mm(at?.movement ?? 0) / 1000 / (span / 1000), 6);
  });

  test('wrap of the smaller sprocket is 180° − 2 asin((R₂ − R₁)/C), least where the centres are nearest', () => {
    const [r1, r2] = [15, 45].map((n) => 15.875 / (2 * Math.sin(Math.PI / n))) as [number, number];
    const least = 180 - (2 * Math.asin((r2 - r1) / 626.236)) / DEGREE;
    expect((chain.places.at(-1)?.wrapSmall ?? 0) / DEGREE).toBeCloseTo(least, 4);
    expect((finding({}, 'arm.wrap')?.capacity?.value ?? 0) / DEGREE).toBeCloseTo(least, 4);
  });

  test('seen in a mirror, an arm that leads gives the same', () => {
    const other = overStroke({ leads: true });
    chain.places.forEach((place, k) => {
      expect(other.places[k]?.centreDistance).toBeCloseTo(place.centreDistance, 12);
    });
    expect(other.tightest?.angle).toBeCloseTo(chain.tightest?.angle ?? Number.NaN, 9);
    expect(other.slack?.onStand).toBeCloseTo(chain.slack?.onStand ?? Number.NaN, 9);
  });
});

describe('slack to set', () => {
  test('half of 4 % of the span is left at −8°; the axle shifted as told shows the told movements', () => {
    const { slack } = overStroke();
    const shift = slack?.shift ?? Number.NaN;
    const [r1, r2] = [15, 45].map((n) => 0.015875 / (2 * Math.sin(Math.PI / n))) as [number, number];
    expect(slack?.wanted).toBeCloseTo(0.02 * Math.sqrt(0.63 ** 2 - (r2 - r1) ** 2), 9);
    // The axle goes along the arm, which lies level as drawn; its links follow from the closed form at the new centres.
    const movement = (angle: number): number => {
      const arm = 0.56 + shift;
      const centre = Math.hypot(
        arm * Math.cos(angle) + 0.07 * Math.cos(8 * DEGREE),
        arm * Math.sin(angle) - 0.07 * Math.sin(8 * DEGREE),
      );
      const lean = Math.asin((r2 - r1) / centre);
      const span = centre * Math.cos(lean);
      const needed = 2 * span + (0.015875 * (15 * (Math.PI - 2 * lean) + 45 * (Math.PI + 2 * lean))) / (2 * Math.PI);
      return Math.sqrt((span + 110 * 0.015875 - needed) ** 2 - span ** 2);
    };
    expect(movement(-8 * DEGREE)).toBeCloseTo(slack?.wanted ?? Number.NaN, 7);
    expect(movement(-18 * DEGREE)).toBeCloseTo(slack?.onStand ?? Number.NaN, 7);
    expect(movement(0)).toBeCloseTo(slack?.onWheels ?? Number.NaN, 7);
    expect(slack?.standAssumed).toBe(true);
    expect(slack?.text).toContain('hanging at full rebound');
  });

  test('a blank stand is an assumed input; a typed one is measured there', () => {
    expect(opened().assessment.assumed.find(({ address }) => address === '/brief/suspension/stand')?.text).toBe(
      'full rebound, 18°',
    );
    const typed = opened({ suspension: { stand: '8 deg' } }).assessment;
    const slack = typed.stroke?.chains[0]?.slack;
    expect(slack?.onStand).toBeCloseTo(slack?.wanted ?? Number.NaN, 7);
    expect(typed.assumed.some(({ address }) => address === '/brief/suspension/stand')).toBe(false);
  });

  test('a stand below full rebound is said to be wrong, and no slack is made up', () => {
    const { slack, missing } = overStroke({ suspension: { stand: '20 deg' } });
    expect(slack).toBeNull();
    expect(missing.map(({ address }) => address)).toContain('/brief/suspension/stand');
  });

  test('from 2 % at −8° the slack grows past 4 % of the span at full bump: thin', () => {
    const found = finding({}, 'arm.slack');
    expect(found?.severity).toBe('thin');
    expect(found?.says).toContain('at full bump');
    const near = { sprocket: [10, 0], suspension: { bump: '5 deg', rebound: '5 deg' }, chain: { links: 104 } } as const;
    expect(finding(near, 'arm.slack')?.severity).toBe('holds');
  });

  test('a sprocket on the pivot keeps its slack at every place', () => {
    const chain = overStroke({ sprocket: [0, 0], chain: { links: 102 } });
    expect(chain.tightest?.at).toBe('everywhere alike');
    expect(chain.slack?.onStand).toBeCloseTo(chain.slack?.onWheels ?? Number.NaN, 9);
    expect(chain.slack?.text).toContain('on the stand or on its wheels alike');
  });
});

describe('the axle slot', () => {
  const slot = (travel: string) => ({
    slot: { name: 'axle slots', sets: 'slack', of: 'chain-1', moves: 'axle', along: [-1, 0, 0], travel },
  });

  test('15 mm each way: 614.4 to 644.4 mm as drawn, since the sprocket stands 1 in 65 above the line', () => {
    const found = overStroke({ adjusters: slot('15 mm') }).slot;
    const centre = (by: number): number => Math.hypot(560 + by + 70 * Math.cos(8 * DEGREE), 70 * Math.sin(8 * DEGREE));
    expect(found?.ends.map(({ centreDistance }) => mm(centreDistance))).toEqual([
      expect.closeTo(centre(-15), 6),
      expect.closeTo(centre(15), 6),
    ]);
    expect(found?.reaches).toBe(true);
    // Taut at −8° where C = 630 ± 15 mm: dL = 2 cos a dC.
    expect(mm(found?.ends[0].excess)).toBeGreaterThan(2 * 15 * 0.98);
    expect(mm(found?.ends[1].excess)).toBeLessThan(0);
  });

  test('two pitches out ask for close to one pitch of travel; 15 mm each way has 30, 6 mm has 12', () => {
    const wide = finding({ adjusters: slot('15 mm') }, 'arm.slot');
    expect(wide?.severity).toBe('holds');
    expect(mm(wide?.demand?.value)).toBeCloseTo(15.875, 0);
    expect(mm(wide?.capacity?.value)).toBeCloseTo(30, 6);
    expect(finding({ adjusters: slot('6 mm') }, 'arm.slot')?.severity).toBe('thin');
  });

  test('an endless chain is followed until 3 % wear: (110 × 15.875 × 3 %)/(2 cos a) is near 26.4 mm outward', () => {
    const found = finding({ adjusters: slot('15 mm'), chain: { joint: 'endless' } }, 'arm.slot');
    expect(found?.severity).toBe('thin');
    expect(mm(found?.demand?.value)).toBeGreaterThan(25.5);
    expect(mm(found?.demand?.value)).toBeLessThan(28);
  });

  test('links far too many have to be set beyond the slot', () => {
    const found = finding({ adjusters: slot('15 mm'), chain: { links: 114 } }, 'arm.slot');
    expect(found?.says).toMatch(/15\smm each way are there at axle slots/);
    expect(overStroke({ adjusters: slot('15 mm'), chain: { links: 114 } }).slot?.reaches).toBe(false);
  });
});

describe('chain against the arm', () => {
  // All in line and level, equal sprockets: both spans lie R off the arm, R = 38.18 mm at 15 teeth.
  const level: Wanted = {
    sprocket: [70, 0],
    chain: { teeth: { driver: 15, driven: 15 }, links: 94 },
    suspension: { bump: '0.01 deg', rebound: '0.01 deg' },
  };
  const withArm = (armHeight: string): Wanted => ({ ...level, suspension: { ...level.suspension, armHeight } });
  const radius = 15.875 / (2 * Math.sin(Math.PI / 15));

  test('equal sprockets in line: room = R − h/2 − plate/2, worked by hand', () => {
    const found = finding(withArm('30 mm'), 'arm.rub');
    expect(mm(found?.capacity?.value)).toBeCloseTo(radius, 0);
    const plate = 2 * (mm(found?.demand?.value) - 15);
    expect(plate).toBeGreaterThan(10);
    expect(plate).toBeLessThan(0.95 * 15.875 + 0.01);
    expect(found?.severity).toBe('holds');
  });

  test('an arm higher than both radii allow rubs under pull, and names the span and the place', () => {
    const found = finding(withArm('70 mm'), 'arm.rub');
    expect(found?.severity).toBe('fails');
    expect(found?.says).toMatch(/^The (upper|lower) span rubs on the arm by/);
  });

  test('a blank height is unknown, with the place to type it; 0 says that the chain runs beside the arm', () => {
    const blank = finding(level, 'arm.rub');
    expect(blank?.severity).toBe('unknown');
    expect(blank?.missing.map(({ address }) => address)).toEqual(['/brief/suspension/armHeight']);
    expect(finding(withArm('0 mm'), 'arm.rub')?.says).toContain('beside the arm');
    expect(finding(withArm('0 mm'), 'arm.rub-slack')).toBeUndefined();
  });
});

describe('rise under pull', () => {
  test('level, in line, equal sprockets: chain F R up, thrust F R / r at r below the pivot cancels it: neither', () => {
    const { rise } = overStroke({
      sprocket: [70, 0],
      chain: { teeth: { driver: 15, driven: 15 }, links: 94 },
    });
    const drawn = rise?.places.find(({ place }) => place === 'as drawn');
    const radius = 0.015875 / (2 * Math.sin(Math.PI / 15));
    expect(rise?.tightSpan).toBe('upper');
    expect(drawn?.torqueChain).toBeCloseTo((rise?.pull ?? 0) * radius, 6);
    expect(drawn?.torqueThrust).toBeCloseTo(-(rise?.pull ?? 0) * radius, 6);
    expect(Math.abs(drawn?.torque ?? 1)).toBeLessThan(1e-6);
  });

  test('the hardest pull is that of the strength check, first gear at peak torque', () => {
    const { rise } = overStroke();
    expect(rise?.case).toBe('1/peak-torque');
    expect(rise?.pull).toBeCloseTo(finding({}, 'chain.pull')?.demand?.value ?? Number.NaN, 6);
    expect(rise?.text).toMatch(/the vehicle (rises|squats) there/);
  });
});

describe('where nothing can be said', () => {
  test('a rigid wheel has no stroke', () => {
    const plain = openSession(JSON.stringify(SMALL_BUILD));
    if (!plain.ok) throw new Error('small build');
    expect(plain.session.assessment.stroke).toBeNull();
  });

  test('an arm with no bump and no rebound is as good as rigid', () => {
    expect(opened({ suspension: { bump: '0 deg', rebound: '0 deg' } }).assessment.stroke).toBeNull();
    expect(overStroke({ suspension: { bump: '0 deg' } }).places).toHaveLength(5);
  });

  test('sprockets that meet in the stroke are named, and nothing is thrown', () => {
    const { places, missing } = overStroke({
      sprocket: [401, 170],
      chain: { links: 60 },
      suspension: { bump: '50 deg', rebound: '10 deg' },
    });
    expect(places).toEqual([]);
    expect(missing[0]?.says).toContain('clear each other over the stroke');
  });

  test('blank links leave the slack open, the geometry stands', () => {
    const chain = overStroke({ chain: { links: undefined } });
    expect(chain.slack).toBeNull();
    expect(chain.places[0]?.movement).toBeNull();
    expect(chain.places[0]?.centreDistance).toBeCloseTo(0.629054, 5);
  });
});

describe('every finding over the stroke shows its working', () => {
  test.each(['arm.slack', 'arm.wrap', 'arm.rub', 'arm.rub-slack', 'arm.slot', 'chain.stroke'])('%s', (check) => {
    const session = opened({
      suspension: { armHeight: '30 mm' },
      adjusters: {
        slot: { name: 'slots', sets: 'slack', of: 'chain-1', moves: 'axle', along: [-1, 0, 0], travel: '15 mm' },
      },
    });
    const found = session.assessment.findings.find((one) => one.check === check);
    const last = found && explainFinding(session, found.id)?.workings.at(-1);
    expect(last?.symbols.find(({ key }) => key === 'reserve')?.value).toBe(found?.reserve?.value);
  });
});
