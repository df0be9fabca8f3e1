/**
 * `npm run proof:hold`: every proposal for every finding that is short, on the demos with the ends of all ranges tried and on 50 seeded variants at
 * the middle, against a check of the build with its change made. Exit code 1 where one differs. `-- 10` takes fewer variants.
 */
import type { Ends } from '@oddwheel/build/assess/evaluation';
import { wantsHold } from '@oddwheel/build/hold/hold';
import { trialsOf } from '@oddwheel/build/hold/trials';
import type { Session } from '@oddwheel/build/session-types';
import { DEMOS, differences, held, open, textOf, variants } from './verify.ts';

interface Line {
  readonly name: string;
  readonly findings: number;
  readonly without: number;
  readonly proposals: number;
  readonly reach: number;
  readonly differ: number;
}

const print = (text: string): void => void process.stdout.write(`${text}\n`);
const WIDTHS = [26, 9, 9, 10, 9, 9] as const;
const row = (cells: readonly (string | number)[]): string =>
  cells.map((cell, k) => (k === 0 ? String(cell).padEnd(WIDTHS[0]) : String(cell).padStart(WIDTHS[k] ?? 9))).join(' ');

function played(name: string, session: Session, ends: Ends): Line {
  const trials = trialsOf(session);
  const short = session.assessment.findings.filter(wantsHold);
  let [without, proposals, reach, differ] = [0, 0, 0, 0];
  for (const { id } of short) {
    const hold = held(trials, id, ends);
    if (hold.proposals.length === 0) without += 1;
    for (const proposal of hold.proposals) {
      proposals += 1;
      if (proposal.reaches) reach += 1;
      const found = differences(session, hold, proposal, ends);
      if (found.length > 0) differ += 1;
      for (const one of found) print(`  ${name}, ${id}: ${one}`);
    }
  }
  const line = { name, findings: short.length, without, proposals, reach, differ };
  print(row([name, line.findings, without, proposals, reach, differ]));
  return line;
}

print(row(['build', 'short', 'no offer', 'proposals', 'reach', 'differ']));
const lines = DEMOS.map((demo) => {
  const session = open(textOf(demo), 'tried');
  if (!session) throw new Error(`${demo} has faults.`);
  return played(demo, session, 'tried');
});
variants(Number(process.argv[2] ?? 50)).forEach(({ of, session }, k) => {
  lines.push(played(`${of}, variant ${k + 1}`, session, 'not yet'));
});
const sum = (of: (line: Line) => number): number => lines.reduce((total, line) => total + of(line), 0);
print(
  row([
    `all ${lines.length}`,
    sum(({ findings }) => findings),
    sum(({ without }) => without),
    sum(({ proposals }) => proposals),
    sum(({ reach }) => reach),
    sum(({ differ }) => differ),
  ]),
);
process.exitCode = sum(({ differ }) => differ) > 0 ? 1 : 0;
