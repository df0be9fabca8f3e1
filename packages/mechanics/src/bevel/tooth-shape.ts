import { type Ellipse, type EllipsePair, fromPitch, loadShare, widthAt } from './contact-ellipse.ts';

const inv = (angle: number): number => Math.tan(angle) - angle;
const SCAN = 32;
const THIRDS = 24;

/** Where a function is least over an interval: by a scan, then closer by thirds. */
function whereLeast(f: (x: number) => number, from: number, to: number): number {
  const step = (to - from) / SCAN;
  let best = from;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= SCAN; k++) {
    const y = f(from + k * step);
    if (y < least) [best, least] = [from + k * step, y];
  }
  let [a, b] = [Math.max(from, best - step), Math.min(to, best + step)];
  for (let k = 0; k < THIRDS; k++) {
    const [c, d] = [a + (b - a) / 3, b - (b - a) / 3];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  const near = (a + b) / 2;
  return f(near) < least ? near : best;
}

/** The least value of a function over an interval. */
export const leastOf = (f: (x: number) => number, from: number, to: number): number => f(whereLeast(f, from, to));

/** Weakest section of a tooth under a load on its centre-line at a radius. */
interface Section {
  readonly height: number;
  readonly half: number;
  readonly lewis: number;
}

/** Root fillet as a rack cuts it, and the section where a parabola from the load touches it. */
function weakest(rn: number, dedendum: number, edge: number, phi: number, thickness: number, load: number): Section {
  const deep = dedendum - edge;
  const offset = thickness / 2 + deep * Math.tan(phi) + edge / Math.cos(phi);
  const at = (angle: number): Section => {
    const [nx, ny] = [-Math.cos(angle), -Math.sin(angle)];
    const [px, py] = [offset + edge * nx, -deep + edge * ny];
    const x0 = px - (py * nx) / ny;
    const turned = x0 / rn;
    const half = (px - x0) * Math.cos(turned) + (rn + py) * Math.sin(turned);
    const height = load - (-(px - x0) * Math.sin(turned) + (rn + py) * Math.cos(turned));
    return { height, half, lewis: height > 0 ? half ** 2 / height : Number.POSITIVE_INFINITY };
  };
  return at(whereLeast((angle) => at(angle).lewis, phi, Math.PI / 2 - 1e-6));
}

/** Bending geometry factor of one gear (0 the smaller, 1 the larger) with the line of contact at `f`. */
export function bendingFactor(pair: EllipsePair, ellipse: Ellipse, k: 0 | 1, f: number): number {
  const { face, spiral, pressureAngle: phi, edge, pitchAngles } = pair;
  const { rn, rb, kappa, meanDedenda, addenda, zn, eta, sinBase, meanCone, meanRadius, inertia } = ellipse;
  const cosBase2 = ellipse.cosBase ** 2;
  const z = (k === 0 ? 1 : -1) * fromPitch(ellipse, f);
  const gearThickness = Math.PI / 2 - ((addenda[0] - addenda[1]) * Math.tan(phi)) / Math.cos(spiral);
  const thickness = (k === 1 ? gearThickness : Math.PI - gearThickness) * kappa * Math.cos(spiral);
  const radius = rn[k];
  const slope = (radius * Math.sin(phi) + z) / rb[k];
  const lean = slope - (thickness / (2 * radius) + inv(phi));
  const load = rb[k] / Math.cos(lean);
  const { height: h, half: t, lewis } = weakest(radius, meanDedenda[k], edge, phi, thickness, load);
  const fillet = (meanDedenda[k] - edge) ** 2 / (radius + meanDedenda[k] - edge) + edge;
  const concentration =
    0.331 - 0.436 * phi + ((2 * t) / fillet) ** (0.324 - 0.492 * phi) * ((2 * t) / h) ** (0.261 + 0.545 * phi);
  const shape = 2 / (3 * concentration * (1 / lewis - Math.tan(lean) / (3 * t)));
  const width = widthAt(ellipse, f);
  const loaded = spiral === 0 ? (face * width) / zn : (face * zn * width * cosBase2) / eta ** 2;
  const aside = (face - loaded) / (2 * Math.cos(spiral));
  const shift = (face ** 2 * sinBase * f) / eta ** 2;
  const [toe, heel] = [aside + shift / Math.cos(spiral), aside - shift / Math.cos(spiral)];
  const sides = toe < 0 ? [0, 2 * aside] : heel < 0 ? [2 * aside, 0] : [toe, heel];
  const effective = h * Math.cos(spiral) * (Math.atan((sides[0] ?? 0) / h) + Math.atan((sides[1] ?? 0) / h)) + loaded;
  const reach = (1 + ((load - radius) * Math.cos(pitchAngles[k])) / meanRadius[k]) * ((meanCone + shift) / meanCone);
  return (shape / (loadShare(ellipse, f) * inertia)) * reach * (effective / face) * kappa;
}

/** Contact geometry factor with the line of contact at `f`; infinite where nothing touches. */
export function contactFactor(pair: EllipsePair, ellipse: Ellipse, f: number): number {
  const { pressureAngle: phi, spiral, teeth } = pair;
  const { rn, eta, zn, cosBase, inertia, kappa } = ellipse;
  const z = fromPitch(ellipse, f);
  const [one, two] = [rn[0] * Math.sin(phi) + z, rn[1] * Math.sin(phi) - z];
  if (!(one > 0 && two > 0)) return Number.POSITIVE_INFINITY;
  // Length of the line of contact over the face width.
  const length = (zn * cosBase * widthAt(ellipse, f)) / eta ** 2;
  if (!(length > 0)) return Number.POSITIVE_INFINITY;
  const curve = (one * two) / (one + two);
  return (length * curve * Math.cos(spiral) * Math.cos(phi) * kappa) / (teeth[0] * inertia * loadShare(ellipse, f));
}
