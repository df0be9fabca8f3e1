import type { Ends } from '../assess/evaluation.ts';
import type { Finding } from '../assess/types.ts';
import { raised } from '../edit/place.ts';
import { rangePass } from '../session.ts';
import type { Session } from '../session-types.ts';
import type { Ground, Ladder } from './ladder.ts';
import { aimAt, BETTER, type Found, findStep } from './search.ts';
import { shopSays } from './shop-limits.ts';
import { sideEffects, toldOf } from './told.ts';
import { curedWhenGone, type Trials, trialsOf, tryMiddle, tryWhole } from './trials.ts';
import { EFFORTS, type Hold, type HoldProgress, type Proposal, type RuledOut } from './types.ts';
import { waysFor } from './ways.ts';

/** Times that a step is put right after the ends of the ranges were tried. */
const CORRECTIONS = 4;
/** Proposals that are kept for a finding. */
const KEPT = 4;
/** Fewer than this are filled up with changes that make something else fail. */
const FEW = 2;
/** Partial improvements that are kept where none reaches. */
const PARTIAL = 1;

/** Findings that a change is looked for: short of their design reserve, or failing at an end, and not for want of an answer. */
export const wantsHold = ({ severity, missing }: Finding): boolean => severity !== 'holds' && missing.length === 0;

const NO_WAY = 'No change of a part is known here that would make it hold: its own words say what to do.';
const NO_STEP = 'None of the changes that were tried makes it better.';

interface Task {
  readonly trials: Trials;
  readonly ground: Ground;
  readonly before: readonly Finding[];
  readonly ends: Ends;
}

/** The whole build assessed with one step. */
function* proposed({ trials, ground, before, ends }: Task, found: Found): Generator<void, Proposal | null> {
  const { finding } = ground;
  const { step, ladder } = found;
  const after = yield* tryWhole(trials, step.patches, ends);
  if (!after) return null;
  const own = after.find(({ id }) => id === finding.id) ?? null;
  return {
    what: step.what,
    patches: step.patches,
    effort: ladder.effort,
    size: step.size,
    after: own && toldOf(own),
    reaches: own === null ? curedWhenGone(finding.check) : own.severity === 'holds',
    boughtIn: shopSays(ground, step.needs).boughtIn,
    ...sideEffects(finding.id, before, after),
  };
}

/** The smallest step that reaches with the ends tried: up while it does not, down while the one before may. */
function* settled(task: Task, found: Found, now: number): Generator<void, Proposal | null> {
  const { trials, ground } = task;
  const { id, wanted } = ground.finding;
  let at: Found = found;
  let kept: Proposal | null = null;
  for (let k = 0; k < CORRECTIONS; k += 1) {
    const proposal: Proposal | null = yield* proposed(task, at);
    if (!proposal) return kept;
    const reserve = proposal.after?.reserve;
    const aim = reserve && reserve.lo > 0 ? (wanted * reserve.value) / reserve.lo : null;
    if (proposal.reaches) {
      kept = proposal;
      const below = at.ladder.steps[at.at - 1];
      if (!below || aim === null) return kept;
      const score = yield* tryMiddle(trials, below.patches, id);
      if (score < aim) return kept;
      at = { ...at, at: at.at - 1, step: below, score };
      continue;
    }
    if (kept) return kept;
    const from = at.at + 1;
    const next: Found | null =
      from < at.ladder.steps.length
        ? yield* findStep(trials, id, { ladder: at.ladder, from, aim: aim ?? Number.POSITIVE_INFINITY, now })
        : null;
    if (!next?.reaches) return proposal;
    at = next;
  }
  return kept;
}

const smaller = (a: { readonly effort: Proposal['effort']; readonly size: number }, b: typeof a): number =>
  EFFORTS.indexOf(a.effort) - EFFORTS.indexOf(b.effort) || a.size - b.size;

const breaks = ({ harms }: Proposal): number => (harms.some(({ after }) => after === 'fails') ? 1 : 0);

/** The smallest first; those that make something else fail come last, and only where there are few others. */
function ordered(proposals: readonly Proposal[]): readonly Proposal[] {
  const sorted = [...proposals].sort((a, b) => breaks(a) - breaks(b) || smaller(a, b));
  const clean = sorted.filter((one) => breaks(one) === 0).length;
  return sorted.slice(0, Math.max(clean, FEW));
}

const foundOrder = (a: Found, b: Found): number =>
  smaller({ effort: a.ladder.effort, size: a.step.size }, { effort: b.ladder.effort, size: b.step.size });

const gain = ({ after }: Proposal): number => after?.reserve?.lo ?? 0;

/** Steps that the shop, or sense, allows; what is ruled out is told once for each ladder. */
function allowed(ground: Ground, ladder: Ladder): { readonly ladder: Ladder; readonly out: RuledOut | null } {
  let out: RuledOut | null = null;
  const steps = ladder.steps.filter((step) => {
    const why = step.never ?? shopSays(ground, step.needs).ruledOut;
    if (why !== null) out ??= { what: step.what, why };
    return why === null;
  });
  return { ladder: { ...ladder, steps }, out };
}

