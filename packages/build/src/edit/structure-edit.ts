import { applyPatches } from '../document/patch.ts';
import type { Fault } from '../fault.ts';
import { readBuild } from '../read/read-build.ts';
import { isRecord, pointerKey, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { addAt, formAt } from './add.ts';
import { addCurvePoint, moveCurvePoint, pasteCurve, removeCurvePoint } from './curve-points.ts';
import { NEW_KEY } from './form.ts';
import { above, newId } from './ids.ts';
import { raised, removePatches, setPatch } from './place.ts';
import { refusal, removeAt } from './remove.ts';
import { insertStage, removeStage, stageForm } from './stages.ts';
import type { EditRequest, Form, StructureEdit } from './types.ts';
import { nameAt } from './words.ts';

/** Writes, changes, or with an empty text takes away the note on something. */
function noteOn(session: Session, of: string, text: string): StructureEdit {
  const at = `/notes/${pointerKey(of)}`;
  const before = valueAt(session.build, at);
  const value = text.trim();
  if (valueAt(session.build, of) === undefined)
    return {
      ok: false,
      faults: [
        {
          code: 'edit.note',
          address: of,
          problem: 'A note stands on something that is in the build.',
          read: of,
          accepted: 'First add it.',
        },
      ],
    };
  const name = `${before === undefined ? 'Note on' : value === '' ? 'Take away the note on' : 'Change the note on'} ${nameAt(session, of)}`;
  const nothing = value === (before ?? '');
  const patches = value === '' ? removePatches(session, [at]) : [setPatch(session, at, value)];
  return { ok: true, name, patches: nothing ? [] : [...raised(session), ...patches], also: [], shows: null };
}

/** A picture whose bytes are kept already; it goes by the name of its file or of what it shows. */
function addPicture(session: Session, request: Extract<EditRequest, { do: 'add picture' }>): StructureEdit {
  const { of, file } = request;
  const name = request.name.trim() === '' ? (of === null ? 'picture' : nameAt(session, of)) : request.name.trim();
  const at = `/pictures/${newId(name, Object.keys(session.build.pictures ?? {}), 'picture')}`;
  const value = { name, file, ...(of === null ? {} : { of }) };
  const shown = of === null ? '' : ` of ${nameAt(session, of)}`;
  const patches = [...raised(session), setPatch(session, at, value)];
  return { ok: true, name: `Add picture “${name}”${shown}`, patches, also: [], shows: at };
}

/** Other bytes under the name of a picture. */
function replacePicture(session: Session, request: Extract<EditRequest, { do: 'replace picture' }>): StructureEdit {
  const { at, file } = request;
  if (!isRecord(valueAt(session.build, at)))
    return refusal(at, 'There is no such picture.', at, 'A picture of the build.');
  const patches = [...raised(session), setPatch(session, `${at}/file`, file)];
  return { ok: true, name: `Other picture for “${nameAt(session, at)}”`, patches, also: [], shows: at };
}

function made(session: Session, request: EditRequest): StructureEdit {
  switch (request.do) {
    case 'add':
      return addAt(session, request.at, request);
    case 'remove': {
      const stage = /^\/path\/stages\/([^/]+)$/.exec(request.at)?.[1];
      return stage === undefined ? removeAt(session, request.at) : removeStage(session, stage);
    }
    case 'insert stage':
      return insertStage(session, request);
    case 'note':
      return noteOn(session, request.of, request.text);
    case 'add picture':
      return addPicture(session, request);
    case 'replace picture':
      return replacePicture(session, request);
    case 'paste curve':
      return pasteCurve(session, request.text);
    case 'add curve point':
      return addCurvePoint(session, request.speed, request.torque);
    case 'move curve point':
      return moveCurvePoint(session, request.row, request.speed, request.torque);
    case 'remove curve point':
      return removeCurvePoint(session, request.row);
  }
}

/** Faults of the file that the edit would make, told at the fields of the form where they come from it. */
function atForm(faults: readonly Fault[], made: string): readonly Fault[] {
  const form = `${above(made)}/${NEW_KEY}`;
  return faults.map((fault) =>
    fault.address === made || fault.address.startsWith(`${made}/`)
      ? { ...fault, address: form + fault.address.slice(made.length) }
      : fault,
  );
}

/**
 * Turns a wanted change of structure into a named edit, without making it. An edit that would leave the file at fault is refused with the
 * faults; those of a filled form stand at its fields' addresses.
 */
export function structureEdit(session: Session, request: EditRequest): StructureEdit {
  const edit = made(session, request);
  if (!edit.ok || edit.patches.length === 0) return edit;
  const patched = applyPatches(session.text, edit.patches);
  if (!patched.ok) return patched;
  const read = readBuild(patched.text);
  if (read.ok) return edit;
  // A group's form stands at its own address; an entry's and a row's at a key of the form.
  const filled = (request.do === 'add' && edit.shows !== request.at) || request.do === 'insert stage';
  return { ok: false, faults: filled && edit.shows !== null ? atForm(read.faults, edit.shows) : read.faults };
}

/** The form of an addition or of a new stage. */
export function formFor(session: Session, at: string, kind: string | null): Form {
  return at === '/path/stages' && kind !== null ? stageForm(session, kind) : formAt(session, at, kind);
}
