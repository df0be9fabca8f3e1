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

/**
 * A shaft under loads so many times as large: it is linear, so all of its answer is as well. Each part is worked out when it is first read.
 * @param by above zero
 */
export function scaledSolution(one: ShaftSolution, by: number): ShaftSolution {
  return new Scaled(one, by);
}

interface Made {
  sections?: ShaftSolution['sections'];
  reactions?: ShaftSolution['reactions'];
  slope?: ShaftSolution['slope'];
}

/** A class, since a part with a function of its own for each number would be made in every case, and few are read. */
class Scaled implements ShaftSolution {
  readonly scaled: { readonly one: ShaftSolution; readonly by: number };
  private readonly made: Made = {};

  constructor(one: ShaftSolution, by: number) {
    this.scaled = { one, by };
  }

  private all(values: readonly number[]): readonly number[] {
    return values.map((x) => this.scaled.by * x);
  }

  get sections(): ShaftSolution['sections'] {
    const { one, by } = this.scaled;
    this.made.sections ??= one.sections.map(({ station, bending, shear, torque, axial }) => ({
      station,
      bending: by * bending,
      shear: by * shear,
      torque: by * torque,
      axial: by * axial,
    }));
    return this.made.sections;
  }

  get reactions(): ShaftSolution['reactions'] {
    const { one, by } = this.scaled;
    this.made.reactions ??= one.reactions.map(({ force: [x, y, z], radial, axial }) => ({
      force: [by * x, by * y, by * z] as const,
      radial: by * radial,
      axial: by * axial,
    }));
    return this.made.reactions;
  }

  get slope(): readonly number[] {
    this.made.slope ??= this.all(this.scaled.one.slope);
    return this.made.slope;
  }

  get across(): readonly number[] {
    return this.all(this.scaled.one.across);
  }

  get along(): readonly number[] {
    return this.all(this.scaled.one.along);
  }

  get twist(): readonly number[] {
    return this.all(this.scaled.one.twist);
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
