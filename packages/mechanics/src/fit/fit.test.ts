import { describe, expect, test } from 'vitest';
import { MethodError } from '../method/method.ts';
import { plateLug } from '../plate/lug.ts';
import { plateStrength } from '../plate/strength.ts';
import { plateWeb } from '../plate/web.ts';
import { fitClearance } from './clearance.ts';
import { joiningTemperature } from './joining-temperature.ts';
import { pressFitHold } from './press-fit-hold.ts';
import { pressForce } from './press-force.ts';
import { pressStress } from './press-stress.ts';
import { seatWarm } from './seat-warm.ts';

const JOINT = {
  interference: 40e-6,
  diameter: 0.04,
  outside: 0.07,
  bore: 0.012,
  hubYoungs: 70e9,
  shaftYoungs: 206e9,
  hubPoisson: 0.33,
  shaftPoisson: 0.3,
  length: 0.03,
  friction: 0.08,
  axial: 0,
};
const STRENGTH = { hubYield: 200e6, shaftYield: 400e6 };
const hold = (change: Partial<typeof JOINT> = {}) => pressFitHold.run({ ...JOINT, ...change });

describe('press fits', () => {
  test('pressure stretches the hub and presses the shaft by the whole interference', () => {
    // The other way round: movements of both walls under the pressure, from the stresses at the joint (plane stress).
    const { pressure } = hold();
    const { hubAround, shaftAround } = pressStress.run({ ...JOINT, ...STRENGTH });
    const r = JOINT.diameter / 2;
    const hub = (r / JOINT.hubYoungs) * (hubAround + JOINT.hubPoisson * pressure);
    const shaft = (r / JOINT.shaftYoungs) * (shaftAround + JOINT.shaftPoisson * pressure);
    expect(2 * (hub - shaft)).toBeCloseTo(JOINT.interference, 12);
  });

  test('more interference, length, friction, a thicker hub or a stiffer metal hold more; a bore holds less', () => {
    const { torque } = hold();
    expect(hold({ interference: 41e-6 }).torque).toBeGreaterThan(torque);
    expect(hold({ length: 0.031 }).torque).toBeGreaterThan(torque);
    expect(hold({ friction: 0.09 }).torque).toBeGreaterThan(torque);
    expect(hold({ outside: 0.071 }).torque).toBeGreaterThan(torque);
    expect(hold({ hubYoungs: 71e9 }).torque).toBeGreaterThan(torque);
    expect(hold({ bore: 0.013 }).torque).toBeLessThan(torque);
  });

  test('a solid shaft is the limit of a small bore, and a boundless hub that of a large one', () => {
    const solid = hold({ bore: 0 });
    expect(hold({ bore: 1e-7 }).pressure).toBeCloseTo(solid.pressure, -1);
    const same = { hubYoungs: 206e9, hubPoisson: 0.3, bore: 0 };
    // One metal, solid shaft, boundless hub: p = E δ / (2 d).
    expect(hold({ ...same, outside: 1e4 }).pressure / ((206e9 * 40e-6) / (2 * 0.04))).toBeCloseTo(1, 9);
    // One metal: Poisson's ratio falls out.
    expect(hold({ ...same, hubPoisson: 0.2, shaftPoisson: 0.2 }).pressure).toBeCloseTo(hold(same).pressure, 3);
  });

  test('sizes in any unit give the same pressure, and forces go with the square of the size', () => {
    const k = 25.4;
    const larger = hold({
      interference: k * JOINT.interference,
      diameter: k * JOINT.diameter,
      outside: k * JOINT.outside,
      bore: k * JOINT.bore,
      length: k * JOINT.length,
    });
    const own = hold();
    expect(larger.pressure / own.pressure).toBeCloseTo(1, 12);
    expect(larger.force / own.force / k ** 2).toBeCloseTo(1, 12);
    expect(larger.torque / own.torque / k ** 3).toBeCloseTo(1, 12);
  });

  test('a loose joint holds nothing, and a push along the shaft takes from the torque until none is left', () => {
    expect(hold({ interference: -1e-6 })).toMatchObject({ torque: 0, force: 0, pressure: 0 });
    const { force, torque } = hold();
    expect(torque).toBeCloseTo((force * JOINT.diameter) / 2, 9);
    expect(hold({ axial: 0.6 * force }).torque).toBeCloseTo(0.8 * torque, 9);
    expect(hold({ axial: force }).torque).toBeCloseTo(0, 3);
    expect(hold({ axial: 2 * force }).torque).toBe(0);
  });

  test('pressing on takes what friction holds back', () => {
    const { axial: _, ...pressing } = JOINT;
    expect(pressForce.run(pressing).force).toBe(hold().force);
  });

  test('a hollow shaft is worst at its bore, twice the pressure of a solid one even where the bore is small', () => {
    const at = (bore: number) => pressStress.run({ ...JOINT, ...STRENGTH, bore });
    expect(at(0).shaftStress).toBe(at(0).pressure);
    expect(at(1e-6).shaftStress / at(1e-6).pressure).toBeCloseTo(2, 6);
    expect(at(0.02).shaftReserve).toBeLessThan(at(0.01).shaftReserve);
  });

  test('a hub or shaft without a wall is refused', () => {
    expect(() => hold({ outside: 0.04 })).toThrow(MethodError);
    expect(() => hold({ bore: 0.04 })).toThrow(/smaller than the joint/);
    expect(() => fitClearance.run({ holeUpper: 0, holeLower: 1e-6, shaftUpper: 0, shaftLower: 0 })).toThrow(
      /exchange them/,
    );
  });
});

