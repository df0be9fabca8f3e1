import { readdir, readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Checked, checkDemo, spaced } from './command.ts';

type Ran = Awaited<ReturnType<typeof checkDemo>>;

const severities = ({ findings }: Checked, check: string): string[] =>
  findings.filter((finding) => finding.check === check).map(({ severity }) => severity);

const demand = ({ findings }: Checked, check: string): number[] =>
  findings.filter((finding) => finding.check === check).map((finding) => finding.demand?.value ?? 0);

const checksThat = ({ findings }: Checked, severity: string): string[] =>
  findings.filter((finding) => finding.severity === severity).map(({ check }) => check);

const demos = ['hill-trike', 'marsh-hauler', 'rail-cart'];

test('the demo builds are these, and each says that it is invented', async () => {
  const examples = new URL('../../examples/', import.meta.url);
  expect((await readdir(examples)).sort()).toEqual(demos);
  for (const name of demos) {
    const build: unknown = JSON.parse(await readFile(new URL(`${name}/build.json`, examples), 'utf8'));
    expect(build).toMatchObject({ format: 4, name, about: expect.stringContaining('(invented)') });
  }
});

describe.each(demos)('%s', (name) => {
  let ran: Ran;
  beforeAll(async () => {
    ran = await checkDemo(name);
  });

  test('reads without a fault, and is checked to the ground', () => {
    expect([0, 1]).toContain(ran.code);
    expect(ran.checked.path.at(-1)?.kind).toBe('ground');
  });

  test('its chains close with even links, in plane, on parallel shafts, sprockets clear', () => {
    const chains = ran.checked.path.filter(({ kind }) => kind === 'chain').length;
    expect(chains).toBeGreaterThan(0);
    for (const check of ['chain.fit', 'chain.links', 'chain.clear', 'chain.parallel', 'chain.plane'])
      expect([check, severities(ran.checked, check)]).toEqual([check, Array.from({ length: chains }, () => 'holds')]);
  });

  test('each chain’s centres are drawn to a hundredth of a link of the links fitted', () => {
    for (const { demand, capacity } of ran.checked.findings.filter(({ check }) => check === 'chain.fit')) {
      const spare = (capacity?.value ?? Number.NaN) - (demand?.value ?? Number.NaN);
      expect(spare).toBeGreaterThanOrEqual(0);
      expect(spare).toBeLessThan(0.02);
    }
  });

  test('power balances and torques close', () => {
    expect(ran.checked.closure?.power).toBeLessThan(1e-12);
    expect(ran.checked.closure?.torque).toBeLessThan(1e-12);
  });

  test('nothing that its mesh or its bearings stand on fails', () => {
    const { findings } = ran.checked;
    const body = findings.filter(({ check }) => ['bodies.supports', 'bodies.wheel', 'bodies.mesh'].includes(check));
    expect(body.length).toBeGreaterThan(0);
    expect(body.filter(({ severity }) => severity !== 'holds')).toEqual([]);
  });

  test('one pass through its adjusters sets everything', () => {
    expect(severities(ran.checked, 'adjust.order')).toEqual(['holds']);
    expect(ran.checked.adjustment.rings).toEqual([]);
  });

  test('5 mm on any shaft along any axis upsets something, and says what must follow', () => {
    const still = ran.checked.adjustment.moves.filter(({ upsets }) => upsets.length === 0);
    expect(ran.checked.adjustment.moves.length).toBeGreaterThan(0);
    expect(still).toEqual([]);
  });
});

describe('marsh-hauler', () => {
  test('passes with exit code 0: the bevel axes meet in one apex, and the wheel rolls forward', async () => {
    const { code, checked } = await checkDemo('marsh-hauler');
    expect(code).toBe(0);
    expect(checksThat(checked, 'fails')).toEqual([]);
    expect(severities(checked, 'bevel.meet')).toEqual(['holds']);
    const pair = checked.path.find(({ kind }) => kind === 'bevel');
    expect(pair?.facts.find(({ key }) => key === 'apart')?.spread.value).toBe(0);
    expect(severities(checked, 'bevel.seat')).toEqual(['holds']);
    expect(severities(checked, 'path.forward')).toEqual(['holds']);
  });
});

