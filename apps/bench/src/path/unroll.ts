import type { PathElement, ShaftPlace } from '@oddwheel/build/assess/types';

/** How a stage is drawn. */
export type StageSign = 'chain' | 'belt' | 'bevel' | 'spur' | 'coupling' | 'joint' | 'two joints' | 'unit';

/** A shaft of the unrolled drive: a level line from the symbol that drives it to the one that it drives. */
export interface DrawnShaft {
  readonly address: string;
  /** Columns whose middles it joins. */
  readonly from: number;
  readonly to: number;
  /** Down from the top of the drawing, px. */
  readonly y: number;
  readonly thickness: number;
  /** How far the line reaches past the middles of its two columns, px. */
  readonly past: { readonly start: number; readonly end: number };
  /** Bearings that the build names, at most four drawn. */
  readonly bearings: number;
  /** Where the bearings stand, in columns from the left edge. */
  readonly bearingsAt: number;
}

/** A stage of the unrolled drive, at the middle of its column. */
export interface DrawnStage {
  readonly address: string;
  readonly symbol: StageSign;
  readonly column: number;
  readonly yIn: number;
  readonly yOut: number;
  /** Input speed over output speed; 1 where it is not known. */
  readonly ratio: number;
  readonly thicknessIn: number;
  readonly thicknessOut: number;
}

/** The drive laid out in one plane, engine at the left and ground at the right; lengths in px, columns counted from 0. */
export interface Unrolled {
  readonly columns: number;
  readonly height: number;
  readonly crank: { readonly column: number; readonly y: number; readonly thickness: number };
  /** Gears of the box, between crank and output shaft. */
  readonly box: DrawnStage | null;
  readonly shafts: readonly DrawnShaft[];
  readonly stages: readonly DrawnStage[];
  readonly wheel: { readonly column: number; readonly y: number; readonly radius: number } | null;
}

const TOP = 16;
const LEVEL_LEAST = 26;
const LEVEL_MOST = 42;
const LEVELS_HIGH = 92;
/** Room that the cylinder takes above the crank, and the box between crank and output shaft. */
const CYLINDER = 46;
const BOX = 32;
const THINNEST = 1.5;
const THICKEST = 6;
/** Heights closer than this count as the same, m. */
const SAME_HEIGHT = 5e-4;
/** A shaft shows beyond what sits on its end. */
const STUB = 10;

/** Line thickness of a shaft, px: it grows with torque, slowly enough that a crank and an axle go on one sheet. */
export function shaftThickness(torqueRatio: number): number {
  if (!(torqueRatio > 0) || !Number.isFinite(torqueRatio)) return THINNEST;
  return Math.min(THICKEST, Math.max(THINNEST, THINNEST * torqueRatio ** 0.34));
}

/**
 * Lays the path out in one plane. Shafts keep their real order of height; where two joined shafts lie equally high, the
 * later one is drawn a level lower, since a plane has no other room for what stands between them.
 *
 * @param path columns of the path
 * @param shafts where the shafts lie in space
 */
export function unroll(path: readonly PathElement[], shafts: readonly ShaftPlace[]): Unrolled {
  const lines = path.flatMap((element, column) =>
    element.kind === 'gearbox' || element.kind === 'shaft' ? [{ element, column }] : [],
  );
  const between = path.flatMap((element, column) =>
    ['engine', 'gearbox', 'shaft', 'ground'].includes(element.kind) ? [] : [{ element, column }],
  );
  const ground = path.findIndex((element) => element.kind === 'ground');
  const symbols = between.map(({ element }) => symbolOf(element));
  const raw = levelsOf(
    lines.map(({ element }) => heightOf(shafts.find((shaft) => shaft.address === element.address))),
    symbols,
  );
  const steps = Math.max(0, ...raw);
  const step = steps === 0 ? 0 : Math.min(LEVEL_MOST, Math.max(LEVEL_LEAST, LEVELS_HIGH / steps));
  const level = raw.map((one) => TOP + one * step);
  const output = level[0] ?? TOP;
  const crank = output - BOX >= CYLINDER ? output - BOX : Math.max(CYLINDER, output + BOX);
  const axle = level.at(-1) ?? output;
  const road = Math.max(crank + 8, axle + 26, ...level.map((y) => y + 12));
  const down = ground < 0 ? 0 : Math.max(0, 4 - (axle - (road - axle)));

  const torque = torqueRatios(path);
  const drawn = lines.map(({ element, column }, k): DrawnShaft => {
    const place = shafts.find((shaft) => shaft.address === element.address);
    const next = between[k];
    const isOutput = element.kind === 'gearbox';
    const named = place?.seats.filter((seat) => seat.kind === 'bearing').length ?? 0;
    return {
      address: element.address,
      from: isOutput ? column : column - 1,
      to: next ? next.column : ground < 0 ? column : ground,
      y: (level[k] ?? TOP) + down,
      thickness: shaftThickness(torque.get(element.address) ?? 1),
      past: {
        start: isOutput ? STUB : stub(symbols[k - 1]),
        end: next ? stub(symbols[k]) : STUB + 4,
      },
      // The engine carries its own output, whether or not the build says in how many bearings.
      bearings: isOutput ? 1 : Math.min(4, named),
      bearingsAt: isOutput ? column + 1 : column + 0.5,
    };
  });
  const stages = between.flatMap(({ element, column }, k): DrawnStage[] => {
    const [before, after] = [drawn[k], drawn[k + 1]];
    const symbol = symbols[k];
    if (!before || !after || !symbol) return [];
    return [stageBetween(element, symbol, column, before, after)];
  });
  const first = drawn[0];
  const gearbox = lines[0];
  const crankLine = { y: crank + down, thickness: shaftThickness(1) };
  return {
    columns: path.length,
    height: road + down + 10,
    crank: { column: 0, ...crankLine },
    box: first && gearbox ? stageBetween(gearbox.element, 'spur', gearbox.column, crankLine, first) : null,
    shafts: drawn,
    stages,
    wheel: ground < 0 ? null : { column: ground, y: axle + down, radius: road - axle },
  };
}

