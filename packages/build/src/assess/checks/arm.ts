import { chainLength } from '@oddwheel/mechanics/chain/length';
import { chainWearTakeUp } from '@oddwheel/mechanics/chain/wear-take-up';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot, minus, norm } from '@oddwheel/mechanics/numerics/vector';
import { chainOnArm } from '@oddwheel/mechanics/suspension/chain-on-arm';
import { armSlackToSet } from '@oddwheel/mechanics/suspension/slack-to-set';
import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { sourceOf } from '@oddwheel/tables/table';
import type { Model } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import { type Within, within } from '../../model/within.ts';
import { type ArmChain, armInput, driveOrigins, onArmChain, placeName } from '../stroke/arm.ts';
import { halves, onArmInput, roomOrigins, type SpanGap, spanGaps } from '../stroke/room.ts';
import { slackAt, slackLimit, slackOrigins, slotOf, wantedSlack } from '../stroke/slack.ts';
import { armHeightMissing } from '../stroke/stroke.ts';
import { type Check, type Outcome, type Scene, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';
import { perModel } from './per-model.ts';

const chains = stagesOfKind('chain');

const noLinks = ({ stage }: ArmChain): Outcome => ({
  kind: 'unknown',
  missing: [{ address: `${stage.address}/links`, says: 'the number of links fitted' }],
});

/** Runs a check on a chain to the arm; what `chain.stroke` already calls unknown is left to it. */
const onArm = (run: (arm: ArmChain, scene: OnArm) => Outcome | null): Check['run'] => {
  const known: Within<Outcome | null> = new WeakMap();
  return perModel((scene, subject) =>
    onArmChain<Outcome | null>(scene, subject.stage, {
      arm: (arm) => within(known, [arm, scene.model.adjusters, scene.model.units], () => run(arm, scene)),
      missing: () => null,
    }),
  );
};

/** What these checks read beside the chain. */
interface OnArm {
  readonly show: Scene['show'];
  readonly model: Pick<Model, 'adjusters' | 'units'>;
}

/** "at full bump", or how far from where the wheel is drawn. */
function placeText(arm: ArmChain, angle: number, show: Scene['show']): string {
  if (arm.travel.output.tightestAt === 'everywhere alike') return 'at every place of the arm';
  const name = placeName(arm, angle);
  if (name !== null) return name === 'as drawn' ? name : `at ${name}`;
  const off = angle - arm.drawn;
  return `${show('angle', Math.abs(off))} ${off < 0 ? 'below' : 'above'} where the wheel is drawn`;
}

/** Slack set right at the tightest place stays below its limit everywhere else. */
export const armSlack: Check = {
  id: 'arm.slack',
  title: 'slack over the stroke of the arm',
  consequence: 'throws parts',
  wanted: {
    reserve: 1,
    from: `${CHAIN_LIMITS.slackUsual.source}; half of it left where the chain is tightest is a stated default of this project`,
  },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onArm((arm, { show }) => {
    const { stage } = arm;
    if (stage.tensioner === true) return null;
    if (stage.links === null) return noLinks(arm);
    const { nearest } = arm.travel;
    const wanted = wantedSlack(arm);
    const set = slackAt(arm, stage.links, nearest.angle, wanted);
    if (!set)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'links that reach round' }] };
    const { movementToMeasure, spanMeasured } = set.output;
    const limit = slackLimit(arm);
    return measured(
      { name: 'movement over span', value: movementToMeasure / spanMeasured, kind: 'number', use: 'percent' },
      { name: 'limit', value: limit.value, kind: 'number', use: 'percent' },
      () =>
        `With ${show('length', wanted)} by hand left where it is tightest, the chain moves by ${show('length', movementToMeasure)} ${placeText(arm, nearest.angle, show)}, ${show('percent', movementToMeasure / spanMeasured)} of the span; ${show('percent', limit.value)} is the limit.`,
      [],
      () => [
        { method: armSlackToSet, ...set, origins: slackOrigins(arm, 'where the centres are nearest over the stroke') },
      ],
      { capacity: limit.row, demand: 'movement to measure over the straight span there, both above' },
    );
  }),
};