describe('rail-cart', () => {
  test('passes with exit code 0; open are the room round a flanged wheel without a size, the teeth of a belt that no open method rates and how far it stretches, and only usual limits of strength are thin', async () => {
    const { code, checked } = await checkDemo('rail-cart');
    expect(code).toBe(0);
    const told = (severity: string) =>
      checked.findings.filter((one) => one.severity === severity).map(({ check, address }) => [check, address]);
    expect(told('fails')).toEqual([]);
    expect(told('unknown')).toEqual([
      ['clear.parts', '/brief/wheel'],
      ['belt.teeth', '/path/stages/belt'],
      ['torsion.firing', '/brief/engine'],
    ]);
    for (const [check] of told('thin')) expect(check).toMatch(/^(shaft|bearing|join|seat|torsion|chain)\./);
    expect(severities(checked, 'path.forward')).toEqual(['holds']);
    expect(severities(checked, 'belt.fit')).toEqual(['holds']);
  });

  test('belt, then chain: 2 × 72/28 × 40/17 takes it to 25 km/h at the governed 3600 rpm', async () => {
    const { checked } = await checkDemo('rail-cart');
    expect(checked.path.flatMap(({ kind, teeth }) => (teeth ? [kind] : []))).toEqual(['belt', 'chain']);
    const gear = checked.gears[0];
    const overall = 2 * (72 / 28) * (40 / 17);
    expect(gear?.overall.value).toBeCloseTo(overall, 12);
    // A tread of 460 mm new and 456 mm worn, to the millimetre of roll-out in the file.
    expect(gear?.speedAtRedline.hi).toBeCloseTo((60 / overall) * Math.PI * 0.46, 2);
    expect(gear?.speedAtRedline.lo).toBeCloseTo((60 / overall) * Math.PI * 0.456, 2);
    expect(gear?.speedAtRedline.lo).toBeGreaterThan(25 / 3.6);
  });

  test('the chain is set before the belt, because the countershaft carries both', async () => {
    const { adjustment } = (await checkDemo('rail-cart')).checked;
    const order = adjustment.order.map(({ adjuster }) => adjuster);
    expect(order.indexOf('/path/adjusters/countershaft-slots')).toBeLessThan(
      order.indexOf('/path/adjusters/engine-slots'),
    );
  });
});

describe('hill-trike, in its first form', () => {
  test('turns the wheel backward, and its softer gear pits too soon on steep tracks: exit code 1, and nothing else fails or is unknown', async () => {
    const { code, checked } = await checkDemo('hill-trike');
    expect(code).toBe(1);
    expect(checksThat(checked, 'fails')).toEqual(['path.forward', 'gear.contact']);
    expect(checksThat(checked, 'unknown')).toEqual([]);
    // The engine and the arm move against each other by more than any chain's slack allows: thin on every such build.
    expect(checksThat(checked, 'thin').filter((check) => /^(arm|bodies)/.test(check))).toEqual([
      'arm.slack',
      'bodies.slack',
    ]);
    // Light, tall and short-geared, as a vehicle for steep tracks is: first gear outdoes the tyre, and turns are to be taken slowly.
    expect(checksThat(checked, 'thin').filter((check) => /^(road|target)/.test(check))).toEqual([
      'road.tip',
      'road.lift',
      'road.grip',
      'target.climb-grip',
    ]);
  });

  test('says in words what turns it round', async () => {
    const { checked } = await checkDemo('hill-trike');
    const says = checked.findings.find(({ check }) => check === 'path.forward')?.says;
    expect(says).toContain('rolls backward');
    expect(says).toContain('put a chain in the place of Spur pair');
    expect(says).toContain('idler gear between the two gears of Spur pair');
    expect(says).toContain('turn the engine end for end');
  });

  test('spur centres are exactly 4 mm × (18 + 42)/2', async () => {
    const { checked } = await checkDemo('hill-trike');
    expect(severities(checked, 'spur.centres')).toEqual(['holds']);
    expect(demand(checked, 'spur.centres')[0]).toBeLessThan(1e-9);
    expect(spaced(checked.findings.find(({ check }) => check === 'spur.centres')?.says)).toContain(
      'teeth ask for 120 mm',
    );
  });

  test('the chain reaches round over the whole stroke, tightest as drawn', async () => {
    const { checked } = await checkDemo('hill-trike');
    const fit = demand(checked, 'chain.fit')[0] ?? Number.NaN;
    expect(severities(checked, 'chain.stroke')).toEqual(['holds']);
    expect(demand(checked, 'chain.stroke')[0]).toBeCloseTo(fit, 4);
  });
});
