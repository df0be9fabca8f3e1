import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import type { Stage } from '../../model/model.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

/**
 * What pins and rivets stand out of the inner link, and the clip of a joining link beyond them, as parts of the pitch: the upper ends over the
 * sizes of ISO 606 (columns b4 and b7, from memory).
 */
const PINS = 0.26;
const CLIP = 0.3;
/** A tooth is so much of the width between the inner plates, ISO 606 (from memory). */
const TOOTH = 0.95;

/** Half height and half width that a chain fills about its pitch line, m; a text where a size is missing. */
export function chainSection(stage: ChainStage): { readonly height: number; readonly width: number } | string {
  const { size, joint, strands } = stage;
  const { innerPlateHeight, outerPlateHeight, innerLinkWidth, plateThickness, transversePitch } = rowInSi(
    CHAIN_SIZES,
    size.key,
  );
  const height = Math.max(innerPlateHeight ?? 0, outerPlateHeight ?? 0);
  const link = innerLinkWidth ?? (plateThickness === undefined ? undefined : size.innerWidth + 2 * plateThickness);
  if (height === 0) return `the height of the plates of chain size ${size.key}`;
  if (link === undefined) return `the width over the inner link of chain size ${size.key}`;
  const more = strands.hi - 1;
  if (more > 0 && transversePitch === undefined) return `the spacing of the strands of chain size ${size.key}`;
  // Where the build does not say how the chain closes, it may be by a clip, which stands out most.
  const clip = joint === 'joining link' || joint === null ? CLIP : 0;
  return {
    height: height / 2,
    width: link / 2 + (PINS + clip) * size.pitch + (more * (transversePitch ?? 0)) / 2,
  };
}

/** Half width of a sprocket's teeth, m. */
export function toothWidth({ size, strands }: ChainStage): number {
  const { transversePitch = 0 } = rowInSi(CHAIN_SIZES, size.key);
  return (TOOTH * size.innerWidth + (strands.hi - 1) * transversePitch) / 2;
}

/** Pitch and outside radius of a sprocket, m. */
export function sprocketRadii({ size }: ChainStage, teeth: number): { readonly pitch: number; readonly tip: number } {
  const found = sprocketDiameters.run({ pitch: size.pitch, rollerDiameter: size.roller, teeth });
  return { pitch: found.pitchDiameter / 2, tip: found.outsideDiameter / 2 };
}
