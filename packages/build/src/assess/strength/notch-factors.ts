import { shaftNotch } from '@oddwheel/mechanics/shaft/notch';
import { shaftPressFit } from '@oddwheel/mechanics/shaft/press-fit';
import { shaftShoulder } from '@oddwheel/mechanics/shaft/shoulder';
import { SHAFT_NOTCHES } from '@oddwheel/tables/shaft-notches';
import { rowInSi } from '@oddwheel/tables/table';
import type { Used } from '../geometry/types.ts';
import type { ShaftNotch } from './notches.ts';

/** What a notch does to the fatigue strength of a section. */
export interface NotchFactors {
  readonly bending: number;
  readonly torsion: number;
  /** Part of the diameter that is left. */
  readonly core: number;
  readonly used: readonly Used[];
  /** Where the two factors come from, for a working: above it, or a row. */
  readonly origins: { readonly notchBending: string; readonly notchTorsion: string };
}

/** Threads of steels above this strength count as cut in strong steel. */
const STRONG_THREAD = 600e6;
/** Fillets that the fits for shoulders reach; a sharper one counts as the sharpest of them. */
const SHARPEST = 0.01;
const ROUNDEST = 0.3;
const LOADS = ['bending', 'torsion'] as const;
const ABOVE = { notchBending: 'above', notchTorsion: 'above' } as const;

interface NotchInput {
  readonly notch: ShaftNotch;
  /** At the root. */
  readonly radius: number | null;
  readonly diameter: number;
  /** Larger diameter of a step. */
  readonly large: number | null;
  readonly tensile: number;
  readonly tensileFrom: string;
}

function radiusOf(row: string, given: number | null, diameter: number): number {
  return given ?? (rowInSi(SHAFT_NOTCHES, row).radius ?? Number.NaN) * diameter;
}

/** Fatigue factors in bending and torsion of one notch, with the methods that gave them. */
export function notchFactors(input: NotchInput): NotchFactors {
  const { notch, diameter, tensile, tensileFrom } = input;
  if (notch.sort === 'press-fit') {
    const used = LOADS.map((load): Used => {
      const given = { tensile, load };
      return {
        method: shaftPressFit,
        input: given,
        output: shaftPressFit.run(given),
        origins: { tensile: tensileFrom },
      };
    });
    const [bending = 1, torsion = 1] = used.map(({ output }) => output.factor as number);
    return { bending, torsion, core: 1, used, origins: ABOVE };
  }
  const row = notch.sort === 'thread' ? (tensile < STRONG_THREAD ? 'thread-mild' : 'thread-strong') : notch.sort;
  const { bending = 1, torsion = 1, core = 1, radius } = rowInSi(SHAFT_NOTCHES, row);
  const from = `shaft-notches/${row}`;
  if (radius === undefined)
    return { bending, torsion, core, used: [], origins: { notchBending: from, notchTorsion: from } };
  const own = radiusOf(row, input.radius, diameter);
  const root = notch.sort === 'shoulder' ? Math.min(ROUNDEST * diameter, Math.max(SHARPEST * diameter, own)) : own;
  const radiusFrom = notch.radius && root === input.radius ? notch.radius.address : from;
  const used: Used[] = [];
  const factor = (load: (typeof LOADS)[number]): number => {
    let shape = load === 'bending' ? bending : torsion;
    if (notch.sort === 'shoulder' && input.large !== null) {
      const step = { large: input.large, small: diameter, radius: root, load };
      const output = shaftShoulder.run(step);
      used.push({
        method: shaftShoulder,
        input: step,
        output,
        origins: { large: 'diameters of the shaft', small: notch.address, radius: radiusFrom },
      });
      shape = Math.max(1, output.factor);
    }
    const given = { shape, radius: root, tensile, load };
    const output = shaftNotch.run(given);
    used.push({
      method: shaftNotch,
      input: given,
      output,
      origins: { shape: notch.sort === 'shoulder' ? 'above' : from, radius: radiusFrom, tensile: tensileFrom },
    });
    return output.factor;
  };
  const factors = { bending: factor('bending'), torsion: factor('torsion') };
  return { ...factors, core, used, origins: ABOVE };
}
