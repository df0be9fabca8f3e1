import type { SeatLoad } from './seat-loads.ts';
import type { ShaftSolution } from './shaft-structure.ts';

/** Part of the greatest load by which two lots of loads may differ and still be the same but for their size: rounding. */
const ROUNDING = 1e-12;

const numbers = ({ force, moment }: SeatLoad): readonly number[] => [...force, ...moment];

/**
 * How many times as large some loads are as others; null where they are not the same but for their size.
 * @param one on the same shaft
 */
export function timesAsLarge(loads: readonly SeatLoad[], one: readonly SeatLoad[]): number | null {
  if (loads.length !== one.length) return null;
  let [most, by] = [0, 0];
  loads.forEach((load, n) => {
    const other = one[n];
    if (!other) return;
    const [a, b] = [numbers(load), numbers(other)];
    a.forEach((x, k) => {
      if (Math.abs(x) <= most) return;
      most = Math.abs(x);
      by = x / (b[k] ?? 0);
    });
  });
  // Of loads the other way round the resultants would not turn with them.
  if (!(by > 0 && Number.isFinite(by))) return null;
  const alike = loads.every((load, n) => {
    const other = one[n];
    if (!other || load.seat !== other.seat || load.turns !== other.turns) return false;
    const b = numbers(other);
    return numbers(load).every((x, k) => Math.abs(x - by * (b[k] ?? 0)) <= ROUNDING * most);
  });
  return alike ? by : null;
}

/** Worked out when it is first read. */
function later<T>(compute: () => T): () => T {
  let made: { readonly is: T } | null = null;
  return () => {
    made ??= { is: compute() };
    return made.is;
  };
}

/**
 * A shaft under loads so many times as large: it is linear, so all of its answer is as well. Each part is worked out when it is read.
 * @param by above zero
 */
export function scaledSolution(one: ShaftSolution, by: number): ShaftSolution {
  const all = (values: readonly number[]) => later(() => values.map((x) => by * x));
  const sections = later(() =>
    one.sections.map(({ station, bending, shear, torque, axial }) => ({
      station,
      bending: by * bending,
      shear: by * shear,
      torque: by * torque,
      axial: by * axial,
    })),
  );
  const reactions = later(() =>
    one.reactions.map(({ force: [x, y, z], radial, axial }) => ({
      force: [by * x, by * y, by * z] as const,
      radial: by * radial,
      axial: by * axial,
    })),
  );
  const [across, slope, along, twist] = [all(one.across), all(one.slope), all(one.along), all(one.twist)];
  const moves = later(() => one.moves.map((x) => by * x));
  return {
    scaled: { one, by },
    get sections() {
      return sections();
    },
    get reactions() {
      return reactions();
    },
    get across() {
      return across();
    },
    get slope() {
      return slope();
    },
    get along() {
      return along();
    },
    get twist() {
      return twist();
    },
    get moves() {
      return moves();
    },
    residual: one.residual,
    held: by * one.held,
  };
}
