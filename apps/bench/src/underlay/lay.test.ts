import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthBetween, layPicture, type UnderPlace } from './lay.ts';

const SIZE = { width: 2000, height: 1000 };

/** Where a pixel comes to lie, mm right and mm up of the view. */
function laid(under: UnderPlace, [u, v]: readonly [number, number]): readonly [number, number] {
  const lay = layPicture(under, SIZE);
  if (!lay.ok) throw new Error(lay.says);
  const [a, b, c, d, e, f] = lay.matrix;
  return [a * u + c * v + e, -(b * u + d * v + f)];
}

describe('a picture under the view from the left (right is back, up is up)', () => {
  it('level and at half a millimetre a pixel, by hand', () => {
    // 1 000 pixels apart in the picture, 500 mm apart on the vehicle: wheel centre right, a shaft 500 mm ahead of it left.
    const under: UnderPlace = {
      view: 'from the left',
      first: { right: 0.75, down: 0.6, at: [0, 0, 0] },
      second: { right: 0.25, down: 0.6, at: [0.5, 0.1, 0] },
    };
    const lay = layPicture(under, SIZE);
    if (!lay.ok) throw new Error(lay.says);
    expect(lay.scale).toBeCloseTo(0.5, 12);
    expect(lay.turned).toBeCloseTo(0, 12);
    expect(laid(under, [1500, 600])[0]).toBeCloseTo(0, 9);
    expect(laid(under, [500, 600])[0]).toBeCloseTo(-500, 9);
    // 200 pixels above the wheel's centre are 100 mm.
    expect(laid(under, [1500, 400])[1]).toBeCloseTo(100, 9);
    expect(depthBetween(under)).toBeCloseTo(0.1, 12);
  });

  it('a camera held on its side is turned back by a right angle', () => {
    const under: UnderPlace = {
      view: 'from the left',
      first: { right: 0.5, down: 0.5, at: [0, 0, 0] },
      second: { right: 0.6, down: 0.5, at: [0, 0, 0.2] },
    };
    const lay = layPicture(under, SIZE);
    if (!lay.ok) throw new Error(lay.says);
    expect(lay.turned).toBeCloseTo(Math.PI / 2, 12);
    expect(lay.scale).toBeCloseTo(1, 12);
    // What is 100 pixels below the middle lies 100 mm right of it.
    const [x, y] = laid(under, [1000, 600]);
    expect(x).toBeCloseTo(100, 9);
    expect(y).toBeCloseTo(0, 9);
  });

  it('says what to do where the points tell no scale', () => {
    const first = { right: 0.5, down: 0.5, at: [0, 0, 0] } as const;
    const same = layPicture({ view: 'from the left', first, second: { ...first, at: [1, 0, 0] } }, SIZE);
    expect(!same.ok && same.says).toContain('far apart');
    const behind = layPicture({ view: 'from behind', first, second: { right: 0.9, down: 0.5, at: [1, 0, 0] } }, SIZE);
    expect(!behind.ok && behind.says).toContain('Seen from behind');
  });
});

const part = fc.double({ min: 0, max: 1, noNaN: true });
const metre = fc.double({ min: -2, max: 2, noNaN: true });
const known = fc.record({ right: part, down: part, at: fc.tuple(metre, metre, metre) });

it('both points lie where they are on the vehicle, and the picture keeps its shape', () => {
  const PLACE = {
    'from the left': ([x, , z]: readonly number[]) => [-1000 * (x ?? 0), 1000 * (z ?? 0)],
    'from above': ([x, y]: readonly number[]) => [-1000 * (x ?? 0), -1000 * (y ?? 0)],
    'from behind': ([, y, z]: readonly number[]) => [-1000 * (y ?? 0), 1000 * (z ?? 0)],
  } as const;
  fc.assert(
    fc.property(
      fc.constantFrom('from the left', 'from above', 'from behind'),
      known,
      known,
      part,
      part,
      (view, first, second, right, down) => {
        const under: UnderPlace = { view, first, second };
        const lay = layPicture(under, SIZE);
        fc.pre(lay.ok && lay.scale < 100);
        for (const one of [first, second]) {
          const [x, y] = laid(under, [one.right * SIZE.width, one.down * SIZE.height]);
          const [wx, wy] = PLACE[view](one.at);
          expect(x).toBeCloseTo(wx ?? 0, 5);
          expect(y).toBeCloseTo(wy ?? 0, 5);
        }
        // Lengths from the first point to any other are all scaled alike.
        const at = [right * SIZE.width, down * SIZE.height] as const;
        const from = [first.right * SIZE.width, first.down * SIZE.height] as const;
        const [a, b] = [laid(under, at), laid(under, from)];
        if (lay.ok)
          expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(
            lay.scale * Math.hypot(at[0] - from[0], at[1] - from[1]),
            5,
          );
      },
    ),
    { seed: 4, numRuns: 300 },
  );
});