describe('warm and cold', () => {
  test('a hub at its joining temperature is open by the room asked for', () => {
    const input = {
      interference: 50e-6,
      room: 30e-6,
      diameter: 0.05,
      hubGrowth: 12e-6,
      shaftGrowth: 8.5e-6,
      shop: 293,
    };
    for (const most of [330, 400, 800]) {
      const { hub, shaft } = joiningTemperature.run({ ...input, most });
      const open = 12e-6 * 0.05 * (hub - 293) + 8.5e-6 * 0.05 * (293 - shaft);
      expect(open).toBeCloseTo(80e-6, 12);
      expect(hub).toBeLessThanOrEqual(most);
    }
  });

  test('a seat of one metal keeps its play, and another opens as much as it closes when cold', () => {
    const at = (outerGrowth: number, warm: number) =>
      seatWarm.run({ play: 5e-6, diameter: 0.06, outerGrowth, innerGrowth: 12e-6, shop: 293, at: warm }).warm;
    expect(at(12e-6, 353)).toBe(5e-6);
    expect(at(23e-6, 353) + at(23e-6, 233)).toBeCloseTo(10e-6, 15);
    expect(at(23e-6, 353)).toBeGreaterThan(5e-6);
  });
});

describe('plates', () => {
  test('a wider plate, a smaller hole and a thinner sheet leave more web over the rule', () => {
    const over = (width: number, hole: number, thickness: number) => {
      const { web, least } = plateWeb.run({ width, hole, thickness, times: 1.5, floor: 0.002 });
      return web / least;
    };
    expect(over(0.1, 0.06, 0.008)).toBeLessThan(over(0.11, 0.06, 0.008));
    expect(over(0.1, 0.06, 0.008)).toBeLessThan(over(0.1, 0.05, 0.008));
    expect(over(0.1, 0.06, 0.008)).toBeLessThan(over(0.1, 0.06, 0.006));
    const { leastWidth, largestHole } = plateWeb.run({ width: 0.1, hole: 0.06, thickness: 0.008, times: 1, floor: 0 });
    expect(over(leastWidth, 0.06, 0.008)).toBeCloseTo(1 / 1.5, 9);
    expect(over(0.1, largestHole, 0.008)).toBeCloseTo(1 / 1.5, 9);
    expect(() => over(0.06, 0.06, 0.008)).toThrow(/as wide as the plate/);
  });

  test('a lug bears with the metal around it, until its edge crushes', () => {
    const lug = (ahead: number, beside: number) =>
      plateLug.run({ thickness: 0.006, pin: 0.047, ahead, beside, tensile: 360e6, yieldStrength: 235e6 });
    expect(lug(0.002, 0.05).force).toBeLessThan(lug(0.01, 0.05).force);
    expect(lug(0.05, 0.002).force).toBeLessThan(lug(0.05, 0.01).force);
    expect(lug(0.5, 0.05).force).toBe(lug(0.6, 0.06).force);
  });

  test('a push takes its part, and all of it at most', () => {
    const left = (push: number, angle = 0) =>
      plateStrength.run({ lengthwise: 40e3, crosswise: 20e3, square: 8e3, angle, push }).force;
    expect(left(0)).toBe(40e3);
    expect(left(0, Math.PI / 2)).toBeCloseTo(20e3, 6);
    expect(left(2e3)).toBe(30e3);
    expect(left(8e3)).toBe(0);
    expect(left(9e3)).toBe(0);
    // The worst direction lies between: the straight line from one strength to the other is nearest there.
    const worst = Math.atan2(40e3, 20e3);
    expect(left(0, worst)).toBeCloseTo(1 / Math.hypot(1 / 40e3, 1 / 20e3), 6);
    expect(left(0, worst)).toBeLessThan(left(0, worst + 0.05));
    expect(left(0, worst)).toBeLessThan(left(0, worst - 0.05));
  });
});
