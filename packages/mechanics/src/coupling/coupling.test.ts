import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cross, dot, minus, norm, times, unit } from '../numerics/vector.ts';
import { elasticSelect } from './elastic-select.ts';
import { couplingMisalignment } from './misalignment.ts';
import { couplingResonance } from './resonance.ts';
import { universalCouple } from './universal-couple.ts';
import { universalPair } from './universal-pair.ts';
import { universalRatio } from './universal-ratio.ts';
import { universalRipple } from './universal-ripple.ts';

const DEGREE = Math.PI / 180;
const RPM = (2 * Math.PI) / 60;
const pair = (first: number, second: number, phase = 0) =>
  universalPair.run({ angleFirst: first * DEGREE, angleSecond: second * DEGREE, phaseError: phase * DEGREE });

describe('two universal joints', () => {
  it('uj-residual-7-5 — rule of squares: 4.899°, more than 3° (computed); exactly 4.90°', () => {
    const found = pair(7, 5);
    expect(found.residualBySquares / DEGREE).toBeCloseTo(4.899, 3);
    expect(found.residualAngle / DEGREE).toBeCloseTo(4.899, 1);
    expect(Math.abs(found.unevenness / 0.00732 - 1)).toBeLessThan(0.005);
    expect(found.residualAngle).toBeGreaterThan(3 * DEGREE);
  });

  it('uj-wrong-phase-6-6 — a quarter turn out of phase: 8.4853° by the rule of squares, unevenness 0.022014 (computed)', () => {
    const found = pair(6, 6, 90);
    expect(found.residualBySquares / DEGREE).toBeCloseTo(8.4853, 3);
    expect(Math.abs(found.unevenness / 0.022014 - 1)).toBeLessThan(0.005);
    expect(found.highest).toBeCloseTo(1 / Math.cos(6 * DEGREE) ** 2, 12);
  });

  it('equal angles in phase run evenly, while the middle shaft does not; one straight joint leaves the other alone', () => {
    expect(pair(20, 20)).toMatchObject({ unevenness: 0, highest: 1, lowest: 1, residualAngle: 0 });
    expect(pair(20, 20).unevennessMiddle).toBeCloseTo(Math.sin(20 * DEGREE) * Math.tan(20 * DEGREE), 12);
    for (const phase of [0, 30, -90]) expect(pair(25, 0, phase).residualAngle / DEGREE).toBeCloseTo(25, 9);
  });

  it('highest and lowest speed of both joints turned one after the other, over a dense turn', () => {
    for (const [first, second, phase] of [
      [10, 25, 0],
      [18, 18, 20],
      [30, 12, -55],
      [22, 22, 90],
    ] as const) {
      const speeds = Array.from({ length: 3600 }, (_, k) => {
        const turn = (k * Math.PI) / 3600;
        const one = universalRatio.run({ angle: first * DEGREE, turn }).ratioAtTurn;
        const middle = Math.atan2(Math.sin(turn), Math.cos(first * DEGREE) * Math.cos(turn));
        // The middle shaft's other fork stands in the second joint's plane a quarter turn later than its driven fork was across the first's.
        const two = universalRatio.run({ angle: second * DEGREE, turn: middle + (phase + 90) * DEGREE }).ratioAtTurn;
        return one * two;
      });
      const found = pair(first, second, phase);
      expect(Math.max(...speeds)).toBeCloseTo(found.highest, 5);
      expect(Math.min(...speeds)).toBeCloseTo(found.lowest, 5);
    }
  });

  it('every formula shown gives the value returned', () => {
    expect(checkMethod(universalPair, { angleFirst: 0.3, angleSecond: 0.2, phaseError: 0.4 })).toEqual([]);
    expect(checkMethod(universalPair, { angleFirst: 0.3, angleSecond: 0.3, phaseError: 0 })).toEqual([]);
  });
});

/** Couples on both shafts from the cross drawn in space: its couple stands square to both pins. */
function crossInSpace(angle: number, turn: number, torque: number) {
  const driving: Vec3 = [1, 0, 0];
  const driven: Vec3 = [Math.cos(angle), Math.sin(angle), 0];
  // In the plane of both shafts at turn 0.
  const pin: Vec3 = [0, Math.cos(turn), Math.sin(turn)];
  const square = unit(cross(pin, cross(pin, driven)));
  const couple = times(torque / dot(square, driving), square);
  const bending = (axis: Vec3): number => norm(minus(couple, times(dot(couple, axis), axis)));
  return { driving: bending(driving), driven: bending(driven), out: dot(couple, driven) };
}

