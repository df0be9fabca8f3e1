/** Parts of a train by name, and which of them are there. */
import type { Model, Stage } from '../model/model.ts';

const millimetres = (pitch: number): string => `${Number((pitch * 1000).toFixed(3))} mm`;

/** "sprocket 60 17", "bevel pair 14:33", "pulley 8 mm 24", "belt 8 mm 120", "spur pair 18:42". */
export function partNames(stage: Stage, driver: number, driven: number, links: number | null): readonly string[] {
  switch (stage.kind) {
    case 'chain':
      return [`sprocket ${stage.size.key} ${driver}`, `sprocket ${stage.size.key} ${driven}`];
    case 'bevel':
      return [`bevel pair ${Math.min(driver, driven)}:${Math.max(driver, driven)}`];
    case 'spur':
      return [`spur pair ${Math.min(driver, driven)}:${Math.max(driver, driven)}`];
    case 'belt': {
      const pitch = millimetres(stage.pitch);
      const belt = links === null ? [] : [`belt ${pitch} ${links}`];
      return [`pulley ${pitch} ${driver}`, `pulley ${pitch} ${driven}`, ...belt];
    }
    default:
      return [];
  }
}

/** Name of a part on the shelf; null for chain, which is cut to length. */
const shelfName = (item: Model['shop']['shelf'][number]): string | null => {
  if (item.kind === 'chain') return null;
  if (item.kind === 'sprocket') return `sprocket ${item.chain} ${item.teeth}`;
  return `bevel pair ${Math.min(...item.teeth)}:${Math.max(...item.teeth)}`;
};

/** How many there are of each part. Belts, pulleys and spur gears have no place on the shelf: those that are drawn count as there. */
export function shelfOf(model: Model): ReadonlyMap<string, number> {
  const have = new Map<string, number>();
  const add = (name: string, count: number): void => void have.set(name, (have.get(name) ?? 0) + count);
  for (const item of model.shop.shelf) {
    const name = shelfName(item);
    if (name !== null && item.kind !== 'chain') add(name, item.count);
  }
  for (const stage of model.stages) {
    if (stage.kind !== 'belt' && stage.kind !== 'spur') continue;
    const links = stage.kind === 'belt' ? stage.beltTeeth : null;
    for (const name of partNames(stage, stage.teeth.driver, stage.teeth.driven, links)) add(name, 1);
  }
  return have;
}

/** Prices by name: those asked with, then those of the shelf. */
export function pricesOf(model: Model, asked: Readonly<Record<string, number>>): ReadonlyMap<string, number> {
  const prices = new Map<string, number>();
  for (const item of model.shop.shelf) {
    const name = shelfName(item);
    if (name !== null && item.kind !== 'chain' && item.price !== null) prices.set(name, item.price);
  }
  for (const [name, price] of Object.entries(asked)) prices.set(name, price);
  return prices;
}
