import { type Cache, reuse } from '../model/cache.ts';
import type { Model, Value } from '../model/model.ts';
import { CHECKS } from './checks/all.ts';
import { type Check, type Outcome, outcomeOf, type Scene, type Subject } from './checks/check.ts';
import type { CaseLoads } from './loads.ts';
import { roadInputs } from './road/inputs.ts';
import { buildScene, loadsAtSlider, loadValues } from './scene.ts';
import type { Here } from './types.ts';
import { type Corner, cornerKey, findCorners, MIDDLE, moverOf, uncertainOf } from './uncertainty.ts';

/** One check on one subject. */
export interface Row {
  readonly check: Check;
  readonly subject: Subject;
}

/**
 * Results of all rows at one corner. A plain check counts 2 when it holds and 0.5 when not, so that ends can be compared.
 * NaN where a number is not known.
 */
export interface CornerResult {
  readonly corner: Corner;
  readonly scene: Scene;
  /** Lowest number of each row over the standing cases; of a row that looks at none, its own. */
  readonly standing: Float64Array;
  /** Numbers of the rows by load cases at the slider; left out at the ends of inputs where the slider cannot come to govern. */
  readonly slider: Float64Array;
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
  /** Numbers at the middle, `reserves[row * columns + column]`: columns are the standing cases, then the slider. */
  readonly reserves: Float64Array;
  /** What each row's check found at the middle in the standing case where it is lowest. */
  readonly found: readonly (Outcome | null)[];
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

/** Numbers of the rows of one sort in every standing case, and the lowest of each; all others left open. */
interface Standing {
  /** `byCase[row * cases + case]`. */
  readonly byCase: Float64Array;
  readonly least: Float64Array;
  /** At the middle: what the check found where the row is lowest. */
  readonly found: readonly (Outcome | null)[];
}

/** A reserve above this is told without a number, so it is not scaled from another. */
const SCALED_UP_TO = 1e5;

/**
 * The case of the greatest demand, where a check tells its demands: what it finds there, and the reserves of the others by that.
 * @param tried numbers of the cases
 * @returns scaled gives the reserve of the case at a place of `tried`, NaN for one that must be run; null where none can be scaled
 */
function leadOf(
  check: Check,
  scene: Scene,
  subject: Subject,
  tried: readonly number[],
): { readonly outcome: Outcome; readonly scaled: (n: number) => number } | null {
  const { demand } = check;
  if (!demand) return null;
  const demands = tried.map((c) => {
    const load = scene.cases[c];
    return load ? (demand(scene, subject, load) ?? Number.NaN) : Number.NaN;
  });
  let [first, most] = [-1, 0];
  demands.forEach((x, n) => {
    if (x > most) [first, most] = [n, x];
  });
  const load = scene.cases[tried[first] ?? -1];
  const outcome = load ? outcomeOf(check, scene, subject, load) : null;
  if (outcome?.kind !== 'measured') return null;
  return {
    outcome,
    scaled: (n) => {
      const x = outcome.reserve * (most / (demands[n] ?? Number.NaN));
      return x <= SCALED_UP_TO ? x : Number.NaN;
    },
  };
}

/**
 * Runs the rows of one sort.
 * @param atMiddle keeps what the checks found, for its words
 * @param middle the same at the middle of all inputs, to leave out what cannot govern; null there
 */
function standingOf(
  rows: readonly Row[],
  scene: Scene,
  onRoad: boolean,
  atMiddle: boolean,
  middle: Standing | null,
): Standing {
  const cases = scene.cases.length;
  const byCase = new Float64Array(rows.length * cases).fill(Number.NaN);
  const least = new Float64Array(rows.length).fill(Number.NaN);
  const known = middle?.byCase.length === byCase.length ? middle : null;
  const found: (Outcome | null)[] = atMiddle ? rows.map(() => null) : [];
  const steady = scene.cases.flatMap((load, c) => (load.point.kind === 'steady' ? [c] : []));
  const every = [...scene.cases.keys()];
  rows.forEach(({ check, subject }, r) => {
    if ((check.onRoad ?? false) !== onRoad) return;
    if (!check.perCase) {
      const outcome = outcomeOf(check, scene, subject, null);
      least[r] = number(outcome);
      if (atMiddle) found[r] = outcome;
      return;
    }
    // Where nothing is known at the middle, all cases are tried.
    const most = known && !Number.isNaN(known.least[r] ?? Number.NaN) ? FAR * (known.least[r] ?? 0) : null;
    const tried = (check.rare ? every : steady).filter(
      (c) => most === null || (known?.byCase[r * cases + c] ?? Number.NaN) <= most,
    );
    const lead = leadOf(check, scene, subject, tried);
    tried.forEach((c, n) => {
      const load = scene.cases[c];
      if (!load) return;
      const scaled = lead?.scaled(n) ?? Number.NaN;
      const outcome = Number.isNaN(scaled) ? outcomeOf(check, scene, subject, load) : (lead?.outcome ?? null);
      const x = Number.isNaN(scaled) ? number(outcome) : scaled;
      byCase[r * cases + c] = x;
      // Where no case has a number, the first one that the check looks at stands for them.
      if (atMiddle) found[r] ??= outcome;
      if (Number.isNaN(x) || x >= (least[r] ?? Number.NaN)) return;
      least[r] = x;
      if (atMiddle) found[r] = outcome;
    });
  });
  return { byCase, least, found };
}

/** Rows whose number at the slider may be the lowest at an end of an input, by what they are at the middle. */
function nearSlider(middle: CornerResult): number[] {
  return [...middle.slider.keys()].filter((r) => {
    const [here, standing] = [middle.slider[r] ?? Number.NaN, middle.standing[r] ?? Number.NaN];
    return Number.isNaN(standing) || here <= FAR * Math.min(here, standing);
  });
}

/** Numbers of some rows at the slider, the others left open. */
function sliderNumbers(
  rows: readonly Row[],
  wanted: readonly number[],
  scene: Scene,
  atSlider: CaseLoads | null,
): Float64Array {
  const out = new Float64Array(rows.length).fill(Number.NaN);
  if (!atSlider) return out;
  for (const r of wanted) {
    const row = rows[r];
    if (row?.check.perCase) out[r] = number(outcomeOf(row.check, scene, row.subject, atSlider));
  }
  return out;
}

/** Numbers of all rows at the middle, case by case, then at the slider. */
function matrix(rows: readonly Row[], middle: CornerResult, byCase: Float64Array): Float64Array {
  const cases = middle.scene.cases.length;
  const columns = cases + 1;
  const out = new Float64Array(rows.length * columns);
  rows.forEach(({ check }, r) => {
    const own = middle.standing[r] ?? Number.NaN;
    for (let c = 0; c < cases; c += 1)
      out[r * columns + c] = check.perCase ? (byCase[r * cases + c] ?? Number.NaN) : own;
    out[r * columns + cases] = check.perCase ? (middle.slider[r] ?? Number.NaN) : own;
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

/** Lowest number of a row at a corner, slider and standing cases alike; NaN when none is known. */
export function leastAt({ standing, slider }: CornerResult, row: number): number {
  const [here, others] = [slider[row] ?? Number.NaN, standing[row] ?? Number.NaN];
  return here < others || Number.isNaN(others) ? here : others;
}

/** Worked out once for each key. */
function keyed<A, T>(compute: (from: A) => T): (key: string, from: A) => T {
  const known = new Map<string, { readonly result: T }>();
  return (key, from) => {
    const found = known.get(key) ?? { result: compute(from) };
    known.set(key, found);
    return found.result;
  };
}

/** Worked out once for each corner and kept in `known`. */
function perCorner<T>(known: Map<string, T>, compute: (corner: Corner) => T): (corner: Corner) => T {
  return (corner) => {
    const key = cornerKey(corner);
    const found = known.get(key) ?? compute(corner);
    known.set(key, found);
    return found;
  };
}

/** Rows that read none of the road's inputs, at one corner. */
interface DriveParts {
  readonly scene: Scene;
  readonly standing: Standing;
}

/** All rows at one corner, but for the slider. */
interface CornerParts {
  readonly corner: Corner;
  readonly scene: Scene;
  readonly standing: Standing;
  /** The corner without the inputs that only the road reads, and its key. */
  readonly within: Corner;
  readonly withinKey: string;
  /** Key of the inputs that speed, torque and pull at the slider hang on. */
  readonly loadKey: string;
}

/** What is worked out of a build's corners; the lists are made where the ends of ranges are asked for. */
interface KnownCorners {
  readonly drive: Map<string, DriveParts>;
  readonly whole: Map<string, CornerParts>;
  corners?: readonly Corner[];
  ends?: readonly CornerParts[];
}

/** The rows of a model, and what they say at any corner; kept in the cache. */
function partsOf(model: Model, cache: Cache | null) {
  const rows = reuse(cache, 'rows', [model], () => rowsOf(model));
  const uncertain = reuse(cache, 'uncertain', [model], () => uncertainOf(model.values));
  const ofRoad = reuse(cache, 'road-inputs', [model], () => roadInputs(model));
  const ofLoads = reuse(cache, 'load-inputs', [model], () => loadValues(model));
  // One slot for all corners: an edit lets go of those of the build before it together, and they are most of what is kept.
  const known = reuse(cache, 'known-corners', [model], (): KnownCorners => ({ drive: new Map(), whole: new Map() }));
  // Checks of the drive read none of the road's inputs, so corners that differ in those only share one run.
  const drive: (corner: Corner) => DriveParts = perCorner(known.drive, (corner) => {
    const scene = buildScene(model, corner, cache);
    const middle = corner.size === 0 ? null : drive(MIDDLE).standing;
    return { scene, standing: standingOf(rows, scene, false, middle === null, middle) };
  });
  const whole = perCorner(known.whole, (corner): CornerParts => {
    const within = new Map([...corner].filter(([address]) => !ofRoad.has(address)));
    const { scene: driven, standing: ofDrive } = drive(within);
    const scene = within.size === corner.size ? driven : buildScene(model, corner, cache);
    const standing = merged(standingOf(rows, scene, true, corner.size === 0, null), ofDrive);
    const [withinKey, loadKey] = [cornerKey(within), cornerKey(within, ofLoads)];
    return { corner, scene, standing, within, withinKey, loadKey };
  });
  const corners = (): readonly Corner[] => {
    known.corners ??= findCorners(uncertain, (corner) => watched(whole(corner))).corners;
    return known.corners;
  };
  const ends = (): readonly CornerParts[] => {
    known.ends ??= corners().map(whole);
    return known.ends;
  };
  return { rows, uncertain, drive, whole, corners, ends };
}

/** Numbers of the road, and those of the drive where the road has none. */
function merged(road: Standing, drive: Standing): Standing {
  for (const [of, other] of [
    [road.byCase, drive.byCase],
    [road.least, drive.least],
  ] as const)
    for (let k = 0; k < of.length; k += 1) if (Number.isNaN(of[k] ?? 0)) of[k] = other[k] ?? Number.NaN;
  const found = drive.found.map((outcome, r) => road.found[r] ?? outcome);
  return { byCase: road.byCase, least: road.least, found };
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
  const { rows, uncertain, drive, whole, ends: tried } = partsOf(model, cache);
  const gear = Number(here.gear) - 1;
  const loadsOf = keyed((scene: Scene) => loadsAtSlider(scene, gear, here.roadSpeed));
  const sliderAt = (
    { corner, scene, standing, within, withinKey, loadKey }: CornerParts,
    wanted: readonly number[],
  ) => {
    const driven = drive(within).scene;
    const atSlider = loadsOf(loadKey, driven);
    return {
      corner,
      scene,
      standing: standing.least,
      atSlider,
      slider: numbersOf(withinKey, { driven, atSlider, wanted }),
    };
  };
  const numbersOf = keyed(
    ({ driven, atSlider, wanted }: { driven: Scene; atSlider: CaseLoads | null; wanted: readonly number[] }) =>
      sliderNumbers(rows, wanted, driven, atSlider),
  );
  const atMiddle = whole(MIDDLE);
  const middle = sliderAt(atMiddle, [...rows.keys()]);
  const others = ends === 'tried' ? tried() : [];
  const near = others.length > 0 ? nearSlider(middle) : [];
  return {
    model,
    here,
    rows,
    columns: middle.scene.cases.length + 1,
    uncertain,
    middle,
    reserves: matrix(rows, middle, atMiddle.standing.byCase),
    found: atMiddle.standing.found,
    others: others.map((parts) => sliderAt(parts, near)),
    ends,
    cache,
  };
}

/** Worst reserve of each row, then the numbers of the path that the page shows with their ends. */
function watched({ scene, standing }: CornerParts): Float64Array {
  const first = scene.cases[0];
  const torques = first ? first.shafts.map((shaft) => shaft.torque) : [];
  return Float64Array.from([...standing.least, ...torques, ...scene.overall, scene.rollOut ?? Number.NaN]);
}
