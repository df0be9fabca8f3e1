import { beltTrapezoidalRating } from '@oddwheel/mechanics/belt/trapezoidal-rating';
import { chainGallingSpeed } from '@oddwheel/mechanics/chain/galling-speed';
import { chainIsoRating } from '@oddwheel/mechanics/chain/iso-rating';
import { chainPowerRating } from '@oddwheel/mechanics/chain/power-rating';
import { sprocketHub } from '@oddwheel/mechanics/chain/sprocket-hub';
import { chainWearLife } from '@oddwheel/mechanics/chain/wear-life';
import { readInput } from '@oddwheel/mechanics/method/read-input';
import { tableRow } from '@oddwheel/tables/catalogue';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { methodNamed, rowLookup } from '../run-cases.ts';
import { RUNS } from './build.ts';

const teeth = fc.integer({ min: 9, max: 60 });
const speed = fc.double({ min: 2, max: 300, noNaN: true });
const pitch = fc.constantFrom(0.0127, 0.015875, 0.01905, 0.0254);
const CONSTANTS = { plateConstant: 0.004, bushConstant: 17, strandFactor: 1 };

test('a chain carries more with more teeth and more strands', () => {
  fc.assert(
    fc.property(teeth, speed, pitch, (z, w, p) => {
      const one = chainPowerRating.run({ ...CONSTANTS, teeth: z, speed: w, pitch: p });
      expect(chainPowerRating.run({ ...CONSTANTS, teeth: z + 1, speed: w, pitch: p }).rating).toBeGreaterThan(
        one.rating,
      );
      const two = chainPowerRating.run({ ...CONSTANTS, strandFactor: 1.7, teeth: z, speed: w, pitch: p });
      expect(two.rating / one.rating).toBeCloseTo(1.7, 12);
    }),
    RUNS,
  );
});

test('plates give way first below the crossover, rollers above', () => {
  fc.assert(
    fc.property(teeth, speed, pitch, (z, w, p) => {
      const { plates, bushes, crossover } = chainPowerRating.run({ ...CONSTANTS, teeth: z, speed: w, pitch: p });
      expect(plates < bushes).toBe(w < crossover);
    }),
    RUNS,
  );
});

test('the ISO route gives the American ratings again for the A series', () => {
  for (const key of ['08A', '10A', '12A', '16A', '20A']) {
    const { pitch: p = 0, dynamicStrength } = tableRow(`chain-sizes/${key}`);
    if (dynamicStrength === undefined) throw new Error(`${key} has no dynamic strength.`);
    const iso = chainIsoRating.run({ pitch: p, dynamicStrength, teeth: 19, speed: 50, strandFactor: 1 });
    const american = chainPowerRating.run({ ...CONSTANTS, pitch: p, teeth: 19, speed: 50 });
    expect(iso.plates / american.plates).toBeGreaterThan(0.97);
    expect(iso.plates / american.plates).toBeLessThan(1.03);
    expect(iso.bushes / american.bushes).toBeCloseTo(1, 1);
  }
});

test('wear: both ends may be swapped with the turns counted at the other sprocket; life falls with pressure', () => {
  const shared = { wear: 3e-7, pinDiameter: 0.005, pitch: 0.015875, links: 110, limit: 0.02 };
  fc.assert(
    fc.property(teeth, teeth, fc.double({ min: 1e6, max: 1e8, noNaN: true }), (a, b, pressure) => {
      const one = chainWearLife.run({ ...shared, pressure, teethDriver: a, teethDriven: b });
      const other = chainWearLife.run({ ...shared, pressure, teethDriver: b, teethDriven: a });
      expect((one.turns * a) / (other.turns * b)).toBeCloseTo(1, 9);
      const harder = chainWearLife.run({ ...shared, pressure: 2 * pressure, teethDriver: a, teethDriven: b });
      expect(harder.turns / one.turns).toBeCloseTo(0.5, 9);
    }),
    RUNS,
  );
});

test('pins seize sooner with a harder pull, and hub and bore grow with the teeth', () => {
  fc.assert(
    fc.property(teeth, pitch, fc.double({ min: 0, max: 9000, noNaN: true }), (z, p, pull) => {
      const light = chainGallingSpeed.run({ pitch: p, teeth: z, pull });
      expect(chainGallingSpeed.run({ pitch: p, teeth: z, pull: pull + 500 }).speed).toBeLessThan(light.speed);
      const [small, large] = [sprocketHub.run({ pitch: p, teeth: z }), sprocketHub.run({ pitch: p, teeth: z + 4 })];
      expect(large.hub).toBeGreaterThan(small.hub);
      expect(small.bore).toBeLessThan(small.hub);
    }),
    RUNS,
  );
});

test('a wider belt carries more, and one with fewer teeth in mesh less', () => {
  const belt = {
    pitch: 0.0127,
    teethSmall: 18,
    teethLarge: 18,
    centreDistance: 0.5,
    speed: 100,
    width: 0.0254,
    baseWidth: 0.0762,
    basePull: 2100.85,
    baseMass: 0.448,
  };
  const before = beltTrapezoidalRating.run(belt);
  expect(beltTrapezoidalRating.run({ ...belt, width: 0.0381 }).power).toBeGreaterThan(before.power);
  expect(beltTrapezoidalRating.run({ ...belt, teethLarge: 72, centreDistance: 0.16 }).power).toBeLessThan(before.power);
});

test('inches and millimetres, turns a minute and turns a second give one rating', () => {
  const method = methodNamed('chain.powerRating');
  const rating = (pitch: string, speed: string): number => {
    const read = readInput(method, { pitch, teeth: 17, speed }, rowLookup);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return Number(method.run(read.input).rating);
  };
  expect(rating('3/4 in', '300 rpm') / rating('19.05 mm', '31.41592653589793 rad/s')).toBeCloseTo(1, 12);
});