/**
 * What would make a finding hold: for each way of changing the build the smallest step that brings it to its design reserve, and the whole
 * build assessed again with it. Each step of the generator is short, so that a caller can answer others in between or give up.
 *
 * @param options.trials trials on the same build, so that several findings share what was tried
 * @param options.ends 'not yet' claims the middle of the ranges alone, which is quicker
 * @returns null when there is no such finding
 */
export function* holdSteps(
  session: Session,
  findingId: string,
  options: { readonly trials?: Trials; readonly ends?: Ends } = {},
): Generator<HoldProgress, Hold | null> {
  const ends = options.ends ?? 'tried';
  const trials = options.trials ?? trialsOf(session);
  const { assessment } =
    session.assessment.ends === ends ? session : yield* quietly(baseWith(trials, ends), 'as it is');
  const finding = assessment.findings.find(({ id }) => id === findingId);
  if (!finding) return null;
  const { evaluation } = trials.base;
  const { scene } = evaluation.middle;
  const ground: Ground = { session: trials.base, model: evaluation.model, finding, scene, show: scene.show };
  const { id, wanted } = finding;
  const first = trials.scores.size + trials.wholes.size;
  const answer = (proposals: readonly Proposal[], ruledOut: readonly RuledOut[], none: string | null): Hold => ({
    finding: id,
    before: toldOf(finding),
    wanted,
    proposals,
    ruledOut,
    none: proposals.length > 0 ? null : none,
    trials: trials.scores.size + trials.wholes.size - first,
    ends,
  });
  if (!wantsHold(finding))
    return answer([], [], finding.severity === 'holds' ? 'It holds.' : 'It first asks for what is missing.');
  const all = waysFor(finding.check).flatMap((way) => way(ground));
  const tidy = all.map((ladder) => allowed(ground, raisedLadder(session, ladder)));
  const ladders = tidy.flatMap(({ ladder }) => (ladder.steps.length > 0 ? [ladder] : []));
  const ruledOut = tidy.flatMap(({ ladder, out }) => (out && ladder.steps.length === 0 ? [out] : []));
  if (ladders.length === 0) return answer([], ruledOut, NO_WAY);

  const middle = evaluationScore(trials, id);
  const of = ladders.length + KEPT;
  const found: Found[] = [];
  for (const [k, ladder] of ladders.entries()) {
    const doing = ladder.steps[0]?.what ?? '';
    const best = yield* quietly(
      findStep(trials, id, { ladder, from: 0, aim: aimAt(finding), now: middle }),
      doing,
      k,
      of,
    );
    if (best) found.push(best);
  }
  found.sort(foundOrder);
  const task: Task = { trials, ground, before: assessment.findings, ends };
  const proposals: Proposal[] = [];
  const partial: Proposal[] = [];
  for (const one of found.filter(({ reaches }) => reaches)) {
    if (proposals.filter((kept) => breaks(kept) === 0).length >= KEPT || proposals.length >= 2 * KEPT) break;
    const proposal = yield* quietly(settled(task, one, middle), one.step.what, ladders.length + proposals.length, of);
    if (proposal) (proposal.reaches ? proposals : partial).push(proposal);
  }
  if (proposals.length === 0) {
    const rest = found.filter(({ reaches }) => !reaches).sort((a, b) => b.score - a.score || foundOrder(a, b));
    for (const one of rest.slice(0, PARTIAL)) {
      const proposal = yield* quietly(proposed(task, one), one.step.what, ladders.length, of);
      if (proposal) (proposal.reaches ? proposals : partial).push(proposal);
    }
  }
  const better = partial
    .filter((one) => gain(one) > (finding.reserve?.lo ?? 0) * (1 + BETTER))
    .sort((a, b) => gain(b) - gain(a))
    .slice(0, PARTIAL);
  return answer(proposals.length > 0 ? ordered(proposals) : better, ruledOut, NO_STEP);
}

/** The build as it is at the middle of its ranges. */
function evaluationScore({ base }: Trials, id: string): number {
  const finding = base.assessment.findings.find((one) => one.id === id);
  return finding?.reserve?.value ?? 0;
}

function* baseWith({ base }: Trials, ends: Ends): Generator<void, Session> {
  return ends === 'tried' ? yield* rangePass(base) : base;
}

/** A file of an older format is raised by the edit, as by any other. */
function raisedLadder(session: Session, ladder: Ladder): Ladder {
  const first = raised(session);
  if (first.length === 0) return ladder;
  return { ...ladder, steps: ladder.steps.map((step) => ({ ...step, patches: [...first, ...step.patches] })) };
}

/** Passes pauses on as progress. */
function* quietly<T>(steps: Generator<void, T>, doing: string, done = 0, of = 1): Generator<HoldProgress, T> {
  for (let next = steps.next(); ; next = steps.next()) {
    if (next.done) return next.value;
    yield { done, of, doing };
  }
}
