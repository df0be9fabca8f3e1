import type { Clearances } from '@oddwheel/build/assess/clearance/types';
import type { Finding } from '@oddwheel/build/assess/types';
import { arrange } from './arrange.ts';
import { buildSolids, type Drawable, type Posed, pose, rollingRadius, wheelSeat } from './build-solids.ts';
import { loopView } from './chain-view.ts';
import { lanes, type Measure } from './dimensions.ts';
import type { Bounds, Drawing, DrawnNote, DrawnPart, View } from './drawing.ts';
import { Room, sizeText } from './lettering.ts';
import { centreLines, clearanceNotes, groundNote, shaftNames, spaceNames, tyreName } from './notes.ts';
import { measuresAlong } from './places.ts';
import { FROM_ABOVE, FROM_BEHIND, FROM_THE_LEFT, onPage, type Plane } from './plane.ts';
import { inMm } from './shaft-solids.ts';
import type { Solid } from './solids.ts';
import { boundsOf, partsOf, roomAround, textBoxes, viewOf } from './view.ts';
import { grownTyre, wheelSize } from './wheel-solids.ts';

export interface DrawingOptions {
  /** Height of the lettering in mm of the view: what is legible at the scale it is shown in. */
  readonly textHeight: number;
  /** Swinging arm, rad from where the wheel is drawn, positive with the wheel up. */
  readonly armAngle: number;
  readonly projection: 'third angle' | 'first angle';
}

/** What was found of the build that its drawing says as well. */
export interface Found {
  readonly findings: readonly Finding[];
  readonly clearance: Clearances | null;
}

const PLANES = [FROM_THE_LEFT, FROM_ABOVE, FROM_BEHIND] as const;

/** What the three views share. */
interface Scene {
  readonly posed: Posed;
  readonly solids: readonly Solid[];
  readonly found: Found;
  readonly height: number;
}

const partBounds = (parts: readonly DrawnPart[], height: number): readonly Bounds[] =>
  parts.map((part) => boundsOf([part], height));

/** Places of labels that everything else leaves room for: dimensions first, then clearances, then names. */
function labels(
  scene: Scene,
  plane: Plane,
  parts: readonly DrawnPart[],
  dimensions: readonly DrawnNote[],
): readonly DrawnNote[] {
  const { posed, solids, found, height } = scene;
  const { model } = posed;
  const room = new Room(
    height,
    textBoxes(dimensions, height),
    roomAround(boundsOf([...parts, ...dimensions], height), height),
  );
  const atRest = posed.onArm === null;
  const gaps =
    found.clearance && atRest ? clearanceNotes(model, found.clearance.rows, plane, PLANES, room, height) : [];
  const left = plane === FROM_THE_LEFT;
  const wheel = wheelSeat(model);
  const size = wheel && wheelSize(model.wheel, wheel.seat, posed.rollOut);
  const boxes = partBounds(parts, height).map((bounds, k) => ({ of: parts[k]?.of ?? '', bounds }));
  return [
    ...gaps,
    ...(left && wheel && size
      ? [tyreName(model, onPage(plane, inMm(wheel.seat.at)), size.radius, size.width, room)]
      : []),
    ...(left ? shaftNames(plane, model.shafts, solids, room, height) : []),
    ...(left ? spaceNames(model, boxes, room, height) : []),
  ];
}

function fromTheLeft(scene: Scene): View {
  const { posed, solids, height } = scene;
  const { model } = posed;
  const plane = FROM_THE_LEFT;
  const parts = partsOf(plane, solids);
  const lines = centreLines(plane, model.shafts, solids, 0.7 * height);
  const wheel = inMm(wheelSeat(model)?.seat.at ?? [0, 0, 0]);
  const centre = onPage(plane, wheel);
  const radius = rollingRadius(posed);
  const bounds = boundsOf([...parts, ...lines], height);
  const ground = radius === null ? [] : [groundNote(centre[1] - radius, bounds.left, bounds.right, 0.9 * height)];
  const loaded: readonly Measure[] =
    radius === null
      ? []
      : [
          {
            of: model.wheel.address,
            from: centre,
            to: [centre[0], centre[1] - radius],
            text: `${sizeText(model, radius)} loaded`,
          },
        ];
  const full = boundsOf([...parts, ...lines, ...ground], height);
  const dimensions = [
    ...lanes(measuresAlong(model, 0, wheel, plane), 'top', full, height),
    ...lanes([...measuresAlong(model, 2, wheel, plane), ...loaded], 'right', full, height),
  ];
  const named = labels(scene, plane, parts, dimensions);
  return viewOf(
    'from the left',
    'Seen from the left',
    plane,
    parts,
    [...lines, ...ground, ...dimensions, ...named],
    height,
  );
}

