import type { PathElement, Spread, Use } from '@oddwheel/build/assess/types';
import { type Shown, show } from '../numbers/shown.ts';

/** One row of the path's table: its name, and what it says of each element. */
export interface PathRow {
  readonly name: string;
  readonly of: (element: PathElement) => PathCell | null;
}

export type PathCell = { readonly teeth: string | null; readonly ratio: Shown | null } | { readonly shown: Shown };

const isStage = (element: PathElement): boolean => !['engine', 'gearbox', 'shaft', 'ground'].includes(element.kind);

/**
 * The rows of the path's table above the reserves.
 *
 * @param units unit choice of the build
 */
export function pathRows(units: Readonly<Record<string, string>>): readonly PathRow[] {
  const number = (spread: Spread | null, use: Use): PathCell | null =>
    spread === null ? null : { shown: show(spread, use, units, 3) };
  return [
    {
      name: 'teeth, ratio',
      of: (element) =>
        element.teeth === null && element.ratio === null
          ? null
          : { teeth: element.teeth, ratio: element.ratio && show(element.ratio, 'number', units) },
    },
    { name: 'speed', of: (element) => number(element.here.angularSpeed, 'angularSpeed') },
    { name: 'torque', of: (element) => number(element.here.torque, 'torque') },
    { name: 'power', of: (element) => (isStage(element) ? null : number(element.here.power, 'power')) },
    {
      name: 'line speed',
      of: (element) =>
        element.here.lineSpeed === null
          ? null
          : // A chain's speed is said in m/s wherever it is rated; a road speed as the build says it.
            { shown: show(element.here.lineSpeed, 'speed', element.kind === 'ground' ? units : { speed: 'm/s' }, 3) },
    },
    { name: 'pull', of: (element) => number(element.here.force, 'force') },
  ];
}
