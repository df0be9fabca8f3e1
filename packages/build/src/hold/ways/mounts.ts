/** Mounts of engine and subframe. */
import type { Mount } from '../../model/model.ts';
import { type Ground, type Ladder, ladder, put, type Step } from '../ladder.ts';
import { scaledText } from './fields.ts';

/** Rubbers of the same size come in hardnesses that differ about so much (common practice). */
const TIMES = [1.25, 1.5, 2, 3, 4, 6, 10, 20] as const;

/** All mounts of a body so many times as stiff. */
function stiffened(ground: Ground, body: Mount['body'], mounts: readonly Mount[]): readonly Ladder[] {
  return ladder(
    'buy',
    TIMES.flatMap((times): Step[] => {
      const texts = mounts.map(({ address }) => scaledText(ground, `${address}/stiffness`, 'stiffness', times));
      const patches = mounts.flatMap(({ address }, k) => {
        const text = texts[k];
        return text == null ? [] : [put(ground, `${address}/stiffness`, text)];
      });
      if (patches.length < mounts.length) return [];
      const to = [...new Set(texts)].join(' and ');
      return [{ what: `Hold the ${body} on mounts of ${to}`, patches, size: times - 1 }];
    }),
  );
}

/** Stiffer mounts, of one body at a time: a stiffer mount passes on more of the engine's shaking. */
export const stifferMounts = (ground: Ground): readonly Ladder[] =>
  (['engine', 'subframe'] as const).flatMap((body) => {
    const mounts = ground.model.mounts.filter((one) => one.body === body && one.stiffness !== null);
    return mounts.length > 0 ? stiffened(ground, body, mounts) : [];
  });
