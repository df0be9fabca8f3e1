import { boltGroup } from '@oddwheel/mechanics/joint/bolt-group';
import { boltLoad } from '@oddwheel/mechanics/joint/bolt-load';
import { boltTension } from '@oddwheel/mechanics/joint/bolt-tension';
import { keyPressure } from '@oddwheel/mechanics/joint/key-pressure';
import { splineCandidates } from '@oddwheel/mechanics/joint/spline-candidates';
import { splineOverPins } from '@oddwheel/mechanics/joint/spline-over-pins';
import { taperGrip } from '@oddwheel/mechanics/joint/taper-grip';
import { weldGroup } from '@oddwheel/mechanics/joint/weld-group';
import { weldRing } from '@oddwheel/mechanics/joint/weld-ring';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RUNS } from './build.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (a: number, b: number, scale: number) => expect(Math.abs(a - b)).toBeLessThan(1e-9 * (scale + 1e-9));
const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);

const bolts = fc
  .array(fc.record({ x: real(-0.2, 0.2), y: real(-0.2, 0.2) }), { minLength: 2, maxLength: 8 })
  .filter((all) => Math.max(...all.map(({ x }) => x)) - Math.min(...all.map(({ x }) => x)) > 0.01);
const pull = fc.record({
  forceX: real(-2e4, 2e4),
  forceY: real(-2e4, 2e4),
  atX: real(-0.5, 0.5),
  atY: real(-0.5, 0.5),
  torque: real(-500, 500),
});

const group = (
  places: readonly { x: number; y: number }[],
  load: typeof pull extends fc.Arbitrary<infer T> ? T : never,
) => boltGroup.run({ x: places.map(({ x }) => x), y: places.map(({ y }) => y), diameter: 0.008, ...load });

const turned = (angle: number, x: number, y: number): readonly [number, number] => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];

test('forces on the bolts of a group add up to the load, and to its torque about any point', () => {
  fc.assert(
    fc.property(bolts, pull, real(-1, 1), real(-1, 1), (places, load, px, py) => {
      const { alongX, alongY } = group(places, load);
      const size = Math.abs(load.forceX) + Math.abs(load.forceY) + Math.abs(load.torque) + sum(alongX.map(Math.abs));
      near(sum(alongX), load.forceX, size);
      near(sum(alongY), load.forceY, size);
      const taken = sum(places.map(({ x, y }, k) => (x - px) * (alongY[k] ?? 0) - (y - py) * (alongX[k] ?? 0)));
      const asked = load.torque + (load.atX - px) * load.forceY - (load.atY - py) * load.forceX;
      near(taken, asked, 4 * size + sum(alongY.map(Math.abs)));
    }),
    RUNS,
  );
});

test('a bolt group turned with its load, or moved with it, is loaded alike', () => {
  fc.assert(
    fc.property(bolts, pull, real(0, 6.28), real(-1, 1), (places, load, angle, away) => {
      const before = group(places, load);
      const [forceX, forceY] = turned(angle, load.forceX, load.forceY);
      const [atX, atY] = turned(angle, load.atX, load.atY);
      const moved = places.map(({ x, y }) => turned(angle, x, y)).map(([x, y]) => ({ x: x + away, y }));
      const after = group(moved, { forceX, forceY, atX: atX + away, atY, torque: load.torque });
      expect(after.greatest).toBeCloseTo(before.greatest, 3);
    }),
    RUNS,
  );
});

