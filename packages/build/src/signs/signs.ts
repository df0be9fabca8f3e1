import type { CheckId } from '../assess/check-ids.ts';
import type { Hub } from '../model/hub.ts';
import { BEARING_SIGNS } from './bearing-signs.ts';
import { CHAIN_SIGNS } from './chain-signs.ts';
import { JOINT_SIGNS } from './joint-signs.ts';
import type { Sign } from './sign.ts';

/** Failures seen in practice, in the order of the page of consequences. */
export const SIGNS: readonly Sign[] = [...JOINT_SIGNS, ...CHAIN_SIGNS, ...BEARING_SIGNS];

/** Checks of strength that announce nothing, and why. */
export const WITHOUT_SIGN: Readonly<Partial<Record<CheckId, string>>> = {
  'hub.named': 'the build does not say yet what passes the torque; once it does, that joint has signs of its own',
  'hub.possible': 'it cannot be put together, which shows in the workshop and not on the road',
};

/**
 * Signs that belong to a check.
 * @param joint torque joint of the seat that the finding stands on; null where it stands on none
 */
export function signsOf(check: string, joint: Hub['torqueBy'] | null): readonly Sign[] {
  return SIGNS.filter(
    ({ checks, joints }) =>
      checks.some((id) => id === check) && (joint === null || joints === undefined || joints.includes(joint)),
  );
}
