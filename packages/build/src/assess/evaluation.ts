import { type Cache, reuse } from '../model/cache.ts';
import type { Model, Value } from '../model/model.ts';
import { CHECKS } from './checks/all.ts';
import { type Check, looksAt, type Outcome, type Scene, type Subject } from './checks/check.ts';
import type { CaseLoads } from './loads.ts';
import { roadInputs } from './road/inputs.ts';
import { buildScene, loadsAtSlider } from './scene.ts';
import type { Here } from './types.ts';
import { type Corner, cornerKey, findCorners, MIDDLE, moverOf, uncertainOf } from './uncertainty.ts';

/** One check on one subject. */
export interface Row {
  readonly check: Check;
  readonly subject: Subject;
}

/**
 * Results of all rows at one corner. `reserves[row * columns + column]`: columns are the standing cases, then the slider.
 * A plain check counts 2 when it holds and 0.5 when not, so that ends can be compared; `plain` rows show no number.
 */
export interface CornerResult {
  readonly corner: Corner;
  readonly scene: Scene;
  readonly reserves: Float64Array;
  readonly atSlider: CaseLoads | null;
}

export const PLAIN_HOLDS = 2;
export const PLAIN_FAILS = 0.5;

/** Whether the ends of uncertain inputs were tried, or only their middle so far. */
export type Ends = 'tried' | 'not yet';

/** Everything that an assessment is written from. */
export interface Evaluation {
  readonly model: Model;
  readonly here: Here;
  readonly rows: readonly Row[];
  readonly columns: number;
  readonly uncertain: readonly Value[];
  readonly middle: CornerResult;
  /** Other corners that were tried. */
  readonly others: readonly CornerResult[];
  readonly ends: Ends;
  readonly cache: Cache | null;
}

export function rowsOf(model: Model): Row[] {
  return CHECKS.flatMap((check) => check.subjects(model).map((subject) => ({ check, subject })));
}

const number = (outcome: Outcome | null): number => {
  if (!outcome || outcome.kind === 'unknown') return Number.NaN;
  if (outcome.kind === 'plain') return outcome.holds ? PLAIN_HOLDS : PLAIN_FAILS;
  return outcome.reserve;
};

/** A case whose reserve at the middle of all inputs is more than this many times the lowest is not tried at their ends. */
const FAR = 2;

/** Cases of a row that may come to govern at an end of an input, by what they are at the middle; all where nothing is known. */
function mayGovern(middle: Float64Array, row: number, columns: number): (column: number) => boolean {
  const least = lowest(middle, row, columns).value;
  return Number.isNaN(least) ? () => true : (column) => (middle[row * columns + column] ?? Number.NaN) <= FAR * least;
}

/**
 * Worst numbers of the rows of one sort, all others left open.
 * @param middle the same at the middle of all inputs, to leave out what cannot govern; null there
 */
function standingReserves(
  rows: readonly Row[],
  scene: Scene,
  onRoad: boolean,
  middle: Float64Array | null,
): Float64Array {
  const columns = scene.cases.length;
  const known = middle?.length === rows.length * columns ? middle : null;
  const out = new Float64Array(rows.length * columns).fill(Number.NaN);
  rows.forEach(({ check, subject }, r) => {
    if ((check.onRoad ?? false) !== onRoad) return;
    if (check.perCase) {
      const tried = known ? mayGovern(known, r, columns) : () => true;
      scene.cases.forEach((load, c) => {
        if (looksAt(check, load) && tried(c)) out[r * columns + c] = number(check.run(scene, subject, load));
      });
    } else out.fill(number(check.run(scene, subject, null)), r * columns, (r + 1) * columns);
  });
  return out;
}

/** Numbers of the checks by load cases at the slider. */
function sliderReserves(rows: readonly Row[], scene: Scene, atSlider: CaseLoads | null): Float64Array {
  return Float64Array.from(rows, ({ check, subject }) =>
    check.perCase && atSlider ? number(check.run(scene, subject, atSlider)) : Number.NaN,
  );
}

/** Checks that need no load case still get one column when there are no cases. */
function withSlider(rows: readonly Row[], scene: Scene, standing: Float64Array, slider: Float64Array): Float64Array {
  const cases = scene.cases.length;
  const columns = cases + 1;
  const out = new Float64Array(rows.length * columns);
  rows.forEach(({ check, subject }, r) => {
    for (let c = 0; c < cases; c += 1) out[r * columns + c] = standing[r * cases + c] ?? Number.NaN;
    out[r * columns + cases] = check.perCase
      ? (slider[r] ?? Number.NaN)
      : cases > 0
        ? (standing[r * cases] ?? Number.NaN)
        : number(check.run(scene, subject, null));
  });
  return out;
}

