import type { ShaftLine } from '@oddwheel/build/assess/strength/shaft-lines';
import type { UnitChoice } from '@oddwheel/quantity/format';
import { formatFor } from '@oddwheel/quantity/format';
import { table } from '../table.ts';
import { reserveText } from './numbers.ts';

const orDash = (x: number | null): string => (x === null ? '-' : reserveText(x));

/** Each shaft along its length: what is left at each place, its reserves, and how thin it could be. */
export function shaftTables(lines: readonly ShaftLine[], units: UnitChoice): string[] {
  const length = (metres: number): string => formatFor(units, 'length', metres);
  return lines.flatMap((line) =>
    line.ok
      ? [
          '',
          `${line.name} along its length, over all cases`,
          '',
          ...table(
            [
              { title: 'Station', align: 'right' },
              { title: 'At' },
              { title: 'Diameter', align: 'right' },
              { title: 'Bends for good', align: 'right' },
              { title: 'Lasts for ever', align: 'right' },
              { title: 'Could be', align: 'right' },
            ],
            line.places.map(({ station, name, diameter, yieldReserve, fatigueReserve, least }) => [
              length(station),
              name,
              length(diameter),
              orDash(yieldReserve),
              orDash(fatigueReserve),
              least === null ? '-' : length(least),
            ]),
          ),
          ...(line.bearings.length === 0
            ? []
            : [
                '',
                ...table(
                  [{ title: 'Bearing' }, { title: 'Fitted' }, { title: 'Smallest that does' }],
                  line.bearings.map(({ name, row, smallest }) => [name, row ?? '-', smallest ?? '-']),
                ),
              ]),
        ]
      : ['', `${line.name}: not known. Missing: ${line.missing.map(({ says }) => says).join(', ')}.`],
  );
}
