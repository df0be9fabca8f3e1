import { explainFinding, openSession, shaftDiagrams } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { frameModes } from '@oddwheel/mechanics/frame/modes';
import { describe, expect, test } from 'vitest';

/**
 * A jackshaft typed as a build and read through the whole assessment, against statics, beam tables and handbook formulas worked out here
 * and not with our methods. Two chains with sprockets of 20 pull level, one forward between the bearings, one back outside of them.
 */
const TORQUE = 50;
const PITCH = 0.01905;
const RADIUS = PITCH / (2 * Math.sin(Math.PI / 20));
const PULL = TORQUE / RADIUS;
const [L, A, C] = [0.2, 0.08, 0.06];
const D = 0.025;
const E = 207e9;
const [TENSILE, YIELD] = [570e6, 310e6];
const RIGID = '10000000 N/mm';
const CASE = '1/peak-torque';

type Json = Record<string, unknown>;
const point = (x: number, y: number) => ({ x: `${x} mm`, y: `${y} mm`, z: '300 mm' });
const bearing = (station: string, more: Json = {}): Json => ({
  kind: 'bearing',
  name: `bearing at ${station}`,
  station,
  body: 'subframe',
  stiffness: RIGID,
  ...more,
});
const sprocket = (station: string): Json => ({ kind: 'sprocket', name: `sprocket at ${station}`, station });
const chain = (from: string, to: string): Json => ({
  kind: 'chain',
  name: `${from} to ${to}`,
  from,
  to,
  chain: '12B',
  teeth: { driver: 20, driven: 20 },
  efficiency: '100 %',
});

