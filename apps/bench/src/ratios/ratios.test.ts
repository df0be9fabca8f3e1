import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Road } from '@oddwheel/build/assess/road/types';
import { openSession, roadCurvesOf } from '@oddwheel/build/session';
import { SMALL_BUILD } from '@oddwheel/build/testing/small-build';
import { describe, expect, it } from 'vitest';
import { engineCurves, isNotKnown, mostPull, mostSpeed, plainText, pullCurves, pullLimits, valueAt } from './curves.ts';
import { roadRows } from './road-rows.ts';

/** The small build with peaks of an engine, on the road. */
function road(units: object = {}): { curves: RoadCurves; road: Road; units: Readonly<Record<string, string>> } {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as { brief: Record<string, object>; units?: object };
  build.units = { ...build.units, ...units };
  build.brief = {
    ...build.brief,
    vehicle: { mass: '300 kg', payload: '100 kg', rolling: '0.02', dragArea: '0.5 m2', friction: '0.6..0.8' },
    targets: { climb: '12 %', sprintTo: '20 km/h' },
  };
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const curves = roadCurvesOf(opened.session);
  if (isNotKnown(curves)) throw new Error(curves.says);
  return { curves, road: opened.session.assessment.road, units: opened.session.assessment.units };
}

describe('curves of the Ratios step', () => {
  it('the chosen gear is the one in colour, and the wanted climb the one that says so', () => {
    const { curves, road: found, units } = road();
    const drawn = pullCurves(curves, pullLimits(found), '1', units);
    expect(drawn.filter((curve) => curve.look === 'chosen').map((curve) => curve.key)).toEqual(['gear-1']);
    expect(drawn.filter((curve) => curve.look === 'wanted').map((curve) => curve.text)).toEqual(['12\u2009% wanted']);
    expect(Math.max(...drawn.flatMap((curve) => curve.points.map((point) => point[1])))).toBeGreaterThanOrEqual(
      mostPull(curves),
    );
  });

  it('engine speed goes from idle to redline in every gear, no faster than the fastest gear', () => {
    const { curves } = road();
    for (const curve of engineCurves(curves, '1').filter(({ key }) => key.startsWith('gear-'))) {
      expect(curve.points[0]?.[1]).toBeCloseTo(curves.idle, 9);
      expect(curve.points.at(-1)?.[0]).toBeLessThanOrEqual(mostSpeed(curves) * (1 + 1e-12));
    }
  });

  it('reads a curve between its points, and not beyond its ends', () => {
    const line = [
      [1, 10],
      [3, 30],
    ] as const;
    expect([valueAt(line, 1), valueAt(line, 2), valueAt(line, 3)]).toEqual([10, 20, 30]);
    expect([valueAt(line, 0.9), valueAt(line, 3.1)]).toEqual([null, null]);
  });

  it('a number that someone chose has no noughts that say nothing', () => {
    expect([plainText(40 / 3.6, 'speed', {}), plainText(0.125, 'percent', {})]).toEqual([
      '40\u2009km/h',
      '12.5\u2009%',
    ]);
  });
});

describe('the road in words', () => {
  it('says what is missing where a part is not known', () => {
    const { road: found, units } = road();
    const lift = roadRows(found, units).find((row) => row.name === 'Front lifts');
    expect(lift && 'missing' in lift.value && lift.value.missing.length).toBeGreaterThan(0);
  });

  it('distances go with the unit of road speed', () => {
    const start = (units: object) => {
      const { road: found, units: chosen } = road(units);
      return roadRows(found, chosen).find((row) => row.name.startsWith('Standing start'))?.says ?? '';
    };
    const [metres, feet] = [start({}), start({ speed: 'mph' })].map((says) => Number(/Over (\S+)/.exec(says)?.[1]));
    expect((feet ?? 0) / (metres ?? 1)).toBeGreaterThan(3);
    expect(start({ speed: 'mph' })).toContain(' ft,');
  });
});
