import { chainPull } from '@oddwheel/mechanics/chain/pull';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { ANSI_CHAINS } from '@oddwheel/tables/chain-sizes-ansi';
import { ISO_CHAINS } from '@oddwheel/tables/chain-sizes-iso';
import { rowInSi } from '@oddwheel/tables/table';
import type { Stage, Value } from '../../../model/model.ts';
import type { ChainGeometry, Used } from '../../geometry/types.ts';
import type { CaseLoads } from '../../loads.ts';
import type { DutyAnswer, DutyRun } from '../../strength/duty.ts';
import type { Missing } from '../../types.ts';
import { type Check, type Outcome, type Scene, stagesOfKind } from '../check.ts';

export type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

/** A chain of the path with its place, its row of sizes, and how it turns. */
export interface ChainAt {
  readonly k: number;
  readonly stage: ChainStage;
  readonly chain: ChainGeometry;
  readonly row: ReturnType<typeof sizes>;
  readonly strands: number;
  /** Which table its number stands in. */
  readonly family: 'American' | 'ISO A' | 'ISO B' | 'motorcycle';
}

const sizes = (key: string) => rowInSi(CHAIN_SIZES, key);

function familyOf(key: string): ChainAt['family'] {
  if (Object.hasOwn(ANSI_CHAINS, key)) return 'American';
  if (!Object.hasOwn(ISO_CHAINS, key)) return 'motorcycle';
  return key.endsWith('B') ? 'ISO B' : 'ISO A';
}

/** Runs a check on a chain whose geometry is sound. */
export const onChain =
  (run: (at: ChainAt, scene: Scene, load: CaseLoads | null) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    const k = subject.stage;
    const geometry = k === null ? undefined : scene.stages[k];
    if (k === null || geometry?.stage.kind !== 'chain') return null;
    const { stage, chain, trouble } = geometry;
    if (!chain) return { kind: 'unknown', missing: trouble };
    const { key } = stage.size;
    return run(
      { k, stage, chain, row: sizes(key), strands: scene.at(stage.strands), family: familyOf(key) },
      scene,
      load,
    );
  };

export const chainSubjects = stagesOfKind('chain');

/** One part of the duty as a chain feels it. */
export interface ChainBin {
  readonly name: string;
  readonly torque: number;
  readonly pull: number;
  readonly driverSpeed: number;
  readonly lineSpeed: number;
  readonly power: number;
  readonly ofDistance: number;
  readonly ofTime: number;
}

/** The duty as one chain feels it; its pull whichever end drives. */
export function binsOf({ k, chain }: ChainAt, duty: DutyRun): readonly ChainBin[] {
  return duty.bins.map(({ point, load, ofDistance, ofTime }) => {
    const torque = Math.abs(load.stages[k]?.torqueIn ?? 0);
    const driverSpeed = load.shafts[k]?.speed ?? 0;
    return {
      name: point.name,
      torque,
      pull: torque / chain.pitchRadiusDriver,
      driverSpeed,
      lineSpeed: driverSpeed * chain.pitchRadiusDriver,
      power: torque * driverSpeed,
      ofDistance,
      ofTime,
    };
  });
}

/** Where nobody typed how it is driven: what the usual spectrum would say, and that it settles nothing. */
export const dutyNotTyped = (says: string): Missing => ({
  address: '/brief/duty/rows',
  says: `how it is driven (${says})`,
});

export const dutyOr = (duty: DutyAnswer): Outcome | DutyRun =>
  duty.ok ? duty : { kind: 'unknown', missing: duty.missing };

/** Inputs that the pull of a chain hangs on. */
export const pullUses = ({ stage }: ChainAt, duty: DutyRun): readonly Value[] => [stage.strands, ...duty.uses];

/** The working of a pull from its torque. */
export function usedPull({ stage, chain }: ChainAt, torque: number): Used {
  const input = { torque, pitchRadius: chain.pitchRadiusDriver };
  return {
    method: chainPull,
    input,
    output: chainPull.run(input),
    origins: { torque: 'torque carried through the path', pitchRadius: `${stage.address}/teeth/driver` },
  };
}

/** Speed of a shaft at the redline in top gear; null where the engine is not known. */
export function redlineSpeed(scene: Scene, shaft: number): number | null {
  if (!scene.engine || scene.boxRatios.length === 0) return null;
  const before = scene.stages.slice(0, shaft).reduce((product, stage) => product * stage.ratio, 1);
  return scene.engine.redline / (Math.min(...scene.boxRatios) * before);
}
