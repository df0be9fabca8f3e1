import type { Session } from '../session-types.ts';
import { beforeOf, effectOf } from './effect.ts';
import type { SwapRow } from './types.ts';

/** Teeth that a swap tries: what is on the shelf, or from the first to the second. */
export type SwapTeeth = 'shelf' | readonly [number, number];

export interface SwapStep {
  readonly done: number;
  readonly of: number;
}

/** Asked for a stage that has no teeth to swap. */
export class SwapError extends Error {}

/**
 * What each sprocket, pulley or gear would do in one place of a stage, all else as drawn. Yields after each row.
 * @param roadSpeed speed at which engine speeds are told
 *
 * Errors: `SwapError` for a stage that is not there or has no teeth.
 */
export function* swapTable(
  session: Session,
  stageId: string,
  end: 'driver' | 'driven',
  teeth: SwapTeeth,
  roadSpeed: number,
): Generator<SwapStep, readonly SwapRow[]> {
  const { model } = session.evaluation;
  const stage = model.stages.find(({ id }) => id === stageId);
  if (!stage || !('teeth' in stage)) {
    const accepted = model.stages.flatMap((one) => ('teeth' in one ? [one.id] : []));
    throw new SwapError(`Stage ${stageId} read; a stage with teeth is accepted: ${accepted.join(', ')}.`);
  }
  const drawn = stage.teeth[end];
  const onShelf = (count: number): number =>
    model.shop.shelf.reduce(
      (sum, item) =>
        stage.kind === 'chain' && item.kind === 'sprocket' && item.chain === stage.size.key && item.teeth === count
          ? sum + item.count
          : sum,
      0,
    );
  const least = stage.kind === 'belt' ? 8 : stage.kind === 'chain' ? 6 : 5;
  const wanted =
    teeth === 'shelf'
      ? Array.from({ length: 300 }, (_, k) => k + 1).filter((count) => onShelf(count) > 0)
      : Array.from({ length: Math.max(0, teeth[1] - teeth[0] + 1) }, (_, k) => teeth[0] + k);
  const counts = [...new Set([drawn, ...wanted])]
    .filter((count) => count >= least && count <= 300)
    .sort((a, b) => a - b);
  const before = beforeOf(session);
  const rows: SwapRow[] = [];
  for (const count of counts) {
    const pair = { stage: stageId, driver: stage.teeth.driver, driven: stage.teeth.driven, [end]: count };
    const { scene: _, ...effect } = effectOf(before, [pair], roadSpeed);
    rows.push({ ...effect, end, teeth: count, onShelf: onShelf(count), drawn: count === drawn });
    yield { done: rows.length, of: counts.length };
  }
  return rows;
}