function stageBetween(
  element: PathElement,
  symbol: StageSign,
  column: number,
  before: Pick<DrawnShaft, 'y' | 'thickness'>,
  after: Pick<DrawnShaft, 'y' | 'thickness'>,
): DrawnStage {
  return {
    address: element.address,
    symbol,
    column,
    yIn: before.y,
    yOut: after.y,
    ratio: element.ratio?.value ?? 1,
    thicknessIn: before.thickness,
    thicknessOut: after.thickness,
  };
}

function symbolOf(element: PathElement): StageSign {
  switch (element.kind) {
    case 'chain':
    case 'belt':
    case 'bevel':
    case 'spur':
    case 'unit':
      return element.kind;
    default: {
      const uneven = element.facts.find((fact) => fact.key === 'unevenness');
      if (!uneven) return 'coupling';
      return uneven.method === 'coupling.universalPair' ? 'two joints' : 'joint';
    }
  }
}

/** How far a shaft shows beyond the middle of a stage's column: where a wheel sits on it. */
const stub = (symbol: StageSign | undefined): number =>
  symbol === 'chain' || symbol === 'belt' || symbol === 'spur' ? STUB : 0;

/** Mean height of what sits on a shaft. */
function heightOf(shaft: ShaftPlace | undefined): number {
  if (!shaft) return 0;
  const heights = shaft.seats.map((seat) => seat.at[2]);
  return heights.length === 0 ? shaft.origin[2] : heights.reduce((sum, z) => sum + z, 0) / heights.length;
}

/** Levels from the top, 0, 1, 2 …: one for each height, and a second one where joined shafts lie equally high. */
function levelsOf(heights: readonly number[], symbols: readonly StageSign[]): number[] {
  // A coupling joins two shafts into one line.
  const z = heights.slice();
  symbols.forEach((symbol, k) => {
    if (symbol === 'coupling') z[k + 1] = z[k] ?? 0;
  });
  const order = z.map((_, index) => index).sort((a, b) => (z[b] ?? 0) - (z[a] ?? 0) || a - b);
  const levels: number[] = z.map(() => 0);
  let next = 0;
  for (let at = 0; at < order.length; ) {
    const top = z[order[at] ?? 0] ?? 0;
    const same = order.slice(at).filter((index) => top - (z[index] ?? 0) < SAME_HEIGHT);
    const lower = lowerOf(same, symbols);
    for (const index of same) levels[index] = next + (lower.has(index) ? 1 : 0);
    next += lower.size > 0 ? 2 : 1;
    at += same.length;
  }
  return levels;
}

/** Of equally high shafts, those that go a level lower: every other one along the path where a stage needs the room. */
function lowerOf(same: readonly number[], symbols: readonly StageSign[]): ReadonlySet<number> {
  const lower = new Set<number>();
  for (const index of [...same].sort((a, b) => a - b)) {
    if (!same.includes(index - 1)) continue;
    const symbol = symbols[index - 1];
    const sameLevel = symbol === 'coupling' || symbol === 'unit';
    if (lower.has(index - 1) === sameLevel) lower.add(index);
  }
  return lower;
}

/** Torque in each shaft over that of the engine: at the slider, else by the ratios alone. */
function torqueRatios(path: readonly PathElement[]): ReadonlyMap<string, number> {
  const engine = path[0]?.here.torque?.value ?? 0;
  const ratios = new Map<string, number>();
  let byRatio = 1;
  for (const element of path) {
    byRatio *= element.ratio?.value ?? 1;
    const torque = element.here.torque?.value ?? 0;
    ratios.set(element.address, engine > 0 && torque > 0 ? torque / engine : byRatio);
  }
  return ratios;
}