const lines = fc.array(
  fc.record({ x1: real(-0.1, 0.1), y1: real(-0.1, 0.1), angle: real(0, 6.28), l: real(0.02, 0.2) }),
  { minLength: 2, maxLength: 5 },
);
const push = fc.record({
  forceX: real(-2e4, 2e4),
  forceY: real(-2e4, 2e4),
  forceZ: real(-2e4, 2e4),
  atX: real(-0.3, 0.3),
  atY: real(-0.3, 0.3),
  atZ: real(-0.3, 0.3),
});
type Line = { readonly x1: number; readonly y1: number; readonly angle: number; readonly l: number };
const ends = (all: readonly Line[]) => ({
  x1: all.map(({ x1 }) => x1),
  y1: all.map(({ y1 }) => y1),
  x2: all.map(({ x1, angle, l }) => x1 + l * Math.cos(angle)),
  y2: all.map(({ y1, angle, l }) => y1 + l * Math.sin(angle)),
});
/** Three points of Gauss a weld: exact for what is straight along it times a distance. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;
const crossed = (all: readonly Line[]): boolean =>
  all.some(({ angle }) => Math.abs(Math.sin(angle - (all[0]?.angle ?? 0))) > 0.2);

test('stresses all along the welds of a group add up to the load and to its moments', () => {
  fc.assert(
    fc.property(lines.filter(crossed), push, (all, load) => {
      const places = ends(all);
      const found = weldGroup.run({ ...places, leg: 0.005, ...load });
      const { centreX, centreY, throat, area, polar, torsion, tiltX, tiltY } = found;
      const total = [0, 0, 0, 0, 0, 0];
      all.forEach(({ x1, y1, angle, l }) => {
        for (const [s, weight] of GAUSS) {
          const [x, y] = [x1 + s * l * Math.cos(angle), y1 + s * l * Math.sin(angle)];
          const [rx, ry] = [x - centreX, y - centreY];
          const by = weight * l * throat;
          const fx = by * (load.forceX / area - (torsion * ry) / (polar * throat));
          const fy = by * (load.forceY / area + (torsion * rx) / (polar * throat));
          const fz = by * (load.forceZ / area + (tiltX * rx + tiltY * ry) / throat);
          [fx, fy, fz, y * fz, -x * fz, x * fy - y * fx].forEach((one, k) => {
            total[k] = (total[k] ?? 0) + one;
          });
        }
      });
      const { forceX, forceY, forceZ, atX, atY, atZ } = load;
      const asked = [
        forceX,
        forceY,
        forceZ,
        atY * forceZ - atZ * forceY,
        atZ * forceX - atX * forceZ,
        atX * forceY - atY * forceX,
      ];
      const size = 1e3 * sum(asked.map(Math.abs));
      asked.forEach((one, k) => {
        near(total[k] ?? Number.NaN, one, size);
      });
    }),
    RUNS,
  );
});

test('a weld group turned with its load is stressed alike; k times as large under k² the force as well', () => {
  fc.assert(
    fc.property(lines.filter(crossed), push, real(0, 6.28), real(0.2, 5), (all, load, angle, k) => {
      const before = weldGroup.run({ ...ends(all), leg: 0.005, ...load }).stress;
      const moved = all.map((line) => {
        const [x1, y1] = turned(angle, line.x1, line.y1);
        return { ...line, x1, y1, angle: line.angle + angle };
      });
      const [forceX, forceY] = turned(angle, load.forceX, load.forceY);
      const [atX, atY] = turned(angle, load.atX, load.atY);
      const after = weldGroup.run({ ...ends(moved), leg: 0.005, ...load, forceX, forceY, atX, atY }).stress;
      near(after, before, 1e3 * before);
      const large = all.map((line) => ({ ...line, x1: k * line.x1, y1: k * line.y1, l: k * line.l }));
      const grown = weldGroup.run({
        ...ends(large),
        leg: 0.005 * k,
        forceX: load.forceX * k * k,
        forceY: load.forceY * k * k,
        forceZ: load.forceZ * k * k,
        atX: load.atX * k,
        atY: load.atY * k,
        atZ: load.atZ * k,
      }).stress;
      near(grown, before, 1e3 * before);
    }),
    RUNS,
  );
});

test('a ring of weld under torque is a group of many short welds under the same torque', () => {
  const count = 720;
  const corner = (k: number) => [
    0.02 * Math.cos((2 * Math.PI * k) / count),
    0.02 * Math.sin((2 * Math.PI * k) / count),
  ];
  const at = (k: number, axis: number): number => corner(k)[axis] ?? 0;
  const places = Array.from({ length: count }, (_, k) => k);
  const welds = {
    x1: places.map((k) => at(k, 0)),
    y1: places.map((k) => at(k, 1)),
    x2: places.map((k) => at(k + 1, 0)),
    y2: places.map((k) => at(k + 1, 1)),
  };
  const ring = weldRing.run({ torque: 0, bending: 100, shear: 0, diameter: 0.04, leg: 0.005, welds: 1 });
  // A force of nothing across at its moment: as a pull of 1 N far out.
  const lines720 = weldGroup.run({ ...welds, leg: 0.005, forceX: 0, forceY: 0, forceZ: 1, atX: 100, atY: 0, atZ: 0 });
  expect(lines720.stress / ring.stress).toBeCloseTo(1, 3);
});

test('a key, a preload and a tilted flange: more load is more stress, more size less, in any unit', () => {
  fc.assert(
    fc.property(real(1, 900), real(0.015, 0.06), real(0.03, 0.08), real(1.01, 3), (torque, diameter, length, more) => {
      const size = { diameter, width: diameter / 4, height: diameter / 5, depth: diameter / 9, roundEnds: 2, keys: 1 };
      const base = keyPressure.run({ torque, length, ...size });
      const loaded = keyPressure.run({ torque: torque * more, length, ...size });
      const longer = keyPressure.run({ torque, length: length * more, ...size });
      for (const key of ['hub', 'shaft', 'shear'] as const) {
        near(loaded[key], base[key] * more, 1e3 * loaded[key]);
        expect(longer[key]).toBeLessThan(base[key]);
      }
      const clamp = { boltStiffness: 3e8, partStiffness: 9e8, load: torque };
      const [loose, tight] = [1000, 1000 * more].map((preload) => boltLoad.run({ preload, ...clamp }));
      expect(tight?.gapes).toBeGreaterThan(loose?.gapes ?? 0);
      // What the bolt gains and the parts lose is the pull.
      near((loose?.bolt ?? 0) - (loose?.clamp ?? 0), torque, 1e4);
      const heights = [length, 2 * length, 3 * length];
      const tilted = boltTension.run({ heights, pull: 0, moment: torque });
      const pulls = heights.map((height) => (tilted.greatest * height) / (3 * length));
      near(sum(pulls.map((one, k) => one * (heights[k] ?? 0))), torque, 1e3 * torque);
    }),
    RUNS,
  );
});

test('a taper holds in proportion to its draw, and less the steeper it is', () => {
  fc.assert(
    fc.property(real(1e3, 5e4), real(5, 20), real(1.05, 2), (draw, ratio, more) => {
      const size = { diameter: 0.03, length: 0.04, friction: 0.12 };
      const { torque } = taperGrip.run({ draw, ratio, ...size });
      near(taperGrip.run({ draw: draw * more, ratio, ...size }).torque, torque * more, 1e3 * torque);
      expect(taperGrip.run({ draw, ratio: ratio * more, ...size }).torque).toBeGreaterThan(torque);
    }),
    RUNS,
  );
});

test('over thicker pins and thicker teeth the size is larger', () => {
  fc.assert(
    fc.property(fc.integer({ min: 8, max: 60 }), real(1, 4), real(1.01, 1.1), (teeth, mm, more) => {
      const module = mm / 1000;
      const base = { teeth, module, angle: Math.PI / 6, pin: 1.9 * module, thickness: (Math.PI * module) / 2 };
      const { over } = splineOverPins.run(base);
      expect(splineOverPins.run({ ...base, pin: base.pin * more }).over).toBeGreaterThan(over);
      expect(splineOverPins.run({ ...base, thickness: base.thickness * more }).over).toBeGreaterThan(over);
      near(
        splineOverPins.run({ ...base, module: 2 * module, pin: 2 * base.pin, thickness: 2 * base.thickness }).over,
        2 * over,
        1e3,
      );
    }),
    RUNS,
  );
});

test('a spline made to a standard is known again as that standard, some hundredths small', () => {
  const standards = [
    [0.001, 30, 1],
    [0.00125, 30, 1],
    [0.002, 30, 1],
    [0.0015, 37.5, 0.9],
    [0.001, 45, 0.8],
  ] as const;
  fc.assert(
    fc.property(fc.constantFrom(...standards), fc.integer({ min: 12, max: 40 }), ([module, degrees, added], teeth) => {
      const angle = (degrees * Math.PI) / 180;
      const pin = 2 * module;
      const { over } = splineOverPins.run({ teeth, module, angle, pin, thickness: (Math.PI * module) / 2 });
      const found = splineCandidates.run({ teeth, outside: module * (teeth + added) - 2e-5, pin, over: over - 2e-5 });
      expect(found.modules[0]).toBeCloseTo(module, 9);
      expect(found.angles[0]).toBeCloseTo(angle, 9);
      expect([...found.misfits].sort((a, b) => a - b)).toEqual(found.misfits);
    }),
    RUNS,
  );
});
