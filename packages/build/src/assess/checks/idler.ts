import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { sourceOf } from '@oddwheel/tables/table';
import type { Idler, Stage } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import { onTightSpan } from '../geometry/idler.ts';
import { turning } from '../geometry/place.ts';
import type { ChainGeometry, IdlerGeometry, StageGeometry } from '../geometry/types.ts';
import type { Missing } from '../types.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

interface OnIdler {
  readonly stage: ChainStage;
  readonly geometry: StageGeometry;
  readonly chain: ChainGeometry;
  readonly idler: Idler;
  readonly over: IdlerGeometry;
}

const plainly = (holds: boolean, says: () => string, geometry?: StageGeometry): Outcome => ({
  kind: 'plain',
  holds,
  says,
  uses: [],
  used: () => geometry?.used.filter(({ method }) => method.id === 'chain.idlerLength') ?? [],
});

const withIdler: Check['subjects'] = (model) =>
  stagesOfKind('chain')(model).filter(({ stage }) => {
    const found = stage === null ? undefined : model.stages[stage];
    return found?.kind === 'chain' && found.idler !== null;
  });

/** Runs a check on the idler of a chain; a chain in trouble is unknown. */
const onIdler =
  (run: (found: OnIdler, scene: Scene, subject: Subject) => Outcome | null): Check['run'] =>
  (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    if (geometry?.stage.kind !== 'chain' || !geometry.stage.idler) return null;
    const { stage, chain } = { stage: geometry.stage, chain: geometry.chain };
    const { idler } = stage;
    if (!idler) return null;
    if (!chain?.idler) return { kind: 'unknown', missing: geometry.trouble };
    return run({ stage, geometry, chain, idler, over: chain.idler }, scene, subject);
  };

/** Enough teeth in mesh that the chain does not climb over them. */
export const mesh: Check = {
  id: 'idler.mesh',
  title: 'teeth of the idler in mesh',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: CHAIN_LIMITS.idlerMesh.source },
  atWorst: 'fails',
  perCase: false,
  subjects: withIdler,
  run: (scene, subject) => {
    const geometry = subject.stage === null ? undefined : scene.stages[subject.stage];
    const idler = geometry?.stage.kind === 'chain' ? geometry.stage.idler : null;
    const trouble = geometry?.trouble.find(({ address }) => address === `${idler?.address}/at`);
    if (trouble) return plainly(false, () => `The idler does not do its work: wanted is ${trouble.says}.`);
    return onIdler(({ over }) => {
      const { value, row } = CHAIN_LIMITS.idlerMesh;
      return measured(
        { name: 'least', value, kind: 'number', use: 'number' },
        { name: 'in mesh', value: over.teethInMesh, kind: 'number', use: 'number' },
        () => `${over.teethInMesh.toFixed(2)} teeth of the idler are in mesh; ${value} are the least.`,
        [],
        () => geometry?.used.filter(({ method }) => method.id === 'chain.idlerLength') ?? [],
        { capacity: 'above', demand: row },
      );
    })(scene, subject, null);
  },
};

/** Which span the idler touches with the wheel rolling as it does; what leaves it open where the sense is not known. */
function touches(
  { chain, geometry, over }: OnIdler,
  scene: Scene,
  subject: Subject,
): Idler['span'] | readonly Missing[] {
  const sense = subject.stage === null ? null : (scene.senses[subject.stage] ?? null);
  if (sense === null) return scene.stages.flatMap(({ relation, trouble }) => (relation === null ? trouble : []));
  return onTightSpan(over.span, chain.u, turning(geometry.from, sense)) ? 'tight span' : 'slack span';
}

