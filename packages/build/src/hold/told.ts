import type { Finding, Severity } from '../assess/types.ts';
import type { SideEffect, Told } from './types.ts';

const RANK: Readonly<Record<Severity, number>> = { holds: 0, thin: 1, unknown: 2, fails: 3 };
/** A reserve that falls by a smaller part is taken as the same. */
const NOTICED = 0.005;

export const toldOf = ({ severity, reserve, says }: Finding): Told => ({ severity, reserve, says });

const least = (finding: Finding | undefined): number | null => finding?.reserve?.lo ?? null;

function effectOf(before: Finding | undefined, after: Finding | undefined): SideEffect | null {
  const one = after ?? before;
  if (!one) return null;
  return {
    finding: one.id,
    element: one.element,
    title: one.title,
    before: before?.severity ?? null,
    after: after?.severity ?? null,
    reserveBefore: least(before),
    reserveAfter: least(after),
  };
}

const rank = (severity: Severity | null): number => (severity === null ? 0 : RANK[severity]);
const lost = ({ reserveBefore, reserveAfter }: SideEffect): boolean =>
  reserveBefore !== null && reserveAfter !== null && reserveAfter < reserveBefore * (1 - NOTICED);

/** Findings besides the one that is cured, by what a change does to them. */
export function sideEffects(
  own: string,
  before: readonly Finding[],
  after: readonly Finding[],
): { readonly cures: SideEffect[]; readonly harms: SideEffect[]; readonly holdWithLess: number } {
  const [was, is] = [before, after].map((all) => new Map(all.map((finding) => [finding.id, finding])));
  const ids = new Set([...after, ...before].map(({ id }) => id));
  ids.delete(own);
  const cures: SideEffect[] = [];
  const worse: SideEffect[] = [];
  const lower: SideEffect[] = [];
  let holdWithLess = 0;
  for (const id of ids) {
    const effect = effectOf(was?.get(id), is?.get(id));
    if (!effect) continue;
    const step = rank(effect.after) - rank(effect.before);
    if (step > 0) worse.push(effect);
    else if (step < 0) cures.push(effect);
    else if (lost(effect)) {
      if (effect.after === 'holds') holdWithLess += 1;
      else lower.push(effect);
    }
  }
  worse.sort((a, b) => rank(b.after) - rank(a.after));
  return { cures, harms: [...worse, ...lower], holdWithLess };
}