function open(jackshaft: Json, seats: Json = {}): Session {
  const build = {
    format: 4,
    name: 'jackshaft',
    about: 'invented for this test',
    brief: {
      engine: {
        name: 'engine',
        curve: {
          units: { speed: 'rpm', torque: 'N.m' },
          rows: [
            [1000, TORQUE],
            [6000, TORQUE],
          ],
        },
        idle: '1000 rpm',
        redline: '6000 rpm',
        clutchTorque: '60 N.m',
        drag: '10 N.m',
        primary: '1',
        gears: ['1'],
        boxEfficiency: '100 %',
        output: {
          name: 'Output',
          origin: point(800, 0),
          direction: [0, 1, 0],
          sense: 'positive',
          seats: { sprocket: sprocket('-20 mm') },
        },
      },
      vehicle: { mass: '150 kg', payload: '80 kg' },
      wheel: { rollOut: '1.5 m' },
      duty: {
        distance: '20000 km',
        rows: [{ name: 'all of it', gear: 1, speed: '40 km/h', throttle: '100 %', share: '100 %' }],
      },
      loads: { grip: '1.2', shock: '1.5', reliability: '50' },
    },
    path: {
      shafts: {
        jack: {
          name: 'Jackshaft',
          origin: point(400, -100),
          direction: [0, 1, 0],
          material: '1045-hot-rolled',
          surface: 'machined or cold drawn',
          pieces: [{ from: '-10 mm', to: '270 mm', diameter: '25 mm' }],
          ...jackshaft,
          seats: {
            a: bearing('0 mm'),
            in: sprocket('80 mm'),
            b: bearing('200 mm'),
            out: sprocket('260 mm'),
            ...seats,
          },
        },
        axle: {
          name: 'Axle',
          origin: point(0, 160),
          direction: [0, 1, 0],
          material: '1045-hot-rolled',
          pieces: [{ from: '-120 mm', to: '120 mm', diameter: '40 mm' }],
          seats: {
            left: bearing('100 mm'),
            right: bearing('-100 mm'),
            sprocket: sprocket('0 mm'),
            wheel: { kind: 'wheel', name: 'wheel', station: '-40 mm' },
          },
        },
      },
      stages: { one: chain('output/sprocket', 'jack/in'), two: chain('jack/out', 'axle/sprocket') },
    },
  };
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

const reserveOf = (session: Session, check: string, at = '/path/shafts/jack'): number | null =>
  explainFinding(session, `${check}:${at}`, CASE)?.reserve ?? null;
const finding = (session: Session, check: string, at: string) =>
  session.assessment.findings.find(({ id }) => id === `${check}:${at}`);

/** Both pulls as statics has them: 0.9 of a pull at each bearing, and the bending greatest at the sprocket between. */
const REACTION = (PULL * (A + C + L - 2 * A)) / L;
const BENDING = REACTION * A;
const W = (Math.PI * D ** 3) / 32;

describe('a jackshaft, by statics', () => {
  const session = open({});
  test('reactions and bending along it', () => {
    const line = shaftDiagrams(session, CASE)?.find(({ address }) => address === '/path/shafts/jack');
    if (!line?.ok) throw new Error('no line');
    for (const { force } of line.bearings) expect(Math.hypot(...force) / REACTION).toBeCloseTo(1, 3);
    const at = (station: number) => line.points.filter((one) => Math.abs(one.station - station) < 1e-9);
    expect(at(A)[0]?.bendingBoth).toBeCloseTo(BENDING, 2);
    expect(at(A / 2)[0]?.bendingBoth).toBeCloseTo(BENDING / 2, 2);
    expect(at(L)[0]?.bendingBoth).toBeCloseTo(PULL * C, 2);
    expect(at(L + C / 2)[0]?.bendingBoth).toBeCloseTo((PULL * C) / 2, 2);
    expect(Math.abs(at(L)[0]?.torque ?? 0)).toBeCloseTo(TORQUE, 6);
  });
  test('the shear along it is how the bending changes, and the slope how the movement does', () => {
    const line = shaftDiagrams(session, CASE)?.find(({ address }) => address === '/path/shafts/jack');
    if (!line?.ok) throw new Error('no line');
    const plane = Math.abs(line.directions[0][0]) > 0.5 ? 0 : 1;
    line.points.slice(1).forEach((one, n) => {
      const before = line.points[n];
      const way = before ? one.station - before.station : 0;
      if (!before || way < 1e-6) return;
      const shear = Math.abs((one.bending[plane] - before.bending[plane]) / way);
      expect(shear).toBeCloseTo(Math.abs(one.shear[plane]), 3);
    });
  });
  test('forces and moments close on every shaft', () => {
    expect(session.assessment.closure?.shafts).toBeLessThan(1e-9);
  });
  test('yield, by the energy of distortion', () => {
    const stress = Math.sqrt((BENDING / W) ** 2 + 3 * (TORQUE / (2 * W)) ** 2);
    expect(reserveOf(session, 'shaft.yield')).toBeCloseTo(YIELD / stress, 3);
  });
  test('slope at the outer sprocket, by beam tables', () => {
    const inertia = (Math.PI * D ** 4) / 64;
    const between = (PULL * A * (L - A) * (L + A)) / (6 * L * E * inertia);
    const outside = (PULL * C * (2 * L + 3 * C)) / (6 * E * inertia);
    expect(1 / 300 / (between + outside) / (reserveOf(session, 'shaft.slope') ?? 0)).toBeCloseTo(1, 2);
  });
});

describe('fatigue of the jackshaft with a keyway where it bends most', () => {
  const notches = { key: { name: 'keyway', kind: 'keyway, end milled', station: '80 mm', radius: '0.5 mm' } };
  const session = open({ notches });
  // Shigley, 9th: table 7-1, equations 6-33 to 6-35, table 6-2, equation 6-20; all worked here in his units.
  const kpsi = TENSILE / 6.894757e6;
  const root = (c: readonly [number, number, number, number]): number =>
    c[0] + c[1] * kpsi + c[2] * kpsi ** 2 + c[3] * kpsi ** 3;
  const sensitivity = (a: number): number => 1 / (1 + a / Math.sqrt(0.5 / 25.4));
  const inBending = 1 + sensitivity(root([0.246, -3.08e-3, 1.51e-5, -2.67e-8])) * (2.14 - 1);
  const inTorsion = 1 + sensitivity(root([0.19, -2.51e-3, 1.35e-5, -2.67e-8])) * (3 - 1);
  const limit = 4.51 * 570 ** -0.265 * 1.24 * 25 ** -0.107 * 0.5 * TENSILE;
  const swing = (inBending * BENDING) / W;
  const mean = (Math.sqrt(3) * inTorsion * TORQUE) / (2 * W);

  test('for ever, by Goodman', () => {
    expect(reserveOf(session, 'shaft.fatigue')).toBeCloseTo(1 / (swing / limit + mean / TENSILE), 3);
  });
  test('over the duty, by turns over turns borne', () => {
    const turns = 20e6 / 1.5;
    const f = 1.06 - 4.1e-4 * 570 + 1.5e-7 * 570 ** 2;
    const reversed = swing / (1 - mean / TENSILE);
    const slope = 3 / Math.log10((f * TENSILE) / limit);
    const borne = 1e6 * (limit / reversed) ** (reversed > limit ? slope : 2 * slope - 1);
    const found = finding(session, 'shaft.life', '/path/shafts/jack')?.reserve?.value ?? 0;
    expect(found / (borne / turns)).toBeCloseTo(1, 3);
  });
  test('another criterion, another reserve', () => {
    const by = (criterion: string): number => {
      const other = openSession(session.text.replace('"grip"', `"criterion":"${criterion}","grip"`));
      if (!other.ok) throw new Error(JSON.stringify(other.faults));
      return reserveOf(other.session, 'shaft.fatigue') ?? 0;
    };
    const [a, u, y] = [swing / limit, mean / TENSILE, mean / YIELD];
    expect(by('Soderberg')).toBeCloseTo(1 / (a + y), 3);
    expect(by('ASME elliptic')).toBeCloseTo(1 / Math.hypot(a, y), 3);
    expect(by('Gerber')).toBeCloseTo(2 / (a + Math.hypot(a, 2 * u)), 3);
  });
});

describe('critical speed', () => {
  const session = open({});
  const { scene } = session.evaluation.middle;
  const structure = scene.strength.shafts[1];
  test('lies a little below the slowest natural swing of shaft and sprockets', () => {
    const found = finding(session, 'shaft.critical', '/path/shafts/jack')?.capacity?.value ?? 0;
    if (!structure?.factors) throw new Error('no structure');
    const disc =
      7850 *
      Math.PI *
      RADIUS ** 2 *
      (scene.model.stages[0]?.kind === 'chain' ? scene.model.stages[0].size.innerWidth : 0);
    const node = (station: number): number => structure.stations.findIndex((s) => Math.abs(s - station) < 1e-9);
    const masses = [A, L + C].map((station) => ({ node: node(station), mass: disc, inertia: [0, 0, 0] as const }));
    const exact = 2 * Math.PI * (frameModes(structure.factors, 1, masses)[0]?.frequency ?? 0);
    expect(found).toBeLessThan(exact);
    expect(found).toBeGreaterThan(0.85 * exact);
  });
  test('only a shaft of twenty diameters and more is asked for its twist', () => {
    expect(finding(session, 'shaft.twist', '/path/shafts/jack')).toBeUndefined();
    const long = open({ pieces: [{ from: '-10 mm', to: '270 mm', diameter: '8 mm' }] });
    const twist = (TORQUE * (L + C - A)) / ((79.3e9 * (Math.PI * 0.008 ** 4)) / 32);
    const allowed = (Math.PI / 180) * ((L + C - A) / (20 * 0.008));
    expect(reserveOf(long, 'shaft.twist')).toBeCloseTo(allowed / twist, 4);
  });
});

describe('a third bearing', () => {
  const with3 = (stiffness: string): readonly number[] => {
    const session = open({}, { c: bearing('140 mm', { stiffness }) });
    const { scene } = session.evaluation.middle;
    const load = scene.cases.find(({ point: { id } }) => id === CASE);
    const answer = load ? scene.strength.answer(1, load) : null;
    if (!answer?.ok) throw new Error('no answer');
    return [0, 1, 2].map((b) => answer.solution.reactionAt(b)?.radial ?? Number.NaN);
  };
  test('half as stiff carries less, and the others more or less than before', () => {
    const [stiff, soft] = [with3('80000 N/mm'), with3('40000 N/mm')];
    expect(soft[2]).toBeLessThan(stiff[2] ?? 0);
    expect(Math.abs((soft[0] ?? 0) - (stiff[0] ?? 0))).toBeGreaterThan(1e-3 * (stiff[0] ?? 0));
  });
  test('so soft that it does nothing leaves the two as they were', () => {
    const [a, b] = with3('1e-3 N/mm');
    expect((a ?? 0) / REACTION).toBeCloseTo(1, 4);
    expect((b ?? 0) / REACTION).toBeCloseTo(1, 4);
  });
});

describe('built-up shafts', () => {
  const join = (more: Json): Session =>
    open({
      joins: {
        stub: {
          name: 'stub in the sleeve',
          station: '150 mm',
          torqueBy: 'spline',
          axialBy: 'draw bolt',
          diameter: '25 mm',
          length: '20 mm',
          teeth: 10,
          height: '2 mm',
          ...more,
        },
      },
    });
  const AT = '/path/shafts/jack/joins/stub';
  test('a spline that centres by itself fails, and a spigot beside it is asked for', () => {
    const found = finding(join({ centredBy: 'spline' }), 'join.centre', AT);
    expect(found?.severity).toBe('fails');
    expect(found?.says).toContain('neither centres nor takes bending');
  });
  test('a spigot with little play centres, with much it does not, without play said it is not known', () => {
    const spigot = (play?: string) => ({
      centredBy: 'spigot',
      spigot: { diameter: '25 mm', length: '25 mm', ...(play ? { play } : {}) },
    });
    expect(finding(join(spigot('0.02 mm')), 'join.centre', AT)?.severity).toBe('holds');
    expect(finding(join(spigot('0.2 mm')), 'join.centre', AT)?.severity).toBe('fails');
    expect(finding(join(spigot()), 'join.centre', AT)?.missing[0]?.address).toBe(`${AT}/spigot/play`);
  });
  test('pressure on spline and spigot, by hand', () => {
    const session = join({ centredBy: 'spigot', spigot: { diameter: '25 mm', length: '25 mm', play: '0.01 mm' } });
    const flanks = (2 * TORQUE) / 0.025 / (0.75 * 10 * 0.002 * 0.02);
    expect(reserveOf(session, 'join.torque', AT)).toBeCloseTo(YIELD / flanks, 3);
    const moment = Math.abs(REACTION * 0.15 - PULL * (0.15 - A));
    const mouth = (6 * moment) / (0.025 * 0.025 ** 2) + Math.abs(REACTION - PULL) / 0.025 ** 2;
    expect((reserveOf(session, 'join.bending', AT) ?? 0) / (YIELD / mouth)).toBeCloseTo(1, 3);
  });
  test('nothing that holds it along the shaft fails; a weld alone is thin, and takes the strength of hardening away beside it', () => {
    expect(finding(join({ centredBy: 'press fit', axialBy: 'nothing' }), 'join.axial', AT)?.severity).toBe('fails');
    expect(finding(join({ centredBy: 'weld alone', axialBy: 'weld' }), 'join.draw', AT)?.severity).toBe('thin');
    const drawn = open({ material: '1045-cold-drawn' });
    const welded = open({
      material: '1045-cold-drawn',
      joins: {
        stub: {
          name: 'stub',
          station: '80 mm',
          torqueBy: 'weld',
          axialBy: 'weld',
          centredBy: 'press fit',
          diameter: '25 mm',
          length: '6 mm',
        },
      },
    });
    const [before, after] = [reserveOf(drawn, 'shaft.yield') ?? 0, reserveOf(welded, 'shaft.yield') ?? 0];
    expect(after / before).toBeCloseTo(310 / 530, 6);
  });
});

describe('properties', () => {
  test('a thicker shaft bears more, a softer steel less', () => {
    const at = (diameter: string, material = '1045-hot-rolled') =>
      reserveOf(open({ material, pieces: [{ from: '-10 mm', to: '270 mm', diameter }] }), 'shaft.yield') ?? 0;
    expect(at('26 mm')).toBeGreaterThan(at('25 mm'));
    expect(at('25 mm', '1018-hot-rolled')).toBeLessThan(at('25 mm'));
  });
  test('a bearing off the shaft, or one bearing alone, is told and crashes nothing', () => {
    const one = open({}, { a: sprocket('0 mm') });
    expect(finding(one, 'shaft.yield', '/path/shafts/jack')?.severity).toBe('unknown');
    const off = open({ pieces: [{ from: '50 mm', to: '270 mm', diameter: '25 mm' }] });
    expect(finding(off, 'shaft.yield', '/path/shafts/jack')?.missing[0]?.says).toContain('diameter');
  });
});
