import { describe, expect, test } from 'vitest';
import { openSession, roadCurvesOf } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

/** Torque falls straight from 20 N·m at standstill to nothing at 1000 rad/s; gears 8 and 4, chain 15 : 45 without loss, 2 m a turn. */
function opened(engine: object = {}, brief: object = {}) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as {
    brief: Record<string, object>;
    path: { stages: Record<string, object> };
  };
  const rows = { units: { speed: 'rad/s', torque: 'N.m' }, rows: [100, 400, 800].map((w) => [w, 20 - w / 50]) };
  build.brief = {
    ...build.brief,
    engine: {
      ...build.brief.engine,
      ...{ peaks: undefined, curve: rows, idle: '100 rad/s', redline: '800 rad/s', launch: '100 rad/s' },
      ...{ primary: '1', gears: ['8', '4'], boxEfficiency: '100 %' },
      ...engine,
    },
    vehicle: { mass: '300 kg', payload: '100 kg', rolling: '0.02', dragArea: '0.5 m2', friction: '1' },
    ...brief,
  };
  build.path.stages['chain-1'] = { ...build.path.stages['chain-1'], efficiency: '100 %' };
  const result = openSession(JSON.stringify(build));
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}

function curvesOf(session: ReturnType<typeof opened>) {
  const curves = roadCurvesOf(session);
  if ('missing' in curves) throw new Error(curves.says);
  return curves;
}

const radius = 1 / Math.PI;

describe('curves of the road', () => {
  test('pull and level load are those of the assessment wherever both hold a point', () => {
    const session = opened();
    const curves = curvesOf(session);
    const { pulls, load } = session.assessment.road;
    if ('missing' in pulls || 'missing' in load) throw new Error('not known');
    expect(curves.gears).toHaveLength(2);
    curves.gears.forEach(({ pulls: fine }, gear) => {
      expect(fine.filter((_, k) => k % 2 === 0)).toEqual(pulls.gears[gear]?.curve);
    });
    const level = curves.loads.find(({ grade }) => grade === 0);
    expect(level?.points.filter((_, k) => k % 2 === 0).map(([, force]) => force)).toEqual(
      load.points.map((point) => point.level),
    );
  });

  test('two gears pull alike where a straight torque line says so: v = r ω0 / (i1 + i2)', () => {
    const shift = curvesOf(opened()).gears[0]?.shift;
    expect(shift?.speed).toBeCloseTo((radius * 1000) / (24 + 12), 2);
    expect(shift?.engineBefore).toBeCloseTo((1000 * 24) / 36, 1);
    expect(shift?.engineAfter).toBeCloseTo((1000 * 12) / 36, 1);
  });

  test('where the next gear never pulls as much, the shift waits for the end of this one', () => {
    const flat = { curve: { units: { speed: 'rad/s', torque: 'N.m' }, rows: [[100, 20], [800, 20]] } }; // biome-ignore format: short
    const [first, second] = curvesOf(opened(flat)).gears;
    expect(first?.shift?.engineBefore).toBeCloseTo(800, 9);
    expect(first?.shift?.engineAfter).toBeCloseTo(400, 9);
    expect(second?.shift).toBeNull();
  });

  test('a slope adds m g sin, and the slope of the target is among those drawn', () => {
    const curves = curvesOf(opened({}, { targets: { climb: '12 %' } }));
    const wanted = curves.loads.find((one) => one.wanted);
    const level = curves.loads.find((one) => one.grade === 0);
    const slope = Math.atan(0.12);
    const more = (wanted?.points[0]?.[1] ?? 0) - (level?.points[0]?.[1] ?? 0);
    expect(wanted?.grade).toBeCloseTo(0.12, 12);
    expect(more).toBeCloseTo(400 * 9.80665 * (Math.sin(slope) + 0.02 * (Math.cos(slope) - 1)), 6);
    // 10 % would lie on top of it, and what first gear cannot climb is not drawn.
    expect(curves.loads.map((one) => one.grade)).not.toContain(0.1);
  });

  test('the run passes the sprint of the assessment at its time, and goes on', () => {
    const session = opened({}, { targets: { sprintTo: '20 km/h', sprintIn: '9 s' } });
    const { run } = curvesOf(session);
    const { sprint } = session.assessment.road;
    if ('missing' in run || 'missing' in sprint) throw new Error('not known');
    expect(run.wanted).toBe(9);
    expect(run.points.at(-1)?.speed).toBeGreaterThan(sprint.to);
    const after = run.points.findIndex(({ speed }) => speed >= sprint.to);
    expect(run.points[after - 1]?.time).toBeLessThan(sprint.time.value);
    expect(run.points[after]?.time).toBeGreaterThanOrEqual(sprint.time.value);
  });

  test('without a torque curve it says what is missing', () => {
    const curves = roadCurvesOf(opened({ curve: undefined }));
    expect('missing' in curves && curves.missing.map(({ address }) => address)).toEqual(['/brief/engine/curve']);
  });
});
