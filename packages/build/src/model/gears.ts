import type { StageFile } from '../schema/path.ts';
import { typedNumber } from './value.ts';

type File = Extract<StageFile, { readonly kind: 'bevel' | 'spur' }>;

/** One gear of a pair: what is known of its steel. */
export interface GearSteel {
  readonly address: string;
  readonly steel: 'hardened through' | 'case hardened' | null;
  /** Brinell hardness measured. */
  readonly hardness: number | null;
  readonly file: 'bites' | 'hardly bites' | 'skates' | null;
}

/** What the pair lived through in its donor. */
export interface Donor {
  readonly address: string;
  readonly torque: number;
  readonly speed: number;
  /** The gear that drives here also drove there. */
  readonly sameDriver: boolean;
  readonly sameTurning: boolean;
  readonly angle: number | null;
}

/** What is known of a pair of gears beyond its size. */
export interface GearFacts {
  readonly driver: GearSteel;
  readonly driven: GearSteel;
  readonly quality: number | null;
  /** How a bevel pair is carried. */
  readonly mounting: 'both between bearings' | 'one between bearings' | 'both overhung' | null;
  readonly lubrication: NonNullable<File['lubrication']> | null;
  readonly card: NonNullable<File['card']> | null;
  readonly donor: Donor | null;
}

/** Reads what the build says of a pair of gears. */
export function resolveGears(address: string, file: File): GearFacts {
  const steel = (key: 'driver' | 'driven'): GearSteel => {
    const made = file.made?.[key];
    return {
      address: `${address}/made/${key}`,
      steel: made?.steel ?? null,
      hardness: made?.hardness === undefined ? null : typedNumber('number', made.hardness),
      file: made?.file ?? null,
    };
  };
  const { donor } = file;
  return {
    driver: steel('driver'),
    driven: steel('driven'),
    quality: file.quality ?? null,
    mounting: file.kind === 'bevel' ? (file.mounting ?? null) : null,
    lubrication: file.lubrication ?? null,
    card: file.card ?? null,
    donor: donor
      ? {
          address: `${address}/donor`,
          torque: typedNumber('torque', donor.torque),
          speed: typedNumber('angularSpeed', donor.speed),
          sameDriver: donor.drove === 'the driver of here',
          sameTurning: donor.turned === 'as here',
          angle: donor.angle === undefined ? null : typedNumber('angle', donor.angle),
        }
      : null,
  };
}
