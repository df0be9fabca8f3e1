import type { Vec3 } from '@oddwheel/quantity/quantity';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  differences,
  moveOrigins,
  openAt,
  RUNS,
  RUNS_TO_ENDS,
  severitiesOf,
  shaftsOf,
  type Tree,
  variations,
  varied,
} from './build.ts';

const along = fc.double({ min: -3, max: 3, noNaN: true });

describe.each([
  ['at the middle of the ranges', 'not yet', RUNS],
  ['at their ends', 'tried', RUNS_TO_ENDS],
] as const)('%s', (_, ends, runs) => {
  test('moving the whole build changes no number', () => {
    fc.assert(
      fc.property(variations, fc.tuple(along, along, along), (v, by) => {
        const moved = varied(v);
        moveOrigins(moved, ([x, y, z]): Vec3 => [x + by[0], y + by[1], z + by[2]]);
        const [here, there] = [openAt(varied(v), v, ends).assessment, openAt(moved, v, ends).assessment];
        expect(differences(here, there)).toEqual([]);
        expect(severitiesOf(there)).toEqual(severitiesOf(here));
      }),
      runs,
    );
  });
});

describe('a build seen in a mirror', () => {
  /**
   * The mirror is the plane of x and z. A direction turns its y round; a rotation is no arrow but a sense about one, and a mirror
   * reverses it: a shaft that turned positive about its direction turns negative about the mirrored one.
   */
  const mirrored = (build: ReturnType<typeof varied>): ReturnType<typeof varied> => {
    moveOrigins(build, ([x, y, z]): Vec3 => [x, -y, z]);
    for (const shaft of shaftsOf(build)) {
      const [x, y, z] = shaft.direction as unknown as [number, number, number];
      (shaft as Record<string, unknown>).direction = [x, -y, z];
    }
    const output = (build as unknown as Tree).brief?.engine?.output as unknown as { sense: string };
    output.sense = output.sense === 'positive' ? 'negative' : 'positive';
    return build;
  };

  test('has the same numbers, every shaft turns the other way about its direction, and the wheel still rolls forward', () => {
    fc.assert(
      fc.property(variations, (v) => {
        const [plain, mirror] = [openAt(varied(v), v).assessment, openAt(mirrored(varied(v)), v).assessment];
        expect(differences(plain, mirror)).toEqual([]);
        expect(severitiesOf(mirror)).toEqual(severitiesOf(plain));
        expect(mirror.shafts.map(({ sense }) => sense)).toEqual(
          plain.shafts.map(({ sense }) => (sense === null ? null : -sense)),
        );
        expect(mirror.findings.find(({ check }) => check === 'path.forward')?.severity).toBe('holds');
      }),
      RUNS,
    );
  });
});

test('a bevel gear set on the other side of the apex reverses the wheel, and the build says so', () => {
  const fromApex = fc.double({ min: 20, max: 55, noNaN: true });
  fc.assert(
    fc.property(variations, fromApex, (v, distance) => {
      // The pinion's axis crosses shaft B at its station 80 mm.
      const withGearAt = (station: number): ReturnType<typeof varied> => {
        const build = varied(v);
        const seats = (build as unknown as Tree).path?.shafts?.['shaft-b']?.seats as Tree;
        (seats.gear as unknown as { station: string }).station = `${station.toFixed(6)} mm`;
        return build;
      };
      const [plain, turned] = [80 + distance, 80 - distance].map(
        (station) => openAt(withGearAt(station), v).assessment,
      );
      const axle = (a: typeof plain): number | null | undefined => a?.shafts.at(-1)?.sense;
      expect(axle(plain)).toBe(1);
      expect(axle(turned)).toBe(-1);
      const forward = (a: typeof plain): string | undefined =>
        a?.findings.find(({ check }) => check === 'path.forward')?.severity;
      expect(forward(plain)).toBe('holds');
      expect(forward(turned)).toBe('fails');
    }),
    RUNS,
  );
});
