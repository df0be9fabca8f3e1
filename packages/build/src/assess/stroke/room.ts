import { MethodError } from '@oddwheel/mechanics/method/method';
import { chainOnArm } from '@oddwheel/mechanics/suspension/chain-on-arm';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import { type Within, within } from '../../model/within.ts';
import { type ArmChain, armInput, armOrigins, placeName } from './arm.ts';
import type { SpanRoom } from './types.ts';

/** Plates stand no higher than this part of the pitch: ASME B29.1, from memory; used where the row of the size has no height. */
const PLATE_OVER_PITCH = 0.95;

/** Height of the plates of a chain, and where it came from. */
export function plateHeight({ stage }: ArmChain): { readonly height: number; readonly origin: string } {
  const { innerPlateHeight } = rowInSi(CHAIN_SIZES, stage.size.key);
  const row = `chain-sizes/${stage.size.key}`;
  return innerPlateHeight === undefined
    ? { height: PLATE_OVER_PITCH * stage.size.pitch, origin: `0.95 of the pitch of ${row}` }
    : { height: innerPlateHeight, origin: row };
}

/** Inputs of the method that counts room and torque; room does not hang on pull and tyre, and torque not on the heights. */
export function onArmInput(
  arm: ArmChain,
  armAngle: number,
  rest: {
    readonly tightSpan: 'upper' | 'lower';
    readonly pull?: number;
    readonly tyreRadius?: number;
    readonly slackDeflection?: number;
  },
) {
  return {
    ...armInput(arm),
    armAngle,
    pull: 0,
    tyreRadius: 1,
    slackDeflection: 0,
    armHalfHeight: (arm.suspension.armHeight ?? 0) / 2,
    chainHalfHeight: plateHeight(arm).height / 2,
    ...rest,
  };
}

/** A span against the arm at one arm angle. */
export interface SpanGap {
  readonly angle: number;
  readonly span: 'upper' | 'lower';
  /** Between the line of the span, drawn straight, and the line of the arm. */
  readonly gap: number;
  /** How far the span hangs or flaps to one side when it does not pull; null where the links fitted are not known. */
  readonly deflection: number | null;
}

/** Both spans at every step of the stroke; null where the arm or the line of centres stands upright, and has no upper side. */
export function spanGaps(arm: ArmChain): readonly SpanGap[] | null {
  return within(GAPS, [arm], () => gapsAnew(arm));
}

const GAPS: Within<readonly SpanGap[] | null> = new WeakMap();

function gapsAnew(arm: ArmChain): readonly SpanGap[] | null {
  try {
    const { input, output } = arm.travel;
    const movements = arm.stage.links === null ? null : output.movements;
    return input.armAngles.flatMap((angle, k): SpanGap[] => {
      const { gapTight, gapSlack } = chainOnArm.run(onArmInput(arm, angle, { tightSpan: 'upper' }));
      const deflection = movements === null ? null : (movements[k] ?? Number.NaN) / 2;
      return [
        { angle, span: 'upper', gap: gapTight, deflection },
        { angle, span: 'lower', gap: gapSlack, deflection },
      ];
    });
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return null;
  }
}

/** Half of the arm and half of the chain. */
export const halves = (arm: ArmChain, armHeight: number): number => armHeight / 2 + plateHeight(arm).height / 2;

/** Room of both spans as drawn and at both ends of the stroke. */
export function spanRooms(arm: ArmChain, gaps: readonly SpanGap[], armHeight: number): readonly SpanRoom[] {
  return gaps.flatMap(({ angle, span, gap, deflection }): SpanRoom[] => {
    const place = placeName(arm, angle);
    if (place === null) return [];
    const pulling = gap - halves(arm, armHeight);
    return [{ place, span, pulling, slack: deflection === null ? null : pulling - deflection }];
  });
}

/** Where the inputs of {@link onArmInput} came from, for room. */
export function roomOrigins(arm: ArmChain): Readonly<Record<string, string>> {
  return {
    ...armOrigins(arm),
    armAngle: `${arm.suspension.address}/bump and ${arm.suspension.address}/rebound`,
    armHalfHeight: `half of ${arm.suspension.address}/armHeight`,
    chainHalfHeight: `half of the plates of ${plateHeight(arm).origin}`,
    slackDeflection: `half of the hand movement there, by ${arm.stage.address}/links`,
    tightSpan: 'the span looked at',
    pull: 'no part in the room',
    tyreRadius: 'no part in the room',
  };
}
