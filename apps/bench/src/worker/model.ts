import { besideRows } from '@oddwheel/build/assess/beside';
import type { LaidBeads } from '@oddwheel/build/assess/strength/beads';
import type { Assessment } from '@oddwheel/build/assess/types';
import { assumptionsOf } from '@oddwheel/build/begin/assumptions';
import { beginBuild } from '@oddwheel/build/begin/begin-build';
import { soFar } from '@oddwheel/build/begin/read-six';
import type { BeginAssumption } from '@oddwheel/build/begin/types';
import type { Patch } from '@oddwheel/build/document/patch';
import { structureAt } from '@oddwheel/build/edit/additions';
import { formFor, structureEdit } from '@oddwheel/build/edit/structure-edit';
import type { Fault } from '@oddwheel/build/fault';
import { fieldsAt, typeField } from '@oddwheel/build/fields';
import { runMeasure } from '@oddwheel/build/measure/run';
import { practice } from '@oddwheel/build/practice';
import { BUILD_SCHEMA, valueAt } from '@oddwheel/build/schema/describe';
import {
  applyEdit,
  explainFinding,
  layBeads,
  moveHere,
  openSession,
  rangePass,
  roadCurvesOf,
} from '@oddwheel/build/session';
import type { Field, Session } from '@oddwheel/build/session-types';
import { laidBeads } from '@oddwheel/build/true/laid-beads';
import { readTrue } from '@oddwheel/build/true/record';
import { trueSheet } from '@oddwheel/build/true/sheet';
import { type AssessmentChange, assessmentChange } from './changes.ts';
import { createHoldModel } from './hold-model.ts';
import { createLayoutModel } from './layout-model.ts';
import type { ModelApi, Outcome, Part, Replayed } from './model-api.ts';
import { createRatiosModel } from './ratios-model.ts';
import { createShaftModel } from './shaft-model.ts';

/** Quiet after an edit before the ends of ranges are tried, ms: while one edit follows the other, none waits for them. */
const QUIET = 60;

const pause = (time: number): Promise<void> => new Promise((done) => setTimeout(done, time));

/** Lets every question that waits come first; a timer would make each step wait 4 ms. */
const letOthersIn = (): Promise<void> =>
  new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });

/** A picture's bytes are put in place by attaching them, never by typing their hash. */
const PICTURE_FILE = /^\/pictures\/[^/]+\/file$/;

