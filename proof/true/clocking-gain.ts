/** What re-clocking gains on pairs of parts that do not exist: each runs out by 5 to 15 thou, in any direction. */
import { reClock } from '@oddwheel/mechanics/runout/re-clock';
import { seeded } from './simulator.ts';

const THOU = 25.4e-6;
/** Pairs are told apart from the parts of the simulator by their seeds. */
const FIRST_SEED = 900_000_000;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Median TIR of `count` pairs, thou, as first put together and in the best of the positions. */
export function clockingGain(positions: number, count: number): { readonly before: number; readonly after: number } {
  const found = Array.from({ length: count }, (_, k) => {
    const random = seeded(FIRST_SEED + k);
    const part = () => {
      const [tir, angle] = [(5 + 10 * random()) * THOU, 2 * Math.PI * random()];
      return { x: (tir / 2) * Math.cos(angle), y: (tir / 2) * Math.sin(angle) };
    };
    const straight = { x: 0, y: 0 };
    const base = { station: 0, offset: part(), tilt: straight };
    const joint = { station: 0, positions, offset: part(), tilt: straight };
    const { now, best } = reClock(base, [joint], [{ station: 0, goal: THOU }]);
    return { now: now.worst, best: best.worst };
  });
  return { before: median(found.map(({ now }) => now)), after: median(found.map(({ best }) => best)) };
}
