import { chainPull } from '@oddwheel/mechanics/chain/pull';
import { chainSlack } from '@oddwheel/mechanics/chain/slack';
import { chainStaticReserve } from '@oddwheel/mechanics/chain/static-reserve';
import type { Stage } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import type { ChainGeometry, StageGeometry, Used } from '../geometry/types.ts';
import type { CaseLoads } from '../loads.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

interface ChainScene {
  readonly stage: ChainStage;
  readonly geometry: StageGeometry;
  readonly chain: ChainGeometry;
}

/** The chain of a subject; an unknown outcome where its geometry is in trouble. */
function chainOf(scene: Scene, subject: Subject): ChainScene | Outcome | null {
  const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
  if (geometry?.stage.kind !== 'chain') return null;
  if (!geometry.chain) return { kind: 'unknown', missing: geometry.trouble };
  return { stage: geometry.stage, geometry, chain: geometry.chain };
}

/** Runs a check on the chain of a subject; a chain in trouble is unknown. */
const onChain =
  (run: (found: ChainScene, scene: Scene, subject: Subject, load: CaseLoads | null) => Outcome | null): Check['run'] =>
  (scene, subject, load) => {
    const found = chainOf(scene, subject);
    return found !== null && 'chain' in found ? run(found, scene, subject, load) : found;
  };

const usedOf =
  (geometry: StageGeometry, ...ids: readonly string[]) =>
  (): readonly Used[] =>
    geometry.used.filter((used) => ids.includes(used.method.id));

const chains = stagesOfKind('chain');
const PLACES = 'places of the two seats';

/** Both shafts of a chain lie parallel. */
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
    const { skew } = geometry;
    return measured(
      { name: 'as drawn', value: skew, kind: 'angle', use: 'angle' },
      { name: 'limit', value: CHAIN_LIMITS.parallel.value, kind: 'angle', use: 'angle' },
      () =>
        skew === 0
          ? 'The two shafts are drawn parallel.'
          : `The two shafts stand ${scene.show('angle', skew)} to each other; 1 in 300 is the limit.`,
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
  wanted: {
    reserve: 1.25,
    from: 'stated default of this project: a quarter in hand over the greatest peak of the load cases',
  },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: chains,
  run: onChain(({ stage, chain }, scene, subject, load) => {
    // When the vehicle drives the engine the other span pulls.
    const torque = Math.abs((subject.stage === null ? undefined : load?.stages[subject.stage]?.torqueIn) ?? 0);
    if (!(torque > 0)) return null;
    const firstIn = { torque, pitchRadius: chain.pitchRadiusDriver };
    const first = chainPull.run(firstIn);
    const input = { pull: first.pull, minTensile: stage.size.minTensile, strands: scene.at(stage.strands) };
    const output = chainStaticReserve.run(input);
    const { show } = scene;
    return {
      kind: 'measured',
      demand: { name: 'pull', value: first.pull, kind: 'force', use: 'force' },
      capacity: { name: 'half the least strength', value: output.limit, kind: 'force', use: 'force' },
      reserve: output.reserve,
      says: () =>
        `${show('force', first.pull)} pull; half of the least strength of ${stage.size.key} is ${show('force', output.limit)}.`,
      uses: [stage.strands, scene.model.engine.boxEfficiency, scene.model.engine.primary],
      used: () => [
        {
          method: chainPull,
          input: firstIn,
          output: first,
          origins: { torque: 'torque carried through the path', pitchRadius: `${stage.address}/teeth/driver` },
        },
        {
          method: chainStaticReserve,
          input,
          output,
          origins: { pull: 'above', minTensile: stage.size.strengthFrom, strands: stage.strands.address },
        },
      ],
    };
  }),
};

const noLinks = (stage: ChainStage): Outcome => ({
  kind: 'unknown',
  missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }],
});

/** The links fitted reach round both sprockets. */
export const fit: Check = {
  id: 'chain.fit',
  title: 'links against centres',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'a chain reaches round or not' },
  atWorst: 'fails',
  perCase: false,
  subjects: chains,
  run: onChain(({ stage, chain, geometry }) => {
    const links = stage.links;
    if (links === null) return noLinks(stage);
    return measured(
      { name: 'needed', value: chain.linksNeeded, kind: 'number', use: 'number' },
      { name: 'fitted', value: links, kind: 'number', use: 'number' },
      () => `${links} links are fitted, and the centres ask for ${chain.linksNeeded.toFixed(3)}.`,
      [],
      usedOf(geometry, 'chain.length'),
      { capacity: `${stage.address}/links`, demand: PLACES },
    );
  }),
};

