import type { Finding } from '@oddwheel/build/assess/types';
import { holdSteps, wantsHold } from '@oddwheel/build/hold/hold';
import { trialsOf } from '@oddwheel/build/hold/trials';
import type { Hold, Proposal, SideEffect, Told } from '@oddwheel/build/hold/types';
import { EFFORT_WORDS, effectWords } from '@oddwheel/build/hold/words';
import { openSession } from '@oddwheel/build/session';
import { reserveText } from './check/numbers.ts';
import { CAUTION } from './check/report.ts';
import { complain } from './complain.ts';
import { DONE, type ExitCode, type Io, print } from './io.ts';
import { readBuildText } from './read-folder.ts';
import { WIDTH } from './table.ts';
import { plainLine, wrap } from './text-width.ts';

export interface HoldOptions {
  readonly all?: true;
  readonly json?: true;
}

/** Findings that are looked at without `--all`. */
const FIRST = 5;
/** Side effects that are told one by one. */
const TOLD = 6;

const indented = (text: string, by: number): string[] =>
  wrap(plainLine(text), WIDTH - by).map((line) => `${' '.repeat(by)}${line}`);

const small = (told: Told | null): string => {
  if (told === null) return 'no longer asked';
  return told.reserve ? `${told.severity}, ${reserveText(told.reserve.lo)} at the worse end` : told.severity;
};

function effectLines(head: string, effects: readonly SideEffect[]): string[] {
  const told = effects
    .slice(0, TOLD)
    .flatMap((effect) => indented(`${effect.element}, ${effect.title}: ${effectWords(effect, reserveText)}`, 7));
  const more = effects.length - TOLD;
  return effects.length === 0 ? [] : [`     ${head}`, ...told, ...(more > 0 ? [`       and ${more} more`] : [])];
}

function proposalLines(proposal: Proposal, k: number): string[] {
  const { what, effort, after, reaches, boughtIn, cures, harms, holdWithLess } = proposal;
  return [
    '',
    ...indented(`${k + 1}. ${what}.`, 2).map((line, n) => (n === 0 ? line : `   ${line}`)),
    ...indented(`${reaches ? 'Then' : 'Not enough, but nearest. Then'}: ${small(after)}; ${EFFORT_WORDS[effort]}.`, 5),
    ...boughtIn.flatMap((says) => indented(`Not in your shop: ${says}.`, 5)),
    ...effectLines('Worse by it:', harms),
    ...effectLines('Better by it:', cures),
    ...(holdWithLess > 0 ? [`     ${holdWithLess} more hold with less in reserve.`] : []),
  ];
}

function holdLines(finding: Finding, hold: Hold): string[] {
  const wanted = hold.before.reserve ? `, ${reserveText(hold.wanted)} wanted` : '';
  return [
    ...wrap(plainLine(`${finding.element}, ${finding.title}: ${small(hold.before)}${wanted}`), WIDTH),
    ...indented(finding.id, 2),
    ...hold.proposals.flatMap(proposalLines),
    ...(hold.none === null ? [] : ['', ...indented(hold.none, 2)]),
    ...hold.ruledOut.flatMap(({ what, why }) => ['', ...indented(`Left out: ${what}. ${why}.`, 2)]),
    '',
  ];
}

/** The findings asked for: by id, by check, by address, or the first that are short. */
function chosen(findings: readonly Finding[], wanted: string | undefined, all: boolean): readonly Finding[] {
  const short = findings.filter(wantsHold);
  if (wanted === undefined) return all ? short : short.slice(0, FIRST);
  return findings.filter(({ id, check, address }) => id === wanted || check === wanted || address === wanted);
}

/** `hold`: what would make the findings of a build hold, the smallest change first. The folder is only read. */
export async function holdVerb(
  io: Io,
  folder: string,
  wanted: string | undefined,
  options: HoldOptions,
): Promise<ExitCode> {
  const read = await readBuildText(io, folder);
  if (!read.ok) return read.code;
  const opened = openSession(read.text);
  if (!opened.ok)
    return complain(
      io,
      read.path,
      opened.faults.map((fault) => ({ at: fault.address, ...fault })),
    );
  const { session } = opened;
  const { findings } = session.assessment;
  const asked = chosen(findings, wanted, options.all === true);
  if (asked.length === 0 && wanted !== undefined)
    return complain(io, 'hold', [
      {
        at: 'finding',
        problem: 'The build has no such finding.',
        read: wanted,
        accepted:
          findings
            .filter(wantsHold)
            .map(({ id }) => id)
            .join(', ') || 'none is short of its reserve',
      },
    ]);
  const trials = trialsOf(session);
  const holds: Hold[] = [];
  for (const finding of asked) {
    const steps = holdSteps(session, finding.id, { trials });
    let next = steps.next();
    while (!next.done) next = steps.next();
    if (next.value === null) continue;
    holds.push(next.value);
    if (!options.json) print(io.stdout, holdLines(finding, next.value));
  }
  if (options.json) print(io.stdout, [JSON.stringify({ format: 1, name: session.assessment.name, holds }, null, 2)]);
  else {
    const rest = findings.filter(wantsHold).length - asked.length;
    const more =
      wanted === undefined && rest > 0 ? [`${rest} more are short of their reserve: --all tries them too.`] : [];
    const none = asked.length === 0 ? ['Nothing is short of its reserve.'] : [];
    print(io.stdout, [...none, ...more, ...wrap(CAUTION, WIDTH)]);
  }
  return DONE;
}
