import { minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SpacePart } from '@oddwheel/sheets/space-parts';
import type { JSX } from 'react';
import { belongsTo } from '../layout/parts.ts';
import { type Axes, type Framing, placeOn } from './sight.ts';

/** Where the three ways are drawn, px from the lower left, and how long. */
const WAYS_AT = { right: 96, up: 62, long: 40 } as const;
const WAYS: readonly { readonly name: string; readonly way: Vec3 }[] = [
  { name: 'forward', way: [1, 0, 0] },
  { name: 'left', way: [0, 1, 0] },
  { name: 'up', way: [0, 0, 1] },
];
/** A way seen more end on than this has no room for its name. */
const SHORTEST = 0.25;
/** Room that a name takes, px. */
const [LETTER, LINE] = [7, 18];

interface Named {
  readonly of: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** The end of a shaft that is nearer to whoever looks, as far as its box says. */
function nearEnd({ least, most }: SpacePart, { towards }: Axes): Vec3 {
  const long = minus(most, least);
  const axis = ([0, 1, 2] as const).reduce((best, k) => (long[k] > long[best] ? k : best), 0);
  const middle = times(0.5, plus(least, most));
  const end = towards[axis] >= 0 ? most[axis] : least[axis];
  return [axis === 0 ? end : middle[0], axis === 1 ? end : middle[1], axis === 2 ? end : middle[2]];
}

/** Names of the shafts; one that another stands in the way of is left out. */
function namesOf(
  parts: readonly SpacePart[],
  framing: Framing,
  by: Vec3 | null,
  chosen: string | null,
): readonly Named[] {
  const placed: Named[] = [];
  for (const part of parts) {
    if (part.of !== part.moves) continue;
    const goes = by !== null && chosen !== null && belongsTo(part, chosen);
    const at = plus(nearEnd(part, framing.axes), goes ? times(1000, by) : [0, 0, 0]);
    const [x, y] = placeOn(framing, at);
    const inside = x > 0 && y > LINE && x < framing.width - LETTER * part.name.length && y < framing.height;
    const free = placed.every(
      (other) =>
        Math.abs(other.y - y) > LINE ||
        x > other.x + LETTER * other.name.length ||
        other.x > x + LETTER * part.name.length,
    );
    if (inside && free) placed.push({ of: part.of, name: part.name, x: x + 6, y: y - 6 });
  }
  return placed;
}

/** Lettering over the picture: the shafts by name, and which way is forward, left and up. */
export function SpaceNames(props: {
  readonly parts: readonly SpacePart[];
  readonly framing: Framing;
  readonly by: Vec3 | null;
  readonly chosen: string | null;
}): JSX.Element {
  const { parts, framing, by, chosen } = props;
  const { axes, width, height } = framing;
  const [x, y] = [WAYS_AT.right, height - WAYS_AT.up];
  const flat: Framing = { axes, centre: [0, 0, 0], scale: 1, width: 0, height: 0 };
  return (
    <svg className="space-names" width={width} height={height} aria-hidden="true">
      {namesOf(parts, framing, by, chosen).map((one) => (
        <text key={one.of} x={one.x} y={one.y} className={one.of === chosen ? 'chosen' : ''}>
          {one.name}
        </text>
      ))}
      {WAYS.map(({ name, way }) => {
        const [right, down] = placeOn(flat, way);
        const seen = norm([right, down, 0]);
        if (seen < SHORTEST) return null;
        const tip: readonly [number, number] = [x + right * WAYS_AT.long, y + down * WAYS_AT.long];
        const label: readonly [number, number] = [tip[0] + (right / seen) * 10, tip[1] + (down / seen) * 10];
        return (
          <g key={name}>
            <path d={`M${x} ${y}L${tip[0]} ${tip[1]}`} />
            <path className="tip" d={arrowhead(tip, right / seen, down / seen)} />
            <text
              x={label[0]}
              y={label[1] + 4}
              textAnchor={right / seen > 0.4 ? 'start' : right / seen < -0.4 ? 'end' : 'middle'}
              className="note"
            >
              {name}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const arrowhead = ([x, y]: readonly [number, number], right: number, down: number): string =>
  `M${x + right * 4} ${y + down * 4}L${x - right * 5 - down * 2.5} ${y - down * 5 + right * 2.5}L${x - right * 5 + down * 2.5} ${y - down * 5 - right * 2.5}Z`;
