import type { PathElement, Spread, Use } from '@oddwheel/build/assess/types';
import { type Shown, show } from '../numbers/shown.ts';

/** One row of the path's table: its name, and what it says of each element. */
export interface PathRow {
  readonly name: string;
  /** Stays when the strip is folded. */
  readonly always: boolean;
  readonly of: (element: PathElement) => PathCell | null;
}

export type PathCell =
  | { readonly teeth: string | null; readonly ratio: Shown | null }
  | { readonly shown: Shown; readonly word: string };

const isLine = (element: PathElement): boolean => ['engine', 'gearbox', 'shaft'].includes(element.kind);

/** Whether a column is a stage: what stands between two shafts. */
export const isStage = (element: PathElement): boolean => !isLine(element) && element.kind !== 'ground';

/**
 * The rows of the path's table above the reserves.
 *
 * @param units unit choice of the build
 */
export function pathRows(units: Readonly<Record<string, string>>): readonly PathRow[] {
  const number = (spread: Spread | null, use: Use, word = '', of = units): PathCell | null =>
    spread === null ? null : { shown: show(spread, use, of, 3), word };
  return [
    {
      name: 'speed or teeth',
      always: true,
      of: (element) => {
        if (isLine(element)) return number(element.here.angularSpeed, 'angularSpeed');
        if (element.kind === 'ground') return number(element.here.lineSpeed, 'speed');
        if (element.teeth === null && element.ratio === null) return null;
        return { teeth: element.teeth, ratio: element.ratio && show(element.ratio, 'number', units) };
      },
    },
    {
      name: 'torque or line speed',
      always: true,
      of: (element) => {
        if (isLine(element)) return number(element.here.torque, 'torque');
        if (element.kind === 'ground') return number(element.here.force, 'force', 'pull');
        // A chain's speed is said in m/s wherever it is rated.
        return number(element.here.lineSpeed, 'speed', '', { speed: 'm/s' });
      },
    },
    {
      name: 'power or pull',
      always: false,
      of: (element) =>
        isStage(element) ? number(element.here.force, 'force', 'pull') : number(element.here.power, 'power'),
    },
  ];
}
