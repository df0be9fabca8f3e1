import { bevelGeometryFactors } from '@oddwheel/mechanics/bevel/geometry-factors';
import { bevelStress } from '@oddwheel/mechanics/bevel/stress';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { spurStress } from '@oddwheel/mechanics/spur/stress';
import { GEAR_SERVICE, LEWIS_FORM } from '@oddwheel/tables/gear-factors';
import { rowInSi } from '@oddwheel/tables/table';
import type { Stage, Value } from '../../../model/model.ts';
import type { StageGeometry, Used } from '../../geometry/types.ts';
import type { CaseLoads } from '../../loads.ts';
import type { Missing } from '../../types.ts';
import { type Check, type Outcome, type Scene, stagesOfKind } from '../check.ts';

export type GearStage = Extract<Stage, { readonly kind: 'bevel' | 'spur' }>;

/** A pair with its sizes and all factors of its rating that do not hang on the load. */
export interface GearPair {
  readonly k: number;
  readonly stage: GearStage;
  readonly geometry: StageGeometry;
  /** The driver is the smaller gear, or both are alike. */
  readonly driverSmaller: boolean;
  readonly module: number;
  readonly faceWidth: number;
  readonly fixed: Fixed;
  readonly uses: readonly Value[];
}

type Fixed =
  | { readonly kind: 'bevel'; readonly factors: Used; readonly input: Readonly<Record<BevelKey, number>> }
  | { readonly kind: 'spur'; readonly input: Readonly<Record<SpurKey, number>> };
type BevelKey =
  | 'teethPinion'
  | 'module'
  | 'faceWidth'
  | 'quality'
  | 'mounting'
  | 'crowning'
  | 'bendingPinion'
  | 'bendingGear'
  | 'contact';
type SpurKey =
  | 'teethPinion'
  | 'teethGear'
  | 'module'
  | 'faceWidth'
  | 'quality'
  | 'shapePinion'
  | 'shapeGear'
  | 'bendingPinion'
  | 'bendingGear'
  | 'mesh'
  | 'pressureAngle';

export const gearSubjects = stagesOfKind('bevel', 'spur');

const service = (key: string) => rowInSi(GEAR_SERVICE, key);
const QUALITY = 5;

/** Overload factor of the engine. */
export const overloadRow = (scene: Scene): string =>
  (scene.model.engine.cylinders ?? 1) > 1 ? 'engine-of-more' : 'engine-of-one';
export const overloadOf = (scene: Scene): number => service(overloadRow(scene)).factor ?? Number.NaN;

const FORMS = Object.keys(LEWIS_FORM.rows).map((key) => ({
  teeth: Number(key),
  form: rowInSi(LEWIS_FORM, key).form ?? 0,
}));

/** Form factor between two rows of the table; null below its first row. */
export function formFactor(teeth: number): number | null {
  const [first] = FORMS;
  if (!first || teeth < first.teeth) return null;
  const after = FORMS.findIndex((row) => row.teeth >= teeth);
  const [low, high] = [FORMS[after - 1] ?? FORMS.at(-1), FORMS[after] ?? FORMS.at(-1)];
  if (!low || !high) return null;
  return low.teeth === high.teeth
    ? low.form
    : low.form + ((high.form - low.form) * (teeth - low.teeth)) / (high.teeth - low.teeth);
}

/** Geometry factors are slow and hang on shape alone: the last few of each stage are kept. */
const FACTORS = new WeakMap<GearStage, Map<string, Used | Missing>>();

function factorsOf(
  stage: GearStage,
  shaftAngle: number,
  module: number,
  faceWidth: number,
  spiral: number,
): Used | Missing {
  const { driver, driven } = stage.teeth;
  const key = [shaftAngle, faceWidth / module, spiral].join(' ');
  const known = FACTORS.get(stage) ?? new Map<string, Used | Missing>();
  FACTORS.set(stage, known);
  const found = known.get(key);
  if (found && !('method' in found && (found.input.module !== module || found.input.faceWidth !== faceWidth)))
    return found;
  const input = {
    teethPinion: Math.min(driver, driven),
    teethGear: Math.max(driver, driven),
    shaftAngle,
    faceWidth,
    module,
    spiralAngle: spiral,
    pressureAngle: Math.PI / 9,
  };
  const made = ((): Used | Missing => {
    try {
      return {
        method: bevelGeometryFactors,
        input,
        output: bevelGeometryFactors.run(input),
        origins: {
          teethPinion: `${stage.address}/teeth`,
          teethGear: `${stage.address}/teeth`,
          shaftAngle: 'places of the two gears about the apex',
          faceWidth: `${stage.address}/faceWidth`,
          module: `${stage.address}/module`,
          spiralAngle: stage.spiral?.address ?? 'straight teeth',
          pressureAngle: '20 degrees',
        },
      };
    } catch (error) {
      if (!(error instanceof MethodError)) throw error;
      return { address: `${stage.address}/teeth`, says: `a pair that its rating covers (${error.message})` };
    }
  })();
  known.set(key, made);
  return made;
}

