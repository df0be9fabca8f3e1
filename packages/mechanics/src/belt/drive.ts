import { MethodError } from '../method/method.ts';

/** Radius of the pitch line of a toothed pulley: the belt bends on a circle. */
export function pitchRadius(pitch: number, teeth: number): number {
  return (pitch * teeth) / (2 * Math.PI);
}

/** Length of the pitch line of a taut open belt. */
export function lengthOver(radiusDriver: number, radiusDriven: number, centreDistance: number, angle: number): number {
  return (
    2 * centreDistance * Math.cos(angle) + radiusDriver * (Math.PI - 2 * angle) + radiusDriven * (Math.PI + 2 * angle)
  );
}

/**
 * @throws MethodError when the pitch circles would touch.
 */
export function refuseOverlap(
  method: string,
  radiusDriver: number,
  radiusDriven: number,
  centreDistance: number,
): void {
  const needed = radiusDriver + radiusDriven;
  if (centreDistance > needed) return;
  throw new MethodError(
    method,
    'centreDistance',
    `The pulleys overlap: their pitch circles need a centre distance of more than ${needed} m; read ${centreDistance} m.`,
  );
}
