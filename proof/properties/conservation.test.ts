import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openAt, RUNS, variations, varied } from './build.ts';

test('power in equals power out and losses, and torques about every shaft balance', () => {
  fc.assert(
    fc.property(variations, (v) => {
      const { closure } = openAt(varied(v), v).assessment;
      expect(closure).not.toBeNull();
      expect(closure?.power).toBeLessThan(1e-9);
      expect(closure?.torque).toBeLessThan(1e-9);
    }),
    RUNS,
  );
});

test('power at the ground is engine power times the efficiency of every part', () => {
  fc.assert(
    fc.property(variations, (v) => {
      const { path } = openAt(varied(v), v).assessment;
      const powers = path.flatMap(({ here }) => (here.power === null ? [] : [here.power.value]));
      for (let k = 1; k < powers.length; k++)
        expect(powers[k] ?? Number.NaN).toBeLessThanOrEqual((powers[k - 1] ?? Number.NaN) * (1 + 1e-12));
      const passed = path.flatMap(({ facts }) => facts.filter(({ key }) => key === 'efficiency'));
      const stages = passed.reduce((product, { spread }) => product * spread.value, 1);
      const box = (path[1]?.here.power?.value ?? Number.NaN) / (path[0]?.here.power?.value ?? Number.NaN);
      const whole = (powers.at(-1) ?? Number.NaN) / (powers[0] ?? Number.NaN);
      expect(Math.abs(whole / (stages * box) - 1)).toBeLessThan(1e-9);
    }),
    RUNS,
  );
});

test('the ratios along the path multiply to the overall ratio, and to engine speed over wheel speed', () => {
  fc.assert(
    fc.property(variations, (v) => {
      const { path, gears } = openAt(varied(v), v).assessment;
      const product = path.reduce((p, { ratio }) => p * (ratio?.value ?? 1), 1);
      const overall = gears.find(({ id }) => id === v.gear)?.overall.value ?? Number.NaN;
      expect(Math.abs(product / overall - 1)).toBeLessThan(1e-12);
      const teeth = [v.chain1, v.bevel, v.chain2].reduce((p, [driver, driven]) => (p * driven) / driver, 1);
      const box = path.find(({ kind }) => kind === 'gearbox')?.ratio?.value ?? Number.NaN;
      expect(Math.abs(product / (box * teeth) - 1)).toBeLessThan(1e-12);
      const engine = path[0]?.here.angularSpeed?.value ?? Number.NaN;
      const road = path.at(-1)?.here.lineSpeed?.value ?? Number.NaN;
      const wheel = (2 * Math.PI * road) / Number(v.rollOut.toFixed(6));
      expect(Math.abs(engine / (wheel * product) - 1)).toBeLessThan(1e-12);
    }),
    RUNS,
  );
});
