/** Plays 2,000 parts by every hand, for every task, at both spreads, and prints how many came within the goal. Run by `npm run proof:true`. */

import { clockingGain } from './clocking-gain.ts';
import { HANDS, play, TASKS, withoutHope } from './compare.ts';
import { STATED, WIDER } from './simulator.ts';

const COUNT = 2000;
/** Given up before this many beads is early. */
const EARLY = 6;

for (const [name, task] of Object.entries(TASKS))
  for (const [spreadName, spread] of [
    ['stated', STATED],
    ['half as much more', WIDER],
  ] as const) {
    const parts = { spread, first: 1, count: COUNT };
    const hopeless = withoutHope(task, parts);
    for (const hand of Object.keys(HANDS) as (keyof typeof HANDS)[]) {
      const { within, median, played } = play(hand, task, parts);
      const none = played.filter((_, k) => hopeless[k]);
      const left = none.filter((one) => one.stopped && one.rounds < EARLY + task.owed.length);
      console.log(
        `${name}, ${spreadName}, ${hand}: ${(100 * within).toFixed(1)} % within 3 thou, median ${median} rounds; of ${none.length} without hope ` +
          `${left.length} given up before round ${EARLY + task.owed.length}, ${none.filter((one) => one.within).length} in after all`,
      );
    }
  }

for (const positions of [2, 3, 4, 6, 8, 12, 16, 24, 36]) {
  const { before, after } = clockingGain(positions, COUNT);
  console.log(
    `re-clocking, ${positions} positions: median TIR ${before.toFixed(1)} thou as first put together, ${after.toFixed(1)} in the best position`,
  );
}
