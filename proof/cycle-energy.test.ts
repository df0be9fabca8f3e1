import { cycleRun } from '@oddwheel/mechanics/vehicle/cycle-run';
import { shiftSpeeds } from '@oddwheel/mechanics/vehicle/shift-speeds';
import { type Cycle, cycleTrace } from '@oddwheel/tables/cycle';
import { CYCLE_UDDS } from '@oddwheel/tables/cycle-udds';
import { CYCLE_WMTC_PART1 } from '@oddwheel/tables/cycle-wmtc-part1';
import { CYCLE_WMTC_PART2 } from '@oddwheel/tables/cycle-wmtc-part2';
import { describe, expect, test } from 'vitest';

const near = (got: number, wanted: number, part = 1e-3): void => expect(Math.abs(got / wanted - 1)).toBeLessThan(part);

/** Petrol engine of 1.0 litre, 41 kW: measured full-load rows of an open data set of a U.S. national laboratory (read). */
const ENGINE = {
  speeds: [104.5, 149.2, 220.9, 292.5, 364.1, 435.7, 507.4, 552.2, 596.9],
  torques: [61, 67.6, 73.7, 78.5, 80.9, 77.3, 76.2, 73.3, 68.7],
};
const RATIOS = [14, 8, 5.2, 3.9, 3.1];

function run(
  cycle: Cycle,
  mass: number,
  turningMass: number,
  rollingCoefficient: number,
  dragArea: number,
  rollingRadius: number,
) {
  const rule = shiftSpeeds.run({
    ratedPower: 41_000,
    kerbMass: mass,
    riderMass: 75,
    ratedSpeed: 596.9,
    idleSpeed: 104.5,
    ratios: RATIOS,
    rollingRadius,
  });
  return cycleRun.run({
    ...ENGINE,
    ratios: RATIOS,
    efficiency: 0.9,
    rollingRadius,
    mass,
    turningMass,
    rollingCoefficient,
    dragArea,
    airDensity: 1.2,
    headWind: 0,
    slope: 0,
    gravity: 9.81,
    trace: cycleTrace(cycle),
    step: 1,
    idleSpeed: 104.5,
    upSpeeds: rule.upSpeeds,
    downSpeeds: rule.downSpeeds,
    holdTime: 2,
  });
}

/** Torque on the wheel that wears as much as the whole spectrum, weighted with revolutions. */
function equivalentTorque(found: ReturnType<typeof run>, radius: number, power: number): number {
  let [weighted, turns] = [0, 0];
  found.drivePulls.forEach((pull, k) => {
    if (pull <= 0) return;
    const speed = found.meanSpeeds[k] as number;
    weighted += (pull * radius) ** power * speed;
    turns += speed;
  });
  return (weighted / turns) ** (1 / power);
}

/** Values by a general-purpose array library on the same traces (computed, not published). */
describe('energy on driving cycles', () => {
  test.each([
    ['veh-energy-wmtc-part1', CYCLE_WMTC_PART1, 4065.89, 295.658, 85.096, 4.18397, 145.377, 48.3534, 75.7682],
    ['veh-energy-wmtc-part2', CYCLE_WMTC_PART2, 9112.19, 1318.96, 116.962, 7.26536, 164.803, 60.9057, 79.5791],
  ] as const)('%s: small motorcycle of 172 kg', (_, cycle, distance, drive, brake, power, torque, cubic, flank) => {
    const found = run(cycle, 172, 6.88, 0.01, 0.5304, 0.3086);
    near(found.distance, distance);
    near(found.driveEnergy / 1000, drive);
    near(found.brakeEnergy / 1000, brake);
    near(found.peakPower / 1000, power);
    near(found.peakTorque, torque);
    near(equivalentTorque(found, 0.3086, 3), cubic);
    near(equivalentTorque(found, 0.3086, 6.61), flank);
    expect(found.missed).toBe(0);
  });

  test('veh-energy-udds: vehicle of 550 kg', () => {
    const found = run(CYCLE_UDDS, 550, 22, 0.015, 0.7, 0.29);
    near(found.distance, 11990.2);
    near(found.driveEnergy / 1000, 2769.39);
    near(found.brakeEnergy / 1000, 695.33);
    near(found.peakPower / 1000, 13.6292);
    near(found.peakTorque, 283.092);
    near(equivalentTorque(found, 0.29, 3), 116.109);
    near(equivalentTorque(found, 0.29, 6.61), 165.416);
    expect(found.missed).toBe(0);
    const standing = found.meanSpeeds.filter((speed) => speed === 0).length;
    // Standing time is at least that of the trace; the lower gears are all used.
    expect(Math.min(...found.gearTimes.slice(0, 4))).toBeGreaterThan(0);
    expect(found.gearTimes[0]).toBeGreaterThanOrEqual(standing);
  });
});
