import type { Solid } from '@oddwheel/mechanics/clearance/solid';
import { minus, norm } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Body, KeepOut, Space, Tube } from '../../model/model.ts';
import { type Part, still } from './part.ts';

/** Round or square tubes alike: a square one stands with two sides as upright as it can. */
function tubeSolid({ from, to, size }: Tube): Solid {
  const line = minus(to, from);
  const reach: Vec3 = [size / 2, size / 2, size / 2];
  const length = norm(line);
  if (length === 0)
    return { shape: 'box', low: minus(from, reach), high: minus(from, [-reach[0], -reach[1], -reach[2]]) };
  const upright = Math.abs(line[2]) > 0.999 * length;
  return {
    shape: 'bar',
    from,
    to,
    across: upright ? [1, 0, 0] : [0, 0, 1],
    halfHeight: size / 2,
    halfWidth: size / 2,
    sag: 0,
  };
}

const boxOf = ({ least, most }: KeepOut): Solid => ({ shape: 'box', low: least, high: most });

/** Tubes, keep-outs and room for tools. */
export function spaceParts(
  space: Space,
  carried: (body: Body, solids: readonly Solid[]) => Part['at'] | null,
): readonly Part[] {
  const part = (role: Part['role'], of: Tube | KeepOut, solid: Solid): Part => {
    const onArm = carried(of.body, [solid]);
    return {
      role,
      name: of.name,
      address: of.address,
      // What the arm carries moves against the rest, and is an element of its own.
      element: onArm && role !== 'access' ? of.address : null,
      bodies: [of.body],
      lines: [],
      stage: null,
      at: onArm ?? still([solid]),
      largest: null,
      swings: onArm !== null,
      growth: 0,
    };
  };
  return [
    ...space.tubes.map((tube) => part('tube', tube, tubeSolid(tube))),
    ...space.keepOuts.map((box) => part(box.kind === 'solid' ? 'solid' : 'access', box, boxOf(box))),
  ];
}
