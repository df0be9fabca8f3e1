import type { PathElement } from '@oddwheel/build/assess/types';
import { toSi } from '@oddwheel/quantity/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Checked, folderOf, lastOf, spaced } from './command.ts';

/** One build with a stage of each family in a row, each sized after the example named at its test. The frame round them is invented. */
describe('each family of stages, read from a build by check', () => {
  let build: Awaited<ReturnType<typeof folderOf>>;
  let checked: Checked;
  beforeAll(async () => {
    build = await folderOf('every-family');
    checked = (await build.check()).checked;
  });
  afterAll(() => build.end());

  const stage = (name: string): PathElement | undefined => checked.path.find((element) => element.name === name);
  const fact = (name: string, key: string): number =>
    stage(name)?.facts.find((x) => x.key === key)?.spread.value ?? Number.NaN;
  const finding = (check: string, name: string) =>
    checked.findings.find((x) => x.check === check && x.element === name);

  test('universal joint: Khurmi & Gupta, example 9.6 (read): at 18 degrees the speed varies by 10 %', () => {
    expect(Math.abs(fact('Joint', 'unevenness') - 0.1)).toBeLessThan(0.0006);
    expect(fact('Joint', 'angle')).toBeCloseTo(toSi('angle', 'deg', 18), 9);
    expect(fact('Joint', 'offset')).toBeLessThan(1e-9);
  });

  test('toothed belt: a belt maker’s AT10 catalogue (read): 25 and 25 teeth at 625 mm take 1500 mm, 150 teeth', () => {
    const fit = finding('belt.fit', 'Belt');
    expect(fit?.severity).toBe('holds');
    expect(fit?.demand?.value).toBeCloseTo(150, 9);
    // 25 teeth of 10 mm pass in a turn.
    const { lineSpeed } = stage('Belt')?.here ?? {};
    const engine = lastOf(checked, 'engine').here.angularSpeed?.value ?? Number.NaN;
    expect(lineSpeed?.value).toBeCloseTo((engine / (2 * Math.PI)) * 0.25, 9);
  });

  test('straight bevel: Mott, example 8-6 (read): 16 and 48 of diametral pitch 8, cone distance 3.162 in, ratio 3', () => {
    expect(stage('Straight pair')?.ratio?.value).toBe(3);
    expect(fact('Straight pair', 'cone') / toSi('length', 'in', 3.162)).toBeCloseTo(1, 3);
    expect(fact('Straight pair', 'angle')).toBeCloseTo(Math.PI / 2, 12);
    expect(fact('Straight pair', 'apart')).toBe(0);
    // The book asks for at most 0.949 in and takes 1 in.
    const face = finding('bevel.face', 'Straight pair');
    expect((face?.capacity?.value ?? Number.NaN) / toSi('length', 'in', 0.949)).toBeCloseTo(1, 3);
    expect(face?.severity).toBe('thin');
    expect(finding('bevel.hand', 'Straight pair')).toBeUndefined();
  });

  test('spiral bevel: 16 and 48, 35 degrees, mean diameter 100 mm (Shigley’s equations, memory): 804.8 N away for 1000 N, and 523.8 N in on overrun', () => {
    expect(fact('Spiral pair', 'mean-driver')).toBeCloseTo(0.1, 9);
    const hand = finding('bevel.hand', 'Spiral pair');
    expect(hand?.severity).toBe('holds');
    // 100 N·m at 100 mm is 2000 N.
    expect(spaced(hand?.says)).toContain('pushes it away from the apex with 1 610 N');
    expect(spaced(hand?.says)).toContain('when the engine brakes it draws it into mesh with 1 048 N');
  });

  test('the other hand draws the pinion into mesh while it drives, and is thin', async () => {
    const other = await folderOf('every-family', (text) => text.replace('"hand": "right"', '"hand": "left"'));
    try {
      const found = (await other.check()).checked.findings.find(({ check }) => check === 'bevel.hand');
      expect(found?.severity).toBe('thin');
      expect(spaced(found?.says)).toContain('draws it into mesh with 1 048 N');
    } finally {
      await other.end();
    }
  });

  test('bought-in unit: its plate against what comes through, 20 N·m × 3 × 3 × 3.18 at 1000 rpm / 9', () => {
    expect(stage('Unit')?.ratio?.value).toBeCloseTo(3.18, 12);
    const torque = finding('unit.torque', 'Unit');
    expect(torque?.demand?.value).toBeCloseTo(20 * 3 * 3 * 3.18, 9);
    expect(torque?.reserve?.value).toBeCloseTo(850 / 572.4, 9);
    const speed = finding('unit.speed', 'Unit');
    expect(speed?.demand?.value).toBeCloseTo(toSi('angularSpeed', 'rpm', 1000 / 9), 9);
    expect(speed?.severity).toBe('holds');
  });

  test('spur pair: Khurmi & Gupta, example 13.1 (read), first pair 20 and 50; centres 4 mm × 70/2', () => {
    expect(stage('Spur pair')?.ratio?.value).toBe(2.5);
    const centres = finding('spur.centres', 'Spur pair');
    expect(centres?.severity).toBe('holds');
    expect(spaced(centres?.says)).toContain('teeth ask for 140 mm');
  });

  test('the train as a whole: 3 × 3 × 3.18 × 2.5, forward, nothing fails', () => {
    expect(checked.gears[0]?.overall.value).toBeCloseTo(71.55, 9);
    expect(checked.findings.find(({ check }) => check === 'path.forward')?.severity).toBe('holds');
    expect(checked.findings.filter(({ severity }) => severity === 'fails')).toEqual([]);
  });
});
