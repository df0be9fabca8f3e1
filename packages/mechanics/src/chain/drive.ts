import { MethodError } from '../method/method.ts';

/** Radius of the circle through the pins, in the unit of the pitch. */
export function pitchRadius(pitch: number, teeth: number): number {
  return pitch / (2 * Math.sin(Math.PI / teeth));
}

/** Radius over the tooth tips by ASME B29.1: half of p (0.6 + cot(180°/N)). */
export function tipRadius(pitch: number, teeth: number): number {
  return (pitch * (0.6 + 1 / Math.tan(Math.PI / teeth))) / 2;
}

/** Angle between a straight span and the line of centres; positive when the driven sprocket is the larger. */
export function tangentAngle(radiusDriver: number, radiusDriven: number, centreDistance: number): number {
  return Math.asin((radiusDriven - radiusDriver) / centreDistance);
}

/** Links of a taut chain, not rounded; the arcs count in pitches, since the chain lies on polygons. */
export function linksOver(
  pitch: number,
  teethDriver: number,
  teethDriven: number,
  centreDistance: number,
  angle: number,
): number {
  return (
    (2 * centreDistance * Math.cos(angle)) / pitch +
    (teethDriver * (Math.PI - 2 * angle)) / (2 * Math.PI) +
    (teethDriven * (Math.PI + 2 * angle)) / (2 * Math.PI)
  );
}

/**
 * @param input the input to name in the error
 * @throws MethodError when the tooth tips of the two sprockets would touch.
 */
export function refuseOverlap(
  method: string,
  pitch: number,
  teethDriver: number,
  teethDriven: number,
  centreDistance: number,
  input = 'centreDistance',
): void {
  const needed = tipRadius(pitch, teethDriver) + tipRadius(pitch, teethDriven);
  if (centreDistance > needed) return;
  throw new MethodError(
    method,
    input,
    `The sprockets overlap: their tooth tips need a centre distance of more than ${needed} m; read ${centreDistance} m.`,
  );
}
