import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Seat } from '../../model/model.ts';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';
import type { Part } from './parts.ts';
import { entryPlan, sequenceOf, slidePlan } from './plan.ts';
import type { Size } from './verdict.ts';

const show = (_use: unknown, si: number): string => `${si}`;

/** A size in mm. */
const size = (value: number | null): Size => ({ value, missing: { address: '', says: '' } });

const part = (station: number, bore: number | null, outer: number | null, opening: number | null = null): Part => ({
  seat: { name: `part ${station}`, kind: opening === null ? 'gear' : 'bearing' } as Seat,
  station,
  bore: size(bore),
  width: size(1),
  outer: size(outer),
  opening: opening === null ? null : size(opening),
});

/** Every order of work and every choice of ends, tried by hand: a part slides on past bare seats, and stops at a part already there. */
function canBeBuilt(bores: readonly number[]): boolean {
  const all = bores.map((_, k) => k);
  const goesOn = (k: number, on: readonly number[], passed: readonly number[]): boolean =>
    passed.every((other) => !on.includes(other) && (bores[other] ?? 0) <= (bores[k] ?? 0));
  const finish = (on: readonly number[]): boolean =>
    on.length === all.length ||
    all.some(
      (k) =>
        !on.includes(k) && (goesOn(k, on, all.slice(0, k)) || goesOn(k, on, all.slice(k + 1))) && finish([...on, k]),
    );
  return finish([]);
}

describe('parts slide to their seats', () => {
  test('the same answer as trying every order of work', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 6 }), (bores) => {
        const parts = bores.map((bore, k) => part(k, bore, 100));
        expect(slidePlan(parts, show).verdict.is).toBe(canBeBuilt(bores) ? 'yes' : 'no');
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test('twelve seats stepped up to the middle serve; one small seat in the middle does not', () => {
    const stepped = [1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1];
    expect(
      slidePlan(
        stepped.map((bore, k) => part(k, bore, 100)),
        show,
      ).verdict.is,
    ).toBe('yes');
    const waisted = stepped.with(5, 2);
    expect(
      slidePlan(
        waisted.map((bore, k) => part(k, bore, 100)),
        show,
      ).verdict.is,
    ).toBe('no');
  });

  test('a missing seat is only missed where something depends on it', () => {
    expect(slidePlan([part(0, null, 9)], show).verdict.is).toBe('yes');
    expect(slidePlan([part(0, 5, 9), part(1, null, 9)], show).verdict.is).toBe('yes');
    expect(slidePlan([part(0, 5, 9), part(1, null, 9), part(2, 5, 9)], show).verdict.is).toBe('open');
    // Whatever the missing seat, the small one is shut in between two larger.
    expect(slidePlan([part(0, 5, 9), part(1, 3, 9), part(2, 5, 9), part(3, null, 9)], show).verdict.is).toBe('no');
  });
});

describe('a shaft enters its welded plates', () => {
  // Two plates with 72 mm holes, seats of 35 mm.
  const plates = (gearBore: number, gearOuter: number) => [
    part(0, 35, 72, 72),
    part(1, gearBore, gearOuter),
    part(2, 35, 72, 72),
  ];

  test('a gear larger than the holes waits between the plates', () => {
    const { plan, verdict } = entryPlan(plates(38, 170), show);
    expect(verdict.is).toBe('yes');
    const { bench, waiting, after } = sequenceOf(plates(38, 170), plan);
    expect(waiting).toContain(1);
    expect([...bench, ...waiting, ...after].toSorted()).toEqual([0, 1, 2]);
  });

  test('a large gear between two collars that it cannot slide over cannot be had', () => {
    expect(entryPlan(plates(30, 170), show).verdict.is).toBe('no');
  });

  test('the thickest seat has to go through a hole on one side', () => {
    const parts = (seat: number) => [part(0, 35, 72, 72), part(1, seat, 60), part(2, 35, 72, 72)];
    expect(entryPlan(parts(72), show).verdict.is).toBe('yes');
    expect(entryPlan(parts(73), show).verdict.is).toBe('no');
  });

  test('a shaft that only fits from one side comes in from there', () => {
    // Seats step up to the right: bearings of 30 and 50 mm bore, and a gear of 70 mm bore beyond, outside the plates.
    const { plan, verdict } = entryPlan([part(0, 30, 62, 62), part(1, 50, 90, 90), part(2, 70, 200)], show);
    expect(verdict.is).toBe('yes');
    // The seat of 70 mm would not go through the hole of 62 mm.
    expect(plan.entry).toBe('high');
  });

  test('a bearing wider than its own hole does not go in', () => {
    expect(entryPlan([part(0, 35, 73, 72), part(1, 40, 60), part(2, 35, 72, 72)], show).verdict.is).toBe('no');
  });
});