/** Total movement by hand at mid-span against the usual limit. A tensioner takes the slack up itself. */
export const slack: Check = {
  id: 'chain.slack',
  title: 'slack of the chain',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.slackUsual.source },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onChain(({ stage, chain, geometry }, scene) => {
    if (stage.tensioner === true || stage.idler?.sprung) return null;
    if (stage.links === null) return noLinks(stage);
    const input = {
      pitch: stage.size.pitch,
      linksFitted: stage.links,
      linksNeeded: chain.linksNeeded,
      span: chain.span,
    };
    const output = chainSlack.run(input);
    const steep = chain.slope > CHAIN_LIMITS.mostSlope.value;
    const limit = steep ? CHAIN_LIMITS.slackSpecial : CHAIN_LIMITS.slackUsual;
    const { show } = scene;
    return measured(
      { name: 'movement over span', value: output.movementOverSpan, kind: 'number', use: 'percent' },
      { name: 'limit', value: limit.value, kind: 'number', use: 'percent' },
      () =>
        output.excess < 0
          ? `The chain is ${show('length', -output.excess)} too short to have slack.`
          : `${show('length', output.handMovement)} in all by hand at mid-span, ${show('percent', output.movementOverSpan)} of the span; ${show('percent', limit.value)} is the limit${steep ? ' for a steep drive' : ''}.`,
      [],
      () => [
        ...usedOf(geometry, 'chain.length')(),
        {
          method: chainSlack,
          input,
          output,
          origins: {
            pitch: `chain-sizes/${stage.size.key}`,
            linksFitted: `${stage.address}/links`,
            linksNeeded: 'above',
            span: 'above',
          },
        },
      ],
      { capacity: limit.row, demand: 'above' },
    );
  }),
};

/** Wrap on the smaller sprocket. */
export const wrap: Check = {
  id: 'chain.wrap',
  title: 'wrap of the smaller sprocket',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.leastWrap.source },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onChain(({ chain, geometry }, scene) => {
    const { value, row } = CHAIN_LIMITS.leastWrap;
    return measured(
      { name: 'least', value, kind: 'angle', use: 'angle' },
      { name: 'as drawn', value: chain.wrapSmall, kind: 'angle', use: 'angle' },
      () => `${scene.show('angle', chain.wrapSmall)} of wrap; ${scene.show('angle', value)} is the least.`,
      [],
      usedOf(geometry, 'chain.length'),
      { capacity: 'above', demand: row },
    );
  }),
};

/** The sprockets clear each other by half a pitch: room for the plates of both strands. */
export const clear: Check = {
  id: 'chain.clear',
  title: 'sprockets clear of each other',
  consequence: 'throws parts',
  wanted: { reserve: 1.02, from: 'common practice: room for plates and mud between the tips' },
  atWorst: 'fails',
  perCase: false,
  subjects: chains,
  run: onChain(({ chain, geometry, stage }, scene) => {
    const needed = chain.outsideDriver + chain.outsideDriven;
    return measured(
      { name: 'tips ask', value: needed, kind: 'length', use: 'length' },
      { name: 'centres', value: chain.centreDistance, kind: 'length', use: 'length' },
      () =>
        `The tooth tips of ${stage.teeth.driver} and ${stage.teeth.driven} ask for ${scene.show('length', needed)} between centres; there are ${scene.show('length', chain.centreDistance)}.`,
      [],
      usedOf(geometry, 'chain.sprocketDiameters'),
      { capacity: PLACES, demand: 'above' },
    );
  }),
};

/** A steep line of centres drops the slack off the lower sprocket unless a tensioner holds it. */
export const slope: Check = {
  id: 'chain.slope',
  title: 'slope of the line of centres',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: CHAIN_LIMITS.mostSlope.source },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onChain(({ chain, stage }, scene) => {
    const { value, row } = CHAIN_LIMITS.mostSlope;
    if (stage.tensioner === true || stage.idler?.span === 'slack span')
      return {
        kind: 'plain',
        holds: true,
        says: () => 'A tensioner holds the slack side, so the slope is free.',
        uses: [],
        used: () => [],
      };
    if (stage.tensioner === null && stage.idler === null && chain.slope > value)
      return {
        kind: 'unknown',
        missing: [{ address: `${stage.address}/tensioner`, says: 'whether a tensioner holds the slack side' }],
      };
    return measured(
      { name: 'as drawn', value: chain.slope, kind: 'angle', use: 'angle' },
      { name: 'limit', value, kind: 'angle', use: 'angle' },
      () =>
        chain.slope > value
          ? `The line of centres stands ${scene.show('angle', chain.slope)} steep, over ${scene.show('angle', value)}: give the slack side a tensioner.`
          : `The line of centres stands ${scene.show('angle', chain.slope)} steep; up to ${scene.show('angle', value)} needs no tensioner.`,
      [],
      () => [],
      { capacity: row, demand: PLACES },
    );
  }),
};

/** An odd number of links needs an offset link, which is weaker. */
export const links: Check = {
  id: 'chain.links',
  title: 'even number of links',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'ISO 606: an offset link keeps 80 % of the strength; from memory' },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onChain(({ stage }) => {
    if (stage.links === null) return noLinks(stage);
    const count = stage.links;
    const even = count % 2 === 0;
    return {
      kind: 'plain',
      holds: even,
      says: () =>
        even
          ? `${count} links close with an ordinary joining link.`
          : `${count} links need an offset link, which keeps about 80 % of the strength.`,
      uses: [],
      used: () => [],
    };
  }),
};
