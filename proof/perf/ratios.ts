/**
 * Prints how long the search for trains takes, beside a plain enumeration on a space small enough for both, and how both grow.
 * Nothing is asserted but that both find the same: times belong to the machine. They are processor time of one core, so that other work on
 * the machine does not count; the first run includes the compiler's. Run by `npm run perf:ratios`.
 */
import { chainCentreDistance } from '@oddwheel/mechanics/chain/centre-distance';
import { chordalVariation } from '@oddwheel/mechanics/chain/chordal-variation';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { chainWearSpread } from '@oddwheel/mechanics/chain/wear-spread';
import { searchTrains } from '@oddwheel/mechanics/ratio/search/search';
import type { Choice, Level, TrainSpace, TrainStage } from '@oddwheel/mechanics/ratio/search/types';
import { plainBest } from './ratios-plain.ts';

const PITCH = 0.015875;
const ROLLER = 0.01016;

/** Terms of the space: common factors, chordal variation, kilograms of the sprockets as discs, 5 mm thick. */
const TERMS = 3;

const WEAR = { ratio: 0, terms: [{ term: 0, weight: 1 }], step: 0 };
const RATIO = { ratio: 100, terms: [], step: 0.5 };
const CHORDAL = { ratio: 0, terms: [{ term: 1, weight: 1 }], step: 0 };

const ORDERS: Readonly<Record<string, readonly Level[]>> = {
  'ratio within half a per cent, wear, chordal variation': [RATIO, WEAR, CHORDAL],
  'weighted: ratio, wear, chordal variation, mass': [
    {
      ratio: 100,
      terms: [
        { term: 0, weight: 0.3 },
        { term: 1, weight: 20 },
        { term: 2, weight: 0.2 },
      ],
      step: 0,
    },
  ],
  'wear first, then the nearest ratio': [WEAR, { ...RATIO, step: 0 }],
  'nearest ratio first, then wear': [{ ...RATIO, step: 0 }, WEAR],
  'mass first': [{ ratio: 0, terms: [{ term: 2, weight: 1 }], step: 0 }],
};

/** Pairs of sprockets whose even links lie within the slot, whose tips lie within the room, and which wrap enough. */
function chainStage(low: number, high: number, centre: number, travel: number, room: number): TrainStage {
  const choices: Choice[] = [];
  for (let driver = low; driver <= high; driver++)
    for (let driven = low; driven <= high; driven++) {
      const tips = [driver, driven].map(
        (teeth) => sprocketDiameters.run({ pitch: PITCH, rollerDiameter: ROLLER, teeth }).outsideDiameter / 2,
      );
      const [tipDriver = 0, tipDriven = 0] = tips;
      if (Math.max(tipDriver, tipDriven) > room || tipDriver + tipDriven > centre - travel) continue;
      const drawn = chainLength.run({ pitch: PITCH, teethDriver: driver, teethDriven: driven, centreDistance: centre });
      const links = 2 * Math.round(drawn.links / 2);
      const there = chainCentreDistance.run({ pitch: PITCH, teethDriver: driver, teethDriven: driven, links });
      if (Math.abs(there.centreDistance - centre) > travel || Math.min(there.wrapDriver, there.wrapDriven) < 2)
        continue;
      const shared = (teeth: number): number => (chainWearSpread.run({ links, teeth }).commonFactor > 1 ? 1 : 0);
      const between = chainWearSpread.run({ links: driven, teeth: driver }).commonFactor > 1 ? 1 : 0;
      const variation = (teeth: number): number =>
        chordalVariation.run({ pitch: PITCH, teeth, angularSpeed: 0 }).variation;
      const mass = tips.reduce((sum, tip) => sum + Math.PI * tip * tip * 0.005 * 7850, 0);
      choices.push({
        driver,
        driven,
        ratio: null,
        costs: [shared(driver) + shared(driven) + between, variation(driver) + variation(driven), mass],
        parts: [],
      });
    }
  return { choices };
}

