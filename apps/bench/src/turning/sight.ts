import { movesIn } from '@oddwheel/build/placing/snap';
import type { Placed } from '@oddwheel/build/placing/types';
import { cross, dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SpacePart } from '@oddwheel/sheets/space-parts';

/** Where the build is looked at from, rad: round it from its left side to its front, and up. What is up stays up. */
export interface Sight {
  readonly round: number;
  readonly up: number;
}

/** Directions of a picture in vehicle axes, of length one; it is seen against `towards`. */
export interface Axes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
}

/** A picture on the screen. */
export interface Framing {
  readonly axes: Axes;
  /** What stands in the middle, mm in vehicle axes. */
  readonly centre: Vec3;
  /** mm of the vehicle for a px. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

const DEGREE = Math.PI / 180;
const QUARTER = Math.PI / 2;
/** From a corner a cube shows three sides alike (ISO 5456-3: isometric, 35.26° up). */
const CORNER = Math.atan(Math.SQRT1_2);

/** Where the buttons look from. */
export const LOOKS: readonly { readonly name: string; readonly sight: Sight }[] = [
  { name: 'From the left', sight: { round: 0, up: 0 } },
  { name: 'From ahead', sight: { round: QUARTER, up: 0 } },
  { name: 'From behind', sight: { round: -QUARTER, up: 0 } },
  { name: 'From above', sight: { round: 0, up: QUARTER } },
  { name: 'From a corner', sight: { round: QUARTER / 2, up: CORNER } },
];

/** The corner that the picture opens at. */
export const FIRST_SIGHT: Sight = { round: QUARTER / 2, up: CORNER };

export function axesOf({ round, up }: Sight): Axes {
  const [c, s] = [Math.cos(round), Math.sin(round)];
  const level: Vec3 = [s, c, 0];
  const right: Vec3 = [-c, s, 0];
  const towards = plus(times(Math.cos(up), level), [0, 0, Math.sin(up)]);
  return { right, up: cross(towards, right), towards };
}

/** Turned on by angles, rad; straight above and straight below are the ends. */
export const turnedBy = (sight: Sight, round: number, up: number): Sight => ({
  round: Math.atan2(Math.sin(sight.round + round), Math.cos(sight.round + round)),
  up: Math.min(QUARTER, Math.max(-QUARTER, sight.up + up)),
});

const COMPASS = [
  'left',
  'left and ahead',
  'ahead',
  'right and ahead',
  'right',
  'right and behind',
  'behind',
  'left and behind',
];

/** "From the left and ahead, 35° above". */
export function sightWords({ round, up }: Sight): string {
  const degrees = Math.round(up / DEGREE);
  if (degrees === 90) return 'From straight above';
  if (degrees === -90) return 'From straight below';
  const eighth = Math.round(round / (Math.PI / 4));
  const side = COMPASS[(eighth + 8) % 8] ?? '';
  const level = degrees === 0 ? '' : `, ${Math.abs(degrees)}° ${degrees > 0 ? 'above' : 'below'}`;
  return `From ${/^(left|right)/.test(side) ? 'the ' : ''}${side}${level}`;
}

/** A place of the vehicle, mm, on the screen, px from the upper left. */
export function placeOn({ axes, centre, scale, width, height }: Framing, at: Vec3): readonly [number, number] {
  const from = minus(at, centre);
  return [width / 2 + dot(from, axes.right) / scale, height / 2 - dot(from, axes.up) / scale];
}

/** The box around parts; null for none. */
export function boxAround(parts: readonly SpacePart[]): { readonly least: Vec3; readonly most: Vec3 } | null {
  const [first, ...others] = parts;
  if (!first) return null;
  const pick = (a: Vec3, b: Vec3, of: (x: number, y: number) => number): Vec3 => [
    of(a[0], b[0]),
    of(a[1], b[1]),
    of(a[2], b[2]),
  ];
  return others.reduce<{ readonly least: Vec3; readonly most: Vec3 }>(
    (box, part) => ({ least: pick(box.least, part.least, Math.min), most: pick(box.most, part.most, Math.max) }),
    first,
  );
}

/** Room left round the picture. */
const MARGIN = 1.06;

/** mm for a px at which parts fit a frame as they are seen from somewhere, the middle of their box in its own middle. */
export function scaleToFit(parts: readonly SpacePart[], axes: Axes, width: number, height: number): number {
  const box = boxAround(parts);
  if (!box) return 1;
  const middle = times(0.5, plus(box.least, box.most));
  let [wide, tall] = [1e-3, 1e-3];
  for (const { least, most } of parts)
    for (const x of [least[0], most[0]])
      for (const y of [least[1], most[1]])
        for (const z of [least[2], most[2]]) {
          const from = minus([x, y, z], middle);
          wide = Math.max(wide, 2 * Math.abs(dot(from, axes.right)));
          tall = Math.max(tall, 2 * Math.abs(dot(from, axes.up)));
        }
  return MARGIN * Math.max(wide / width, tall / height);
}

/** A plane of the vehicle in which something is moved. */
export interface MovePlane {
  /** "Forward and up". */
  readonly title: string;
  readonly right: Vec3;
  readonly up: Vec3;
}

const PLANES: readonly MovePlane[] = [
  { title: 'Forward and up', right: [-1, 0, 0], up: [0, 0, 1] },
  { title: 'Forward and to the left', right: [-1, 0, 0], up: [0, -1, 0] },
  { title: 'To the left and up', right: [0, -1, 0], up: [0, 0, 1] },
];
/** Below this a shaft or a plane is seen too nearly end on to be followed. */
const END_ON = 0.2;

/**
 * The plane of the vehicle that is seen most squarely, of those in which a thing can be moved: whole lengths stay whole however the picture is
 * turned. Null where a part on a shaft is seen end on.
 */
export function planeFacing({ right, up, towards }: Axes, placed: Placed): MovePlane | null {
  const { station } = placed;
  if (station && Math.hypot(dot(station.along, right), dot(station.along, up)) < END_ON) return null;
  const squarely = (plane: MovePlane): number => Math.abs(dot(towards, cross(plane.right, plane.up)));
  return PLANES.filter((plane) => movesIn(placed, plane.right, plane.up)).reduce<MovePlane | null>(
    (best, plane) => (best === null || squarely(plane) > squarely(best) + 1e-9 ? plane : best),
    null,
  );
}

/** The move in a plane of the vehicle that looks like a move across the picture, so that a part stays under the pointer. */
export function intoPlane({ right, up }: Axes, plane: MovePlane, by: Vec3): Vec3 {
  const [a, b] = [dot(plane.right, right), dot(plane.up, right)];
  const [c, d] = [dot(plane.right, up), dot(plane.up, up)];
  const area = a * d - b * c;
  if (Math.abs(area) < 1e-6) return [0, 0, 0];
  const [x, y] = [dot(by, right), dot(by, up)];
  return plus(times((x * d - b * y) / area, plane.right), times((a * y - x * c) / area, plane.up));
}

/** A step of a key as the same length along whichever direction of the plane it looks most like. */
export function stepInPlane(axes: Axes, plane: MovePlane, by: Vec3): Vec3 {
  const likeness = (way: Vec3): number => {
    const [x, y] = [dot(way, axes.right), dot(way, axes.up)];
    return (dot(by, axes.right) * x + dot(by, axes.up) * y) / Math.max(1e-9, Math.hypot(x, y));
  };
  const [one, other] = [likeness(plane.right), likeness(plane.up)];
  const [way, like] = Math.abs(one) >= Math.abs(other) ? [plane.right, one] : [plane.up, other];
  return times(Math.sign(like) * norm(by), way);
}
