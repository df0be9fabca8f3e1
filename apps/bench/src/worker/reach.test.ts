import { applyPatches } from '@oddwheel/build/document/patch';
import type { EditRequest } from '@oddwheel/build/edit/types';
import { filled, placeOf, schemaPlaces } from '@oddwheel/build/testing/reach';
import { SMALL_BUILD } from '@oddwheel/build/testing/small-build';
import { expect, it } from 'vitest';
import { addings } from '../inspector/adding.ts';
import { createModel } from './model.ts';
import type { Outcome } from './model-api.ts';

const HASH = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';
const OTHER = HASH.replace('e3', 'a0');

/** A build on the page, edited only by what the page offers. */
function pageOf(build: unknown) {
  const model = createModel();
  let text = JSON.stringify(build, null, 2);
  const first = model.open(text, []);
  if (!first.ok) throw new Error(JSON.stringify(first.faults));
  let known = first.change;
  let parts = first.parts;
  const take = (outcome: Outcome): void => {
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
    known = { ...known, ...outcome.change };
    parts = outcome.parts;
  };
  return {
    model,
    text: () => text,
    /** Columns of the path, and the parts that the page lists beside them. */
    elements: () => [...new Set([...(known.path ?? []), ...parts].map(({ address }) => address))],
    finding: () => known.findings?.[0]?.id ?? '',
    make: (request: EditRequest): void => {
      const edit = model.structureEdit(request);
      if (!edit.ok) throw new Error(`${JSON.stringify(request)}: ${JSON.stringify(edit.faults)}`);
      take(model.apply(edit.patches));
      const next = applyPatches(text, edit.patches);
      if (next.ok) text = next.text;
    },
  };
}

it('every key of the build file is a field of something that the page shows, once the page has added what holds it', () => {
  const page = pageOf(SMALL_BUILD);
  const { model } = page;
  page.make({ do: 'paste curve', text: 'rpm\tN.m\n2000\t24\n4000\t30\n7000\t24.5' });
  page.make({ do: 'add picture', of: '/brief/engine', name: 'engine', file: HASH });
  const finding = page.finding();
  const reserve = filled(model.form('/overrides', null));
  page.make({ do: 'add', at: '/overrides', kind: null, id: finding, answers: reserve });

  const done = new Set<string>();
  for (let again = true; again; ) {
    again = false;
    for (const element of page.elements())
      for (const { key, at, kinds, request } of addings(model.structure(element), new Set()))
        for (const kind of kinds ?? [null]) {
          // A stage of each kind and the torque joint of each kind of seat once, wherever it stands; everything else at its own place.
          const place = at.includes('/hub') ? placeOf(JSON.parse(page.text()), at) : key;
          const what = `${at === '/path/stages' ? at : place} ${kind}`;
          if (done.has(what)) continue;
          done.add(what);
          page.make(request(kind, filled(model.form(at, kind))));
          again = true;
        }
  }
  const elements = page.elements();
  const build = JSON.parse(page.text());
  const found = new Set(
    elements.flatMap((element) => model.fields(element)).map(({ address }) => placeOf(build, address)),
  );
  const others = new Set([
    // Which reading of the file holds is not the builder's to choose.
    '/format',
    // Notes and the bytes of pictures have their own boxes, held below.
    '/notes/*',
    '/pictures/*/file',
  ]);
  expect(schemaPlaces().filter((place) => !found.has(place) && !others.has(place))).toEqual([]);

  page.make({ do: 'note', of: '/brief/engine', text: 'weld last' });
  expect(model.structure('/brief/engine').notes).toEqual([{ of: '/brief/engine', name: 'single', text: 'weld last' }]);
  const [picture] = model.structure('/brief/engine').pictures;
  page.make({ do: 'replace picture', at: picture?.at ?? '', file: OTHER });
  expect(model.structure('/brief/engine').pictures.map(({ file }) => file)).toEqual([OTHER]);
}, 60_000);
