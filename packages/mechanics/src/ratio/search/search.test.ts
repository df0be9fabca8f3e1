import { describe, expect, it } from 'vitest';
import { frontOf } from './pareto.ts';
import { SearchError, searchTrains } from './search.ts';
import { everyTrain } from './testing/plain.ts';
import { randomSpace } from './testing/random-space.ts';
import type { Found, Level, TrainSpace } from './types.ts';

const LEAST = (space: TrainSpace): Level => ({
  ratio: 0,
  terms: Array.from({ length: space.terms }, (_, term) => ({ term, weight: 1 })),
  step: 0.25,
});

/** The front by its definition: every train against every other. */
function plainFront(space: TrainSpace, first: Level, second: Level): readonly (readonly number[])[] {
  const all = everyTrain(space, [first, second], Number.POSITIVE_INFINITY);
  return all
    .filter(
      ({ levels: [a = 0, b = 0] }, k) =>
        !all.some(({ levels: [x = 0, y = 0] }, other) => {
          if (x === a && y === b) return other < k;
          return x <= a && y <= b;
        }),
    )
    .map(({ choices }) => choices);
}

function run(space: TrainSpace, order: readonly Level[], most: number): Found {
  const steps = searchTrains(space, order, most);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

describe('the best trains', () => {
  it.each(Array.from({ length: 40 }, (_, k) => 15 * k))(
    'are those of looking at every train one by one, in the same order: seeds %i and the next fourteen',
    (first) => {
      for (let seed = first; seed < first + 15; seed++) {
        const { space, order, most } = randomSpace(seed);
        const plain = everyTrain(space, order, most);
        const found = run(space, order, most).trains.map(({ choices, levels }) => ({
          choices: [...choices],
          levels: [...levels],
        }));
        expect({ seed, found }).toEqual({ seed, found: plain });
      }
    },
  );

  it.each([0, 30, 60, 90])(
    'of two measures are the front, as by its definition: seeds %i and the next thirty',
    (from) => {
      for (let seed = from; seed < from + 30; seed++) {
        const { space } = randomSpace(seed);
        const few = { ...space, stages: space.stages.slice(0, 2) };
        const nearest = { ratio: 1, terms: [], step: seed % 3 === 0 ? 0.01 : 0 };
        const steps = frontOf(few, nearest, LEAST(space), [], 1000);
        let step = steps.next();
        while (!step.done) step = steps.next();
        expect({ seed, found: step.value.trains.map(({ choices }) => [...choices]) }).toEqual({
          seed,
          found: plainFront(few, nearest, LEAST(space)),
        });
      }
    },
  );

  it('names what cannot be searched', () => {
    const choice = { driver: 10, driven: 20, ratio: null, costs: [], parts: [] };
    const space: TrainSpace = {
      stages: [{ choices: [choice] }],
      terms: 0,
      band: { low: 2, high: 2 },
      within: null,
      limits: [],
      atHand: null,
    };
    expect(() => run({ ...space, stages: [] }, [], 1)).toThrow(SearchError);
    expect(() => run({ ...space, stages: [{ choices: [] }] }, [], 1)).toThrow('Stage 1 has no choice left');
    expect(() => run({ ...space, band: { low: 3, high: 2 } }, [], 1)).toThrow('Ratio wanted 3 to 2 read');
    expect(() => run(space, [{ ratio: -1, terms: [], step: 0 }], 1)).toThrow('A weight below zero read');
    expect(() => run(space, [], 0)).toThrow('0 trains asked for');
    expect(run(space, [], 1).trains).toEqual([{ choices: [0], ratio: 2, error: 0, terms: [], levels: [] }]);
  });
});