describe('couples of a universal joint on its shafts', () => {
  const at = (torque: number, angle: number, span: number, turn = 0) =>
    universalCouple.run({
      torque,
      angle: angle * DEGREE,
      turn,
      bearingSpanDriving: span,
      bearingSpanDriven: span,
    });

  it('uj-couple-100-15 — 26.795 and 25.882 N·m, 446.6 and 431.4 N on bearings 60 mm apart (computed)', () => {
    const found = at(100, 15, 0.06);
    expect(Math.abs(found.drivingMost / 26.795 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.drivenMost / 25.882 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.bearingDriving / 446.6 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.bearingDriven / 431.4 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.torqueOutLowest / 96.593 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.torqueOutHighest / 103.528 - 1)).toBeLessThan(1e-3);
  });

  it('uj-couple-60-8 — 8.432 and 8.350 N·m, 93.7 and 92.8 N on bearings 90 mm apart (computed)', () => {
    const found = at(60, 8, 0.09);
    expect(Math.abs(found.drivingMost / 8.432 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.drivenMost / 8.35 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.bearingDriving / 93.7 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(found.bearingDriven / 92.8 - 1)).toBeLessThan(1e-3);
  });

  it('at any turn: the cross drawn in space, its couple square to both pins', () => {
    for (const angle of [5, 20, 40]) {
      for (const turn of [0, 0.3, 1, 1.6, 2.5, 4]) {
        const [found, drawn] = [at(100, angle, 1, turn), crossInSpace(angle * DEGREE, turn, 100)];
        expect(found.drivingAtTurn).toBeCloseTo(drawn.driving, 9);
        expect(found.drivenAtTurn).toBeCloseTo(drawn.driven, 9);
        expect(found.torqueOutAtTurn).toBeCloseTo(drawn.out, 9);
      }
    }
  });

  it('every formula shown gives the value returned', () => {
    const input = { torque: 80, angle: 0.3, turn: 1.1, bearingSpanDriving: 0.1, bearingSpanDriven: 0.2 };
    expect(checkMethod(universalCouple, input)).toEqual([]);
  });
});

describe('ripple of a universal joint', () => {
  const run = (angle: number, rpm: number, inertia: number) =>
    universalRipple.run({ angle: angle * DEGREE, angularSpeed: rpm * RPM, inertia });

  it('uj-acc-10-3000 and uj-acc-30-600 — 12.091 N·m at 44.123°, 23.258 N·m at 37.021° (computed)', () => {
    const [ten, thirty] = [run(10, 3000, 0.004), run(30, 600, 0.02)];
    expect(Math.abs(ten.ripple / 12.091 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(ten.ripple / 0.004 / 3022.668 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(ten.turnAtPeak / DEGREE - 44.123)).toBeLessThan(0.05);
    expect(Math.abs(thirty.ripple / 23.258 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(thirty.turnAtPeak / DEGREE - 37.021)).toBeLessThan(0.05);
  });

  it('uj-phase-error-20 — 1.7817° (computed)', () => {
    expect(run(20, 100, 0).phaseLead / DEGREE).toBeCloseTo(1.7817, 3);
  });

  it('no slope of the speed over a dense turn is steeper', () => {
    const slopes = Array.from({ length: 1800 }, (_, k) => {
      const ratio = (turn: number): number => universalRatio.run({ angle: 0.5, turn }).ratioAtTurn;
      const turn = (k * Math.PI) / 1800;
      return Math.abs(ratio(turn + 1e-5) - ratio(turn - 1e-5)) / 2e-5;
    });
    expect(universalRipple.run({ angle: 0.5, angularSpeed: 1, inertia: 1 }).ripple).toBeCloseTo(Math.max(...slopes), 5);
    expect(checkMethod(universalRipple, { angle: 0.5, angularSpeed: 100, inertia: 0.01 })).toEqual([]);
    expect(universalRipple.run({ angle: 0, angularSpeed: 100, inertia: 0.01 }).ripple).toBe(0);
  });
});

describe('elastic coupling', () => {
  const JAW = { ratedTorque: 190, ratedMost: 380, ratedAlternating: 49 } as const;
  const DRIVE = {
    torque: 7500 / (1500 * RPM),
    torqueStart: (2 * 7500) / (1500 * RPM),
    torqueAlternating: 10,
    temperature: 273.15 + 40,
    startsPerHour: 60,
    shock: 'medium',
    massFactor: 1,
  } as const;

  it('cpl-jaw-select-7p5 — 7.5 kW at 1500 rpm: 57.294 and 206.258 N·m; size 38/45 is the first that serves (method and table read)', () => {
    const found = elasticSelect.run({ ...DRIVE, ...JAW });
    expect(Math.abs(DRIVE.torque - 47.745)).toBeLessThan(0.05);
    expect(Math.abs(found.requiredTorque - 57.294)).toBeLessThan(0.1);
    expect(Math.abs(found.requiredMost - 206.258)).toBeLessThan(0.3);
    expect(found.verdict).toBe('large enough');
    const smaller = { ratedTorque: 95, ratedMost: 190, ratedAlternating: 25 };
    expect(elasticSelect.run({ ...DRIVE, ...smaller }).verdict).toBe('too small');
  });

  it('factors go up by steps, and the table ends', () => {
    const at = (celsius: number, startsPerHour: number) =>
      elasticSelect.run({ ...DRIVE, ...JAW, temperature: 273.15 + celsius, startsPerHour });
    expect([30, 31, 41, 81, 120].map((celsius) => at(celsius, 0).temperatureFactor)).toEqual([1, 1.2, 1.4, 1.8, 1.8]);
    expect([100, 101, 400, 401].map((starts) => at(20, starts).startFactor)).toEqual([1, 1.2, 1.4, 1.6]);
    expect(() => at(121, 0)).toThrow(/Temperature about the coupling/);
    expect(() => at(20, 801)).toThrow(/Starts in an hour/);
    expect(checkMethod(elasticSelect, { ...DRIVE, ...JAW })).toEqual([]);
  });

  it('cpl-misalign-sum — 0.12 mm, 0.4°, 0.5 mm against 0.28 mm, 1°, 1.8 mm: 1.1063, beyond (computed; rule from memory)', () => {
    const limits = { radialLimit: 0.28e-3, angularLimit: DEGREE, axialLimit: 1.8e-3 };
    const found = couplingMisalignment.run({ radial: 0.12e-3, angular: 0.4 * DEGREE, axial: 0.5e-3, ...limits });
    expect(found.used).toBeCloseTo(1.1063, 3);
    expect(found.verdict).toBe('beyond');
    expect(couplingMisalignment.run({ radial: -0.12e-3, angular: 0.2 * DEGREE, axial: 0, ...limits }).verdict).toBe(
      'within',
    );
    expect(checkMethod(couplingMisalignment, { radial: -1e-4, angular: 0.01, axial: 1e-4, ...limits })).toEqual([]);
  });

  it('cpl-resonance-single — 1050 N·m/rad, 0.03 and 0.012 kg·m², order 0.5: 55.704 Hz, 6684.5 and 9453.3 rpm (computed)', () => {
    const input = {
      stiffness: 1050,
      inertiaDriver: 0.03,
      inertiaLoad: 0.012,
      order: 0.5,
      angularSpeed: 1200 * RPM,
      damping: 0.8,
    };
    const found = couplingResonance.run(input);
    expect(Math.abs(found.naturalFrequency / 55.704 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(found.resonantSpeed / RPM / 6684.5 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(found.leastAbove / RPM / 9453.3 - 1)).toBeLessThan(2e-3);
    expect(found.amplification).toBeGreaterThan(1);
    expect(couplingResonance.run({ ...input, angularSpeed: found.leastAbove }).amplification).toBeCloseTo(1, 12);
    const peak = couplingResonance.run({ ...input, angularSpeed: found.resonantSpeed }).amplification;
    expect(peak).toBeCloseTo(Math.hypot(1, (2 * Math.PI) / 0.8), 9);
    expect(checkMethod(couplingResonance, input)).toEqual([]);
  });
});