/** Bevel pairs, as many as asked for, from 9 teeth up. */
function bevelStage(count: number): TrainStage {
  const choices: Choice[] = [];
  for (let driver = 9; choices.length < count; driver++)
    for (let driven = driver; driven < driver + 40 && choices.length < count; driven++) {
      const shared = chainWearSpread.run({ links: driver, teeth: driven }).commonFactor > 1 ? 1 : 0;
      choices.push({ driver, driven, ratio: null, costs: [shared, 0, 1e-4 * driver * driven], parts: [] });
    }
  return { choices };
}

const spaceOf = (stages: readonly TrainStage[], aim: number): TrainSpace => ({
  stages,
  terms: TERMS,
  band: { low: aim, high: aim },
  within: { least: aim * 0.95, most: aim * 1.05 },
  limits: [],
  atHand: null,
});

/** Processor time so far, ms. */
function spentNow(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function whole(space: TrainSpace, order: readonly Level[], most: number) {
  const steps = searchTrains(space, order, most);
  const start = spentNow();
  let longest = 0;
  let last = start;
  for (;;) {
    const step = steps.next();
    const now = spentNow();
    longest = Math.max(longest, now - last);
    last = now;
    if (step.done) return { found: step.value, spent: now - start, longest };
  }
}

const size = ({ stages }: TrainSpace): string =>
  stages.reduce((product, { choices }) => product * choices.length, 1).toExponential(1);

/** @param raw trains before links and room are looked at */
function show(what: string, raw: number, space: TrainSpace, order: readonly Level[]): void {
  const runs = Array.from({ length: 5 }, () => whole(space, order, 50));
  const [, , median] = runs.map(({ spent }) => spent).sort((a, b) => a - b);
  const longest = Math.max(...runs.map((run) => run.longest));
  console.log(
    `${what.padEnd(58)} ${raw.toExponential(1)} trains, ${size(space)} fit: ${(median ?? 0).toFixed(0).padStart(5)} ms, longest step ${longest.toFixed(0)} ms`,
  );
}

const FULL = 72 * 72;
const open = chainStage(9, 80, 0.7, 0.02, 0.3);
const tight = chainStage(9, 80, 0.5, 0.02, 0.22);
const bevels = bevelStage(400);
for (const [name, order] of Object.entries(ORDERS))
  show(`two chains, 400 bevels; ${name}`, FULL ** 2 * 400, spaceOf([open, tight, bevels], 11.237), order);
for (const [name, order] of Object.entries(ORDERS))
  show(
    `three chains, 3200 bevels; ${name}`,
    FULL ** 3 * 3200,
    spaceOf([open, tight, chainStage(9, 80, 0.45, 0.02, 0.2), bevelStage(3200)], 23.71),
    order,
  );

console.log('\nBeside a plain enumeration, two chains and 40 bevels:');
const usual = ORDERS['ratio within half a per cent, wear, chordal variation'] ?? [];
for (const high of [20, 26, 34, 44, 56, 80]) {
  const stages = [chainStage(9, high, 0.7, 0.02, 0.3), chainStage(9, high, 0.5, 0.02, 0.22), bevelStage(40)];
  const space = spaceOf(stages, 6.5);
  const { found, spent } = whole(space, usual, 50);
  const start = spentNow();
  const plain = plainBest(space, usual, 50);
  const plainly = spentNow() - start;
  if (JSON.stringify(plain) !== JSON.stringify(found.trains.map(({ choices }) => choices)))
    throw new Error('The two do not find the same trains.');
  console.log(
    `teeth 9 to ${high}: ${size(space)} trains fit; search ${spent.toFixed(1)} ms, plain ${plainly.toFixed(1)} ms, the same ${plain.length}`,
  );
}

console.log('\nGrowth with stages, chains of 9 to 80 teeth:');
for (const stages of [
  [open],
  [open, tight],
  [open, tight, bevels],
  [open, tight, open, bevels],
  [open, tight, open, tight],
])
  show(
    `${stages.length} stages`,
    stages.reduce((n, s) => n * (s === bevels ? 400 : FULL), 1),
    spaceOf(stages, 1.9 ** stages.length),
    usual,
  );
