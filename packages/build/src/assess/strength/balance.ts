import { cross, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Scene } from '../checks/check.ts';

/**
 * How well forces and moments close on every shaft, over all cases: what is left of each sum over the greatest force, or over that force times the length of
 * the shaft. Loads and what the bearings answer are summed afresh, beside the solution.
 * @returns null where no shaft could be solved
 */
export function shaftBalance({ strength, cases }: Scene): number | null {
  let worst: number | null = null;
  strength.shafts.forEach(({ shaft, stations, bearings }, k) => {
    const length = (stations.at(-1) ?? 0) - (stations[0] ?? 0);
    for (const load of cases) {
      const answer = strength.answer(k, load);
      if (!answer.ok) return;
      const { loads, solution } = answer;
      let [force, moment]: [Vec3, Vec3] = [
        [0, 0, 0],
        // The box turns the output; that torque comes from inside it.
        times(k === 0 ? solution.held : 0, shaft.direction),
      ];
      let [largest, turning] = [0, 0];
      const add = (at: Vec3, f: Vec3, m: Vec3): void => {
        force = plus(force, f);
        moment = plus(moment, plus(m, cross(minus(at, shaft.origin), f)));
        largest = Math.max(largest, norm(f));
        turning = Math.max(turning, norm(m));
      };
      for (const one of loads) add(one.at, one.force, one.moment);
      bearings.forEach(({ seat }, b) => {
        const { force: held } = solution.reactionAt(b) ?? { force: [0, 0, 0] };
        add(plus(shaft.origin, times(seat.station, shaft.direction)), held, [0, 0, 0]);
      });
      if (largest === 0) continue;
      worst = Math.max(worst ?? 0, norm(force) / largest, norm(moment) / (largest * length + turning));
    }
  });
  return worst;
}
