import { chainIdlerLength } from '@oddwheel/mechanics/chain/idler-length';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { describe, expect, test } from 'vitest';
import type { Point } from './drawing.ts';
import { type LoopWheel, layLoop } from './loop.ts';

const radius = (pitch: number, teeth: number): number => pitch / (2 * Math.sin(Math.PI / teeth));
const wheel = (centre: Point, pitch: number, teeth: number, turn: 1 | -1 = 1): LoopWheel => ({
  centre,
  teeth,
  turn,
  radius: radius(pitch, teeth),
});
const round = (pins: readonly Point[]): number =>
  pins.reduce((sum, [x, y], k) => {
    const [nx, ny] = pins[(k + 1) % pins.length] ?? [x, y];
    return sum + Math.hypot(nx - x, ny - y);
  }, 0);

describe('a chain laid round its sprockets', () => {
  const P = 19.05;
  test('needs the links that the length method counts', () => {
    const path = layLoop([wheel([0, 0], P, 17), wheel([345.4, 0], P, 30)], P, null, null);
    const links = chainLength.run({ pitch: P, teethDriver: 17, teethDriven: 30, centreDistance: 345.4 }).links;
    expect(path?.needed).toBeCloseTo(links, 9);
  });

  test('needs the links that the method with an idler counts, inside and outside', () => {
    for (const [idlerSide, turn] of [
      ['outside', -1],
      ['inside', 1],
    ] as const) {
      const across = idlerSide === 'outside' ? 90 : 120;
      const path = layLoop(
        [wheel([0, 0], P, 17), wheel([600, 0], P, 30), wheel([320, across], P, 15, turn)],
        P,
        null,
        null,
      );
      const links = chainIdlerLength.run({
        pitch: P,
        teethDriver: 17,
        teethDriven: 30,
        centreDistance: 600,
        teethIdler: 15,
        idlerAlong: 320,
        idlerAcross: across,
        idlerSide,
      }).links;
      expect(path?.needed, idlerSide).toBeCloseTo(links, 9);
    }
  });

  test('with slack hanging is as long as its links, to a thousandth', () => {
    const hang = { after: 0, towards: [0, -1] as Point };
    const path = layLoop([wheel([0, 0], P, 17), wheel([340, 0], P, 30)], P, 60, hang);
    expect(path?.pins).toHaveLength(60);
    expect(Math.abs(round(path?.pins ?? []) / (60 * P) - 1)).toBeLessThan(1e-3);
    // It hangs below the tangent of the lower span, and nowhere else.
    expect(Math.min(...(path?.pins ?? []).map(([, y]) => y))).toBeLessThan(-radius(P, 30) + 1e-9);
  });

  test('has pins a tooth apart on a sprocket, on its gaps', () => {
    const path = layLoop([wheel([0, 0], P, 17), wheel([345.4, 0], P, 30)], P, null, null);
    const [gap = 0] = path?.gaps ?? [];
    const on = (path?.pins ?? []).filter(([x, y]) => Math.abs(Math.hypot(x, y) - radius(P, 17)) < 1e-6);
    expect(on.length).toBeGreaterThan(6);
    const scale = 17 / ((path?.pins.length ?? 0) / (path?.needed ?? 1));
    for (const [x, y] of on) {
      const teeth = ((Math.atan2(y, x) - gap) * scale) / (2 * Math.PI);
      expect(Math.abs(teeth - Math.round(teeth))).toBeLessThan(0.2);
    }
  });

  test('is not laid where the wheels stand inside each other', () => {
    expect(layLoop([wheel([0, 0], P, 17), wheel([10, 0], P, 60)], P, null, null)).toBeNull();
  });
});
