import { MethodError } from '@oddwheel/mechanics/method/method';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import { armSlackToSet } from '@oddwheel/mechanics/suspension/slack-to-set';
import type { Adjuster, Model } from '../../model/model.ts';
import { CHAIN_LIMITS } from '../../model/rows.ts';
import type { Scene } from '../checks/check.ts';
import { type ArmChain, armInput, armOrigins, withAxleAt } from './arm.ts';
import type { AxleSlot, SlackSetting, SlotEnd } from './types.ts';

type Show = Scene['show'];

/** Greatest movement over the span: less on a steep line of centres. */
export function slackLimit({ chain }: ArmChain): {
  readonly value: number;
  readonly row: string;
  readonly source: string;
} {
  return chain.slope > CHAIN_LIMITS.mostSlope.value ? CHAIN_LIMITS.slackSpecial : CHAIN_LIMITS.slackUsual;
}

/** Part of the greatest movement that is left where the chain is tightest, so that it has room to grow over the stroke. */
const LEFT_WHERE_TIGHTEST = 0.5;

/** Movement wanted where the chain is tightest. */
export function wantedSlack(arm: ArmChain): number {
  return LEFT_WHERE_TIGHTEST * slackLimit(arm).value * arm.travel.output.spanTightest;
}

/**
 * Slack to measure at one arm angle.
 * @param movementTightest total hand movement left where the chain is tightest, m
 * @returns null where no place of the axle gives it
 */
export function slackAt(arm: ArmChain, links: number, measureAngle: number, movementTightest: number) {
  const input = {
    ...armInput(arm),
    linksFitted: links,
    reboundAngle: arm.rebound,
    bumpAngle: arm.bump,
    measureAngle,
    movementTightest,
  };
  try {
    return { input, output: armSlackToSet.run(input) };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}

/** Where the inputs of {@link slackAt} came from. */
export function slackOrigins(arm: ArmChain, measured: string): Readonly<Record<string, string>> {
  const { address } = arm.suspension;
  return {
    ...armOrigins(arm),
    linksFitted: `${arm.stage.address}/links`,
    reboundAngle: `${address}/rebound`,
    bumpAngle: `${address}/bump`,
    measureAngle: measured,
    movementTightest: `half of ${slackLimit(arm).row}, of the span where tightest`,
  };
}

/** Arm angle on the stand: full rebound where it is not said. */
const standAngle = (arm: ArmChain): number => arm.drawn - (arm.suspension.stand ?? arm.suspension.rebound);

/** A shift of the axle that no builder sets by hand, m. */
const UNSEEN = 0.05e-3;

/** What to measure on the stand and on the wheels; null where no place of the axle gives the wanted slack. */
export function slackSetting(arm: ArmChain, links: number, show: Show): SlackSetting | null {
  const wanted = wantedSlack(arm);
  const onStand = slackAt(arm, links, standAngle(arm), wanted);
  const onWheels = slackAt(arm, links, arm.drawn, wanted);
  if (!onStand || !onWheels) return null;
  const { suspension, stage } = arm;
  const assumed = suspension.stand === null;
  const shift = onStand.output.adjustment;
  const [stand, wheels] = [onStand.output.movementToMeasure, onWheels.output.movementToMeasure];
  const where = assumed ? 'on the stand, the arm hanging at full rebound' : 'on the stand';
  const set =
    onStand.output.tightestAt === 'everywhere alike'
      ? `Set ${stage.name} to ${show('length', wanted)} of movement in all by hand at mid-span, on the stand or on its wheels alike.`
      : `Set ${stage.name} to ${show('length', stand)} of movement in all by hand at mid-span ${where}, or to ${show('length', wheels)} on its wheels; then ${show('length', wanted)} are left where it is tightest.`;
  const axle =
    Math.abs(shift) < UNSEEN
      ? 'The axle stays where it is drawn.'
      : `The axle goes ${show('length', Math.abs(shift))} ${shift < 0 ? 'toward' : 'away from'} the pivot from where it is drawn.`;
  return {
    wanted,
    onStand: stand,
    onWheels: wheels,
    stand: suspension.stand ?? suspension.rebound,
    standAssumed: assumed,
    shift,
    text: `${set} ${axle}`,
  };
}

/** The adjuster of a chain's slack that moves the shaft on the arm. */
export function slotOf(model: Pick<Model, 'adjusters'>, arm: ArmChain): Adjuster | null {
  return (
    model.adjusters.find(({ sets, of, moves }) => sets === 'slack' && of === arm.stage.id && moves === arm.onArm.id) ??
    null
  );
}

/** The chain with its axle at one end of the slot; null where the sprockets then meet. */
function slotEnd(arm: ArmChain, slot: Adjuster, by: number): SlotEnd | null {
  try {
    const moved = withAxleAt(arm, plus(arm.moving.at, times(by, slot.along)));
    const { output, input } = moved.travel;
    const drawn = output.centres[input.armAngles.indexOf(moved.drawn)] ?? Number.NaN;
    return { by, centreDistance: drawn, excess: output.excessTightest };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}

/** What the axle slot does; null without one, or where the chain cannot be laid at one of its ends. */
export function axleSlot(model: Pick<Model, 'adjusters'>, arm: ArmChain, show: Show): AxleSlot | null {
  const slot = slotOf(model, arm);
  if (!slot) return null;
  const found = [-slot.travel, slot.travel].map((by) => slotEnd(arm, slot, by));
  const [one, other] = found;
  if (!one || !other) return null;
  const [near, far] = one.centreDistance <= other.centreDistance ? [one, other] : [other, one];
  const wanted = wantedSlack(arm);
  const span = arm.travel.output.spanTightest;
  const excess = Math.hypot(span, wanted) - span;
  const reaches = near.excess >= excess && far.excess <= excess;
  const at = (end: SlotEnd): string =>
    end.excess < 0 ? `${show('length', -end.excess)} too short` : `${show('length', end.excess)} long`;
  return {
    address: slot.address,
    name: slot.name,
    travel: slot.travel,
    ends: [near, far],
    reaches,
    text: `Over ${slot.name} the centres go from ${show('length', near.centreDistance)} to ${show('length', far.centreDistance)}; where tightest the chain is ${at(near)} at one end and ${at(far)} at the other. ${reaches ? 'The wanted slack lies between.' : 'The wanted slack lies outside.'}`,
  };
}
