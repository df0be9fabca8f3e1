import { resolve } from 'node:path';
import { besideRows } from '@oddwheel/build/assess/beside';
import { moveHere, openSession, shaftDiagrams } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { laidBeads } from '@oddwheel/build/true/laid-beads';
import { readTrue } from '@oddwheel/build/true/record';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { readTrueText } from '@oddwheel/store/true-record';
import { type Complaint, complain } from '../complain.ts';
import { DONE, type ExitCode, FAILS, type Io, print } from '../io.ts';
import { readBuildText } from '../read-folder.ts';
import { assessmentJson } from './assessment-json.ts';
import { reportLines } from './report.ts';
import { shaftTables } from './shaft-lines.ts';

export interface CheckOptions {
  readonly gear?: string;
  readonly speed?: string;
  /** Folder of another build to put beside this one. */
  readonly beside?: string;
  /** Case in which shafts are told along their length; true takes the worst of each. */
  readonly shafts?: string | true;
  readonly json?: true;
}

/** Moves the slider to the gear and road speed asked for, or says what is wrong with them. */
function place(
  session: Session,
  { gear, speed }: CheckOptions,
): { readonly ok: true; readonly session: Session } | { readonly ok: false; readonly complaints: Complaint[] } {
  const complaints: Complaint[] = [];
  const { gears } = session.assessment;
  if (gear !== undefined && !gears.some(({ id }) => id === gear))
    complaints.push({
      at: '--gear',
      problem: 'The gearbox has no such gear.',
      read: gear,
      accepted: gears.map(({ id }) => id).join(', '),
    });
  const parsed = speed === undefined ? null : parseQuantity(speed, 'speed');
  if (parsed && !parsed.ok)
    complaints.push({ at: '--speed', problem: parsed.problem, read: parsed.read, accepted: parsed.accepted });
  else if (parsed && parsed.si < 0)
    complaints.push({
      at: '--speed',
      problem: 'The path is shown driving forward.',
      read: speed ?? '',
      accepted: '0 km/h or more',
    });
  if (complaints.length > 0) return { ok: false, complaints };
  const here = { ...(gear === undefined ? {} : { gear }), ...(parsed?.ok ? { roadSpeed: parsed.si } : {}) };
  return { ok: true, session: Object.keys(here).length === 0 ? session : moveHere(session, here) };
}

const wantsColour = (io: Io): boolean => io.stdout.isTTY === true && !io.env.NO_COLOR && io.env.TERM !== 'dumb';

/** Opens the build of a folder, or complains. */
async function opened(
  io: Io,
  folder: string,
): Promise<{ readonly ok: true; readonly session: Session } | { readonly ok: false; readonly code: ExitCode }> {
  const read = await readBuildText(io, folder);
  if (!read.ok) return read;
  const record = readTrue(await readTrueText(resolve(io.cwd, folder)));
  const result = openSession(read.text, { beads: laidBeads(record) });
  if (result.ok) return result;
  const complaints = result.faults.map((fault) => ({ at: fault.address, ...fault }));
  return { ok: false, code: complain(io, read.path, complaints) };
}

/** `check`: assesses the build in a folder and prints what it finds. The folder is only read. */
export async function check(io: Io, folder: string, options: CheckOptions): Promise<ExitCode> {
  const build = await opened(io, folder);
  if (!build.ok) return build.code;
  const other = options.beside === undefined ? null : await opened(io, options.beside);
  if (other && !other.ok) return other.code;
  const placed = place(build.session, options);
  if (!placed.ok) return complain(io, 'check', placed.complaints);
  const { assessment } = placed.session;
  const beside = other && {
    name: other.session.assessment.name,
    rows: besideRows(assessment, other.session.assessment),
  };
  const { shafts } = options;
  const lines = shafts === undefined ? null : shaftDiagrams(placed.session, shafts === true ? undefined : shafts);
  if (shafts !== undefined && lines === null)
    return complain(io, 'check', [
      {
        at: '--shafts',
        problem: 'The build has no such load case.',
        read: String(shafts),
        accepted: ['here', ...assessment.cases.map(({ id }) => id)].join(', '),
      },
    ]);
  print(
    io.stdout,
    options.json
      ? [assessmentJson(assessment, beside, lines)]
      : [
          ...reportLines(assessment, wantsColour(io), beside),
          ...(lines ? shaftTables(lines, placed.session.evaluation.model.units) : []),
        ],
  );
  return assessment.findings.some(({ severity }) => severity === 'fails') ? FAILS : DONE;
}
