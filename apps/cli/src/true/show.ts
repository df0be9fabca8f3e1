import { resolve } from 'node:path';
import { openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { beadEffect, uncountedBeads } from '@oddwheel/build/true/bead-effect';
import { budgetView, countedSections, faceSwing } from '@oddwheel/build/true/budget-view';
import { laidBeads } from '@oddwheel/build/true/laid-beads';
import { type PartView, partView } from '@oddwheel/build/true/part-view';
import { readTrue, type TrueRecord } from '@oddwheel/build/true/record';
import { chuckWords, refitsOf, refitWords } from '@oddwheel/build/true/refits';
import { swingWords } from '@oddwheel/build/true/swing';
import { otherWays } from '@oddwheel/build/true/ways';
import {
  budgetWords,
  diagnosisWords,
  nextWords,
  outOfRound,
  refusedUse,
  runoutWords,
} from '@oddwheel/build/true/words';
import { formatQuantity } from '@oddwheel/quantity/format';
import { readTrueText } from '@oddwheel/store/true-record';
import { complain } from '../complain.ts';
import { DONE, type ExitCode, type Io, print } from '../io.ts';
import { readBuildText } from '../read-folder.ts';

export interface ShowOptions {
  readonly part?: string;
  readonly unit: string;
  readonly json?: true;
}

const UNITS = ['thou', 'mm', 'µm'];

type Found =
  | {
      readonly ok: true;
      readonly record: TrueRecord;
      readonly views: readonly PartView[];
      /** The build with the beads of the record; null when its file has faults. */
      readonly session: Session | null;
    }
  | { readonly ok: false; readonly code: ExitCode };

async function viewsOf(io: Io, folder: string, { part, unit }: ShowOptions): Promise<Found> {
  const build = await readBuildText(io, folder);
  if (!build.ok) return build;
  if (!UNITS.includes(unit))
    return {
      ok: false,
      code: complain(io, '--unit', [
        { at: '', problem: 'This unit is not used here.', read: unit, accepted: UNITS.join(', ') },
      ]),
    };
  const record = readTrue(await readTrueText(resolve(io.cwd, folder)));
  const ids = part === undefined ? [...record.parts.keys()] : [part];
  const views = ids.flatMap((id) => partView(record, id) ?? []);
  if (views.length > 0) {
    const opened = openSession(build.text, { beads: laidBeads(record), ends: 'not yet' });
    return { ok: true, record, views, session: opened.ok ? opened.session : null };
  }
  const known = [...record.parts.keys()].join(', ');
  const accepted = known === '' ? 'put one on the record first: oddwheel true add' : known;
  return {
    ok: false,
    code: complain(io, folder, [
      { at: '', problem: 'There is no such part on the record.', read: part ?? '', accepted },
    ]),
  };
}

function oddLines({ bad, unusable, clashes }: TrueRecord): string[] {
  return [
    ...bad.map(({ line, problem }) => `Line ${line} of the record cannot be used: ${problem}`),
    ...unusable.map(
      ({ id, faults }) =>
        `Entry ${id} cannot be used: ${faults.map(({ address, problem }) => `${address} ${problem}`).join(' ')}`,
    ),
    ...clashes.map((id) => `Two different entries have the id ${id}; the first counts.`),
  ];
}

/** `true show`: where each part stands: run-out against its seats, the shape of its fault, what is missing. */
export async function trueShow(io: Io, folder: string, options: ShowOptions): Promise<ExitCode> {
  const found = await viewsOf(io, folder, options);
  if (!found.ok) return found.code;
  if (options.json) {
    const parts = found.views.map(({ state: _, ...view }) => ({
      ...view,
      budget: budgetView(view.part, view.atGoal, countedSections(view), faceSwing(found.record, view.part.part)),
    }));
    print(io.stdout, [JSON.stringify({ format: 1, parts, odd: oddLines(found.record) }, null, 2)]);
    return DONE;
  }
  for (const view of found.views) {
    const budget = budgetView(view.part, view.atGoal, countedSections(view), faceSwing(found.record, view.part.part));
    const { part, goal, runouts, diagnosis, history, missing, leftOut, sets, swing } = view;
    const uncounted = uncountedBeads(found.session, found.record, part);
    print(io.stdout, [
      `${part.name ?? part.part}, wanted at ${part.goal.station}: TIR ${formatQuantity(goal, 'length', options.unit, { digits: 3 })} or less`,
      ...runouts.map((runout) => `  ${runoutWords(runout, options.unit)}`),
      ...(swing ? [`  ${swingWords(swing, options.unit)}`] : []),
      ...(diagnosis ? [`  ${diagnosisWords(diagnosis)}`] : []),
      ...(history.length > 1
        ? [
            `  Set by set: TIR ${history.map(({ tir }) => formatQuantity(tir, 'length', options.unit, { digits: 3 })).join(', ')}`,
          ]
        : []),
      ...(budget ? budgetWords(budget, options.unit).map((one) => `  ${one}`) : []),
      ...chuckWords(found.record, view, options.unit).map((one) => `  ${one}`),
      ...refitWords(refitsOf(found.record, view), options.unit).map((one) => `  ${one}`),
      ...sets.flatMap(({ id, doubts }) => doubts.map((doubt) => `  Set ${id}: ${doubt}`)),
      ...leftOut.map(({ id, why }) => `  Set ${id} does not count: ${why}`),
      ...(uncounted === null ? [] : [`  ${uncounted}`]),
      ...missing.map((one) => `  Missing: ${one}`),
    ]);
  }
  const odd = oddLines(found.record);
  if (odd.length > 0) print(io.stdout, odd);
  return DONE;
}

/** What to say of a part whose dial is within the goal, or whose section keeps it from ever being. */
function settledWords({ good, swing, goal }: PartView, unit: string): string | undefined {
  if (good) return 'Stop here. The part is good.';
  if (swing?.share !== 0) return undefined;
  const { say, why } = outOfRound(swing.form, goal, unit);
  return `${say} ${why}`;
}

/** `true next`: the next correction of each part, in words of the shop. */
export async function trueNext(io: Io, folder: string, options: ShowOptions): Promise<ExitCode> {
  const found = await viewsOf(io, folder, options);
  if (!found.ok) return found.code;
  const told = found.views.map((view) => {
    const { part, advice, goal, missing } = view;
    const refused = refusedUse(part);
    const ways = refused === undefined && view.good !== true ? otherWays(found.record, view, options.unit) : [];
    const next =
      refused === undefined && advice
        ? nextWords(advice, goal, options.unit, () => beadEffect(found.session, part), view.swing)
        : undefined;
    const settled = advice === undefined && missing.length === 0 ? settledWords(view, options.unit) : undefined;
    return {
      part: part.part,
      ...(refused === undefined ? {} : { refused }),
      ...(next && advice ? { next, advice } : {}),
      ...(settled === undefined ? {} : { settled }),
      ways,
      missing,
    };
  });
  if (options.json) {
    print(io.stdout, [JSON.stringify({ format: 1, parts: told }, null, 2)]);
    return DONE;
  }
  for (const { part, refused, settled, next, ways, missing } of told) {
    const lines = next
      ? [
          next.say,
          `Why: ${next.why}`,
          `Expect: ${next.expect}`,
          ...(next.otherwise ? [next.otherwise] : []),
          ...next.cautions,
          next.stopWhen,
        ]
      : [];
    const noWay =
      refused ??
      settled ??
      (next || ways.length > 0 || missing.length > 0
        ? undefined
        : 'No weld is noted for this part; "weld" of the part says where beads may go.');
    print(io.stdout, [
      part,
      ...[
        ...(noWay ? [noWay] : []),
        ...ways.map(({ say }) => say),
        ...lines,
        ...missing.map((one) => `Missing: ${one}`),
      ].map((line) => `  ${line}`),
    ]);
  }
  return DONE;
}