const PAIRS = new WeakMap<Scene, Map<number, GearPair | Outcome | null>>();

/** The pair of a stage with its fixed factors, or what is missing to know them; worked out once for a scene. */
function pairOf(scene: Scene, k: number): GearPair | Outcome | null {
  const pairs = PAIRS.get(scene) ?? new Map<number, GearPair | Outcome | null>();
  PAIRS.set(scene, pairs);
  const found = pairs.get(k);
  if (found !== undefined) return found;
  const made = makePair(scene, k);
  pairs.set(k, made);
  return made;
}

function makePair(scene: Scene, k: number): GearPair | Outcome | null {
  const geometry = scene.stages[k];
  const stage = geometry?.stage;
  if (!geometry || (stage?.kind !== 'bevel' && stage?.kind !== 'spur')) return null;
  const missing: Missing[] = [
    ...(stage.module ? [] : [{ address: `${stage.address}/module`, says: 'the module of the pair' }]),
    ...(stage.faceWidth ? [] : [{ address: `${stage.address}/faceWidth`, says: 'the face width of the pair' }]),
    ...geometry.trouble,
  ];
  if (!stage.module || !stage.faceWidth || missing.length > 0) return { kind: 'unknown', missing };
  const { driver, driven } = stage.teeth;
  const [module, faceWidth] = [scene.at(stage.module), scene.at(stage.faceWidth)];
  const shared = { teethPinion: Math.min(driver, driven), module, faceWidth, quality: stage.gears.quality ?? QUALITY };
  const base = {
    k,
    stage,
    geometry,
    driverSmaller: driver <= driven,
    module,
    faceWidth,
    uses: [stage.module, stage.faceWidth, stage.spiral].filter((value) => value !== null),
  };
  if (stage.kind === 'bevel') {
    if (!geometry.bevel) return { kind: 'unknown', missing: geometry.trouble };
    if (stage.hand !== null && stage.spiral === null)
      return {
        kind: 'unknown',
        missing: [{ address: `${stage.address}/spiral`, says: 'the mean spiral angle of the pair' }],
      };
    const factors = factorsOf(
      stage,
      geometry.bevel.shaftAngle,
      module,
      faceWidth,
      stage.spiral ? scene.at(stage.spiral) : 0,
    );
    if ('says' in factors) return { kind: 'unknown', missing: [factors] };
    const input = {
      ...shared,
      mounting: service(stage.gears.mounting ?? 'both overhung').factor ?? Number.NaN,
      crowning: 2,
      bendingPinion: Number(factors.output.bendingPinion),
      bendingGear: Number(factors.output.bendingGear),
      contact: Number(factors.output.contact),
    };
    return { ...base, fixed: { kind: 'bevel', factors, input } };
  }
  const [shapePinion, shapeGear] = [formFactor(Math.min(driver, driven)), formFactor(Math.max(driver, driven))];
  if (shapePinion === null || shapeGear === null)
    return {
      kind: 'unknown',
      missing: [{ address: `${stage.address}/teeth`, says: 'a pair of at least 12 teeth, where its rating begins' }],
    };
  const part = service('bending-of-form').factor ?? Number.NaN;
  const open = stage.gears.lubrication === 'open, greased' || stage.gears.lubrication === 'open, dry';
  const { factor = Number.NaN, perInch = Number.NaN } = service(open ? 'mesh-open' : 'mesh-housed');
  const input = {
    ...shared,
    teethGear: Math.max(driver, driven),
    shapePinion,
    shapeGear,
    bendingPinion: part * shapePinion,
    bendingGear: part * shapeGear,
    mesh: factor + (perInch * faceWidth) / 0.0254,
    pressureAngle: Math.PI / 9,
  };
  try {
    spurStress.run({ ...input, torque: 0, speed: 0, overload: 1 });
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    const says = `a face width that its rating covers (${error.message})`;
    return { kind: 'unknown', missing: [{ address: `${stage.address}/faceWidth`, says }] };
  }
  return { ...base, fixed: { kind: 'spur', input } };
}

