import { describe, expect, test } from 'vitest';
import { openSession } from '../session.ts';
import type { Session } from '../session-types.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { aidsFor } from './aids.ts';
import { stepLike, writeLike } from './length-text.ts';
import { movePatches, wayWords } from './move.ts';
import { placingOf } from './placed.ts';
import { movesIn, snapMove, type Wish } from './snap.ts';
import type { LinkCircle, MoveAids, Placed } from './types.ts';

const MM = 0.001;

function session(change: (build: Record<string, never>) => void = () => undefined): Session {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as Record<string, never>;
  change(build);
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

const shaft = (origin: readonly [string, string, string]): Placed => ({
  address: '/path/shafts/b',
  name: 'Shaft B',
  kind: 'shaft',
  station: null,
  points: [
    {
      name: '',
      coordinates: [0, 1, 2].map((k) => ({
        address: `/path/shafts/b/origin/${'xyz'[k]}`,
        text: origin[k] ?? '',
        si: Number.parseFloat(origin[k] ?? '') * MM,
      })) as unknown as Placed['points'][number]['coordinates'],
    },
  ],
});
const NO_AIDS: MoveAids = { address: '', circles: [], held: [], shafts: [], walls: [], boxes: [], wanted: 0.01 };
const LEFT = { right: [-1, 0, 0], up: [0, 0, 1] } as const;
const wish = (more: Partial<Wish>): Wish => ({
  placed: shaft(['440 mm', '-80 mm', '482.5 mm']),
  aids: NO_AIDS,
  by: [0, 0, 0],
  ...LEFT,
  reach: 0.005,
  whole: true,
  held: null,
  ...more,
});
const circle = (more: Partial<LinkCircle> = {}): LinkCircle => ({
  stage: '/path/stages/c',
  name: 'Chain 2',
  count: '84 links',
  own: [0.44, 0.1, 0.4825],
  centre: [0, 0.1, 0],
  along: [0, 1, 0],
  radius: 0.6531,
  ...more,
});

describe('a moved length keeps the unit that it is typed in', () => {
  test.each([
    [0.44, '440 mm', '440 mm'],
    [0.44137, '8 mm', '441.37 mm'],
    [-0.0805, '-80 mm', '-80.5 mm'],
    [0.227012_5, '8 7/8 in', '8 15/16 in'],
    [0.227012_5 + 0.0003, '8 7/8 in', '8.9493 in'],
    [-0.0015875, '1/4 in', '-1/16 in'],
    [0.0254, '0.75 in', '1 in'],
    [0.05, '3 cm', '5 cm'],
  ])('%d m like "%s" is "%s"', (si, like, text) => {
    expect(writeLike(si, like)).toBe(text);
  });

  test('steps: millimetres, or sixteenths where inches are typed', () => {
    expect(stepLike('440 mm', 'plain')).toBe(0.001);
    expect(stepLike('440 mm', 'fine')).toBeCloseTo(0.0001, 12);
    expect(stepLike('8 7/8 in', 'plain')).toBe(0.0254 / 16);
    expect(stepLike('8 7/8 in', 'coarse')).toBe(0.0254 / 2);
  });

  test('a move changes only the lengths that it changes', () => {
    expect(movePatches(shaft(['440 mm', '-80 mm', '482.5 mm']), [0.003, 0, -0.0125])).toEqual([
      { op: 'set', at: '/path/shafts/b/origin/x', value: '443 mm' },
      { op: 'set', at: '/path/shafts/b/origin/z', value: '470 mm' },
    ]);
    expect(movePatches(shaft(['440 mm', '-80 mm', '482.5 mm']), [0, 0, 0])).toEqual([]);
  });

  test('words of a move', () => {
    const show = (si: number): string => `${Math.round(si / MM)} mm`;
    expect(wayWords([-0.003, 0, 0.012], show)).toBe('3 mm back, 12 mm up');
    expect(wayWords([0, 0, 0], show)).toBe('not moved');
  });
});

describe('what a move is brought to', () => {
  test('whole steps of the length itself, not of the change', () => {
    const { by, to } = snapMove(wish({ by: [0.0031, 0, 0.0007] }));
    expect(0.44 + by[0]).toBeCloseTo(0.443, 9);
    expect(0.4825 + by[2]).toBeCloseTo(0.483, 9);
    expect(to).toEqual([]);
  });

  test('a length that is not moved is not rounded, nor one across the view', () => {
    const { by } = snapMove(wish({ by: [0.001, 0.5, 0] }));
    expect(by[2]).toBe(0);
    expect(by[1]).toBe(0.5);
  });

  test('the centres of whole links, by hand: the seat then stands at that radius about the other', () => {
    const { by, to } = snapMove(wish({ by: [0.002, 0, 0.001], aids: { ...NO_AIDS, circles: [circle()] } }));
    expect(Math.hypot(0.44 + by[0], 0.4825 + by[2])).toBeCloseTo(0.6531, 9);
    expect(to).toEqual(['84 links of Chain 2']);
    // Out of reach it stays at whole steps.
    expect(snapMove(wish({ by: [0.05, 0, 0.05], aids: { ...NO_AIDS, circles: [circle()] } })).to).toEqual([]);
  });

  test('a held chain keeps its centres wherever the pointer goes, a second one meets it within reach', () => {
    const held = circle({ count: '', radius: Math.hypot(0.44, 0.4825) });
    const far = snapMove(wish({ by: [-0.2, 0, 0.3], held }));
    expect(Math.hypot(0.44 + far.by[0], 0.4825 + far.by[2])).toBeCloseTo(held.radius, 9);
    const other = circle({
      stage: '/path/stages/d',
      name: 'Chain 1',
      count: '60 links',
      centre: [0.8, 0, 0.1],
      radius: 0.5,
    });
    const both = snapMove(wish({ by: [0.001, 0, 0], held, reach: 0.1, aids: { ...NO_AIDS, circles: [other] } }));
    expect(Math.hypot(0.44 + both.by[0], 0.4825 + both.by[2])).toBeCloseTo(held.radius, 6);
    expect(Math.hypot(0.44 + both.by[0] - 0.8, 0.4825 + both.by[2] - 0.1)).toBeCloseTo(0.5, 5);
    expect(both.to).toEqual(['centres of Chain 2', '60 links of Chain 1']);
  });

  test('in line with another shaft, and clear of a keep-out by what is wanted', () => {
    const shafts = [{ name: 'Shaft A', at: [0.81, 0, 0.486] as const, along: [-1, 0, 0] as const }];
    const lined = snapMove(wish({ by: [0, 0, 0.002], aids: { ...NO_AIDS, shafts } }));
    expect(0.4825 + lined.by[2]).toBeCloseTo(0.486, 9);
    expect(lined.to).toEqual(['in line with Shaft A']);
    const walls = [{ name: 'engine', low: [0.5, -1, 0] as const, high: [0.9, 1, 1] as const }];
    const boxes = [{ low: [0.4, -0.1, 0.4] as const, high: [0.47, 0.1, 0.5] as const }];
    const clear = snapMove(wish({ by: [0.023, 0, 0], aids: { ...NO_AIDS, walls, boxes } }));
    expect(0.47 + clear.by[0]).toBeCloseTo(0.5 - 0.01, 9);
    expect(clear.to).toEqual(['clear of engine by what is wanted']);
  });

  test('without reach and whole steps the wish is the move', () => {
    expect(snapMove(wish({ by: [0.00013, 0, 0.00017], reach: 0, whole: false })).by).toEqual([0.00013, 0, 0.00017]);
  });

  test('a seat runs along its shaft only, and not where the shaft is seen end on', () => {
    const seat: Placed = {
      address: '/path/shafts/b/seats/s',
      name: 'sprocket on Shaft B',
      kind: 'seat',
      points: [],
      station: {
        coordinate: { address: '/path/shafts/b/seats/s/station', text: '194.5 mm', si: 0.1945 },
        shaft: '/path/shafts/b',
        origin: [0.44, -0.08, 0.4825],
        along: [0, 1, 0],
      },
    };
    expect(movesIn(seat, LEFT.right, LEFT.up)).toBe(false);
    expect(movesIn(seat, [-1, 0, 0], [0, -1, 0])).toBe(true);
    const { by } = snapMove(wish({ placed: seat, by: [0.1, 0.0047, 0], right: [-1, 0, 0], up: [0, -1, 0] }));
    expect(by[0]).toBe(0);
    expect(0.1945 + by[1]).toBeCloseTo(0.199, 9);
    expect(movePatches(seat, by)).toEqual([{ op: 'set', at: '/path/shafts/b/seats/s/station', value: '199 mm' }]);
  });
});

describe('places of the small build', () => {
  test('everything with a place of its own, and the floor a roll-out of 2 m away: 1/π m', () => {
    const { placed, datums } = placingOf(session());
    expect(placed.filter(({ kind }) => kind === 'shaft').map(({ points }) => points.length)).toEqual([1, 1]);
    expect(placed.every(({ points, station }) => points.length > 0 || station !== null)).toBe(true);
    expect(datums.find(({ id }) => id === 'floor')?.at[2]).toBeCloseTo(-1 / Math.PI, 9);
  });

  test('the circle of the links that are fitted is where the exact length says so', () => {
    const open = session();
    const output = placingOf(open).placed[0];
    const aids = aidsFor(open, output?.address ?? '');
    expect(aids.circles.length).toBeGreaterThan(4);
    expect(aids.circles.every(({ count }) => Number.parseInt(count, 10) % 2 === 0)).toBe(true);
    const held = aids.held[0];
    const stage = open.evaluation.middle.scene.stages[0];
    expect(held?.radius).toBeCloseTo(stage?.chain?.centreDistance ?? 0, 12);
    // Needed links as a whole number between two circles: the centres lie between theirs as well.
    const below = aids.circles.filter(({ radius }) => radius <= (held?.radius ?? 0)).at(-1);
    expect(Number.parseInt(below?.count ?? '', 10)).toBeLessThanOrEqual(stage?.chain?.linksNeeded ?? 0);
  });
});
