import type { BesideRow } from '@oddwheel/build/assess/beside';
import { table } from '../table.ts';
import { reserveText } from './numbers.ts';

/** Another build put beside the one that is checked. */
export interface Beside {
  readonly name: string;
  readonly rows: readonly BesideRow[];
}

/** The lowest reserves of two builds, check by check, as lines of the report. */
export function besideLines({ name, rows }: Beside): string[] {
  return [
    '',
    `Beside ${name}, lowest reserve of each`,
    '',
    ...(rows.length === 0
      ? ['The two builds have no check in common that gives a number.']
      : table(
          [
            { title: 'Check' },
            { title: 'Here', align: 'right' },
            { title: 'at' },
            { title: 'There', align: 'right' },
            { title: 'at' },
          ],
          rows.map(({ title, here, there }) => [
            title,
            reserveText(here.reserve),
            here.element,
            reserveText(there.reserve),
            there.element,
          ]),
        )),
  ];
}
