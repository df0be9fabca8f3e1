/** Words and numbers of the trains that a search found. */
import { ORDER_KEYS, type OrderKey, type RankedTrain, type Stop, type TargetKey } from '@oddwheel/build/ratios/types';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';

type Units = Readonly<Record<string, string>>;

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Measure {
  /** In the list of what counts. */
  readonly name: string;
  /** At an axis. */
  readonly axis: string;
  readonly unit: (units: Units) => string;
  /** SI value of one unit. */
  readonly size: (units: Units) => number;
}

const count = { unit: () => '', size: () => 1 };

/** What trains can be ranked by; less is better in each. */
export const MEASURES: Readonly<Record<OrderKey, Measure>> = {
  ratio: { name: 'meets the targets', axis: 'misses the targets by', unit: () => '%', size: () => 0.01 },
  links: { name: 'even links', axis: 'chains with odd links', ...count },
  wrap: {
    name: 'wrap',
    axis: 'wrap short of 120°',
    unit: (units) => unitOf('angle', units),
    size: (units) => unitSize('angle', units),
  },
  buy: { name: 'parts to buy', axis: 'parts to buy', ...count },
  wear: { name: 'wear spread over all teeth', axis: 'pairs with a common factor', ...count },
  chordal: { name: 'even running', axis: 'speed ripple of the sprockets', unit: () => '%', size: () => 1 },
  mass: {
    name: 'mass of the sprockets',
    axis: 'mass of the sprockets as discs',
    unit: (units) => unitOf('mass', units),
    size: (units) => unitSize('mass', units),
  },
  price: { name: 'price', axis: 'price of the parts to buy', unit: () => 'your money', size: () => 1 },
};

export const isOrderKey = (text: string): text is OrderKey => ORDER_KEYS.some((key) => key === text);

/** A measure of a train, as the search ranked it. */
export const measured = (train: RankedTrain, key: OrderKey): number =>
  key === 'ratio' ? train.error : train.terms[key];

/** "1.2 %", with its unit. */
export function measureText(train: RankedTrain, key: OrderKey, units: Units): string {
  const value = measured(train, key);
  if (key === 'ratio') return value === 0 ? 'inside' : shownText(show(certain(value), 'percent', units, 2));
  if (key === 'mass') return shownText(show(certain(value), 'mass', units, 3));
  if (key === 'wrap') return value === 0 ? 'enough' : shownText(show(certain(value), 'angle', units, 3));
  if (key === 'chordal') return shownText(show(certain(value / 100), 'percent', units, 2));
  return shownText(show(certain(value), 'number', units, 4));
}

export const TARGET_NAMES: Readonly<Record<TargetKey, string>> = {
  cruise: 'Cruising',
  'top speed': 'Top speed',
  pull: 'Pull',
  climb: 'Climb',
  feel: 'Feel of the reference vehicle',
};

/** "17 : 30, 14 : 33". */
export const teethText = (pairs: RankedTrain['pairs']): string =>
  pairs.length === 0 ? 'as drawn' : pairs.map(({ driver, driven }) => `${driver}\u2009:\u2009${driven}`).join(', ');

/** One train apart from others, for keys. */
export const trainKey = (pairs: RankedTrain['pairs']): string =>
  pairs.map(({ stage, driver, driven }) => `${stage} ${driver}:${driven}`).join(' ');

/** What a change asks of chains, belts and slots, and what it stops, one sentence each. */
export function changeLines(
  change: Pick<RankedTrain, 'stages' | 'stops' | 'openings'>,
  units: Units,
): readonly string[] {
  const length = (value: number): string => shownText(show(certain(value), 'length', units, 3));
  const stages = change.stages.flatMap(({ name, kind, links, linksChange, move, fits, says }): string[] => {
    if (links === null && fits) return [];
    const what = kind === 'belt' ? 'belt teeth' : 'links';
    const by =
      linksChange === null || linksChange === 0
        ? ''
        : `, ${Math.abs(linksChange)} ${linksChange > 0 ? (kind === 'belt' ? 'longer' : 'to add') : kind === 'belt' ? 'shorter' : 'to take out'}`;
    const moves =
      !move || Math.abs(move.by) < 5e-6 ? '' : `, ${move.adjuster} by ${length(move.by)} of ±${length(move.travel)}`;
    return [`${name}: ${links === null ? 'does not fit' : `${links} ${what}${by}${moves}`}. ${says}`.trim()];
  });
  const openings =
    change.openings === 'pass'
      ? 'Passes the openings.'
      : change.openings === 'unknown'
        ? 'Whether it passes the openings is not known.'
        : 'Does not pass the openings.';
  return [...stages, openings, ...change.stops.filter(({ before }) => !before).map(stopText)];
}

const stopText = ({ title, severity }: Stop): string =>
  `${title.charAt(0).toUpperCase()}${title.slice(1)}: ${severity} then.`;
