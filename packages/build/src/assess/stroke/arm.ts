import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import { armCentreDistance } from '@oddwheel/mechanics/suspension/centre-distance';
import { armChainTravel } from '@oddwheel/mechanics/suspension/chain-travel';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Model, Seat, Shaft, Stage, Suspension } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import type { Scene } from '../checks/check.ts';
import { MOST_SKEW, seatOf } from '../geometry/place.ts';
import type { ChainGeometry, StageGeometry } from '../geometry/types.ts';
import { lineOf, linesOf } from '../layout/lines.ts';
import type { Missing } from '../types.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

/** Arm and chain as the methods of `suspension` take them. */
interface Placed {
  /** Seen in a mirror, fore and aft, where the arm leads: then it counts as trailing, and bump lifts it all the same. */
  readonly pivot: Vec3;
  readonly sprocket: Vec3;
  readonly armLength: number;
  /** Arm angles: as drawn, and the two ends of the stroke. */
  readonly drawn: number;
  readonly rebound: number;
  readonly bump: number;
}

/** A chain between a shaft on the frame and one on the swinging arm. */
export interface ArmChain extends Placed {
  readonly stage: ChainStage;
  readonly geometry: StageGeometry;
  readonly chain: ChainGeometry;
  readonly suspension: Suspension;
  readonly mirrored: boolean;
  /** Seats of the chain, and the shaft that the arm carries. */
  readonly fixed: Seat;
  readonly moving: Seat;
  readonly onArm: Shaft;
  readonly teethFixed: number;
  readonly teethMoving: number;
  /** The arm carries the driven end, and the wheel turns with it. */
  readonly drivesWheel: boolean;
  /** Arm angles in even steps from full rebound over the drawn place to full bump. */
  readonly steps: readonly number[];
  /** The stroke with the links fitted, or with one where they are not known: then what hangs on them says nothing. */
  readonly travel: Travel;
}

type Unmoved = Omit<ArmChain, 'travel'>;
type Travel = ReturnType<typeof travelOf>;

const mirror = ([x, y, z]: Vec3): Vec3 => [-x, y, z];

/** Arm length and angles with the axle at a place. */
function place(suspension: Suspension, fixed: Vec3, axle: Vec3): Placed & { readonly mirrored: boolean } {
  const mirrored = axle[0] > suspension.pivot[0];
  const seen = mirrored ? mirror : (at: Vec3): Vec3 => at;
  const [pivot, sprocket, end] = [seen(suspension.pivot), seen(fixed), seen(axle)];
  const [back, up] = [pivot[0] - end[0], end[2] - pivot[2]];
  const drawn = Math.atan2(up, back);
  return {
    pivot,
    sprocket,
    armLength: Math.hypot(back, up),
    drawn,
    rebound: drawn - suspension.rebound,
    bump: drawn + suspension.bump,
    mirrored,
  };
}

/** The same chain with its axle shifted, the frame left where it is. */
export function withAxleAt(arm: ArmChain, at: Vec3): ArmChain {
  const placed = place(arm.suspension, arm.fixed.at, at);
  return withTravel({ ...arm, ...placed, moving: { ...arm.moving, at }, steps: stepsOf(placed) });
}

/** Steps on either side of where the wheel is drawn. */
const STEPS = 4;

function stepsOf({ rebound, drawn, bump }: Placed): readonly number[] {
  const between = (from: number, to: number): number[] =>
    from === to ? [] : Array.from({ length: STEPS }, (_, k) => from + ((to - from) * k) / STEPS);
  return [...between(rebound, drawn), ...between(drawn, bump), bump];
}

const isChain = (geometry: StageGeometry | undefined): geometry is StageGeometry & { readonly stage: ChainStage } =>
  geometry?.stage.kind === 'chain';

const isMissing = (found: ArmChain | readonly Missing[]): found is readonly Missing[] => Array.isArray(found);

/**
 * The chain of a stage that leads to or from the swinging arm.
 * @returns what is missing where it cannot be worked out; null where the stage is no such chain, an idler keeps its slack, or the arm has
 *   no stroke
 */
function armChainOf(scene: Scene, index: number): Found {
  const geometry = scene.stages[index];
  if (!isChain(geometry)) return null;
  const lines = linesOf(scene.model);
  const [first, second] = [index, index + 1].map((k) => lineOf(lines, k)?.bodies.includes('swinging arm') === true);
  if (first === second) return null;
  const { suspension } = scene.model;
  // An edit elsewhere leaves the chain as it is.
  return within(second ? LED_TO : LED_FROM, [geometry, suspension ?? NO_ARM], () =>
    ledTo(geometry, geometry.stage, suspension, second === true),
  );
}

type Found = ArmChain | readonly Missing[] | null;

const LED_TO: Within<Found> = new WeakMap();
const LED_FROM: Within<Found> = new WeakMap();
const NO_ARM = {};

