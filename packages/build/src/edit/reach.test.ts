import { describe, expect, test } from 'vitest';
import { applyPatches } from '../document/patch.ts';
import { fieldsAt, typeField } from '../fields.ts';
import { BUILD_SCHEMA, valueAt } from '../schema/describe.ts';
import { applyEdit, openSession, validateText } from '../session.ts';
import type { Session } from '../session-types.ts';
import { filled, placeOf, schemaPlaces } from '../testing/reach.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { additions, structureAt } from './additions.ts';
import { lastKey } from './ids.ts';
import { stageKinds } from './stages.ts';
import { formFor, structureEdit } from './structure-edit.ts';
import type { EditRequest } from './types.ts';

const SMALL = JSON.stringify(SMALL_BUILD, null, 2);

/** Elements that the page shows: the parts of the brief, the columns of the path, and what stands beside them. */
const elements = (session: Session): string[] => [
  '/name',
  '/about',
  ...Object.keys(BUILD_SCHEMA.properties?.brief?.properties ?? {}).map((key) => `/brief/${key}`),
  ...Object.keys(session.build.path.shafts).map((id) => `/path/shafts/${id}`),
  ...Object.keys(session.build.path.stages).map((id) => `/path/stages/${id}`),
  '/path/adjusters',
  '/path/plates',
  '/path/cush',
  '/units',
  '/pictures',
  '/overrides',
];

function open(text: string): Session {
  const opened = openSession(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

/** Applies an edit, and holds that its inverse gives back the same bytes. */
function edited(session: Session, request: EditRequest): Session {
  const edit = structureEdit(session, request);
  if (!edit.ok) throw new Error(`${JSON.stringify(request)}: ${JSON.stringify(edit.faults)}`);
  const next = applyEdit(session, edit.patches);
  if (!next.ok) throw new Error(JSON.stringify(next.faults));
  expect(applyPatches(next.session.text, next.inverse)).toMatchObject({ ok: true, text: session.text });
  return next.session;
}

const INTEGERS: Readonly<Record<string, string>> = {
  cylinders: '2',
  quality: '7',
  gear: '2',
  strands: '2',
  links: '106',
  length: '120',
  sheets: '2',
};

/** A build to which everything was added that can be: each kind once. */
function full(): Session {
  let session = edited(open(SMALL), { do: 'paste curve', text: 'rpm\tN.m\n2000\t24\n4000\t30\n7000\t24.5' });
  const done = new Set<string>();
  for (let again = true; again; ) {
    again = false;
    for (const element of elements(session))
      for (const { at, sort, kinds } of additions(session, element))
        for (const kind of kinds ?? [null]) {
          // The torque joint of every kind of seat once, wherever it stands.
          const key = `${at.includes('/hub') ? placeOf(session.build, at) : at}:${kind}`;
          if (done.has(key) || (sort === 'group' && valueAt(session.build, at) !== undefined)) continue;
          done.add(key);
          const id = at === '/overrides' ? { id: 'chain.wrap:/path/stages/chain-1' } : {};
          session = edited(session, { do: 'add', at, kind, answers: filled(formFor(session, at, kind)), ...id });
          again = true;
        }
    for (const kind of stageKinds(session)) {
      if (done.has(kind)) continue;
      done.add(kind);
      const answers = filled(formFor(session, '/path/stages', kind));
      session = edited(session, { do: 'insert stage', stage: 'chain-1', side: 'before', kind, answers });
      again = true;
    }
  }
  return session;
}

const FULL = full();

describe('everything that the build file can hold can be edited on the page', () => {
  test('every key of the schema is a field of some element, once what holds it is added', () => {
    const session = FULL;
    const found = new Set<string>();
    for (const element of elements(session))
      for (const field of fieldsAt(session, element)) found.add(placeOf(session.build, field.address));
    const wanted = schemaPlaces();
    const others = new Set([
      // Which reading of the file holds is not the builder's to choose.
      '/format',
      // The note of each element is a box of its own, held below.
      '/notes/*',
    ]);
    expect(wanted.filter((place) => !found.has(place) && !others.has(place))).toEqual([]);
    expect(wanted.length).toBeGreaterThan(150);
  });

  test('every field takes its own value and its example, and undoing gives the same bytes', () => {
    const session = FULL;
    for (const element of elements(session))
      for (const field of fieldsAt(session, element)) {
        const typed = field.text ?? field.choices?.[0] ?? field.example ?? INTEGERS[lastKey(field.address)] ?? '17';
        const edit = typeField(session, field.address, typed);
        expect(edit.ok ? [] : [field.address, edit.fault]).toEqual([]);
        if (!edit.ok || field.text !== null) continue;
        const next = applyPatches(session.text, edit.patches);
        expect(next.ok ? validateText(next.text) : next.faults).toEqual([]);
        expect(next.ok && applyPatches(next.text, next.inverse)).toMatchObject({ ok: true, text: session.text });
      }
  }, 60_000);

  test('everything that was added can be taken out again, or says who still uses it', () => {
    let session = FULL;
    for (let again = true; again; ) {
      again = false;
      for (const element of elements(session)) {
        for (const { at } of structureAt(session, element).removals) {
          if (valueAt(session.build, at) === undefined) continue;
          const edit = structureEdit(session, { do: 'remove', at });
          if (!edit.ok) expect(edit.faults[0]?.accepted).not.toBe('');
          else {
            session = edited(session, { do: 'remove', at });
            again = true;
            break;
          }
        }
      }
    }
    expect(Object.keys(session.build.path.stages)).toHaveLength(1);
    expect(session.build.brief.suspension).toBeUndefined();
    expect(session.build.pictures).toBeUndefined();
    expect(session.build.brief.engine.gears).toHaveLength(1);
  }, 60_000);

  test('a note on any element', () => {
    const session = open(SMALL);
    for (const of of ['/brief/engine', '/path/stages/chain-1', '/path/shafts/axle/seats/sprocket']) {
      const noted = edited(session, { do: 'note', of, text: ' weld last ' });
      expect(structureAt(noted, of).notes).toMatchObject([{ of, text: 'weld last' }]);
      expect(edited(noted, { do: 'note', of, text: '' }).text).toBe(session.text);
    }
    expect(structureEdit(session, { do: 'note', of: '/brief/speedometer', text: 'x' })).toMatchObject({ ok: false });
  });
});
