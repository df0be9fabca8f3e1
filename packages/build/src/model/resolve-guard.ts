import type { BuildFile } from '../schema/build-file.ts';
import type { StageFile } from '../schema/path.ts';
import { lengthOrNull } from './resolve-layout.ts';
import type { Brake, Guard } from './strength.ts';
import { typedNumber } from './value.ts';

/** The brake on the drive; null without one. */
export function resolveBrake(
  address: string,
  file: NonNullable<BuildFile['brief']['loads']>['brake'] | undefined,
): Brake | null {
  if (!file) return null;
  return {
    address,
    at: file.at,
    torque: typedNumber('torque', file.torque),
    others: file.others === undefined ? null : file.others === 'works alone',
    heldBy: file.heldBy ?? null,
    body: file.body ?? null,
    note: file.note ?? null,
  };
}

/** The guard of a stage; null where the build says nothing, or the stage has none to say. */
export function resolveGuard(file: StageFile): Guard | null {
  if (!('guard' in file) || !file.guard) return null;
  const { guard } = file;
  return {
    rider: lengthOrNull(guard.rider),
    passenger: lengthOrNull(guard.passenger),
    bystander: lengthOrNull(guard.bystander),
    kind: guard.kind ?? null,
    opening: lengthOrNull(guard.opening),
    shape: guard.shape ?? null,
    slotLength: lengthOrNull(guard.slotLength),
    stands: lengthOrNull(guard.stands),
    toe: guard.toe === undefined ? null : guard.toe === 'fitted',
    holds: guard.holds === undefined ? null : guard.holds === 'yes',
  };
}
