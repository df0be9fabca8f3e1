import { CHAIN_LIMITS } from '../../model/rows.ts';
import type { Stage } from '../../model/model.ts';
import type { ChainGeometry, StageGeometry, Used } from '../geometry/types.ts';
import { type Check, type Outcome, type Scene, stagesOfKind, type Subject } from './check.ts';
import { measured } from './measured.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

interface ChainScene {
  readonly stage: ChainStage;
  readonly geometry: StageGeometry;
  readonly chain: ChainGeometry;
}

/** The chain of a subject; unknown where its geometry is in trouble. */
function chainOf(scene: Scene, subject: Subject): ChainScene | Outcome | null {
  const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
  if (geometry?.stage.kind !== 'chain') return null;
  if (!geometry.chain) return { kind: 'unknown', missing: geometry.trouble };
  return { stage: geometry.stage, geometry, chain: geometry.chain };
}

const isChain = (x: ChainScene | Outcome | null): x is ChainScene => x !== null && 'chain' in x;

const usedOf = (geometry: StageGeometry, ...ids: readonly string[]) => (): readonly Used[] =>
  geometry.used.filter((used) => ids.includes(used.method.id));

const chains = stagesOfKind('chain');

/** Both shafts of a chain lie parallel; without that it cannot run. */
export const parallel: Check = {
  id: 'chain.parallel',
  title: 'shafts parallel',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: CHAIN_LIMITS.parallel.source },
  atWorst: 'fails',
  perCase: false,
  subjects: chains,
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (!geometry) return null;
    const slip = geometry.skew;
    const limit = CHAIN_LIMITS.parallel.value;
    return measured(
      { name: 'as drawn', value: slip, kind: 'angle', use: 'angle' },
      { name: 'limit', value: limit, kind: 'angle', use: 'angle' },
      () => (slip === 0 ? 'The two shafts are drawn parallel.' : `The two shafts stand ${scene.show('angle', slip)} to each other; 1 in 300 is the limit.`),
      [],
      () => [],
      { capacity: CHAIN_LIMITS.parallel.row, demand: 'directions of the two shafts' },
    );
  },
};

/** Pull of the tight span against half the least tensile strength, never to be passed even once. */
export const pull: Check = {
  id: 'chain.pull',
  title: 'pull against strength',
  consequence: 'throws parts',
  wanted: { reserve: 1.5, from: 'stated default of this project: room for a snatch on top of the steady pull' },
  atWorst: 'fails',
  perCase: true,
  subjects: chains,
  run: (scene, subject, load) => {
    const found = chainOf(scene, subject);
    if (!isChain(found)) return found;
    const { stage, chain } = found;
    const torque = subject.stage === null ? undefined : load?.stages[subject.stage]?.torqueIn;
    if (torque === undefined) return null;
    const strands = scene.at(stage.strands);
    const first = CHAIN_METHODS.pull.run({ torque, pitchRadius: chain.pitchRadiusDriver });
    const input = { pull: first.pull, minTensile: stage.size.minTensile, strands };
    const output = CHAIN_METHODS.staticReserve.run(input);
    return {
      kind: 'measured',
      demand: { name: 'pull', value: first.pull, kind: 'force', use: 'force' },
      capacity: { name: 'half the least strength', value: output.limit, kind: 'force', use: 'force' },
      reserve: output.reserve,
      says: () => `${scene.show('force', first.pull)} pull; half of the least strength of ${stage.size.key} is ${scene.show('force', output.limit)}.`,
      uses: [stage.strands, scene.model.engine.boxEfficiency, scene.model.engine.primary],
      used: () => [
        { method: CHAIN_METHODS.pull, input: { torque, pitchRadius: chain.pitchRadiusDriver }, output: first, origins: { torque: 'torque carried through the path', pitchRadius: `${stage.address}/teeth/driver` } },
        { method: CHAIN_METHODS.staticReserve, input, output, origins: { pull: 'above', minTensile: `chain-sizes/${stage.size.key}`, strands: stage.strands.address } },
      ],
    };
  },
};
