import { openSession } from '@oddwheel/build/session';
import { SMALL_BUILD } from '@oddwheel/build/testing/small-build';
import { describe, expect, test } from 'vitest';
import { modelAtArm } from './arm.ts';
import { planeAlong } from './chain-view.ts';
import type { Drawing, Element, View } from './drawing.ts';
import { hull, toothedOutline } from './outline.ts';
import { FROM_ABOVE, FROM_AHEAD, FROM_BEHIND, FROM_THE_LEFT, onPage } from './plane.ts';
import { drawingSvg } from './svg.ts';
import { type DrawingOptions, layoutSolids, layoutViews } from './views.ts';

const OPTIONS: DrawingOptions = { textHeight: 20, armAngle: 0, projection: 'third angle' };

type Changed = { brief: Record<string, unknown>; path: { shafts: { axle: Record<string, unknown> } } };

function open(change: (build: Changed) => void = () => undefined) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD)) as Changed;
  change(build);
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { evaluation, assessment } = opened.session;
  return { scene: evaluation.middle.scene, found: { findings: assessment.findings, clearance: null } };
}

const drawn = (change?: (build: Changed) => void, options: Partial<DrawingOptions> = {}): Drawing => {
  const { scene, found } = open(change);
  return layoutViews(scene, found, { ...OPTIONS, ...options });
};
const view = (drawing: Drawing, id: string): View => {
  const found = drawing.views.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};
const elements = (one: View): readonly Element[] => [...one.parts, ...one.notes].flatMap((part) => part.elements);
const dimensions = (one: View): string[] =>
  elements(one).flatMap((element) => (element.kind === 'dimension' ? [element.text] : []));

describe('views of third angle (ISO 5456-2: each view stands on the side it is seen from)', () => {
  const AT = [440, -80, 482.5] as const;
  test('a point forward, right and up, by hand', () => {
    expect(onPage(FROM_THE_LEFT, AT)).toEqual([-440, 482.5]);
    expect(onPage(FROM_ABOVE, AT)).toEqual([-440, 80]);
    expect(onPage(FROM_BEHIND, AT)).toEqual([80, 482.5]);
    expect(onPage(FROM_AHEAD, AT)).toEqual([-80, 482.5]);
  });

  test('whoever looks stands where the name says', () => {
    const looks = [FROM_THE_LEFT, FROM_ABOVE, FROM_BEHIND, FROM_AHEAD].map(({ towards }) => towards.map((x) => x + 0));
    expect(looks).toEqual([
      [0, 1, 0],
      [0, 0, 1],
      [-1, 0, 0],
      [1, 0, 0],
    ]);
  });

  test('the view from above stands over the one from the left, the one from behind to its right; in first angle the other way', () => {
    const third = drawn();
    expect(view(third, 'from above').at[1]).toBeGreaterThan(0);
    expect(view(third, 'from behind').at[0]).toBeGreaterThan(0);
    const first = drawn(undefined, { projection: 'first angle' });
    expect(view(first, 'from above').at[1]).toBeLessThan(0);
    expect(view(first, 'from behind').at[0]).toBeLessThan(0);
  });
});

