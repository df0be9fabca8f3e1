import type { Model } from '../../model/model.ts';
import { slidingPlan, wholePlan } from '../assembly/assembly.ts';
import { type Part, partsOf } from '../assembly/parts.ts';
import { assemblySteps, missingJoint, shutIn } from '../assembly/steps.ts';
import { allOf, type Verdict, YES } from '../assembly/verdict.ts';
import type { Missing } from '../types.ts';
import { type Check, type Outcome, type Scene, type Subject, stagesOfKind } from './check.ts';
import { perModel } from './per-model.ts';

const own = { reserve: 1, from: 'a part goes over or through another or not' } as const;

const plainly = (holds: boolean, says: string): Outcome => ({
  kind: 'plain',
  holds,
  says: () => says,
  uses: [],
  used: () => [],
});

/** A verdict as an outcome of a check. */
function outcomeOf(verdict: Verdict, yes: () => string, no: string): Outcome {
  if (verdict.is === 'open') return { kind: 'unknown', missing: verdict.missing };
  return verdict.is === 'yes' ? plainly(true, yes()) : plainly(false, `${no}: ${verdict.why.join('; ')}.`);
}

/** Shafts that the builder puts together, with more than one part. */
const shafts = (model: Model): readonly Subject[] =>
  model.shafts
    .slice(1)
    .filter(({ seats }) => seats.length > 1)
    .map(({ address, name }) => ({ address, element: name, stage: null }));

const indexOf = (scene: Scene, subject: Subject): number =>
  scene.model.shafts.findIndex(({ address }) => address === subject.address);

interface Room {
  readonly verdict: Verdict;
  readonly least: { readonly gap: number; readonly between: string } | null;
}

/** Room along the shaft between parts next to each other. */
function roomBetween(parts: readonly Part[], show: Scene['show']): Room {
  let least: Room['least'] = null;
  const verdicts = parts.slice(1).map((part, k): Verdict => {
    const before = parts[k];
    if (!before) return YES;
    const between = `${before.seat.name} and ${part.seat.name}`;
    const missing: Missing[] = [before, part].flatMap(({ width }) => (width.value === null ? [width.missing] : []));
    if (before.width.value === null || part.width.value === null) return { is: 'open', missing };
    const gap = part.station - before.station - (before.width.value + part.width.value) / 2;
    if (least === null || gap < least.gap) least = { gap, between };
    // Parts that touch do so on purpose.
    return gap > -1e-9 ? YES : { is: 'no', why: [`${between} overlap by ${show('length', -gap)}`] };
  });
  return { verdict: allOf(verdicts), least };
}

/** Every part has room on its shaft and slides to its seat from one end, past seats that are no larger than its bore. */
export const slide: Check = {
  id: 'assembly.slide',
  title: 'parts slide to their seats',
  consequence: 'misses a target',
  wanted: own,
  atWorst: 'fails',
  perCase: false,
  subjects: shafts,
  run: perModel((scene, subject) => {
    const parts = partsOf(scene.model, indexOf(scene, subject));
    const room = roomBetween(parts, scene.show);
    const sized = parts.map(
      ({ bore }): Verdict => (bore.value === null ? { is: 'open', missing: [bore.missing] } : YES),
    );
    const verdict = allOf([room.verdict, slidingPlan(scene.model, indexOf(scene, subject)).verdict, ...sized]);
    const gap = room.least;
    return outcomeOf(
      verdict,
      () =>
        `Every part slides to its seat from one end${gap ? `; least room is ${scene.show('length', gap.gap)}, between ${gap.between}` : ''}.`,
      'It cannot be put together',
    );
  }),
};

/** The shaft enters and leaves its plates with the subframe welded. */
export const enter: Check = {
  id: 'assembly.enter',
  title: 'shaft enters its welded plates',
  consequence: 'misses a target',
  wanted: own,
  atWorst: 'fails',
  perCase: false,
  subjects: (model) =>
    shafts(model).filter(({ address }) =>
      partsOf(
        model,
        model.shafts.findIndex((shaft) => shaft.address === address),
      ).some(({ opening }) => opening !== null),
    ),
  run: perModel((scene, subject) => {
    const { model } = scene;
    const index = indexOf(scene, subject);
    const parts = partsOf(model, index);
    // Parts that do not slide to their seats are the business of that check.
    if (slidingPlan(model, index).verdict.is === 'no') return null;
    const whole = wholePlan(model, index);
    return outcomeOf(
      whole.verdict,
      () => assemblySteps(model, index, parts, whole.plan).slice(0, -1).join(' '),
      'From neither side does the shaft go into its plates',
    );
  }),
};

/** A closed chain or belt gets on: by a link that opens, or over a shaft's end. */
export const close: Check = {
  id: 'assembly.close',
  title: 'chain or belt goes on',
  consequence: 'misses a target',
  wanted: { reserve: 1, from: 'a closed loop passes a free end of a shaft or not' },
  atWorst: 'fails',
  perCase: false,
  subjects: stagesOfKind('chain', 'belt'),
  run: ({ model }, subject) => {
    const stage = subject.stage === null ? undefined : model.stages[subject.stage];
    if (subject.stage === null || (stage?.kind !== 'chain' && stage?.kind !== 'belt')) return null;
    if (stage.kind === 'chain' && stage.joint === null) return { kind: 'unknown', missing: [missingJoint(stage)] };
    if (stage.kind === 'chain' && stage.joint === 'joining link')
      return plainly(true, 'It closes with a joining link anywhere along its run.');
    if (stage.kind === 'chain' && stage.joint === 'riveted link')
      return plainly(
        true,
        'It closes with a riveted link; each time it is opened it takes a chain tool and a new link.',
      );
    const shut = shutIn(model, subject.stage).flatMap(({ shaft, part }) => {
      const seat = partsOf(model, shaft)[part]?.seat;
      return seat ? [`${seat.name} on ${model.shafts[shaft]?.name}`] : [];
    });
    return shut.length === 0
      ? plainly(true, 'It has no link to open, and slips on over a free end of both shafts.')
      : plainly(
          false,
          `It has no link to open, and ${shut.join(' and ')} ${shut.length > 1 ? 'stand' : 'stands'} between bearings: it goes on and off only with the shaft drawn.`,
        );
  },
};