/** The idler sits on the span that it is said to sit on. */
export const place: Check = {
  id: 'idler.place',
  title: 'idler on the span it is meant for',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'the span that runs onto the driver is the tight one' },
  atWorst: 'fails',
  perCase: false,
  subjects: withIdler,
  run: onIdler((found, scene, subject) => {
    const real = touches(found, scene, subject);
    if (typeof real !== 'string') return { kind: 'unknown', missing: real };
    const { idler, geometry } = found;
    return plainly(
      real === idler.span,
      () =>
        real === idler.span
          ? `Where it is drawn the idler touches the ${real}.`
          : `The idler is meant for the ${idler.span}, but where it is drawn it touches the ${real}: the span that runs onto the driver is the tight one.`,
      geometry,
    );
  }),
};

/** On the tight span an idler carries part of the pull; on the slack span almost nothing. */
export const slackSide: Check = {
  id: 'idler.slack-side',
  title: 'idler on the slack span',
  consequence: 'wears out',
  wanted: {
    reserve: 1,
    from: 'A chain maker’s catalogue, read as quoted: an adjustable idler engages with the unloaded strand',
  },
  atWorst: 'thin',
  perCase: false,
  subjects: withIdler,
  run: onIdler((found, scene, subject) => {
    const real = touches(found, scene, subject);
    if (typeof real !== 'string') return { kind: 'unknown', missing: real };
    const part = 2 * Math.sin(Math.min(found.over.wrap, Math.PI) / 2);
    return plainly(
      real === 'slack span',
      () =>
        real === 'slack span'
          ? 'The idler runs on the slack span.'
          : `The idler runs on the tight span and carries ${scene.show('percent', part)} of the chain’s pull: set it on the slack span, or make its stud for that.`,
      found.geometry,
    );
  }),
};

/** A spring cannot hold a span that runs tight when the engine brakes. */
export const overrun: Check = {
  id: 'idler.overrun',
  title: 'tensioner when the engine brakes',
  consequence: 'throws parts',
  wanted: {
    reserve: 1,
    from: 'common practice: with engine braking the slack span runs tight, and a sprung tensioner gives way',
  },
  atWorst: 'fails',
  perCase: false,
  subjects: (model) =>
    stagesOfKind('chain')(model).filter(({ stage }) => {
      const found = stage === null ? undefined : model.stages[stage];
      return found?.kind === 'chain' && (found.idler !== null || found.tensioner === true);
    }),
  run: (scene, subject) => {
    const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
    if (stage?.kind !== 'chain') return null;
    if (!stage.idler)
      return {
        kind: 'unknown',
        missing: [
          { address: `${stage.address}/idler`, says: 'place of the tensioner, and whether it is fixed or sprung' },
        ],
      };
    const { sprung, span } = stage.idler;
    return plainly(!sprung, () => {
      if (!sprung) return 'The idler is held fast, so it also stands when the engine brakes.';
      return span === 'slack span'
        ? 'The sprung tensioner sits on the slack span, which runs tight when the engine brakes: it gives way, the slack goes over to the other span, and the chain can jump. Hold the idler fast in a slot, on the slack span.'
        : 'The sprung tensioner sits on the tight span and gives way under every pull. Hold the idler fast in a slot, on the slack span.';
    });
  },
};

/** The idler runs in the plane of the driver. */
export const idlerPlane: Check = {
  id: 'idler.plane',
  title: 'idler in the plane of the chain',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: sourceOf(CHAIN_LIMITS_TABLE, 'face-offset') },
  atWorst: 'fails',
  perCase: false,
  subjects: withIdler,
  run: onIdler(({ over, idler }, scene) => {
    const { value, row } = CHAIN_LIMITS.faceOffset;
    return measured(
      { name: 'out of plane', value: over.planeOffset, kind: 'length', use: 'length' },
      { name: 'limit', value, kind: 'length', use: 'length' },
      () =>
        over.planeOffset === 0
          ? 'The idler runs in the plane of the driver.'
          : `The idler stands ${scene.show('length', over.planeOffset)} out of the driver’s plane; ${scene.show('length', value)} is the limit.`,
      [],
      () => [],
      { capacity: row, demand: `${idler.address}/at` },
    );
  }),
};
