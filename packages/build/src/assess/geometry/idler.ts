import { chainIdlerLength } from '@oddwheel/mechanics/chain/idler-length';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { cross, dot, minus, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Idler, Seat, Shaft, Stage } from '../../model/model.ts';
import type { Action, IdlerGeometry, Used } from './types.ts';

/** Places are sums of figures: what is left below this is rounding, m. */
const NOISE = 1e-12;

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

export interface OnIdler {
  readonly geometry: IdlerGeometry;
  readonly used: Used;
  /** Direction in which the chain runs, on the span before the idler and after it, when the touched span runs onto the driver. */
  readonly beforeIdler: Vec3;
  readonly afterIdler: Vec3;
  /** Axis about which driver and driven then turn. */
  readonly axis: Vec3;
}

/**
 * An idler on one of the two spans of a chain. Which span it touches follows from its place alone.
 * @param u unit vector from driver to driven, square to the driver's shaft
 * @throws MethodError when it touches neither span, or runs into another part of the drive
 */
export function idlerGeometry(
  stage: ChainStage,
  idler: Idler,
  from: Shaft,
  driver: Seat,
  centreDistance: number,
  u: Vec3,
): OnIdler {
  const out = minus(idler.at, driver.at);
  const along = dot(out, u);
  const standsOff = dot(out, from.direction);
  const across = minus(minus(out, times(along, u)), times(standsOff, from.direction));
  const side = cross(from.direction, u);
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const solve = (v: Vec3) => {
    const input = {
      pitch: stage.size.pitch,
      teethDriver,
      teethDriven,
      centreDistance,
      teethIdler: idler.teeth,
      idlerAlong: along,
      idlerAcross: dot(across, v),
      idlerSide: idler.runs === 'inside the chain' ? ('inside' as const) : ('outside' as const),
    };
    return { v, input, output: chainIdlerLength.run(input) };
  };
  // An idler touches the span that it stands nearest to; one near the line of centres may reach the other.
  const near = dot(across, side) >= 0 ? side : times(-1, side);
  const { v, input, output } = orElse(
    () => solve(near),
    () => solve(times(-1, near)),
  );
  const heading = (angle: number): Vec3 => plus(times(Math.cos(angle), u), times(Math.sin(angle), v));
  const row = `chain-sizes/${stage.size.key}`;
  return {
    geometry: {
      span: v,
      teethInMesh: output.teethInMesh,
      wrap: output.wrapIdler,
      links: output.links,
      wrapDriver: output.wrapDriver,
      wrapDriven: output.wrapDriven,
      spanOther: output.spanOther,
      spanLonger: Math.max(output.spanDriver, output.spanDriven),
      planeOffset: Math.abs(standsOff) < NOISE ? 0 : Math.abs(standsOff),
    },
    used: {
      method: chainIdlerLength,
      input,
      output,
      origins: {
        pitch: row,
        teethDriver: `${stage.address}/teeth/driver`,
        teethDriven: `${stage.address}/teeth/driven`,
        centreDistance: 'above',
        teethIdler: `${idler.address}/teeth`,
        idlerAlong: `${idler.address}/at`,
        idlerAcross: `${idler.address}/at`,
        idlerSide: `${idler.address}/runs`,
      },
    },
    beforeIdler: heading(output.headingDriven),
    afterIdler: heading(output.headingDriver),
    axis: cross(u, v),
  };
}

/** The first that can be computed; the first one's complaint where neither can. */
function orElse<T>(first: () => T, second: () => T): T {
  try {
    return first();
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    try {
      return second();
    } catch {
      throw error;
    }
  }
}

/**
 * Actions of a chain whose tight span runs over an idler, per newton metre through each sprocket: the pull leaves each along its own part of
 * the span. Moments are about the seat points.
 */
export function bentActions(
  { beforeIdler, afterIdler, axis }: OnIdler,
  radiusDriver: number,
  radiusDriven: number,
): { readonly from: Action; readonly to: Action } {
  // Where the chain runs along d about an axis a, the radius points along d × a.
  const onDriver = times(-1 / radiusDriver, afterIdler);
  const onDriven = times(1 / radiusDriven, beforeIdler);
  return {
    from: { force: onDriver, moment: cross(times(radiusDriver, cross(afterIdler, axis)), onDriver) },
    to: { force: onDriven, moment: cross(times(radiusDriven, cross(beforeIdler, axis)), onDriven) },
  };
}

/** Whether the span that the idler touches is the tight one, when the driver turns about this axis. */
export function onTightSpan(span: Vec3, u: Vec3, turning: Vec3): boolean {
  return dot(cross(turning, u), span) > 0;
}