function fromAbove(scene: Scene): View {
  const { posed, solids, height } = scene;
  const plane = FROM_ABOVE;
  const parts = partsOf(plane, solids);
  const lines = centreLines(plane, posed.model.shafts, solids, 0.7 * height);
  const wheel = inMm(wheelSeat(posed.model)?.seat.at ?? [0, 0, 0]);
  const bounds = boundsOf([...parts, ...lines], height);
  const dimensions = lanes(measuresAlong(posed.model, 1, wheel, plane), 'right', bounds, height);
  const named = labels(scene, plane, parts, dimensions);
  return viewOf('from above', 'Seen from above', plane, parts, [...lines, ...dimensions, ...named], height);
}

function fromBehind(scene: Scene): View {
  const { posed, solids, height } = scene;
  const { model } = posed;
  const plane = FROM_BEHIND;
  const parts = partsOf(plane, solids);
  const lines = centreLines(plane, model.shafts, solids, 0.7 * height);
  const wheel = wheelSeat(model);
  const size = wheel && wheelSize(model.wheel, wheel.seat, posed.rollOut);
  const centre = onPage(plane, inMm(wheel?.seat.at ?? [0, 0, 0]));
  const radius = rollingRadius(posed);
  const bounds = boundsOf([...parts, ...lines], height);
  const ground = radius === null ? [] : [groundNote(centre[1] - radius, bounds.left, bounds.right, 0.9 * height)];
  const full = boundsOf([...parts, ...lines, ...ground], height);
  const width: readonly Measure[] =
    size && wheel
      ? [
          {
            of: model.wheel.address,
            from: [centre[0] - size.width / 2, centre[1]],
            to: [centre[0] + size.width / 2, centre[1]],
            text: sizeText(model, size.width),
          },
        ]
      : [];
  const dimensions = lanes(width, 'bottom', full, height);
  const named = labels(scene, plane, parts, dimensions);
  return viewOf(
    'from behind',
    'Seen from behind',
    plane,
    parts,
    [...lines, ...ground, ...dimensions, ...named],
    height,
  );
}

/** What the tyre grows by, as the clearances count it, mm. */
function growthOf(clearance: Clearances | null): number {
  const takes = (clearance?.rows ?? []).flatMap(({ takes: all }) => all);
  return Math.max(0, ...takes.filter(({ by }) => by === 'growth of the tyre').map(({ length }) => length * 1000));
}

function allSolids(posed: Posed, found: Found): readonly Solid[] {
  const solids = buildSolids(posed);
  const wheel = wheelSeat(posed.model);
  const size = wheel && wheelSize(posed.model.wheel, wheel.seat, posed.rollOut);
  const growth = growthOf(found.clearance);
  return wheel && size && growth > 0.05
    ? [
        ...solids,
        grownTyre(wheel.shaft, wheel.seat, size.width + 2 * growth, size.radius + growth, posed.model.wheel.address),
      ]
    : solids;
}

/** The build in three views and along each chain and belt, to scale, with its places, centres and thin clearances. */
export function layoutViews(drawable: Drawable, found: Found, options: DrawingOptions): Drawing {
  const posed = pose(drawable, options.armAngle);
  const solids = allSolids(posed, found);
  const height = options.textHeight;
  const scene: Scene = { posed, solids, found, height };
  const loops = posed.stages
    .filter(({ stage }) => stage.kind === 'chain' || stage.kind === 'belt')
    .map((geometry) => loopView(posed, geometry, solids, found.findings, height));
  return arrange([fromAbove(scene), fromTheLeft(scene), fromBehind(scene), ...loops], options.projection, height);
}

/** The parts as solids, for the picture in space. */
export function layoutSolids(drawable: Drawable, found: Found, armAngle: number): readonly Solid[] {
  return allSolids(pose(drawable, armAngle), found);
}
