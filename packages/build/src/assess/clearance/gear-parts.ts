import { bevelGeometry } from '@oddwheel/mechanics/bevel/geometry';
import type { Frustum, Solid } from '@oddwheel/mechanics/clearance/solid';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot, minus, plus, times, unit } from '@oddwheel/mechanics/numerics/vector';
import { spurGeometry } from '@oddwheel/mechanics/spur/geometry';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Stage } from '../../model/model.ts';
import type { StageGeometry } from '../geometry/types.ts';
import type { StageEnd } from './chain-parts.ts';
import { disc } from './loop.ts';
import type { Envelopes, Part } from './part.ts';
import type { UnknownSize } from './types.ts';

type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** Depth of a tooth below the pitch line, in modules. */
const ROOT = 1.25;

/** One cone of a bevel pair: pitch angle, outer cone distance, module, face width. */
interface Cone {
  readonly angle: number;
  readonly distance: number;
  readonly module: number;
  readonly face: number;
}

/**
 * A bevel gear from its tips: small end to large end, and the back cone from there to the root. The hub behind is not in the build.
 * @param out unit vector from the apex along the shaft to the gear
 */
function bevelSolids(apex: Vec3, out: Vec3, { angle, distance, module, face }: Cone): readonly Solid[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const small = (distance - face) / distance;
  const at = (along: number): Vec3 => plus(apex, times(along, out));
  // Tips stand one module out of the pitch cone, square to it, and less toward the apex.
  const tip = { along: distance * c - module * s, radius: distance * s + module * c };
  const toe = { along: small * tip.along, radius: small * tip.radius };
  const root = { along: distance * c + ROOT * module * s, radius: distance * s - ROOT * module * c };
  const cone = (a: typeof tip, b: typeof tip): Frustum[] =>
    b.along > a.along
      ? [
          {
            shape: 'frustum',
            from: at(a.along),
            to: at(b.along),
            radiusFrom: Math.max(0, a.radius),
            radiusTo: Math.max(0, b.radius),
          },
        ]
      : [];
  return [...cone(toe, tip), ...cone(tip, root)];
}

/** The two gears of a pair; an uncertain module or face width counts at its larger end. */
export function gearParts(
  stage: GearStage,
  geometry: StageGeometry,
  index: number,
  ends: readonly [StageEnd, StageEnd],
): Envelopes {
  const unknown = (address: string, says: string): UnknownSize => ({
    name: stage.name,
    element: stage.address,
    address,
    says,
  });
  if (!stage.module) return { parts: [], unknown: [unknown(`${stage.address}/module`, `the module of ${stage.name}`)] };
  const part = (end: StageEnd, solids: readonly Solid[]): Part => ({
    role: 'gear',
    name: end.seat.name,
    address: end.seat.address,
    element: stage.address,
    bodies: end.bodies,
    lines: [end.line],
    stage: index,
    at: end.carry(solids),
    largest: null,
    swings: end.swings,
    growth: 0,
  });
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  if (stage.kind === 'spur') {
    const sizes = spurGeometry.run({ teethDriver, teethDriven, module: stage.module.hi });
    const face = stage.faceWidth?.hi ?? null;
    const parts = ends.flatMap((end, k): Part[] => {
      const width = Math.max(face ?? 0, end.seat.width ?? 0);
      const outside = k === 0 ? sizes.outsideDiameterDriver : sizes.outsideDiameterDriven;
      const axis = k === 0 ? geometry.from.direction : geometry.to.direction;
      return width === 0 ? [] : [part(end, [disc(end.seat.at, axis, outside / 2, width / 2)])];
    });
    return parts.length === 2
      ? { parts, unknown: [] }
      : { parts, unknown: [unknown(`${stage.address}/faceWidth`, `the face width of ${stage.name}`)] };
  }
  if (!stage.faceWidth)
    return { parts: [], unknown: [unknown(`${stage.address}/faceWidth`, `the face width of ${stage.name}`)] };
  const { bevel } = geometry;
  if (!bevel) return { parts: [], unknown: geometry.trouble.map(({ address, says }) => unknown(address, says)) };
  const module = stage.module.hi;
  const face = stage.faceWidth.hi;
  try {
    const { shaftAngle } = bevel;
    const sizes = bevelGeometry.run({ teethDriver, teethDriven, shaftAngle, module, faceWidth: face });
    const cones = [sizes.pitchAngleDriver, sizes.pitchAngleDriven];
    const parts = ends.map((end, k) => {
      const { direction } = k === 0 ? geometry.from : geometry.to;
      const out = unit(times(dot(minus(end.seat.at, bevel.apex), direction) >= 0 ? 1 : -1, direction));
      const cone = { angle: cones[k] ?? 0, distance: sizes.outerConeDistance, module, face };
      return part(end, bevelSolids(bevel.apex, out, cone));
    });
    return { parts, unknown: [] };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return { parts: [], unknown: [unknown(stage.address, `a bevel pair that can be built: ${error.message}`)] };
  }
}
