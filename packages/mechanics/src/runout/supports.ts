/** What the support of a part adds to its readings, and what can be taken out again. */
import type { Offset } from './adviser-types.ts';
import type { Harmonic } from './readings.ts';
import { vblockFactor } from './vblock-factor.ts';

/** A lobe count in V-blocks: corrected, or declared blind. */
export type InVBlock =
  | { readonly order: number; readonly sees: 'well' | 'poorly'; readonly factor: number; readonly true: Harmonic }
  | { readonly order: number; readonly sees: 'blind'; readonly factor: number };

/** Below this a V hides a lobe count; below 0.5 its correction doubles the noise or worse. */
const BLIND = 0.2;
const POORLY = 0.5;

/**
 * True size of each lobe count of a section that itself lies in a V, the indicator opposite the V.
 * The offset (order 1) is never seen: a section that turns in a V cannot show its own offset.
 * @param angle opening of the V, rad
 */
export function inVBlock(harmonics: readonly Harmonic[], angle: number): InVBlock[] {
  return harmonics.map((harmonic) => {
    const { order } = harmonic;
    const { factor } = vblockFactor.run({ angle, lobes: order });
    if (order === 1 || Math.abs(factor) < BLIND) return { order, sees: 'blind', factor };
    const cosine = harmonic.cosine / factor;
    const sine = harmonic.sine / factor;
    const turned = Math.atan2(sine, cosine) / order;
    const whole = (2 * Math.PI) / order;
    return {
      order,
      sees: Math.abs(factor) < POORLY ? 'poorly' : 'well',
      factor,
      true: {
        order,
        cosine,
        sine,
        amplitude: Math.hypot(cosine, sine),
        high: ((turned % whole) + whole) % whole,
        spread: harmonic.spread / Math.abs(factor),
      },
    };
  });
}

/**
 * Parts the run-out of chuck and part by measuring again with the part turned half a turn in the chuck.
 * @param first, turned offsets by the marks of the part, m
 */
export function chuckTurned(first: Offset, turned: Offset): { part: Offset; chuck: Offset } {
  return {
    part: { x: (first.x + turned.x) / 2, y: (first.y + turned.y) / 2 },
    chuck: { x: (first.x - turned.x) / 2, y: (first.y - turned.y) / 2 },
  };
}