/** Stress numbers of a pair under one load. */
export interface GearStress {
  readonly driver: number;
  readonly driven: number;
  readonly contact: number;
  readonly pitchSpeed: number;
  readonly torque: number;
  /** Its working, written only where it is shown. */
  readonly used: () => Used;
}

/** Factor of speed and quality with the smaller gear at this speed. */
export function speedFactor({ fixed }: GearPair, speed: number): number {
  const loaded = { torque: 0, speed, overload: 1 };
  const output =
    fixed.kind === 'bevel'
      ? bevelStress.run({ ...fixed.input, ...loaded })
      : spurStress.run({ ...fixed.input, ...loaded });
  return output.dynamic;
}

/**
 * Torque on the driver or the driven gear as the flanks feel it, N·m: they pass what the gear that pushes brings, before the losses of the mesh,
 * whichever gear that is.
 */
export function flankTorque({ k, geometry }: GearPair, load: CaseLoads, gear: 'driver' | 'driven'): number {
  const [first, second] = [Math.abs(load.stages[k]?.torqueIn ?? 0), Math.abs(load.stages[k]?.torqueOut ?? 0)];
  const ratio = Math.abs(geometry.ratio);
  return gear === 'driver' ? Math.max(first, second / ratio) : Math.max(first * ratio, second);
}

/** The pair under the loads of one case. */
export function stressOf(pair: GearPair, load: CaseLoads, overload: number, overloadFrom: string): GearStress {
  const { k, driverSmaller, stage, fixed } = pair;
  const torque = flankTorque(pair, load, driverSmaller ? 'driver' : 'driven');
  const speed = load.shafts[driverSmaller ? k : k + 1]?.speed ?? 0;
  const loaded = { torque, speed, overload };
  const origins = () => ({
    torque: 'torque carried through the path',
    speed: 'speed carried through the path',
    overload: overloadFrom,
    teethPinion: `${stage.address}/teeth`,
    module: `${stage.address}/module`,
    faceWidth: `${stage.address}/faceWidth`,
    quality: stage.gears.quality === null ? 'not known: as cast or worn' : `${stage.address}/quality`,
  });
  if (fixed.kind === 'bevel') {
    const input = { ...fixed.input, ...loaded };
    const output = bevelStress.run(input);
    return split(driverSmaller, torque, output, () => ({
      method: bevelStress,
      input,
      output,
      origins: {
        ...origins(),
        mounting: stage.gears.mounting === null ? 'not said: both overhung' : `${stage.address}/mounting`,
        crowning: 'no crowning known',
        bendingPinion: 'above',
        bendingGear: 'above',
        contact: 'above',
      },
    }));
  }
  const input = { ...fixed.input, ...loaded };
  const output = spurStress.run(input);
  return split(driverSmaller, torque, output, () => ({
    method: spurStress,
    input,
    output,
    origins: {
      ...origins(),
      teethGear: `${stage.address}/teeth`,
      shapePinion: 'lewis-form',
      shapeGear: 'lewis-form',
      bendingPinion: 'gear-service/bending-of-form',
      bendingGear: 'gear-service/bending-of-form',
      mesh: 'gear-service/mesh-housed or mesh-open',
      pressureAngle: '20 degrees',
    },
  }));
}

function split(
  driverSmaller: boolean,
  torque: number,
  output: {
    readonly stressPinion: number;
    readonly stressGear: number;
    readonly stressContact: number;
    readonly pitchSpeed: number;
  },
  used: () => Used,
): GearStress {
  const { stressPinion, stressGear, stressContact, pitchSpeed } = output;
  return {
    driver: driverSmaller ? stressPinion : stressGear,
    driven: driverSmaller ? stressGear : stressPinion,
    contact: stressContact,
    pitchSpeed,
    torque,
    used,
  };
}

/** The working of the fixed factors. */
export const usedFactors = ({ fixed }: GearPair): readonly Used[] => (fixed.kind === 'bevel' ? [fixed.factors] : []);

/** Runs a check on a pair whose sizes are known. */
export const onPair =
  (run: (pair: GearPair, scene: Scene, load: CaseLoads | null) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    if (subject.stage === null) return null;
    const pair = pairOf(scene, subject.stage);
    return pair !== null && 'stage' in pair ? run(pair, scene, load) : pair;
  };
