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

/** What is to be said of the openings; nothing where all passes. */
const OPENINGS: Readonly<Record<Effect['openings'], string>> = {
  pass: '',
  'do not pass': 'does not pass the openings',
  unknown: 'whether it passes the openings is not known',
};

const joined = (texts: readonly string[]): string => texts.filter((text) => text !== '').join('; ');

const stopsText = ({ stops }: Effect): string =>
  stops
    .filter(({ before }) => !before)
    .map(({ title, severity }) => `${title} ${severity}`)
    .join('; ');

const teethText = ({ pairs }: Effect): string => pairs.map(({ driver, driven }) => `${driver}:${driven}`).join(' ');

/** "lowest 0.89 thin". */
const strengthText = ({ strength: { weakest } }: RankedTrain): string =>
  weakest ? `lowest ${weakest.reserve.toFixed(2)} ${weakest.severity}` : 'strength not known';

/** Which check of strength is the lowest, for the trains by their number. */
function weakestLines(trains: readonly RankedTrain[]): string[] {
  const by = new Map<string, number[]>();
  for (const [k, { strength }] of trains.entries()) {
    if (!strength.weakest) continue;
    const what = `${strength.weakest.title}, ${strength.weakest.element}`;
    by.set(what, [...(by.get(what) ?? []), k + 1]);
  }
  return [...by].flatMap(([what, numbers]) =>
    wrapped(`Lowest reserve against breaking: ${what}${by.size === 1 ? '' : ` (${numbers.join(', ')})`}.`),
  );
}

/** Trains whose parts to buy are told in full. */
const TOLD = 3;

/** What to look at when parts are bought. */
function buyingLines({ trains, buying }: RatioAnswer): string[] {
  const blanks = new Map(
    trains.slice(0, TOLD).flatMap(({ blanks: all }) => all.map(({ part, says }) => [`${part}: ${says}`, part])),
  );
  const other = buying.shelf.flatMap(({ chain, sprocket, agreement }) => {
    if (chain === sprocket) return [];
    const facts = agreement.map(({ what, agrees }) => `${what} ${agrees ? 'agrees' : 'differs'}`).join(', ');
    return [`Sprockets ${sprocket} on the shelf, on chain ${chain}: ${facts}.`];
  });
  const facts = [...[...blanks.keys()].sort(), ...other, ...buying.nearMisses.map(({ says }) => says)];
  if (facts.length === 0) return [];
  return [
    `When buying, for the first ${Math.min(TOLD, trains.length)}:`,
    ...facts.flatMap(wrapped),
    ...(blanks.size === 0 ? [] : wrapped(`Hubs, bores and teeth after: ${buying.sources.join('; ')}.`)),
    '',
  ];
}

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
      train.path.toFixed(2),
      last ? show('angularSpeed', last.engineSpeed) : '',
      train.gears[0]?.force == null ? '' : show('force', train.gears[0].force),
      train.toBuy.map((part) => part.replace(/^sprocket /, '')).join(', '),
      joined([strengthText(train), `links ${linksText(train)}`, moveText(train, show), stopsText(train)]),
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
            { title: 'to buy', wraps: true },
            { title: 'notes', wraps: true },
          ],
          trains.map(row),
        )),
    '',
    ...(trains.length === 0 ? [] : [...weakestLines(trains), '']),
    ...buyingLines(answer),
    ...wrapped(CAUTION),
  ];
}

/** What each sprocket would do in one place. */
export function swapLines(name: string, rows: readonly SwapRow[], roadSpeed: number, show: Show): string[] {
  const end = rows[0]?.end ?? 'driver';
  const cells = rows.map((row): string[] => {
    const last = row.gears.at(-1);
    return [
      `${row.teeth}${row.drawn ? ' drawn' : ''}${row.onShelf > 0 ? ` (${row.onShelf})` : ''}`,
      row.gears.map(({ overall }) => overall.toPrecision(3)).join(', '),
      last ? show('angularSpeed', last.engineSpeed) : '',
      row.gears[0]?.force == null ? '' : show('force', row.gears[0].force),
      linksText(row),
      joined([OPENINGS[row.openings], moveText(row, show), stopsText(row)]),
    ];
  });
  const gear = rows[0]?.gears.at(-1)?.gear ?? '';
  return [
    ...wrapped(
      `${name}, ${end}. Engine speed in ${gear} gear at ${show('speed', roadSpeed)}; in brackets how many are on the shelf. Passes the openings where no note says otherwise.`,
    ),
    ...table(
      [
        { title: 'teeth' },
        { title: 'ratio by gear' },
        { title: 'engine', align: 'right' },
        { title: '1st pulls', align: 'right' },
        { title: 'links' },
        { title: 'notes', wraps: true },
      ],
      cells,
    ),
    '',
  ];
}