describe('the drawing of the small build', () => {
  test('dimensions each place from the wheel’s centre once: x 600, z 50, y 88.9 (3 1/2 in), roll-out 2 m over 2π', () => {
    const drawing = drawn();
    expect(dimensions(view(drawing, 'from the left')).sort()).toEqual(['318.3 loaded', '50', '600']);
    expect(dimensions(view(drawing, 'from above'))).toEqual(['88.9']);
    // √(600² + 50²) = 602.08
    expect(dimensions(view(drawing, 'along /path/stages/chain-1'))).toEqual(['602.1, 106 links']);
  });

  test('draws the teeth that there are', () => {
    const outline = elements(view(drawn(), 'along /path/stages/chain-1')).filter(
      (element) => element.kind === 'path' && element.steps.length >= 60,
    );
    expect(outline.map((element) => (element.kind === 'path' ? element.steps.length / 4 : 0)).sort()).toEqual([15, 45]);
  });

  test('says the same when the origin is moved: places are told from the wheel', () => {
    const shift = (build: Changed): void => {
      const output = (build.brief.engine as { output: { origin: unknown } }).output;
      output.origin = { x: '1600 mm', y: '250 mm', z: '-150 mm' };
      build.path.shafts.axle.origin = { x: '1000 mm', y: '250 mm', z: '-200 mm' };
    };
    for (const id of ['from the left', 'from above', 'from behind'])
      expect(dimensions(view(drawn(shift), id)).sort()).toEqual(dimensions(view(drawn(), id)).sort());
  });

  test('is mirrored when the build is', () => {
    const mirror = (build: Changed): void => {
      for (const shaft of [(build.brief.engine as { output: Record<string, unknown> }).output, build.path.shafts.axle])
        for (const seat of Object.values(shaft.seats as Record<string, { station: string }>))
          seat.station = seat.station.startsWith('0') ? seat.station : `-${seat.station}`;
    };
    const extents = (one: View) =>
      one.parts.flatMap((part) =>
        part.elements.flatMap((element) =>
          element.kind === 'path' ? [element.start, ...element.steps.map((s) => s.to)] : [],
        ),
      );
    const reach = (drawing: Drawing, flip: 1 | -1) => {
      const ys = extents(view(drawing, 'from above')).map(([, y]) => flip * y);
      return [Math.min(...ys), Math.max(...ys)];
    };
    const [plain, mirrored] = [reach(drawn(), 1), reach(drawn(mirror), -1)];
    expect(mirrored[0]).toBeCloseTo(plain[0] ?? Number.NaN, 6);
    expect(mirrored[1]).toBeCloseTo(plain[1] ?? Number.NaN, 6);
  });

  test('is the same twice, and prints as one well-formed file', () => {
    expect(drawn()).toEqual(drawn());
    const svg = drawingSvg(drawn(), 5);
    expect(svg.match(/<g/g)?.length).toBe(svg.match(/<\/g>/g)?.length);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('a swinging arm', () => {
  const withArm = (build: Changed): void => {
    build.brief.suspension = {
      pivot: { x: '500 mm', y: '0 mm', z: '0 mm' },
      bump: '10 deg',
      rebound: '5 deg',
    };
    build.path.shafts.axle.seats = {
      ...(build.path.shafts.axle.seats as object),
      bearing: { kind: 'bearing', name: 'bearing', station: '60 mm', body: 'swinging arm' },
    };
  };
  test('lifts the wheel by its length times the sine: 500 mm at 10°', () => {
    const { scene } = open(withArm);
    const { model } = modelAtArm(scene.model, Math.PI / 18);
    const wheel = model.shafts.at(-1)?.seats.find(({ kind }) => kind === 'wheel');
    expect(wheel?.at[2]).toBeCloseTo(0.5 * Math.sin(Math.PI / 18), 12);
    expect(wheel?.at[0]).toBeCloseTo(0.5 - 0.5 * Math.cos(Math.PI / 18), 12);
    expect(modelAtArm(scene.model, 0).model).toBe(scene.model);
  });

  test('moves the wheel in the drawing and leaves the engine', () => {
    const { scene, found } = open(withArm);
    const at = (angle: number, role: string, of: string) =>
      layoutSolids(scene, found, angle).find((solid) => solid.role === role && solid.of === of)?.shape;
    const output = '/brief/engine/output';
    expect(at(0.1, 'shaft', output)).toEqual(at(0, 'shaft', output));
    expect(at(0.1, 'shaft', '/path/shafts/axle')).not.toEqual(at(0, 'shaft', '/path/shafts/axle'));
  });
});

describe('outlines', () => {
  test('a toothed wheel stays between root and tip', () => {
    const teeth = { form: 'gear', count: 12, pitch: 30, tip: 35, root: 23.75 } as const;
    const outline = toothedOutline([0, 0], teeth, 0, 'visible');
    if (outline.kind !== 'path') throw new Error(outline.kind);
    const radii = outline.steps.map(({ to }) => Math.hypot(...to));
    expect(Math.min(...radii)).toBeCloseTo(23.75, 9);
    expect(Math.max(...radii)).toBeCloseTo(35, 9);
  });

  test('the hull of a square with points inside is the square', () => {
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const;
    expect(hull([...square, [5, 5], [3, 0], [9, 9]])).toEqual(square);
  });

  test('a view along a shaft looks from ahead, from the left or from above', () => {
    expect(planeAlong([-1, 0, 0]).towards[0]).toBe(1);
    expect(planeAlong([0, -1, 0]).towards[1]).toBe(1);
    expect(planeAlong([0, 0, 1]).towards[2]).toBe(1);
  });
});
