/** Plays 2,000 parts by every hand, at both spreads, and prints how many came within the goal. Run by `npm run proof:true`. */
import { HANDS, play } from './compare.ts';
import { STATED, WIDER } from './simulator.ts';

const COUNT = 2000;

for (const [name, spread] of [
  ['stated spread', STATED],
  ['half as much more', WIDER],
] as const)
  for (const hand of Object.keys(HANDS) as (keyof typeof HANDS)[]) {
    const { within, median, givenUp, played } = play(hand, spread, 1, COUNT);
    const given = played.filter(({ stopped }) => stopped);
    const early = given.filter(({ rounds }) => rounds < 6).length;
    console.log(
      `${name.padEnd(20)} ${hand.padEnd(22)} ${(100 * within).toFixed(1).padStart(5)} % within 3 thou, median ${median} rounds; ` +
        `${given.length} given up, ${early} before round six, median after ${Number.isNaN(givenUp) ? 'none' : givenUp}`,
    );
  }