describe('through a build', () => {
  interface SeatText {
    readonly [key: string]: string;
  }
  const bearing = (station: string, more: object = {}): SeatText => ({
    kind: 'bearing',
    name: `bearing at ${station}`,
    station,
    diameter: '30 mm',
    width: '16 mm',
    body: 'subframe',
    outside: '62 mm',
    opening: '62 mm',
    ...more,
  });

  function assessed(seats: Record<string, object>, chain: object) {
    const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as {
      path: { shafts: { axle: { seats: object } }; stages: Record<string, object> };
    };
    build.path.shafts.axle.seats = seats;
    build.path.stages['chain-1'] = { ...build.path.stages['chain-1'], ...chain };
    const opened = openSession(JSON.stringify(build));
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    return opened.session.assessment;
  }

  const wheel = { kind: 'wheel', name: 'wheel', station: '0 mm', diameter: '34 mm', width: '100 mm' };
  const sprocket = { kind: 'sprocket', name: 'sprocket 45', station: '3 1/2 in', diameter: '28 mm', width: '10 mm' };
  const right = bearing('-65 mm');
  const left = bearing('65 mm');
  const overhung = { right, wheel, left, sprocket };
  const between = { right, wheel, left: bearing('110 mm'), sprocket: { ...sprocket, diameter: '34 mm' } };
  const severity = (assessment: ReturnType<typeof assessed>, check: string) =>
    assessment.findings.find((f) => f.check === check)?.severity;

  test('parts slide, shaft enters, chain closes: steps from first to last', () => {
    const assessment = assessed(overhung, { joint: 'joining link' });
    for (const check of ['assembly.slide', 'assembly.enter', 'assembly.close'])
      expect(severity(assessment, check)).toBe('holds');
    const steps = assessment.assembly.shafts[0]?.steps ?? [];
    expect(steps).toContain('Slide sprocket 45 on from the left.');
    expect(steps.at(-1)).toBe('Lay Chain 1 on and close it.');
    const change = assessment.assembly.services.find(({ name }) => name === 'bearing at 65 mm on Axle');
    expect(change?.steps).toEqual([
      'Open the joining link of Chain 1 and take the chain off.',
      'Take sprocket 45 off to the left.',
      'Take bearing at 65 mm off to the left.',
    ]);
  });

  test('an endless chain goes over a free end, and not between bearings', () => {
    expect(severity(assessed(overhung, { joint: 'endless' }), 'assembly.close')).toBe('holds');
    expect(severity(assessed(between, { joint: 'endless' }), 'assembly.close')).toBe('fails');
    expect(severity(assessed(between, { joint: 'riveted link' }), 'assembly.close')).toBe('holds');
  });

  test('a sprocket between the plates is changed with the shaft drawn', () => {
    const { services } = assessed(between, { joint: 'joining link' }).assembly;
    const own = services.find(({ address }) => address === '/path/shafts/axle/seats/sprocket')?.steps ?? [];
    expect(own.some((step) => step.startsWith('Draw Axle out'))).toBe(true);
    expect(own.at(-1)).toBe('Lift sprocket 45 out.');
  });

  test('what is missing is named, and nothing is guessed', () => {
    const { outside: _, ...bare } = left;
    const assessment = assessed({ ...overhung, left: bare }, {});
    const enter = assessment.findings.find((f) => f.check === 'assembly.enter');
    expect(enter?.missing.map(({ address }) => address)).toEqual(['/path/shafts/axle/seats/left/outside']);
    const close = assessment.findings.find((f) => f.check === 'assembly.close');
    expect(close?.missing.map(({ address }) => address)).toEqual(['/path/stages/chain-1/joint']);
  });

  test('parts that overlap on the shaft cannot be put together', () => {
    expect(severity(assessed({ ...overhung, left: bearing('50 mm') }, {}), 'assembly.slide')).toBe('fails');
  });

  test('a wheel that would have to pass a larger seat on either side fails', () => {
    const assessment = assessed({ ...overhung, wheel: { ...wheel, diameter: '26 mm' } }, {});
    const found = assessment.findings.find((f) => f.check === 'assembly.slide');
    expect(found?.severity).toBe('fails');
    expect(found?.says).toMatch(/wheel, bore 26\s+mm, does not go over the seat of/);
    expect(severity(assessment, 'assembly.enter')).toBeUndefined();
  });
});
