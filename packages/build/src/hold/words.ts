/** Words of proposals that the page and the command line share. */
import type { Effort, SideEffect } from './types.ts';

/** What a change asks for. */
export const EFFORT_WORDS: Readonly<Record<Effort, string>> = {
  adjust: 'no new part',
  're-cut': 'cut anew',
  buy: 'bought',
  're-make': 'made anew',
};

/** "holds → thin, 1.51 → 0.31": what a change does to another finding. */
export function effectWords(effect: SideEffect, reserveText: (reserve: number) => string): string {
  const { before, after, reserveBefore, reserveAfter } = effect;
  const reserves =
    reserveBefore !== null && reserveAfter !== null
      ? `${reserveText(reserveBefore)} → ${reserveText(reserveAfter)}`
      : reserveAfter === null
        ? ''
        : reserveText(reserveAfter);
  const states =
    before === after ? (after ?? '') : before === null ? `new: ${after}` : `${before} → ${after ?? 'no longer asked'}`;
  return [states, reserves].filter((part) => part !== '').join(', ');
}
