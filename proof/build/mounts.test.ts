import { readFileSync } from 'node:fs';
import { holdSteps } from '@oddwheel/build/hold/hold';
import { valueAt } from '@oddwheel/build/schema/describe';
import { explainFinding, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

type Point = readonly [number, number, number];

/** Middle of the four mounts, and half of their distances along and across the vehicle, m. */
const MIDDLE: Point = [1.0, 0.01, 0.02];
const [ALONG, ACROSS] = [0.14, 0.13];
const CHAIN = '/path/stages/chain-1';

const mm = (x: number) => `${Math.round(x * 1e6) / 1e3} mm`;

const mountAt = ([x, y, z]: Point, stiffness: string | null) => ({
  body: 'engine',
  at: { x: mm(x), y: mm(y), z: mm(z) },
  ...(stiffness === null ? {} : { stiffness }),
});

/** Four mounts at the corners of a level rectangle. */
const four = (stiffness: string): Record<string, object> =>
  Object.fromEntries(
    ([1, -1] as const).flatMap((a) =>
      ([1, -1] as const).map((b) => {
        const name = `${a > 0 ? 'front' : 'rear'} ${b > 0 ? 'left' : 'right'}`;
        const place: Point = [MIDDLE[0] + a * ALONG, MIDDLE[1] + b * ACROSS, MIDDLE[2]];
        return [name.replace(' ', '-'), { name, ...mountAt(place, stiffness) }];
      }),
    ),
  );

function opened(mounts: Record<string, object>): Session {
  const build = JSON.parse(DEMO);
  const text = JSON.stringify({ ...build, brief: { ...build.brief, mounts } });
  const read = openSession(text, { ends: 'not yet' });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.session;
}

const finding = ({ assessment }: Session, check: string) =>
  assessment.findings.find(({ id }) => id === `${check}:${CHAIN}`);

const demand = (session: Session, check: string, caseId: string) =>
  explainFinding(session, `${check}:${CHAIN}`, caseId)?.demand ?? null;

const cross = ([a, b, c]: Point, [x, y, z]: Point): Point => [b * z - c * y, c * x - a * z, a * y - b * x];
const plus = ([a, b, c]: Point, [x, y, z]: Point): Point => [a + x, b + y, c + z];
const times = (k: number, [x, y, z]: Point): Point => [k * x, k * y, k * z];

/** Places of the demo, m: the middle of the sprocket of 17, which turns about −x, and that of 30; corners of the engine's box. */
const [DRIVER, DRIVEN]: readonly Point[] = [
  [0.77, 0.07, 0.1443],
  [0.77, 0, 0.4825],
];
const CORNERS: readonly Point[] = [0.835, 1.18].flatMap((x) =>
  [-0.16, 0.17].flatMap((y) => [-0.06, 0.33].map((z): Point => [x, y, z])),
);

/** Pull of the tight strand, on the common tangent of both pitch circles, and its arm about the middle of the sprocket of 17. */
function strand(torque: number): { readonly force: Point; readonly arm: Point } {
  const radius = (teeth: number) => 0.01905 / 2 / Math.sin(Math.PI / teeth);
  const between = plus(DRIVEN as Point, times(-1, DRIVER as Point));
  const centres = Math.hypot(...between);
  const e = times(1 / centres, between);
  const sin = (radius(17) - radius(30)) / centres;
  const cos = Math.sqrt(1 - sin ** 2);
  // The pull turns the sprocket backward: of the two sides this is the one on which it does.
  const side = cross([-1, 0, 0], e);
  return {
    force: times(torque / radius(17), plus(times(cos, e), times(-sin, side))),
    arm: times(radius(17), plus(times(sin, e), times(cos, side))),
  };
}

/** By hand, four equal mounts: F / 4k, and torques about their middle over 4kb², 4ka² and 4k(a² + b²). */
function handMove(torque: number, k: number): { readonly turn: Point; readonly at: (point: Point) => Point } {
  const { force, arm } = strand(torque);
  const [mx, my, mz] = cross(plus(plus(DRIVER as Point, arm), times(-1, MIDDLE)), force);
  const turn: Point = [
    mx / (4 * k * ACROSS ** 2),
    my / (4 * k * ALONG ** 2),
    mz / (4 * k * (ALONG ** 2 + ACROSS ** 2)),
  ];
  const shift = times(1 / (4 * k), force);
  return { turn, at: (point) => plus(shift, cross(turn, plus(point, times(-1, MIDDLE)))) };
}

const SOFT = opened(four('300 N/mm'));
const torqueIn = (caseId: string) => SOFT.assessment.cases.find(({ id }) => id === caseId)?.torques[0] ?? Number.NaN;
const CASES = ['1/peak-torque', '4/peak-torque'];

describe('an engine on its mounts under the pull of its chain', () => {
  test.each(CASES)('moves as a balance of forces by hand says, in %s', (caseId) => {
    const hand = handMove(torqueIn(caseId), 300e3);
    const most = Math.max(...[DRIVER as Point, ...CORNERS].map((point) => Math.hypot(...hand.at(point))));
    expect((demand(SOFT, 'mount.moves', caseId)?.value ?? 0) / most).toBeCloseTo(1, 9);
    expect(most).toBeGreaterThan(0.001);
  });

  test('sets the planes of the sprockets apart by its movement along the output and the turn of the output', () => {
    const hand = handMove(torqueIn('1/peak-torque'), 300e3);
    const axis = plus([-1, 0, 0], cross(hand.turn, [-1, 0, 0]));
    const moved = plus(DRIVER as Point, hand.at(DRIVER as Point));
    const [x, y, z] = plus(DRIVEN as Point, times(-1, moved));
    const apart = Math.abs(x * axis[0] + y * axis[1] + z * axis[2]) / Math.hypot(...axis);
    const shown = demand(SOFT, 'mount.line', '1/peak-torque');
    expect([shown?.name, shown?.kind]).toEqual(['planes apart', 'length']);
    expect((shown?.value ?? 0) / apart).toBeCloseTo(1, 9);
  });

  test('moves half as far on mounts twice as stiff, and as the pull grows', () => {
    const stiff = opened(four('600 N/mm'));
    const [low, high] = CASES.map((caseId) => demand(SOFT, 'mount.moves', caseId)?.value ?? Number.NaN);
    expect((demand(stiff, 'mount.moves', '1/peak-torque')?.value ?? 0) / (low ?? 0)).toBeCloseTo(0.5, 9);
    expect((high ?? 0) / (low ?? 0)).toBeCloseTo(torqueIn(CASES[1] ?? '') / torqueIn(CASES[0] ?? ''), 9);
  });

  test('movement and chain line hold on mounts of metal, and neither on soft rubber', () => {
    const states = (session: Session) =>
      ['mount.moves', 'mount.line'].map((check) => finding(session, check)?.severity);
    expect(states(opened(four('20 kN/mm')))).toEqual(['holds', 'holds']);
    expect(states(SOFT)).toEqual(['thin', 'thin']);
  });

  test('is made to hold by the first mounts that are stiff enough: it moves as much less as they are stiffer', () => {
    const reserve = finding(SOFT, 'mount.moves')?.reserve?.value ?? Number.NaN;
    const steps = holdSteps(SOFT, `mount.moves:${CHAIN}`, { ends: 'not yet' });
    let next = steps.next();
    while (!next.done) next = steps.next();
    const [first] = next.value?.proposals ?? [];
    const least = [1.25, 1.5, 2, 3, 4, 6, 10, 20].find((one) => reserve * one >= 1) ?? Number.NaN;
    expect(first?.what).toBe(`Hold the engine on mounts of ${300 * least} N/mm`);
    expect(first?.patches).toHaveLength(4);
    expect(first?.reaches).toBe(true);
    expect(first?.after?.reserve?.value).toBeCloseTo(reserve * least, 9);
  });

  test('the working shows the balance, ending in what the finding holds', () => {
    for (const check of ['mount.moves', 'mount.line', 'mount.slack']) {
      const workings = explainFinding(SOFT, `${check}:${CHAIN}`)?.workings ?? [];
      expect(workings.map(({ methodId }) => methodId)).toContain('mount.bodyMoves');
      // Each address that it names leads somewhere.
      const origins = workings.flatMap(({ symbols }) => symbols.flatMap(({ origin }) => origin ?? []));
      const open = origins.filter((origin) => origin.startsWith('/') && valueAt(SOFT.build, origin) === undefined);
      expect(open).toEqual([]);
    }
  });
});

describe('mounts that are not told whole', () => {
  const missing = (session: Session) =>
    ['mount.moves', 'mount.line', 'mount.slack'].map((check) => {
      const found = finding(session, check);
      return found && [found.severity, found.missing.map(({ address }) => address)];
    });

  test('a stiffness left out is unknown, by its address', () => {
    const session = opened({
      ...four('300 N/mm'),
      'rear-right': { name: 'rear right', ...mountAt([0.86, -0.12, 0.02], null) },
    });
    const unknown = ['unknown', ['/brief/mounts/rear-right/stiffness']];
    expect(missing(session)).toEqual([unknown, unknown, unknown]);
  });

  test('no mounts at all is unknown once, and asks how the engine is held', () => {
    const session = opened({});
    expect(missing(session)).toEqual([['unknown', ['/brief/mounts']], undefined, undefined]);
    expect(finding(session, 'mount.moves')?.missing[0]?.says).toBe(
      'how the engine is held: its mounts, or that it is held solid',
    );
  });

  test('mounts on one line are named', () => {
    const on = (x: number) => ({ name: `at ${x}`, ...mountAt([x, 0.05, 0.02], '300 N/mm') });
    const session = opened({ a: on(0.9), b: on(1.0), c: on(1.1) });
    expect(finding(session, 'mount.moves')).toMatchObject({
      severity: 'unknown',
      missing: [{ address: '/brief/mounts', says: 'mounts of the engine that do not all stand on one line' }],
    });
  });
});