/** @param second whether the driven end is on the arm */
function ledTo(geometry: StageGeometry, stage: ChainStage, suspension: Suspension | null, second: boolean): Found {
  const { from, to } = geometry;
  if (!suspension) return [{ address: '/brief/suspension', says: 'pivot, bump and rebound of the swinging arm' }];
  if (suspension.bump + suspension.rebound === 0) return null;
  if (!geometry.chain) return geometry.trouble;
  if (stage.idler) return null;
  const across = Math.abs(dot(from.direction, [0, 1, 0]));
  if (!(across > Math.cos(MOST_SKEW)))
    return [
      { address: `${to.address}/direction`, says: 'shafts that lie across the vehicle, as the arm’s pivot does' },
    ];
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const [fixed, moving] = second ? [driver, driven] : [driven, driver];
  const placed = place(suspension, fixed.at, moving.at);
  if (!(placed.armLength > 0))
    return [{ address: `${suspension.address}/pivot`, says: 'a pivot of the arm that is not at its axle' }];
  const { teeth } = stage;
  const arm: Unmoved = {
    ...placed,
    stage,
    geometry,
    chain: geometry.chain,
    suspension,
    fixed,
    moving,
    onArm: second ? to : from,
    teethFixed: second ? teeth.driver : teeth.driven,
    teethMoving: second ? teeth.driven : teeth.driver,
    drivesWheel: second && to.seats.some(({ kind }) => kind === 'wheel'),
    steps: stepsOf(placed),
  };
  try {
    return withTravel(arm);
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return [
      {
        address: `${suspension.address}/pivot`,
        says: `sprockets that clear each other over the stroke (${error.message})`,
      },
    ];
  }
}

const withTravel = (arm: Unmoved): ArmChain => ({ ...arm, travel: travelOf(arm) });

const known = new WeakMap<Model, Map<number, Found>>();

/** The same, worked out once for a model: no uncertain input touches it. */
function knownArmChain(scene: Scene, index: number): Found {
  const found = known.get(scene.model) ?? new Map<number, Found>();
  known.set(scene.model, found);
  const before = found.get(index);
  if (before !== undefined) return before;
  const arm = armChainOf(scene, index);
  found.set(index, arm);
  return arm;
}

/** Runs something on the chain of a stage on the arm. */
export function onArmChain<T>(
  scene: Scene,
  index: number | null,
  found: { readonly arm: (arm: ArmChain) => T; readonly missing: (missing: readonly Missing[]) => T },
): T | null {
  const arm = index === null ? null : knownArmChain(scene, index);
  if (arm === null) return null;
  return isMissing(arm) ? found.missing(arm) : found.arm(arm);
}

/** Inputs that the methods of `suspension` share. */
export function armInput(arm: Unmoved) {
  const { pivot, sprocket, armLength, stage, teethFixed, teethMoving } = arm;
  return { pivot, sprocket, armLength, pitch: stage.size.pitch, teethDriver: teethFixed, teethDriven: teethMoving };
}

/** Where pitch and teeth of {@link armInput} came from. */
export function driveOrigins({ stage, onArm, geometry }: ArmChain) {
  const [at, by] = onArm === geometry.to ? (['driver', 'driven'] as const) : (['driven', 'driver'] as const);
  return {
    pitch: `chain-sizes/${stage.size.key}`,
    teethDriver: `${stage.address}/teeth/${at}`,
    teethDriven: `${stage.address}/teeth/${by}`,
  };
}

/** Where {@link armInput} came from. */
export function armOrigins(arm: ArmChain) {
  return {
    ...driveOrigins(arm),
    pivot: `${arm.suspension.address}/pivot`,
    sprocket: arm.fixed.address,
    armLength: 'places of pivot and axle',
  };
}

/** Arm angles of the steps, and where the centres come nearest if that lies between them. */
function anglesOf(arm: Unmoved): readonly number[] {
  const { pivot, sprocket, armLength, rebound, bump, steps } = arm;
  const { inLineAngle } = armCentreDistance.run({ pivot, sprocket, armLength, armAngle: arm.drawn });
  const nearest = [inLineAngle + Math.PI, inLineAngle - Math.PI].filter(
    (a) => a > rebound && a < bump && !steps.includes(a),
  );
  return [...steps, ...nearest].sort((a, b) => a - b);
}

/** Centres alike within rounding count as the first of them. */
const ALIKE = 1 - 1e-12;

/** The method's answer over the stroke, and the place where the centres are nearest. */
function travelOf(arm: Unmoved) {
  const input = { ...armInput(arm), linksFitted: arm.stage.links ?? 1, armAngles: anglesOf(arm) };
  const output = armChainTravel.run(input);
  const least = output.centres.reduce((best, c, k) => (c < (output.centres[best] ?? Number.NaN) * ALIKE ? k : best), 0);
  return {
    input,
    output,
    nearest: { angle: input.armAngles[least] ?? arm.drawn, centreDistance: output.centres[least] ?? Number.NaN },
  };
}

/** "full rebound", "as drawn", "full bump", or nothing between them. */
export function placeName(arm: ArmChain, angle: number): 'full rebound' | 'as drawn' | 'full bump' | null {
  if (angle === arm.drawn) return 'as drawn';
  if (angle === arm.rebound) return 'full rebound';
  return angle === arm.bump ? 'full bump' : null;
}
