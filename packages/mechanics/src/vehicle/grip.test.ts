import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { frontLift } from './front-lift.ts';
import { gripLimit } from './grip-limit.ts';
import { sidewaysLimit } from './sideways-limit.ts';

const POUND = 0.45359237;
const INCH = 0.0254;
const near = (got: number, wanted: number, part: number): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);

const rear = { slope: 0, gravity: 9.81, drivenAxle: 'rear', share: 1 } as const;

describe('grip', () => {
  it('veh-traction-gillespie-rwd — Gillespie, chapter 2, example problem 2, locked rear axle: 1304 lbf (memory)', () => {
    const given = {
      ...rear,
      gravity: 9.80665,
      mass: 3950 * POUND,
      wheelbase: 108 * INCH,
      aheadOfRear: (2100 / 3950) * 108 * INCH,
      height: 21 * INCH,
      friction: 0.62,
    };
    const found = gripLimit.run(given);
    near(found.force / (POUND * 9.80665), 1304, 0.002);
    near(found.staticForce / (POUND * 9.80665), 0.62 * 1850, 1e-12);
    expect(found.governs).toBe('grip');
    expect(checkMethod(gripLimit, given)).toEqual([]);
  });

  it('veh-lift-1 — single driven wheel, grip first: 6.077 m/s², 1397.7 N; lift at 11.076 m/s² (computed)', () => {
    const given = { ...rear, mass: 230, wheelbase: 1.4, aheadOfRear: 0.7, height: 0.62, friction: 0.8 };
    const found = gripLimit.run(given);
    near(found.acceleration, 6.077, 5e-4);
    near(found.force, 1397.7, 5e-4);
    near(found.liftForce / 230, 11.076, 5e-4);
    expect(found.governs).toBe('grip');
    expect(checkMethod(gripLimit, given)).toEqual([]);
  });

  it('veh-lift-2 — the front lifts first at 7.5018 m/s², 1350.3 N; slip would come at 10.102 m/s² (computed)', () => {
    const given = { ...rear, mass: 180, wheelbase: 1.25, aheadOfRear: 0.52, height: 0.68, friction: 0.9 };
    const found = gripLimit.run(given);
    near(found.acceleration, 7.5018, 5e-4);
    near(found.force, 1350.3, 5e-4);
    near(found.slipForce / 180, 10.102, 5e-4);
    expect(found.governs).toBe('front lift');
    near(found.drivenLoad, 180 * 9.81, 1e-12);
    expect(checkMethod(gripLimit, given)).toEqual([]);
  });

  it('at the limit the pull is friction times the load that stands there then; front drive loses load, rear drive gains', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(50, 2000),
        number(1, 3),
        number(0.2, 0.8),
        number(0.2, 1),
        number(0.1, 1.4),
        number(-0.4, 0.4),
        fc.constantFrom('rear' as const, 'front' as const),
        fc.constantFrom(0.5, 1),
        (mass, wheelbase, part, height, friction, slope, drivenAxle, share) => {
          const given = {
            mass,
            wheelbase,
            aheadOfRear: part * wheelbase,
            height,
            friction,
            slope,
            gravity: 9.81,
            drivenAxle,
            share,
          };
          const found = gripLimit.run(given);
          if (found.governs === 'grip') {
            near(found.force, friction * share * found.drivenLoad, 1e-9);
            expect(found.force >= found.staticForce).toBe(drivenAxle === 'rear');
          } else near(found.drivenLoad, mass * 9.81 * Math.cos(slope), 1e-9);
          expect(checkMethod(gripLimit, given)).toEqual([]);
        },
      ),
      { seed: 61, numRuns: 200 },
    );
  });

  it('refuses a mass that is not between the axles', () => {
    expect(() =>
      gripLimit.run({ ...rear, mass: 200, wheelbase: 1.4, aheadOfRear: 1.4, height: 0.6, friction: 1 }),
    ).toThrow('Centre of mass ahead of the rear axle: 1.4 m read; less than the wheelbase, 1.4 m, is accepted.');
  });
});

describe('lift of the front', () => {
  const bike = {
    mass: 180,
    wheelbase: 1.25,
    aheadOfRear: 0.52,
    height: 0.68,
    slope: 0,
    gravity: 9.81,
    drag: 0,
    dragHeight: 0,
    acceleration: 0,
  };

  it('veh-lift-2 — a = g b/h = 7.5018 m/s²; braking lifts the rear at g (L − b)/h (computed)', () => {
    const found = frontLift.run(bike);
    near(found.liftAcceleration, 7.5018, 5e-4);
    near(found.brakeLift, (9.81 * 0.73) / 0.68, 1e-12);
    near(found.frictionNeeded, 0.52 / 0.68, 1e-12);
    expect(checkMethod(frontLift, bike)).toEqual([]);
  });

  it('on an up-grade: a = g (b cos θ − h sin θ)/h; at that acceleration nothing is left in front', () => {
    const given = { ...bike, slope: 0.2, drag: 150, dragHeight: 0.9 };
    const { liftAcceleration } = frontLift.run({ ...given, drag: 0 });
    near(liftAcceleration, (9.81 * (0.52 * Math.cos(0.2) - 0.68 * Math.sin(0.2))) / 0.68, 1e-12);
    const lifting = { ...given, acceleration: frontLift.run(given).liftAcceleration };
    expect(frontLift.run(lifting).frontLoad).toBeCloseTo(0, 9);
    const stopping = { ...given, acceleration: -frontLift.run(given).brakeLift };
    expect(frontLift.run(stopping).rearLoad).toBeCloseTo(0, 9);
    expect(checkMethod(frontLift, lifting)).toEqual([]);
  });

  it('the lift limits of both methods agree', () => {
    const { liftForce } = gripLimit.run({
      ...rear,
      mass: 180,
      wheelbase: 1.25,
      aheadOfRear: 0.52,
      height: 0.68,
      friction: 1,
      slope: 0.1,
    });
    near(frontLift.run({ ...bike, slope: 0.1 }).liftForce, liftForce, 1e-12);
  });
});

describe('three wheels, sideways', () => {
  const trike = { wheels: 3, wheelbase: 2.2, track: 1.3, fromSingle: 1.45, height: 0.45, gravity: 9.81 };

  it('veh-tri-tadpole — (t/2)(x/L)/h = 0.95202 g; a four-wheeler of that track 1.444 g (computed; formula after SAE 820139)', () => {
    near(sidewaysLimit.run(trike).parts, 0.95202, 5e-4);
    near(sidewaysLimit.run({ ...trike, wheels: 4 }).parts, 1.444, 5e-4);
    expect(checkMethod(sidewaysLimit, trike)).toEqual([]);
    expect(checkMethod(sidewaysLimit, { ...trike, wheels: 4 })).toEqual([]);
  });

  it('the load point lies on the edge of the contact triangle then', () => {
    const { parts } = sidewaysLimit.run(trike);
    // Contacts: single wheel at 0, pair at L, ± t/2; load point at x, parts · h.
    const [x, y] = [trike.fromSingle, parts * trike.height];
    expect(x * (trike.track / 2) - y * trike.wheelbase).toBeCloseTo(0, 12);
  });

  it('refuses a mass beyond the pair', () => {
    expect(() => sidewaysLimit.run({ ...trike, fromSingle: 2.3 })).toThrow(/less than the wheelbase, 2\.2 m/);
  });
});
