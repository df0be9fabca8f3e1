/** Another bar for a shaft. */
import { parseQuantity } from '@oddwheel/quantity/parse';
import { thickestOf } from '../../assess/checks/shop.ts';
import { newId } from '../../edit/ids.ts';
import type { Shaft } from '../../model/model.ts';
import { change, type Ground, inInches, type Ladder, ladder, put, tradeText, typedAt } from '../ladder.ts';
import { diametersAbove } from '../sizes.ts';
import { shaftOf } from './parts.ts';

interface Bar {
  readonly id: string;
  readonly name: string;
  readonly diameter: number;
  readonly length: number;
}

const barsOf = ({ session }: Ground): readonly Bar[] =>
  Object.entries(session.build.brief.shop?.stock ?? {}).flatMap(([id, { name, diameter, length }]) => {
    const [d, l] = [parseQuantity(diameter, 'length'), parseQuantity(length, 'length')];
    return d.ok && l.ok ? [{ id, name, diameter: d.si, length: l.si }] : [];
  });

/** Bars of the stock, in order, as steps of one ladder. */
const turnedFrom = (ground: Ground, shaft: Shaft, bars: readonly Bar[]): readonly Ladder[] =>
  ladder(
    'adjust',
    bars.map(({ id, name }, k) => ({
      what: `Turn ${shaft.name} from the ${name}`,
      patches: [put(ground, `${shaft.address}/stock`, id)],
      size: 0.1 * (k + 1),
    })),
  );

/** Bars of the stock that are longer, the shortest first, and as thick as the shaft. */
export function longerBar(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  if (!shaft) return [];
  const thickest = thickestOf(shaft)?.diameter ?? 0;
  const bars = barsOf(ground).filter((one) => one.diameter >= thickest && one.length > (shaft.stock?.length ?? 0));
  return turnedFrom(
    ground,
    shaft,
    [...bars].sort((a, b) => a.length - b.length),
  );
}

/** Steps of bar above the usual sizes: common practice, m. */
const LARGE_STEP = { metric: 5e-3, inches: 0.0254 / 4 } as const;

/** The usual size that is just as thick, and those above it. */
function barSizes(diameter: number, inches: boolean): readonly number[] {
  const usual = diametersAbove(diameter * 0.999, 2, inches);
  const step = LARGE_STEP[inches ? 'inches' : 'metric'];
  return usual.length > 0 ? usual : [Math.ceil(diameter / step - 1e-6) * step];
}

/** A bar of the stock that is as thick as the shaft, the thinnest first; else the next usual size, bought as long as the one there is. */
export function thickerBar(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  const most = shaft && thickestOf(shaft);
  if (!shaft?.stock || !most) return [];
  const { address, diameter, length } = shaft.stock;
  const thick = barsOf(ground).filter((one) => one.diameter >= most.diameter && one.length >= length);
  const typed = `${address}/diameter`;
  const taken = barsOf(ground).map(({ id }) => id);
  return [
    ...turnedFrom(
      ground,
      shaft,
      [...thick].sort((a, b) => a.diameter - b.diameter || a.length - b.length),
    ),
    ...ladder(
      'buy',
      barSizes(most.diameter, inInches(ground, typed)).map((si) => {
        const size = tradeText(ground, typed, si);
        const id = newId(`bar ${size}`, taken, 'bar');
        return {
          what: `Buy a bar of ${size} and turn ${shaft.name} from it`,
          patches: [
            put(ground, `/brief/shop/stock/${id}`, {
              name: `bar, ${size}`,
              diameter: size,
              length: typedAt(ground, `${address}/length`) ?? '1 m',
            }),
            put(ground, `${shaft.address}/stock`, id),
          ],
          size: change(diameter, si),
        };
      }),
    ),
  ];
}