/** Lowest number of a row over the standing cases and the slider; NaN when none is known. */
export function lowest(reserves: Float64Array, row: number, columns: number): { value: number; column: number } {
  let value = Number.NaN;
  let column = -1;
  for (let c = 0; c < columns; c += 1) {
    const x = reserves[row * columns + c] ?? Number.NaN;
    if (!Number.isNaN(x) && !(x >= value)) {
      value = x;
      column = c;
    }
  }
  return { value, column };
}

/** Worked out once for each corner. */
function perCorner<T>(compute: (corner: Corner) => T): (corner: Corner) => T {
  const known = new Map<string, T>();
  return (corner) => {
    const key = cornerKey(corner);
    const found = known.get(key) ?? compute(corner);
    known.set(key, found);
    return found;
  };
}

/** All rows at one corner, but for the slider. */
interface CornerParts {
  readonly corner: Corner;
  readonly scene: Scene;
  readonly standing: Float64Array;
  /** The corner without the inputs that only the road reads. */
  readonly within: Corner;
}

/** The rows of a model, and what they say at any corner; kept in the cache. */
function partsOf(model: Model, cache: Cache | null) {
  const rows = reuse(cache, 'rows', [model], () => rowsOf(model));
  const uncertain = reuse(cache, 'uncertain', [model], () => uncertainOf(model.values));
  const ofRoad = reuse(cache, 'road-inputs', [model], () => roadInputs(model));
  // Checks of the drive read none of the road's inputs, so corners that differ in those only share one run.
  const drive: (corner: Corner) => { readonly scene: Scene; readonly standing: Float64Array } = perCorner((corner) =>
    reuse(cache, `drive:${cornerKey(corner)}`, [model], () => {
      const scene = buildScene(model, corner, cache);
      const middle = corner.size === 0 ? null : drive(MIDDLE).standing;
      return { scene, standing: standingReserves(rows, scene, false, middle) };
    }),
  );
  const whole = perCorner(
    (corner): CornerParts =>
      reuse(cache, `corner:${cornerKey(corner)}`, [model], () => {
        const within = new Map([...corner].filter(([address]) => !ofRoad.has(address)));
        const { scene: driven, standing: ofDrive } = drive(within);
        const scene = within.size === corner.size ? driven : buildScene(model, corner, cache);
        const standing = standingReserves(rows, scene, true, null).map((x, k) =>
          Number.isNaN(x) ? (ofDrive[k] ?? x) : x,
        );
        return { corner, scene, standing, within };
      }),
  );
  const corners = (): readonly Corner[] =>
    reuse(cache, 'corners', [model], () => findCorners(uncertain, (corner) => watched(whole(corner))).corners);
  return { rows, uncertain, drive, whole, corners };
}

/**
 * Works out every corner of the uncertain inputs, one for each step, and keeps it in the cache for `evaluate`.
 * Between two steps the caller may answer others, or give up.
 */
export function* rangeSteps(model: Model, cache: Cache): Generator<void, void> {
  const { uncertain, whole, corners } = partsOf(model, cache);
  for (const value of uncertain)
    for (const end of ['lo', 'hi'] as const) {
      whole(new Map([[moverOf(value), end]]));
      yield;
    }
  for (const corner of corners()) {
    whole(corner);
    yield;
  }
}

/**
 * Runs every check at the middle of all inputs and, where the ends of ranges are asked for, at the corners that matter.
 * @param here slider, already placed inside its gear
 */
export function evaluate(model: Model, here: Here, cache: Cache | null, ends: Ends): Evaluation {
  const { rows, uncertain, drive, whole, corners } = partsOf(model, cache);
  const gear = Number(here.gear) - 1;
  const sliderOf = perCorner((within) => {
    const { scene } = drive(within);
    const atSlider = loadsAtSlider(scene, gear, here.roadSpeed);
    return { atSlider, numbers: sliderReserves(rows, scene, atSlider) };
  });
  const at = (corner: Corner): CornerResult => {
    const { scene, standing, within } = whole(corner);
    const { atSlider, numbers } = sliderOf(within);
    return { corner, scene, atSlider, reserves: withSlider(rows, scene, standing, numbers) };
  };
  const middle = at(MIDDLE);
  return {
    model,
    here,
    rows,
    columns: middle.scene.cases.length + 1,
    uncertain,
    middle,
    others: ends === 'tried' ? corners().map(at) : [],
    ends,
    cache,
  };
}

/** Worst reserve of each row, then the numbers of the path that the page shows with their ends. */
function watched({ scene, standing }: { readonly scene: Scene; readonly standing: Float64Array }): Float64Array {
  const columns = scene.cases.length;
  const rows = columns > 0 ? standing.length / columns : 0;
  const worst = Array.from({ length: rows }, (_, r) => lowest(standing, r, columns).value);
  const first = scene.cases[0];
  const torques = first ? first.shafts.map((shaft) => shaft.torque) : [];
  return Float64Array.from([...worst, ...torques, ...scene.overall, scene.rollOut ?? Number.NaN]);
}
