import type { Use } from '@oddwheel/build/assess/types';
import type { Effect, RankedTrain, RatioAnswer, SwapRow } from '@oddwheel/build/ratios/types';
import { CAUTION } from '../check/report.ts';
import { table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';

type Show = (use: Use, si: number) => string;

const wrapped = (text: string): string[] => wrap(plainLine(text), WIDTH);

/** "60 (+2)". */
function linksText({ stages }: Effect): string {
  return stages
    .flatMap(({ links, linksChange }) => {
      if (links === null) return [];
      if (linksChange === null || linksChange === 0) return [String(links)];
      return [`${links} (${linksChange > 0 ? '+' : '−'}${Math.abs(linksChange)})`];
    })
    .join(', ');
}

/** "axle slots 3.8 of 12 mm". */
function moveText({ stages }: Effect, show: Show): string {
  return stages
    .flatMap(({ move, fits, name }) => {
      if (!fits) return [`${name} does not fit`];
      if (!move || Math.abs(move.by) < 5e-6) return [];
      return [`${move.adjuster} ${show('length', move.by)} of ±${show('length', move.travel)}`];
    })
    .join(', ');
}

const OPENINGS: Readonly<Record<Effect['openings'], string>> = {
  pass: 'passes',
  'do not pass': 'does not pass',
  unknown: 'not known',
};

const stopsText = ({ stops }: Effect): string =>
  stops
    .filter(({ before }) => !before)
    .map(({ title, severity }) => `${title} ${severity}`)
    .join('; ');

const teethText = ({ pairs }: Effect): string => pairs.map(({ driver, driven }) => `${driver}:${driven}`).join('  ');

/** The windows of the targets, the best trains, and what each asks for. */
export function trainLines(answer: RatioAnswer, roadSpeed: number, show: Show): string[] {
  const { windows, trains, stages } = answer;
  const { band } = windows;
  const targets = windows.targets.map(({ key, says, least, most }) => [
    key,
    least === 0 ? '' : least.toFixed(3),
    Number.isFinite(most) ? most.toFixed(3) : '',
    says,
  ]);
  const row = (train: RankedTrain, k: number): string[] => {
    const last = train.gears.at(-1);
    return [
      String(k + 1),
      teethText(train),
      train.path.toFixed(3),
      last ? show('angularSpeed', last.engineSpeed) : '',
      train.gears[0]?.force == null ? '' : show('force', train.gears[0].force),
      linksText(train),
      train.toBuy.join(', '),
      [moveText(train, show), stopsText(train)].filter((text) => text !== '').join('; '),
    ];
  };
  return [
    'What the targets ask of the path, from gearbox output to wheel:',
    ...table(
      [
        { title: 'target' },
        { title: 'least', align: 'right' },
        { title: 'most', align: 'right' },
        { title: 'for', wraps: true },
      ],
      targets,
    ),
    '',
    ...windows.clashes.flatMap(({ first, second, says }) => wrapped(`Clash of ${first} and ${second}: ${says}`)),
    ...windows.open.flatMap(({ key, says }) => wrapped(`Target ${key} has no window: ${says}`)),
    ...(band === null ? [] : wrapped(`Looked for: ${band.low.toFixed(3)} to ${band.high.toFixed(3)}.`)),
    ...stages.flatMap(({ name, says }) => wrapped(`${name}: ${says}.`)),
    '',
    ...(trains.length === 0
      ? ['No train fits.']
      : table(
          [
            { title: '', align: 'right' },
            { title: 'teeth' },
            { title: 'ratio', align: 'right' },
            { title: `at ${show('speed', roadSpeed)}`, align: 'right' },
            { title: '1st pulls', align: 'right' },
            { title: 'links' },
            { title: 'to buy' },
            { title: 'notes', wraps: true },
          ],
          trains.map(row),
        )),
    '',
    ...wrapped(CAUTION),
  ];
}

/** What each sprocket would do in one place. */
export function swapLines(name: string, rows: readonly SwapRow[], roadSpeed: number, show: Show): string[] {
  const end = rows[0]?.end ?? 'driver';
  const cells = rows.map((row): string[] => [
    `${row.teeth}${row.drawn ? ' (drawn)' : ''}`,
    row.gears.map(({ overall }) => overall.toFixed(2)).join(', '),
    row.gears.map(({ engineSpeed }) => show('angularSpeed', engineSpeed).replace(/[^0-9]*$/u, '')).join(', '),
    row.gears[0]?.force == null ? '' : show('force', row.gears[0].force),
    linksText(row),
    OPENINGS[row.openings],
    row.onShelf === 0 ? '' : String(row.onShelf),
    [moveText(row, show), stopsText(row)].filter((text) => text !== '').join('; '),
  ]);
  return [
    `${name}, ${end}; engine rpm by gear at ${show('speed', roadSpeed)}:`,
    ...table(
      [
        { title: 'teeth' },
        { title: 'ratio by gear' },
        { title: 'rpm by gear' },
        { title: '1st pulls', align: 'right' },
        { title: 'links' },
        { title: 'openings' },
        { title: 'shelf', align: 'right' },
        { title: 'notes', wraps: true },
      ],
      cells,
    ),
    '',
  ];
}
