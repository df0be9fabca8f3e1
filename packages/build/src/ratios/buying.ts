import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import type { Model } from '../model/model.ts';
import { blankSources } from './blanks.ts';
import type { Agreement, Buying, NearMiss } from './types.ts';

/** Lengths in the table are rounded to hundredths of a millimetre, in inches and millimetres alike. */
const SAME = 2e-5;
/** A chain takes a sprocket cut for a width up to this much wider or narrower without rubbing or wobbling (common practice). */
const WIDTH_PLAY = 3e-4;
/** Pitches nearer than this, and not the same, are taken for each other by hand and eye. */
const NEAR_PITCH = 0.06;

interface Size {
  readonly pitch: number;
  readonly roller: number;
  readonly width: number;
}

function sizeOf(key: string): Size {
  const { pitch = Number.NaN, rollerDiameter = Number.NaN, innerWidth = Number.NaN } = rowInSi(CHAIN_SIZES, key);
  return { pitch, roller: rollerDiameter, width: innerWidth };
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SAME;
const mm = (si: number): string => `${Number((si * 1000).toFixed(3))} mm`;

/**
 * Whether a chain runs on a sprocket that is cut for another size, thing by thing.
 * @param chain key of the chain's size in the table of chain sizes
 * @param sprocket key of the size that the sprocket is cut for
 */
export function agreementOf(chain: string, sprocket: string): readonly Agreement[] {
  const [one, other] = [sizeOf(chain), sizeOf(sprocket)];
  return [
    { what: 'pitch', chain: one.pitch, sprocket: other.pitch, agrees: same(one.pitch, other.pitch) },
    { what: 'roller', chain: one.roller, sprocket: other.roller, agrees: same(one.roller, other.roller) },
    {
      what: 'inner width',
      chain: one.width,
      sprocket: other.width,
      agrees: Math.abs(one.width - other.width) <= WIDTH_PLAY,
    },
  ];
}

/** Chain sizes that are easily bought in place of this one: of nearly its pitch, or of its pitch and another roller or width. */
export function nearMisses(size: string): readonly NearMiss[] {
  const own = sizeOf(size);
  return Object.keys(CHAIN_SIZES.rows).flatMap((other): NearMiss[] => {
    if (other === size) return [];
    const there = sizeOf(other);
    if (!same(own.pitch, there.pitch)) {
      if (Math.abs(there.pitch / own.pitch - 1) > NEAR_PITCH) return [];
      const says = `${size} has a pitch of ${mm(own.pitch)}, ${other} of ${mm(there.pitch)}: over 20 links they are ${mm(20 * Math.abs(there.pitch - own.pitch))} apart.`;
      return [{ size, other, why: 'pitch differs a little', says }];
    }
    if (!same(own.roller, there.roller)) {
      const says = `Both have a pitch of ${mm(own.pitch)}, but the rollers of ${size} measure ${mm(own.roller)} and those of ${other} ${mm(there.roller)}.`;
      return [{ size, other, why: 'same pitch, other roller', says }];
    }
    if (Math.abs(own.width - there.width) <= WIDTH_PLAY) return [];
    const says = `Both have a pitch of ${mm(own.pitch)}, but ${size} is ${mm(own.width)} wide inside and ${other} ${mm(there.width)}.`;
    return [{ size, other, why: 'same pitch, other width', says }];
  });
}

/** A pitch measured on a part, in inches or millimetres, and the pitches of belts and chains that lie close: 19.05 and 20 mm. */
export function pitchNear(
  pitch: number,
): readonly { readonly size: string; readonly pitch: number; readonly apart: number }[] {
  const belts = BELT_PITCHES.map(([size, mmPitch]) => ({ size, pitch: mmPitch / 1000 }));
  const chains = Object.keys(CHAIN_SIZES.rows).map((key) => ({ size: `chain ${key}`, pitch: sizeOf(key).pitch }));
  return [...chains, ...belts]
    .map((one) => ({ ...one, apart: one.pitch - pitch }))
    .filter(({ apart }) => Math.abs(apart) <= NEAR_PITCH * pitch)
    .sort((a, b) => Math.abs(a.apart) - Math.abs(b.apart) || (a.size < b.size ? -1 : 1));
}

/** Pitches of toothed belts, mm: ISO 5296 trapezoidal, ISO 17396 metric T and AT, ISO 13050 curvilinear. */
const BELT_PITCHES = [
  ['belt MXL', 2.032],
  ['belt XL', 5.08],
  ['belt L', 9.525],
  ['belt H', 12.7],
  ['belt XH', 22.225],
  ['belt XXH', 31.75],
  ['belt T5 or AT5', 5],
  ['belt T10 or AT10', 10],
  ['belt T20 or AT20', 20],
  ['belt of 3 mm', 3],
  ['belt of 5 mm', 5],
  ['belt of 8 mm', 8],
  ['belt of 14 mm', 14],
  ['belt of 20 mm', 20],
] as const;

/** What to look at when chains, belts and sprockets of a build are bought or taken from its shelf. */
export function buyingOf(model: Model): Buying {
  const chains = model.stages.flatMap((stage) => (stage.kind === 'chain' ? [stage] : []));
  const belts = model.stages.flatMap((stage) => (stage.kind === 'belt' ? [stage] : []));
  const nearBelts = belts.flatMap(({ pitch }) =>
    pitchNear(pitch)
      .filter(({ apart }) => !same(apart, 0))
      .map(({ size, pitch: there }): NearMiss => {
        const says = `The belt has a pitch of ${mm(pitch)}, ${size} of ${mm(there)}: over 20 teeth they are ${mm(20 * Math.abs(there - pitch))} apart.`;
        return { size: `belt of ${mm(pitch)}`, other: size, why: 'pitch differs a little', says };
      }),
  );
  return {
    nearMisses: [...[...new Set(chains.map(({ size }) => size.key))].flatMap(nearMisses), ...nearBelts],
    shelf: chains.flatMap(({ id, size }) => {
      const cut = model.shop.shelf.flatMap((item) => (item.kind === 'sprocket' ? [item.chain] : []));
      return [...new Set(cut)].map((sprocket) => ({
        stage: id,
        chain: size.key,
        sprocket,
        agreement: agreementOf(size.key, sprocket),
      }));
    }),
    sources: blankSources(),
  };
}
