import { beltCentreDistance } from '@oddwheel/mechanics/belt/centre-distance';
import { beltLength } from '@oddwheel/mechanics/belt/length';
import { chainCentreDistance } from '@oddwheel/mechanics/chain/centre-distance';
import { chainCentreDistanceApprox } from '@oddwheel/mechanics/chain/centre-distance-approx';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { chainLengthApprox } from '@oddwheel/mechanics/chain/length-approx';
import type { Method, Params, ValuesOf } from '@oddwheel/mechanics/method/method';
import { readInput } from '@oddwheel/mechanics/method/read-input';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const RUNS = { seed: 20_261_125, numRuns: 300 } as const;

/** Two wheels, pitch in m, and a centre distance at which even the tips stay clear. */
const drives = fc
  .record({
    pitch: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
    teethDriver: fc.integer({ min: 9, max: 120 }),
    teethDriven: fc.integer({ min: 9, max: 120 }),
    gap: fc.double({ min: 1.05, max: 8, noNaN: true }),
  })
  .map(({ pitch, teethDriver, teethDriven, gap }) => ({
    pitch,
    teethDriver,
    teethDriven,
    centreDistance: (gap * (pitch * (teethDriver + teethDriven + 4))) / (2 * Math.PI) + pitch,
  }));

function run<I extends Params, O extends Params>(method: Method<I, O>, given: object): ValuesOf<O> {
  const read = readInput(method, given);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return method.run(read.input);
}

const apart = (a: number, b: number): number => Math.abs(a / b - 1);

test('the centre distance of a chain’s length is the centre distance it came from', () => {
  fc.assert(
    fc.property(drives, ({ centreDistance, ...wheels }) => {
      const { links } = run(chainLength, { ...wheels, centreDistance });
      expect(apart(run(chainCentreDistance, { ...wheels, links }).centreDistance, centreDistance)).toBeLessThan(1e-9);
    }),
    RUNS,
  );
});

test('the same for a toothed belt', () => {
  fc.assert(
    fc.property(drives, ({ centreDistance, ...wheels }) => {
      const { beltTeeth } = run(beltLength, { ...wheels, centreDistance });
      expect(apart(run(beltCentreDistance, { ...wheels, beltTeeth }).centreDistance, centreDistance)).toBeLessThan(
        1e-9,
      );
    }),
    RUNS,
  );
});

test('the same for the handbook rules', () => {
  fc.assert(
    fc.property(drives, ({ centreDistance, ...wheels }) => {
      const { links } = run(chainLengthApprox, { ...wheels, centreDistance });
      expect(apart(run(chainCentreDistanceApprox, { ...wheels, links }).centreDistance, centreDistance)).toBeLessThan(
        1e-9,
      );
    }),
    RUNS,
  );
});

test('driver and driven sprocket may change places', () => {
  fc.assert(
    fc.property(drives, (drive) => {
      const swapped = { ...drive, teethDriver: drive.teethDriven, teethDriven: drive.teethDriver };
      expect(apart(run(chainLength, swapped).links, run(chainLength, drive).links)).toBeLessThan(1e-12);
    }),
    RUNS,
  );
});
