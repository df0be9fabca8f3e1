import { type Cache, reuse } from '../model/cache.ts';
import type { Model, Value } from '../model/model.ts';
import { CHECKS } from './checks/all.ts';
import type { Check, Outcome, Scene, Subject } from './checks/check.ts';
import type { CaseLoads } from './loads.ts';
import { roadInputs } from './road/inputs.ts';
import { buildScene, loadsAtSlider } from './scene.ts';
import type { Here } from './types.ts';
import { type Corner, cornerKey, findCorners, isUncertain, MIDDLE } from './uncertainty.ts';

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

/** Worst numbers of the rows of one sort, all others left open. */
function standingReserves(rows: readonly Row[], scene: Scene, onRoad: boolean): Float64Array {
  const columns = scene.cases.length;
  const out = new Float64Array(rows.length * columns).fill(Number.NaN);
  rows.forEach(({ check, subject }, r) => {
    if ((check.onRoad ?? false) !== onRoad) return;
    if (check.perCase)
      scene.cases.forEach((load, c) => {
        out[r * columns + c] = number(check.run(scene, subject, load));
      });
    else out.fill(number(check.run(scene, subject, null)), r * columns, (r + 1) * columns);
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

/**
 * Runs every check at the middle of all inputs and at the corners that matter.
 * @param here slider, already placed inside its gear
 */
export function evaluate(model: Model, here: Here, cache: Cache | null): Evaluation {
  return evaluateWith(model, here, cache, true);
}

/** The same at the middle of all inputs alone: what is asked for many times a second while something is dragged. */
export function evaluateMiddle(model: Model, here: Here, cache: Cache | null): Evaluation {
  return evaluateWith(model, here, cache, false);
}

function evaluateWith(model: Model, here: Here, cache: Cache | null, withEnds: boolean): Evaluation {
  const rows = reuse(cache, 'rows', [model], () => rowsOf(model));
  const uncertain = reuse(cache, 'uncertain', [model], () => model.values.filter(isUncertain));
  const gear = Number(here.gear) - 1;
  const ofRoad = reuse(cache, 'road-inputs', [model], () => roadInputs(model));
  // Checks of the drive read none of the road's inputs, so corners that differ in those only share one run.
  const driveParts = perCorner((corner) =>
    reuse(cache, `drive:${cornerKey(corner)}`, [model], () => {
      const scene = buildScene(model, corner, cache);
      return { scene, standing: standingReserves(rows, scene, false) };
    }),
  );
  const cornerParts = perCorner((corner) =>
    reuse(cache, `corner:${cornerKey(corner)}`, [model], () => {
      const within = new Map([...corner].filter(([address]) => !ofRoad.has(address)));
      const drive = driveParts(within);
      const scene = within.size === corner.size ? drive.scene : buildScene(model, corner, cache);
      const standing = standingReserves(rows, scene, true).map((x, k) =>
        Number.isNaN(x) ? (drive.standing[k] ?? x) : x,
      );
      return { corner, scene, standing, within };
    }),
  );
  const corners = withEnds
    ? reuse(cache, 'corners', [model], () => findCorners(uncertain, (corner) => watched(cornerParts(corner))).corners)
    : [];
  const sliderOf = perCorner((within) => {
    const { scene } = driveParts(within);
    const atSlider = loadsAtSlider(scene, gear, here.roadSpeed);
    return { atSlider, numbers: sliderReserves(rows, scene, atSlider) };
  });
  const at = (corner: Corner): CornerResult => {
    const { scene, standing, within } = cornerParts(corner);
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
    others: corners.map(at),
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
