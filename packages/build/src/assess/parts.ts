import type { Model } from '../model/model.ts';
import type { PartNeed } from './types.ts';

/** Sprockets, chain and bevel pairs that the path asks for, against the counts on the shelf. */
export function partsNeeded(model: Model): PartNeed[] {
  const { shelf } = model.shop;
  const sprockets = (chain: string, teeth: number) =>
    shelf.reduce(
      (sum, item) =>
        item.kind === 'sprocket' && item.chain === chain && item.teeth === teeth ? sum + item.count : sum,
      0,
    );
  const links = (chain: string) =>
    shelf.reduce((sum, item) => (item.kind === 'chain' && item.chain === chain ? sum + item.links : sum), 0);
  const pairs = (a: number, b: number) =>
    shelf.reduce(
      (sum, item) =>
        item.kind === 'bevel pair' && item.teeth.includes(a) && item.teeth.includes(b) ? sum + item.count : sum,
      0,
    );
  return model.stages.flatMap((stage): PartNeed[] => {
    if (stage.kind === 'chain') {
      const { driver, driven } = stage.teeth;
      const size = stage.size.key;
      return [
        {
          address: `${stage.address}/teeth/driver`,
          what: `${stage.name}: sprocket ${size}, ${driver} teeth`,
          need: 1,
          have: sprockets(size, driver),
        },
        {
          address: `${stage.address}/teeth/driven`,
          what: `${stage.name}: sprocket ${size}, ${driven} teeth`,
          need: 1,
          have: sprockets(size, driven),
        },
        ...(stage.links === null
          ? []
          : [
              {
                address: `${stage.address}/links`,
                what: `${stage.name}: links of ${size}`,
                need: stage.links,
                have: links(size),
              },
            ]),
      ];
    }
    if (stage.kind === 'bevel') {
      const { driver, driven } = stage.teeth;
      return [
        {
          address: `${stage.address}/teeth`,
          what: `${stage.name}: bevel pair ${driver} : ${driven}`,
          need: 1,
          have: pairs(driver, driven),
        },
      ];
    }
    return [];
  });
}
