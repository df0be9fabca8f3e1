import { readFileSync } from 'node:fs';
import { CHECKS } from '@oddwheel/build/assess/checks/all';
import type { Scene } from '@oddwheel/build/assess/checks/check';
import { roadInputs } from '@oddwheel/build/assess/road/inputs';
import type { Known } from '@oddwheel/build/assess/road/types';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';

function opened(text: string) {
  const result = openSession(text);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}

function known<T extends object>(part: Known<T> | null): T {
  if (part === null || 'missing' in part) throw new Error(JSON.stringify(part));
  return part as T;
}

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

describe('the demo build on the road', () => {
  const session = opened(DEMO);
  const { scene } = session.evaluation.middle;

  test('all work of the drive in the sprint is found again', () => {
    const run = scene.road.sprint();
    if (!run.ok) throw new Error('sprint');
    const { driveWork, kineticGain, engineGain, loadWork } = run.output;
    expect(driveWork / (kineticGain + engineGain + loadWork)).toBeCloseTo(1, 9);
  });

  test('mirrored left to right, or typed in other units, it drives the same', () => {
    const mirrored = DEMO.replaceAll(
      /"y": "(-?)([\d.]+) mm"/g,
      (_, minus: string, y: string) => `"y": "${minus === '' && Number(y) !== 0 ? '-' : ''}${y} mm"`,
    );
    expect(mirrored).not.toBe(DEMO);
    expect(opened(mirrored).assessment.road).toEqual(session.assessment.road);
    const inches = DEMO.replace('"wheelbase": "2.05 m"', `"wheelbase": "${2050 / 25.4} in"`);
    expect(inches).not.toBe(DEMO);
    const [here, there] = [known(session.assessment.road.grip), known(opened(inches).assessment.road.grip)];
    expect(there.force.value / here.force.value).toBeCloseTo(1, 12);
  });

  test('no check of the drive reads an input that is counted to the road alone', () => {
    const ofRoad = roadInputs(scene.model);
    expect(ofRoad.size).toBeGreaterThan(12);
    const road = new Proxy({} as Scene['road'], {
      get: () => {
        throw new Error('a check of the drive asks for the road');
      },
    });
    for (const check of CHECKS.filter(({ onRoad }) => !onRoad)) {
      const at: Scene['at'] = (value) => {
        expect([check.id, value.address, ofRoad.has(value.address)]).toEqual([check.id, value.address, false]);
        return scene.at(value);
      };
      for (const subject of check.subjects(scene.model))
        for (const load of check.perCase ? scene.cases : [null]) check.run({ ...scene, at, road }, subject, load);
    }
  });
});
