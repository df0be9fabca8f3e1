import type { SeatLoad } from './seat-loads.ts';
import type { Reaction, ShaftSolution } from './shaft-structure.ts';

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

/**
 * A shaft under loads so many times as large: it is linear, so all of its answer is as well.
 * @param by above zero
 */
export function scaledSolution(one: ShaftSolution, by: number): ShaftSolution {
  return new Scaled(one, by);
}

/** A class, since there are thousands of such answers, and few of their numbers are read. */
class Scaled implements ShaftSolution {
  readonly scaled: { readonly one: ShaftSolution; readonly by: number };

  constructor(one: ShaftSolution, by: number) {
    this.scaled = { one, by };
  }

  get sections(): ShaftSolution['sections'] {
    const { one, by } = this.scaled;
    const { numbers, first, by: before } = one.sections;
    return { numbers, first, by: by * before };
  }

  reactionAt(bearing: number): Reaction | undefined {
    const { one, by } = this.scaled;
    const reaction = one.reactionAt(bearing);
    if (!reaction) return undefined;
    const [x, y, z] = reaction.force;
    return { force: [by * x, by * y, by * z], radial: by * reaction.radial, axial: by * reaction.axial };
  }

  acrossAt(node: number): number | undefined {
    return this.times(this.scaled.one.acrossAt(node));
  }

  slopeAt(node: number): number | undefined {
    return this.times(this.scaled.one.slopeAt(node));
  }

  alongAt(node: number): number | undefined {
    return this.times(this.scaled.one.alongAt(node));
  }

  private times(x: number | undefined): number | undefined {
    return x === undefined ? undefined : this.scaled.by * x;
  }

  get moves(): Float64Array {
    return this.scaled.one.moves.map((x) => this.scaled.by * x);
  }

  get residual(): number {
    return this.scaled.one.residual;
  }

  get held(): number {
    return this.scaled.by * this.scaled.one.held;
  }
}
