import type { Point } from './drawing.ts';

/** A wheel that a chain or belt runs round, in the plane of the loop. */
export interface LoopWheel {
  readonly centre: Point;
  /** Radius of the pitch line. */
  readonly radius: number;
  readonly teeth: number;
  /** +1: the loop turns counterclockwise round it, as it does as a whole; −1 for a wheel outside the loop. */
  readonly turn: 1 | -1;
}

/** Slack that hangs in one span: index of the wheel that the span leaves, and the direction in which it hangs. */
export interface Hang {
  readonly after: number;
  readonly towards: Point;
}

export interface LoopPath {
  /** One point a pitch. */
  readonly pins: readonly Point[];
  /** Angle of a pin about each wheel's centre, where the gap of its teeth lies, rad. */
  readonly gaps: readonly number[];
  /** Pitches that the wheels ask for, not rounded. */
  readonly needed: number;
}

const TURN = 2 * Math.PI;

interface Piece {
  readonly pitches: number;
  readonly at: (part: number) => Point;
  /** Wheel that it lies on. */
  readonly wheel: number | null;
}

const polar = ([x, y]: Point, radius: number, angle: number): Point => [
  x + radius * Math.cos(angle),
  y + radius * Math.sin(angle),
];

/** Heading of the straight span from one wheel to the next: it leaves and meets them square to their radii. */
function heading(from: LoopWheel, to: LoopWheel): number {
  const [dx, dy] = [to.centre[0] - from.centre[0], to.centre[1] - from.centre[1]];
  const apart = Math.hypot(dx, dy);
  return Math.atan2(dy, dx) + Math.asin((from.turn * from.radius - to.turn * to.radius) / apart);
}

const touch = (wheel: LoopWheel, angle: number): Point =>
  polar(wheel.centre, wheel.radius, angle - (wheel.turn * Math.PI) / 2);

/** Half the angle of a circular arc over a chord: sin α / α is chord over length. */
function halfAngle(ratio: number): number {
  let [low, high] = [0, Math.PI];
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (Math.sin(middle) / middle > ratio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A span as long as it is with what hangs in it: an arc of that length over its chord. */
function hanging(from: Point, to: Point, extra: number, towards: Point): (part: number) => Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const chord = Math.hypot(dx, dy);
  const alpha = halfAngle(chord / (chord + extra));
  const radius = chord / 2 / Math.sin(alpha);
  const out: Point = dx * towards[1] - dy * towards[0] >= 0 ? [-dy / chord, dx / chord] : [dy / chord, -dx / chord];
  return (part) => {
    const angle = (2 * part - 1) * alpha;
    const along = chord / 2 + radius * Math.sin(angle);
    const off = radius * (Math.cos(angle) - Math.cos(alpha));
    return [from[0] + (along * dx) / chord + off * out[0], from[1] + (along * dy) / chord + off * out[1]];
  };
}

/**
 * Lays a chain or belt round its wheels, counterclockwise, one pin a pitch.
 * On a wheel the pins lie a tooth apart, so that the arc counts in teeth, as a chain lies on polygons.
 * @param pitch in the unit of the centres
 * @param count pitches of the loop as fitted; null lays as many as fit
 * @param hang where more than is needed hangs; null spreads it evenly
 * @returns null where two wheels stand too close for a straight span
 */
export function layLoop(
  wheels: readonly LoopWheel[],
  pitch: number,
  count: number | null,
  hang: Hang | null,
): LoopPath | null {
  const next = (k: number): LoopWheel => wheels[(k + 1) % wheels.length] as LoopWheel;
  const headings = wheels.map((wheel, k) => heading(wheel, next(k)));
  if (headings.some((angle) => !Number.isFinite(angle))) return null;
  const spans = wheels.map((wheel, k) => {
    const angle = headings[k] ?? 0;
    const [from, to] = [touch(wheel, angle), touch(next(k), angle)];
    return { from, to, pitches: Math.hypot(to[0] - from[0], to[1] - from[1]) / pitch };
  });
  const arcs = wheels.map((wheel, k) => {
    const [before, after] = [headings.at(k - 1) ?? 0, headings[k] ?? 0];
    const turned = (wheel.turn * (after - before)) % TURN;
    const sweep = turned < 0 ? turned + TURN : turned;
    const start = before - (wheel.turn * Math.PI) / 2;
    return { start, sweep: wheel.turn * sweep, pitches: (sweep * wheel.teeth) / TURN };
  });
  const needed = [...spans, ...arcs].reduce((sum, { pitches }) => sum + pitches, 0);
  const fitted = count ?? Math.max(1, Math.round(needed));
  const extra = hang && fitted > needed ? fitted - needed : 0;
  const pieces = wheels.flatMap((wheel, k): Piece[] => {
    const [arc, span] = [arcs[k], spans[k]];
    if (!arc || !span) return [];
    const slack = hang?.after === k ? extra : 0;
    const straight = (part: number): Point => [
      span.from[0] + part * (span.to[0] - span.from[0]),
      span.from[1] + part * (span.to[1] - span.from[1]),
    ];
    return [
      {
        wheel: k,
        pitches: arc.pitches,
        at: (part) => polar(wheel.centre, wheel.radius, arc.start + part * arc.sweep),
      },
      {
        wheel: null,
        pitches: span.pitches + slack,
        at: hang && slack > 0 ? hanging(span.from, span.to, slack * pitch, hang.towards) : straight,
      },
    ];
  });
  return { ...placePins(wheels, pieces, fitted), needed };
}

function placePins(
  wheels: readonly LoopWheel[],
  pieces: readonly Piece[],
  count: number,
): Pick<LoopPath, 'pins' | 'gaps'> {
  const total = pieces.reduce((sum, { pitches }) => sum + pitches, 0);
  const step = total / count;
  const pins: Point[] = [];
  const gaps = wheels.map(() => 0);
  const met = new Set<number>();
  let [start, k] = [0, 0];
  for (const piece of pieces) {
    for (; k < count && k * step < start + piece.pitches; k += 1) {
      const pin = piece.at((k * step - start) / piece.pitches);
      pins.push(pin);
      const wheel = piece.wheel === null ? undefined : wheels[piece.wheel];
      if (wheel && piece.wheel !== null && !met.has(piece.wheel)) {
        met.add(piece.wheel);
        gaps[piece.wheel] = Math.atan2(pin[1] - wheel.centre[1], pin[0] - wheel.centre[0]);
      }
    }
    start += piece.pitches;
  }
  return { pins, gaps };
}
