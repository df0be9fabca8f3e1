import { readTrue } from '@oddwheel/build/true/record';
import { type JSX, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { keepPage } from '../link/keep-page.ts';
import { keepChoice, keptChoice } from '../state/device.ts';
import type { ScreenProps } from '../steps/screen.ts';
import { newDraft } from './draft.ts';
import { KeyIn } from './KeyIn.tsx';
import { PartForm } from './PartForm.tsx';
import { PartView } from './PartView.tsx';
import { SavedBands } from './SavedBands.tsx';
import { partInView, useShafts, useSheet } from './use-sheet.ts';
import './true.css';
import './drawings.css';
import './keying.css';

/** True: run-out measured and brought down, mostly on a phone beside the machine. */
export function TrueScreen({ state, actions, model }: ScreenProps): JSX.Element {
  const { runOut } = actions;
  const record = useStore(runOut.store);
  const { sheet, why } = useSheet(model, record.text);
  const [chosen, setChosen] = useState(() => keptChoice('true-part'));
  const [forming, setForming] = useState<'new' | 'change' | null>(null);
  const part = partInView(sheet, chosen);
  const making = forming !== null || (sheet !== null && part === null);
  const shafts = useShafts(model, state.hash, making);
  const latest = useMemo(() => readTrue(record.text).sets, [record.text]);
  const place = state.shelf?.place ?? 'host';
  useEffect(() => {
    if (place === 'host') void keepPage();
  }, [place]);

  const choose = (id: string): void => {
    keepChoice('true-part', id);
    setChosen(id);
  };
  const { draft } = record;
  const drafted = draft && (sheet?.parts.find(({ id }) => id === draft.part) ?? null);
  const setOf = (id: string) => latest.filter(({ body }) => body.part === id).at(-1)?.body;
  const done = (id: string | null): void => {
    setForming(null);
    if (id !== null) choose(id);
  };
  return (
    <div className="true-screen">
      <SavedBands state={record} runOut={runOut} place={place} build={state.assessment?.name ?? 'this build'} />
      {why !== null && (
        <p className="fails" role="alert">
          The record could not be worked out: {why}
        </p>
      )}
      {sheet?.odd.map((line) => (
        <p key={line} className="fails">
          {line}
        </p>
      ))}
      {(sheet === null || !record.ready) && <p className="lead">Reading the record.</p>}
      {draft && drafted ? (
        <KeyIn
          part={drafted.part}
          draft={draft}
          first={setOf(draft.part) === undefined}
          onDraft={runOut.setDraft}
          onAdd={runOut.add}
        />
      ) : making && record.ready ? (
        <PartForm
          key={forming === 'change' ? part?.id : 'new'}
          {...(forming === 'change' && part ? { part: part.part } : {})}
          taken={(sheet?.parts ?? []).map(({ id }) => id)}
          shafts={shafts}
          onAdd={runOut.add}
          onDone={done}
        />
      ) : (
        part && (
          <PartView
            parts={sheet?.parts ?? []}
            sheet={part}
            waiting={record.waiting}
            onChoose={choose}
            onForm={setForming}
            onMeasure={(station) => runOut.setDraft(newDraft(part.id, station, setOf(part.id)))}
            onAdd={runOut.add}
          />
        )
      )}
    </div>
  );
}
