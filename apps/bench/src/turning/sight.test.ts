import type { Placed } from '@oddwheel/build/placing/types';
import { cross, dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SpacePart } from '@oddwheel/sheets/space-parts';
import { describe, expect, it } from 'vitest';
import {
  axesOf,
  FIRST_SIGHT,
  type Framing,
  intoPlane,
  LOOKS,
  placeOn,
  planeFacing,
  scaleToFit,
  sightWords,
  stepInPlane,
  turnedBy,
} from './sight.ts';

const near = (a: Vec3, b: Vec3): void => {
  for (const k of [0, 1, 2] as const) expect(a[k]).toBeCloseTo(b[k], 9);
};
const look = (name: string) => {
  const found = LOOKS.find((one) => one.name === name);
  if (!found) throw new Error(name);
  return axesOf(found.sight);
};
const coordinate = { address: '', text: '0 mm', si: 0 };
const SHAFT: Placed = {
  address: '/s',
  name: 'Shaft',
  kind: 'shaft',
  points: [{ name: '', coordinates: [coordinate, coordinate, coordinate] }],
  station: null,
};
const SEAT: Placed = {
  ...SHAFT,
  kind: 'seat',
  points: [],
  station: { coordinate, shaft: '/s', origin: [0, 0, 0], along: [0, 1, 0] },
};

describe('where it is looked at from (x forward, y left, z up)', () => {
  it('has right and up as the drawing has them', () => {
    near(look('From the left').right, [-1, 0, 0]);
    near(look('From the left').up, [0, 0, 1]);
    near(look('From above').right, [-1, 0, 0]);
    near(look('From above').up, [0, -1, 0]);
    near(look('From behind').right, [0, -1, 0]);
    near(look('From ahead').right, [0, 1, 0]);
    near(look('From ahead').towards, [1, 0, 0]);
  });

  it('keeps its axes square and of length one wherever it is turned to', () => {
    let sight = FIRST_SIGHT;
    for (let k = 0; k < 40; k += 1) {
      sight = turnedBy(sight, 0.37, k % 7 < 4 ? 0.4 : -0.5);
      const { right, up, towards } = axesOf(sight);
      near(cross(right, up), towards);
      expect(dot(right, right)).toBeCloseTo(1, 12);
      expect(up[2]).toBeGreaterThanOrEqual(-1e-12);
    }
  });

  it('from a corner a length along each axis looks the same (isometric)', () => {
    const { right, up } = axesOf(FIRST_SIGHT);
    const seen = (way: Vec3): number => Math.hypot(dot(way, right), dot(way, up));
    // √(2/3) of its length.
    for (const way of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const)
      expect(seen(way)).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });

  it.each([
    [{ round: 0, up: 0 }, 'From the left'],
    [{ round: Math.PI / 2, up: 0 }, 'From ahead'],
    [{ round: Math.PI, up: 0 }, 'From the right'],
    [{ round: -Math.PI / 2, up: -0.35 }, 'From behind, 20° below'],
    [FIRST_SIGHT, 'From the left and ahead, 35° above'],
    [{ round: 1, up: Math.PI / 2 }, 'From straight above'],
  ])('%o is said as “%s”', (sight, said) => expect(sightWords(sight)).toBe(said));
});

describe('a move across the picture', () => {
  it('is in the plane seen most squarely, and the part stays under the pointer', () => {
    const axes = axesOf({ round: 0.3, up: 0.2 });
    const plane = planeFacing(axes, SHAFT);
    if (!plane) throw new Error('no plane');
    expect(plane.title).toBe('Forward and up');
    const by = intoPlane(axes, plane, [axes.right[0] * 0.02, axes.right[1] * 0.02, axes.right[2] * 0.02]);
    expect(by[1]).toBe(0);
    const framing: Framing = { axes, centre: [0, 0, 0], scale: 0.5, width: 800, height: 600 };
    const [x, y] = placeOn(framing, [by[0] * 1000, by[1] * 1000, by[2] * 1000]);
    // 20 mm at half a millimetre a pixel.
    expect(x).toBeCloseTo(440, 9);
    expect(y).toBeCloseTo(300, 9);
  });

  it('from the side is the move itself', () => {
    const axes = look('From the left');
    const plane = planeFacing(axes, SHAFT);
    near(plane ? intoPlane(axes, plane, [0.01, 0, 0.02]) : [9, 9, 9], [0.01, 0, 0.02]);
  });

  it('of a part on a shaft needs the shaft to be seen', () => {
    expect(planeFacing(look('From the left'), SEAT)).toBe(null);
    expect(planeFacing(look('From above'), SEAT)?.title).toBe('Forward and to the left');
    expect(planeFacing(look('From behind'), SEAT)?.title).toBe('To the left and up');
  });

  it('by a key goes the same length along one axis', () => {
    const axes = axesOf(FIRST_SIGHT);
    const plane = planeFacing(axes, SHAFT);
    if (!plane) throw new Error('no plane');
    const step = stepInPlane(axes, plane, [axes.up[0] * 0.001, axes.up[1] * 0.001, axes.up[2] * 0.001]);
    near(step, [0, 0, 0.001]);
    const aside = stepInPlane(axes, plane, [axes.right[0] * 0.001, axes.right[1] * 0.001, axes.right[2] * 0.001]);
    near(aside, [-0.001, 0, 0]);
  });
});

it('parts fit their frame as they are seen, and fill it one way', () => {
  const part = (least: Vec3, most: Vec3): SpacePart => ({
    of: '',
    name: '',
    moves: null,
    line: 'visible',
    fill: 'sheet',
    facets: new Float32Array(),
    edges: new Float32Array(),
    least,
    most,
  });
  const parts = [part([-300, -100, 0], [200, 200, 300]), part([0, 0, 100], [500, 100, 700])];
  for (let k = 0; k < 40; k += 1) {
    const axes = axesOf({ round: k * 0.31, up: ((k % 13) / 12 - 0.5) * Math.PI });
    const scale = scaleToFit(parts, axes, 900, 500);
    const framing: Framing = { axes, centre: [100, 50, 350], scale, width: 900, height: 500 };
    const off = parts
      .flatMap(({ least, most }) =>
        [least[0], most[0]].flatMap((x) =>
          [least[1], most[1]].flatMap((y) => [least[2], most[2]].map((z) => [x, y, z] as const)),
        ),
      )
      .map((at) => {
        const [right, down] = placeOn(framing, at);
        return Math.max(Math.abs(right - 450) / 450, Math.abs(down - 250) / 250);
      });
    expect(Math.max(...off)).toBeCloseTo(1 / 1.06, 9);
  }
});
