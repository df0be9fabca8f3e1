import { dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { BODY_MOVEMENTS } from '@oddwheel/tables/body-movements';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Body, Model, Suspension } from '../../model/model.ts';
import { lineAngle } from '../geometry/place.ts';
import type { Missing } from '../types.ts';

/** How far a shaft on one body moves against one on another, each way from where both are drawn; SI. */
export interface Movement {
  readonly offset: number;
  readonly angle: number;
  readonly axial: number;
  /** "body-movements/engine to subframe". */
  readonly row: string;
  readonly source: string;
}

const ORDER: readonly Body[] = ['engine', 'subframe', 'vehicle frame', 'swinging arm'];

function keyOf(a: Body, b: Body): string {
  if (a === b) return 'one body';
  const [first, second] = ORDER.indexOf(a) < ORDER.indexOf(b) ? [a, b] : [b, a];
  return `${first} to ${second}`;
}

/** Turned about the cross axis of the vehicle. */
const turned = ([x, y, z]: Vec3, by: number): Vec3 => [
  x * Math.cos(by) + z * Math.sin(by),
  y,
  z * Math.cos(by) - x * Math.sin(by),
];

/** What the arm's swing alone does to a shaft end that it carries: a joint on the pivot's axis stays where it is. */
function swing({ pivot, bump, rebound }: Suspension, at: Vec3, direction: Vec3) {
  const out = minus(at, pivot);
  // Whether bump turns the arm one way or the other about its axis depends on where the wheel is: both ways count.
  const shifts = [bump, -bump, rebound, -rebound].map((by) => minus(turned(out, by), out));
  const along = (shift: Vec3) => dot(shift, direction);
  return {
    offset: Math.max(...shifts.map((shift) => norm(minus(shift, times(along(shift), direction))))),
    axial: Math.max(...shifts.map((shift) => Math.abs(along(shift)))),
    angle: lineAngle(direction, turned(direction, Math.max(bump, rebound))),
  };
}

const PLAYS = new Map<string, Movement>();

/** Row of the table alone: a swinging arm counts with the play of its pivot, not with its swing. */
export function playBetween(a: Body, b: Body): Movement {
  const key = keyOf(a, b);
  const known = PLAYS.get(key);
  if (known) return known;
  const found = playOf(key);
  PLAYS.set(key, found);
  return found;
}

function playOf(key: string): Movement {
  const { offset = Number.NaN, angle = Number.NaN, axial = Number.NaN } = rowInSi(BODY_MOVEMENTS, key);
  return { offset, angle, axial, row: `body-movements/${key}`, source: sourceOf(BODY_MOVEMENTS, key) };
}

/** Missing where one body is a swinging arm of which the build says nothing. */
export function swingMissing(model: Model, a: Body, b: Body): readonly Missing[] {
  return (a === 'swinging arm') !== (b === 'swinging arm') && model.suspension === null
    ? [{ address: '/brief/suspension', says: 'pivot, bump and rebound of the swinging arm' }]
    : [];
}

/**
 * Movement of a shaft's end on body `b` against body `a`, the arm's swing included.
 * @param at place of the joint, in vehicle axes
 * @param direction unit direction of the shaft
 * @returns null where {@link swingMissing} names what is missing
 */
export function movementBetween(model: Model, a: Body, b: Body, at: Vec3, direction: Vec3): Movement | null {
  const play = playBetween(a, b);
  if ((a === 'swinging arm') === (b === 'swinging arm')) return play;
  if (model.suspension === null) return null;
  const own = swing(model.suspension, at, direction);
  return {
    ...play,
    offset: play.offset + own.offset,
    angle: play.angle + own.angle,
    axial: play.axial + own.axial,
  };
}