/** A model without a build; `open` gives it one. */
export function createModel(): ModelApi {
  let session: Session | null = null;
  // What the page holds: the change of an assessment is told against it.
  let sent: Assessment | null = null;
  // The record of run-out is kept by itself: it may be read before the build is.
  let beads: readonly LaidBeads[] = [];

  let practised = false;
  // Once, in the quiet after the first build is open; whatever the builder does meanwhile ends it.
  const practise = async (from: Session): Promise<void> => {
    if (practised) return;
    practised = true;
    for (const _ of practice(from)) {
      await letOthersIn();
      if (session !== from) return;
    }
  };

  const current = (): Session => {
    if (!session) throw new Error('No build is open.');
    return session;
  };
  const tell = (next: Session): AssessmentChange => {
    const change = assessmentChange(sent, next.assessment);
    session = next;
    sent = sent === null ? next.assessment : { ...sent, ...change };
    return change;
  };
  // The build's own name goes with its units: neither has a column of its own.
  const fields = (address: string): readonly Field[] =>
    (address === '/units' ? ['/name', '/about', address] : [address])
      .flatMap((at) => fieldsAt(current(), at))
      .filter((field) => !PICTURE_FILE.test(field.address));
  const outcome = (next: Session): Outcome & { readonly ok: true } => ({
    ok: true,
    change: tell(next),
    hash: next.hash,
    parts: partsOf(next),
  });

  return {
    open: (text: string, edits: readonly (readonly Patch[])[]): Replayed => {
      const opened = openSession(text, {
        ...(session ? { here: session.here, previous: session } : {}),
        beads,
        ends: 'not yet',
      });
      if (!opened.ok) return { ok: false, faults: opened.faults, refused: [] };
      let next = opened.session;
      const refused = edits.map((patches): readonly Fault[] | null => {
        const edited = applyEdit(next, patches, 'not yet');
        if (!edited.ok) return edited.faults;
        next = edited.session;
        return null;
      });
      return { ...outcome(next), refused };
    },
    close: () => {
      session = null;
      sent = null;
    },
    begin: beginBuild,
    soFar,
    standsOn: () => standsOn(current),
    apply: (patches) => {
      const edited = applyEdit(current(), patches, 'not yet');
      return edited.ok ? outcome(edited.session) : { ok: false, faults: edited.faults };
    },
    ranges: async () => {
      const asked = session;
      if (!asked || asked.assessment.ends === 'tried') return null;
      await pause(QUIET);
      let from: Session | null = session;
      if (from?.hash !== asked.hash) return null;
      let pass = rangePass(from);
      for (;;) {
        const step = pass.next();
        if (step.done) {
          const change = tell(step.value);
          void practise(step.value);
          return change;
        }
        await letOthersIn();
        if (session === from) continue;
        if (session?.hash !== from.hash) return null;
        // The slider was moved; what is worked out so far is kept.
        from = session;
        pass = rangePass(from);
      }
    },
    beside: (text) => {
      const other = openSession(text);
      if (!other.ok) return { ok: false, faults: other.faults };
      const { assessment } = other.session;
      return { ok: true, name: assessment.name, rows: besideRows(current().assessment, assessment) };
    },
    typeField: (address, typed) => typeField(current(), address, typed),
    structureEdit: (request) => structureEdit(current(), request),
    structure: (address) => structureAt(current(), address),
    form: (at, kind) => formFor(current(), at, kind),
    moveHere: (here) => tell(moveHere(current(), here)),
    fields,
    fieldsOf: (addresses) => addresses.map(fields),
    measure: (id, address, readings) => runMeasure(current(), id, address, readings),
    ...createHoldModel(current),
    ...createLayoutModel(current),
    ...createRatiosModel(current, () => session),
    ...createShaftModel(current),
    explain: (findingId, caseId) => explainFinding(current(), findingId, caseId ?? undefined),
    roadCurves: () => roadCurvesOf(current()),
    // The sheet may be asked for before the beads of its record are taken in.
    runOutSheet: (text) => trueSheet(text, session && withLaid(session, laidBeads(readTrue(text)))),
    layBeads: (text) => {
      beads = laidBeads(readTrue(text));
      const next = session && withLaid(session, beads);
      return next === null || next === session ? null : tell(next);
    },
  };
}

const withLaid = (session: Session, beads: readonly LaidBeads[]): Session =>
  JSON.stringify(session.beads) === JSON.stringify(beads) ? session : layBeads(session, beads, 'not yet');

/** Lets every question that waits come first, so that this long one never holds an edit up. */
async function standsOn(current: () => Session): Promise<readonly BeginAssumption[] | null> {
  const session = current();
  const asked = assumptionsOf(session);
  for (let next = asked.next(); ; next = asked.next()) {
    if (next.done) return next.value;
    await new Promise((resolve) => setTimeout(resolve));
    if (current().build !== session.build) return null;
  }
}

/** The parts of the brief and the settings that are no column of the path. */
function partsOf(session: Session): readonly Part[] {
  const columns = new Set(session.assessment.path.map((element) => element.address));
  const part = (address: string, name: string): Part => ({
    address,
    name,
    present: valueAt(session.build, address) !== undefined,
  });
  const brief = Object.entries(BUILD_SCHEMA.properties?.brief?.properties ?? {})
    .map(([key, node]) => part(`/brief/${key}`, node['x-field']?.name ?? key))
    .filter(({ address }) => !columns.has(address));
  return [
    ...brief,
    part('/path/adjusters', 'Adjusters'),
    part('/path/plates', 'Plates'),
    part('/path/cush', 'Cush or damper'),
    part('/units', 'Build and units'),
    part('/pictures', 'Pictures'),
    part('/overrides', 'Design reserves of your own'),
  ];
}
