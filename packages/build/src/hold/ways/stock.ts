/** Another bar for a shaft. */
import { parseQuantity } from '@oddwheel/quantity/parse';
import { type Ground, type Ladder, ladder, put } from '../ladder.ts';
import { shaftOf } from './parts.ts';

/** Bars of the stock that are longer, the shortest first, and as thick as the shaft. */
export function longerBar(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  if (!shaft) return [];
  const thickest = Math.max(0, ...shaft.seats.map(({ diameter }) => diameter ?? 0));
  const bars = Object.entries(ground.session.build.brief.shop?.stock ?? {}).flatMap(
    ([id, { name, diameter, length }]) => {
      const [d, l] = [parseQuantity(diameter, 'length'), parseQuantity(length, 'length')];
      return d.ok && l.ok && d.si >= thickest && l.si > (shaft.stock?.length ?? 0) ? [{ id, name, length: l.si }] : [];
    },
  );
  return ladder(
    'adjust',
    bars
      .sort((a, b) => a.length - b.length)
      .map(({ id, name }, k) => ({
        what: `Turn ${shaft.name} from the ${name}`,
        patches: [put(ground, `${shaft.address}/stock`, id)],
        size: 0.1 * (k + 1),
      })),
  );
}