/** Wrap of the smaller sprocket where the centres are nearest. */
export const armWrap: Check = {
  id: 'arm.wrap',
  title: 'wrap over the stroke of the arm',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_LIMITS.leastWrap.source },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onArm((arm, { show }) => {
    const { pitch } = arm.stage.size;
    const { nearest } = arm.travel;
    const { driver: teethDriver, driven: teethDriven } = arm.stage.teeth;
    const input = { pitch, teethDriver, teethDriven, centreDistance: nearest.centreDistance };
    const output = chainLength.run(input);
    const wrap = Math.min(output.wrapDriver, output.wrapDriven);
    const { value, row } = CHAIN_LIMITS.leastWrap;
    return measured(
      { name: 'least', value, kind: 'angle', use: 'angle' },
      { name: 'over the stroke', value: wrap, kind: 'angle', use: 'angle' },
      () =>
        `At the least ${show('angle', wrap)} of wrap, ${placeText(arm, nearest.angle, show)}; ${show('angle', value)} has to be there.`,
      [],
      () => [
        {
          method: chainLength,
          input,
          output,
          origins: {
            pitch: `chain-sizes/${arm.stage.size.key}`,
            teethDriver: `${arm.stage.address}/teeth/driver`,
            teethDriven: `${arm.stage.address}/teeth/driven`,
            centreDistance: 'the nearest over the stroke of the arm',
          },
        },
      ],
      { capacity: 'above', demand: row },
    );
  }),
};

/** Places alike within rounding count as the first of them. */
const ALIKE = 1 - 1e-9;

/** The span that has least room for what it asks. */
function tightestGap(gaps: readonly SpanGap[], asks: (gap: SpanGap) => number): SpanGap | null {
  return gaps.reduce<SpanGap | null>(
    (worst, one) => (worst === null || one.gap / asks(one) < (worst.gap / asks(worst)) * ALIKE ? one : worst),
    null,
  );
}

/** Room of the chain against the arm, of spans drawn straight or of spans that hang. */
function rub(arm: ArmChain, scene: OnArm, hanging: boolean): Outcome | null {
  const { armHeight } = arm.suspension;
  const { show } = scene;
  if (armHeight === null) return hanging ? null : { kind: 'unknown', missing: [armHeightMissing(arm)] };
  if (armHeight === 0) {
    if (hanging) return null;
    return { kind: 'plain', holds: true, says: () => 'The chain runs clear beside the arm.', uses: [], used: () => [] };
  }
  if (hanging && arm.stage.links === null) return noLinks(arm);
  const gaps = spanGaps(arm);
  const half = halves(arm, armHeight);
  const asks = ({ deflection }: SpanGap): number => half + (hanging ? (deflection ?? 0) : 0);
  const worst = gaps && tightestGap(gaps, asks);
  if (!worst)
    return {
      kind: 'unknown',
      missing: [
        { address: `${arm.suspension.address}/pivot`, says: 'an arm and a line of centres that do not stand upright' },
      ],
    };
  const needed = asks(worst);
  const room = worst.gap - needed;
  // The span looked at is the slack one of the method when it hangs, and the pulling one when it is straight.
  const other = worst.span === 'upper' ? 'lower' : 'upper';
  const input = onArmInput(arm, worst.angle, {
    tightSpan: hanging ? other : worst.span,
    slackDeflection: hanging ? (worst.deflection ?? 0) : 0,
  });
  const how = hanging ? 'hangs or flaps' : 'runs straight';
  return measured(
    { name: 'arm and chain take', value: needed, kind: 'length', use: 'length' },
    { name: 'between their lines', value: worst.gap, kind: 'length', use: 'length' },
    () =>
      room < 0
        ? `The ${worst.span} span rubs on the arm by ${show('length', -room)} ${placeText(arm, worst.angle, show)}, when it ${how}: ${hanging ? 'keep the slack small and renew the rubbing strip in time' : 'lower the arm there, lead the chain over a roller, or move the pivot'}.`
        : `The ${worst.span} span, when it ${how}, keeps ${show('length', room)} from the arm where it comes nearest, ${placeText(arm, worst.angle, show)}.`,
    [],
    () => [{ method: chainOnArm, input, output: chainOnArm.run(input), origins: roomOrigins(arm) }],
    {
      capacity: `gap of the ${worst.span} span, above`,
      demand: hanging ? 'both half heights and the slack deflection, above' : 'both half heights, above',
    },
  );
}

