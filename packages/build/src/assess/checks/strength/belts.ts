import { beltPulls } from '@oddwheel/mechanics/belt/pulls';
import { beltToothLoad } from '@oddwheel/mechanics/belt/tooth-load';
import { beltTrapezoidalRating } from '@oddwheel/mechanics/belt/trapezoidal-rating';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { BELT_PROFILES } from '@oddwheel/tables/belt-profiles';
import { CHAIN_SERVICE } from '@oddwheel/tables/chain-service';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Stage } from '../../../model/model.ts';
import { seatOf } from '../../geometry/place.ts';
import { parallelPlace } from '../../geometry/tangent.ts';
import type { StageGeometry, Used } from '../../geometry/types.ts';
import type { CaseLoads } from '../../loads.ts';
import { type Check, type Outcome, type Scene, stagesOfKind } from '../check.ts';
import { measured } from '../measured.ts';

type BeltStage = Extract<Stage, { readonly kind: 'belt' }>;

const lacks = (stage: BeltStage, key: 'profile' | 'width' | 'pitch', says: string): Outcome => ({
  kind: 'unknown',
  missing: [{ address: `${stage.address}/${key}`, says }],
});

/** Speeds at which the pull of a tooth is printed, turns a minute. */
const PRINTED = [
  [0, 'at0'],
  [500, 'at500'],
  [1000, 'at1000'],
  [2000, 'at2000'],
  [4000, 'at4000'],
] as const;
const RPM = Math.PI / 30;

/** Pull of a tooth at a speed, on the line between two printed ones; the last one holds no further. */
function perTooth(profile: string, speed: number): number | null {
  const row = rowInSi(BELT_PROFILES, profile);
  const turns = speed / RPM;
  const after = PRINTED.findIndex(([at]) => at >= turns);
  const high = PRINTED[after];
  if (!high) return null;
  const low = PRINTED[after - 1] ?? high;
  const [a, b] = [row[low[1]] ?? Number.NaN, row[high[1]] ?? Number.NaN];
  return low === high ? a : a + ((b - a) * (turns - low[0])) / (high[0] - low[0]);
}

interface Loaded {
  readonly torque: number;
  readonly driverSpeed: number;
  readonly factor: number;
}

/** Power that the belt carries in one case by its profile’s method, or why there is none. */
function carried(
  stage: BeltStage,
  geometry: StageGeometry,
  { driverSpeed }: Loaded,
): { readonly power: number; readonly used: Used } | Outcome {
  const { profile, width } = stage;
  if (profile === null) return lacks(stage, 'profile', 'the profile of the belt');
  if (!Object.hasOwn(BELT_PROFILES.rows, profile))
    return lacks(stage, 'profile', 'what its maker says that the belt carries: no open method rates its teeth');
  if (width === null) return lacks(stage, 'width', 'the width of the belt');
  const row = rowInSi(BELT_PROFILES, profile);
  if (Math.abs((row.pitch ?? 0) / stage.pitch - 1) > 0.01)
    return lacks(stage, 'pitch', `a pitch that goes with profile ${profile}`);
  const { driver, driven } = stage.teeth;
  const small = driver <= driven ? driverSpeed : (driverSpeed * driver) / driven;
  const place = parallelPlace(
    seatOf(geometry.from, stage.from).at,
    seatOf(geometry.to, stage.to).at,
    geometry.from.direction,
  );
  const teeth = { teethSmall: Math.min(driver, driven), teethLarge: Math.max(driver, driven) };
  const beltSpeed = (driver * stage.pitch * driverSpeed) / (2 * Math.PI);
  const origins = { width: `${stage.address}/width` };
  if (row.pull !== undefined && row.mass !== undefined && row.width !== undefined) {
    const input = {
      ...teeth,
      pitch: stage.pitch,
      centreDistance: place.centreDistance,
      speed: small,
      width,
      baseWidth: row.width,
      basePull: row.pull,
      baseMass: row.mass,
    };
    const output = beltTrapezoidalRating.run(input);
    return {
      power: output.power,
      used: {
        method: beltTrapezoidalRating,
        input,
        output,
        origins: {
          ...origins,
          teethSmall: `${stage.address}/teeth`,
          teethLarge: `${stage.address}/teeth`,
          pitch: `${stage.address}/pitch`,
          centreDistance: 'places of the two seats',
          speed: 'speed carried through the path',
          baseWidth: `belt-profiles/${profile}`,
          basePull: `belt-profiles/${profile}`,
          baseMass: `belt-profiles/${profile}`,
        },
      },
    };
  }
  const pull = perTooth(profile, small);
  if (pull === null)
    return lacks(stage, 'profile', `what its maker says that ${profile} carries above 4000 turns a minute`);
  const lean = (stage.pitch * (teeth.teethLarge - teeth.teethSmall)) / (2 * Math.PI * place.centreDistance);
  const input = { perTooth: pull, meshed: (teeth.teethSmall * Math.acos(Math.min(1, lean))) / Math.PI, width };
  const output = beltToothLoad.run(input);
  return {
    power: output.pull * beltSpeed,
    used: {
      method: beltToothLoad,
      input,
      output,
      origins: {
        ...origins,
        perTooth: `belt-profiles/${profile}: ${sourceOf(BELT_PROFILES, profile)}`,
        meshed: 'wrap of the smaller pulley',
      },
    },
  };
}

