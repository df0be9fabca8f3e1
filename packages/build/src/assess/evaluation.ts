import { type Cache, reuse } from '../model/cache.ts';
import type { Model, Value } from '../model/model.ts';
import { CHECKS } from './checks/all.ts';
import { type Check, looksAt, type Outcome, type Scene, type Subject } from './checks/check.ts';
import type { CaseLoads } from './loads.ts';
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

function standingReserves(rows: readonly Row[], scene: Scene): Float64Array {
  const columns = scene.cases.length;
  const out = new Float64Array(rows.length * columns).fill(Number.NaN);
  rows.forEach(({ check, subject }, r) => {
    if (check.perCase)
      scene.cases.forEach((load, c) => {
        if (looksAt(check, load)) out[r * columns + c] = number(check.run(scene, subject, load));
      });
    else out.fill(number(check.run(scene, subject, null)), r * columns, (r + 1) * columns);
  });
  return out;
}

/** Checks that need no load case still get one column when there are no cases. */
function withSlider(
  rows: readonly Row[],
  scene: Scene,
  standing: Float64Array,
  atSlider: CaseLoads | null,
): Float64Array {
  const cases = scene.cases.length;
  const columns = cases + 1;
  const out = new Float64Array(rows.length * columns);
  rows.forEach(({ check, subject }, r) => {
    for (let c = 0; c < cases; c += 1) out[r * columns + c] = standing[r * cases + c] ?? Number.NaN;
    const last = check.perCase
      ? atSlider
        ? number(check.run(scene, subject, atSlider))
        : Number.NaN
      : cases > 0
        ? (standing[r * cases] ?? Number.NaN)
        : number(check.run(scene, subject, null));
    out[r * columns + cases] = last;
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

/**
 * Runs every check at the middle of all inputs and at the corners that matter.
 * @param here slider, already placed inside its gear
 */
export function evaluate(model: Model, here: Here, cache: Cache | null): Evaluation {
  const rows = reuse(cache, 'rows', [model], () => rowsOf(model));
  const uncertain = reuse(cache, 'uncertain', [model], () => model.values.filter(isUncertain));
  const gear = Number(here.gear) - 1;
  const cornerParts = (corner: Corner) =>
    reuse(cache, `corner:${cornerKey(corner)}`, [model], () => {
      const scene = buildScene(model, corner, cache);
      return { corner, scene, standing: standingReserves(rows, scene) };
    });
  const corners = reuse(
    cache,
    'corners',
    [model],
    () => findCorners(uncertain, (corner) => watched(cornerParts(corner))).corners,
  );
  const at = (corner: Corner): CornerResult => {
    const { scene, standing } = cornerParts(corner);
    const atSlider = loadsAtSlider(scene, gear, here.roadSpeed);
    return { corner, scene, atSlider, reserves: withSlider(rows, scene, standing, atSlider) };
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