/** A span drawn straight by its pull keeps off the arm over the whole stroke. */
export const armRub: Check = {
  id: 'arm.rub',
  title: 'room between the pulling chain and the arm',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'common practice: a chain under pull saws through what it runs on' },
  atWorst: 'fails',
  perCase: false,
  subjects: chains,
  run: onArm((arm, scene) => rub(arm, scene, false)),
};

/** A span that hangs keeps off the arm, or wears its strip. */
export const armRubSlack: Check = {
  id: 'arm.rub-slack',
  title: 'room between the hanging chain and the arm',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: motorcycles let a slack chain touch a rubbing strip, which wears' },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onArm((arm, scene) => rub(arm, scene, true)),
};

/** Travel that wear asks for; null where no centre distance answers the links. */
function wearOf(arm: ArmChain, linksFitted: number, travel: number) {
  const { pitch, teethDriver, teethDriven } = armInput(arm);
  const input = { pitch, teethDriver, teethDriven, linksFitted, centres: 'adjustable' as const, travel: 2 * travel };
  try {
    return {
      method: chainWearTakeUp,
      input,
      output: chainWearTakeUp.run(input),
      origins: {
        ...driveOrigins(arm),
        linksFitted: `${arm.stage.address}/links`,
        centres: 'an axle slot adjusts them',
        travel: 'both ways of the slot, along the arm',
      },
    };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}

/** The axle slot reaches where the wanted slack is, and follows the chain as it wears. */
export const armSlot: Check = {
  id: 'arm.slot',
  title: 'axle slot against slack and wear over the stroke',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(CHAIN_LIMITS_TABLE, 'take-up') },
  atWorst: 'thin',
  perCase: false,
  subjects: chains,
  run: onArm((arm, scene) => {
    const slot = slotOf(scene.model, arm);
    const { stage } = arm;
    const { links } = stage;
    if (!slot || stage.tensioner === true) return null;
    if (links === null) return noLinks(arm);
    const { show } = scene;
    const outward = minus(arm.moving.at, arm.suspension.pivot);
    const flat = [outward[0], 0, outward[2]] as const;
    const along = slot.travel * Math.abs(dot(slot.along, flat) / norm(flat));
    const fresh = slackAt(arm, links, arm.drawn, wantedSlack(arm));
    const wear = wearOf(arm, links, along);
    if (!fresh || !wear)
      return { kind: 'unknown', missing: [{ address: `${stage.address}/links`, says: 'links that reach round' }] };
    const shift = fresh.output.adjustment;
    const { wearTravel, twoPitchTravel } = wear.output;
    // Taken out in pairs, links bring the axle back; else the slot has to hold all the wear. The way that asks for less of it counts.
    const inPairs = stage.joint !== 'endless' && twoPitchTravel < 2 * wearTravel;
    const [needed, there] = inPairs ? [twoPitchTravel, 2 * along] : [wearTravel, along];
    const bySetting = along * needed < there * Math.abs(shift);
    const says = `For the wanted slack the axle goes ${show('length', Math.abs(shift))} ${shift < 0 ? 'toward' : 'away from'} the pivot`;
    return measured(
      {
        name: 'asked along the arm',
        value: bySetting ? Math.abs(shift) : needed,
        kind: 'length',
        use: 'length',
      },
      { name: 'slot along the arm', value: bySetting ? along : there, kind: 'length', use: 'length' },
      () =>
        bySetting
          ? `${says}; ${show('length', along)} each way are there at ${slot.name}.`
          : `${says}; it moves by ${show('length', needed)} ${inPairs ? 'before two links come out' : 'outward until the chain is worn out'}, and there are ${show('length', there)} for that at ${slot.name}.`,
      [],
      () => [{ method: armSlackToSet, ...fresh, origins: slackOrigins(arm, 'as drawn') }, ...(bySetting ? [] : [wear])],
      {
        capacity: `${inPairs && !bySetting ? 'both ways of ' : ''}${slot.address}/travel, along the arm`,
        demand: 'above',
      },
    );
  }),
};