function outcome(stage: BeltStage, geometry: StageGeometry, scene: Scene, load: CaseLoads, k: number): Outcome | null {
  const from = (scene.model.engine.cylinders ?? 1) >= 6 ? 'engine-of-six' : 'engine-of-fewer';
  const factor = rowInSi(CHAIN_SERVICE, from).factor ?? Number.NaN;
  const torque = Math.abs(load.stages[k]?.torqueIn ?? 0);
  const driverSpeed = load.shafts[k]?.speed ?? 0;
  if (!(torque > 0 && driverSpeed > 0)) return null;
  const found = carried(stage, geometry, { torque, driverSpeed, factor });
  if ('kind' in found) return found;
  const asked = torque * driverSpeed * factor;
  const speed = (stage.teeth.driver * stage.pitch * driverSpeed) / (2 * Math.PI);
  const input = { power: asked, speed, wrap: 1 };
  const pulls = beltPulls.run(input);
  const { show } = scene;
  return measured(
    { name: 'carried, with its factor', value: asked, kind: 'power', use: 'power' },
    { name: 'its teeth bear', value: Math.max(found.power, 0), kind: 'power', use: 'power' },
    () =>
      `${show('power', asked)} to carry, engine factor ${show('number', factor)} in it; its teeth bear ${show('power', found.power)}. It wants ${show('force', pulls.standing)} in each span at rest, and pulls its shafts with ${show('force', pulls.shaft)}.`,
    [],
    () => [
      {
        method: beltPulls,
        input,
        output: pulls,
        origins: {
          power: `power through the path, chain-service/${from}`,
          speed: 'speed carried through the path',
          wrap: 'a half turn',
        },
      },
      found.used,
    ],
    { capacity: 'above', demand: 'power through the path' },
  );
}

/** Teeth of a toothed belt in shear, where a published method covers its profile. */
export const beltTeeth: Check = {
  id: 'belt.teeth',
  title: 'teeth of the belt',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'the ratings hold the reserve themselves' },
  atWorst: 'fails',
  perCase: true,
  subjects: stagesOfKind('belt'),
  run: (scene, subject, load) => {
    const k = subject.stage;
    const geometry = k === null ? undefined : scene.stages[k];
    if (k === null || geometry?.stage.kind !== 'belt' || !load) return null;
    try {
      return outcome(geometry.stage, geometry, scene, load, k);
    } catch (error) {
      if (!(error instanceof MethodError)) throw error;
      return lacks(geometry.stage, 'width', `a belt that its rating covers (${error.message})`);
    }
  },
};
