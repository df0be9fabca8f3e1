/**
 * Contact ellipse of a bevel pair in outer modules: the ground for both geometry factors (Coleman, by way of ANSI/AGMA 2003).
 */

/** A bevel pair in outer modules, smaller gear first. */
export interface EllipsePair {
  readonly teeth: readonly [number, number];
  readonly pitchAngles: readonly [number, number];
  /** Face width over outer module. */
  readonly face: number;
  /** Mean spiral angle; 0 for straight teeth. */
  readonly spiral: number;
  readonly pressureAngle: number;
  /** Edge radius of the tool over outer module. */
  readonly edge: number;
}

type Two = readonly [number, number];

export interface Ellipse {
  readonly outerCone: number;
  readonly meanCone: number;
  readonly kappa: number;
  readonly addenda: Two;
  readonly meanDedenda: Two;
  /** Pitch radius of the equivalent gear, and its base radius. */
  readonly rn: Two;
  readonly rb: Two;
  readonly meanRadius: Two;
  readonly zr: number;
  readonly za: number;
  readonly zn: number;
  readonly pn: number;
  readonly cosBase: number;
  readonly sinBase: number;
  readonly eta: number;
  readonly contactRatio: number;
  readonly inertia: number;
}

const both = (f: (k: 0 | 1) => number): Two => [f(0), f(1)];

/** Outer addenda of the usual proportions, smaller gear first, and the whole depth. */
function depths({ teeth, pitchAngles, spiral }: EllipsePair): { readonly addenda: Two; readonly whole: number } {
  const q = (teeth[1] * Math.cos(pitchAngles[0])) / (teeth[0] * Math.cos(pitchAngles[1]));
  if (spiral === 0) {
    const gear = 0.54 + 0.46 / q;
    return { addenda: [2 - gear, gear], whole: 2.188 };
  }
  const gear = 0.46 + 0.39 / q;
  return { addenda: [1.7 - gear, gear], whole: 1.888 };
}

/** Mean section, length of action and ellipse of a pair. */
export function contactEllipse(pair: EllipsePair): Ellipse {
  const { teeth, pitchAngles, face, spiral, pressureAngle } = pair;
  const outerCone = teeth[0] / (2 * Math.sin(pitchAngles[0]));
  const meanCone = outerCone - face / 2;
  const kappa = meanCone / outerCone;
  const { addenda, whole } = depths(pair);
  const dedenda = both((k) => whole - addenda[k]);
  const slope = both((k) => dedenda[k] / outerCone);
  const meanAddenda = both((k) => addenda[k] - 0.5 * face * slope[k === 0 ? 1 : 0]);
  const meanDedenda = both((k) => dedenda[k] - 0.5 * face * slope[k]);
  const cosSpiral = Math.cos(spiral);
  const meanRadius = both((k) => (kappa * teeth[k]) / 2);
  const rn = both((k) => meanRadius[k] / (Math.cos(pitchAngles[k]) * cosSpiral ** 2));
  const rb = both((k) => rn[k] * Math.cos(pressureAngle));
  const action = both(
    (k) => Math.sqrt((rn[k] + meanAddenda[k]) ** 2 - rb[k] ** 2) - rn[k === 0 ? 0 : 1] * Math.sin(pressureAngle),
  );
  const [zr, za] = action;
  const zn = zr + za;
  const pn = Math.PI * kappa * cosSpiral * Math.cos(pressureAngle);
  const cosBase = Math.cos(pressureAngle) * Math.sqrt(Math.tan(pressureAngle) ** 2 + cosSpiral ** 2);
  const sinBase = Math.sqrt(Math.max(0, 1 - cosBase ** 2));
  const straight = spiral === 0;
  const eta = straight ? zn : Math.sqrt(zn ** 2 * cosBase ** 4 + face ** 2 * sinBase ** 2);
  const profile = straight ? zn / pn : (zn * cosBase ** 2) / pn;
  const part = face / outerCone;
  const k = (part * (2 - part)) / (2 * (1 - part));
  const lengthwise = ((k * Math.tan(spiral) - (k ** 3 * Math.tan(spiral) ** 3) / 3) * outerCone) / Math.PI;
  const contactRatio = Math.hypot(profile, lengthwise);
  return {
    outerCone,
    meanCone,
    kappa,
    addenda,
    meanDedenda,
    rn,
    rb,
    meanRadius,
    zr,
    za,
    zn,
    pn,
    cosBase: straight ? 1 : cosBase,
    sinBase: straight ? 0 : sinBase,
    eta,
    contactRatio,
    inertia: Math.max(1, 2 / contactRatio),
  };
}

/** Width of the ellipse left and right of a line of contact that stands `f` off the middle. */
export const widthAt = ({ eta }: Ellipse, f: number): number => Math.sqrt(Math.max(0, eta ** 2 - 4 * f ** 2));

/** Part of the load on the line of contact at `f`. */
export function loadShare(ellipse: Ellipse, f: number): number {
  const { eta, pn } = ellipse;
  const own = widthAt(ellipse, f) ** 3;
  let all = own;
  for (let k = 1; k * pn < eta + Math.abs(f) * 2; k++)
    for (const sign of [1, -1]) {
      const left = eta ** 2 - 4 * f ** 2 - 4 * k * pn * (k * pn + sign * 2 * f);
      all += Math.max(0, left) ** 1.5;
    }
  return all > 0 ? own / all : 1;
}

/** Distance of the line of contact at `f` from the pitch point, along the action. */
export const fromPitch = ({ zn, eta, zr, za }: Ellipse, f: number): number => (zn ** 2 * f) / eta ** 2 + (zr - za) / 2;
