import type { Noted } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import { type JSX, type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import type { StructureTools } from '../inspector/structure-tools.ts';
import './notes.css';

interface Props {
  readonly address: string;
  readonly notes: readonly Noted[];
  /** An empty note is open, to be written. */
  readonly fresh: boolean;
  readonly tools: StructureTools;
  readonly locked: string | null;
  /** The note that was open is written or left. */
  readonly onDone: () => void;
}

/** The notes on an element and on what is in it. Leaving one keeps it; an empty one goes. */
export function Notes(props: Props): JSX.Element | null {
  const { address, notes, fresh, tools, locked, onDone } = props;
  const own = notes.some((note) => note.of === address);
  const shown = fresh && !own ? [{ of: address, name: '', text: '' }, ...notes] : notes;
  if (shown.length === 0) return null;
  return (
    <div className="element-notes">
      {shown.map((note) => (
        <NoteBox
          key={note.of}
          note={note}
          label={note.of === address ? 'Note' : `Note on ${note.name}`}
          fresh={fresh && note.of === address}
          tools={tools}
          locked={locked}
          onDone={onDone}
        />
      ))}
    </div>
  );
}

function NoteBox(props: {
  note: Noted;
  label: string;
  fresh: boolean;
  tools: StructureTools;
  locked: string | null;
  onDone: () => void;
}): JSX.Element {
  const { note, label, fresh, tools, locked, onDone } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const area = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  useEffect(() => {
    if (fresh) area.current?.focus();
  }, [fresh]);
  const keep = async (): Promise<void> => {
    const text = (draft ?? note.text).trim();
    if (text !== note.text) {
      const edit = await tools.plan({ do: 'note', of: note.of, text });
      const wrong = edit.ok ? await tools.make(edit) : (edit.faults[0] ?? null);
      setFault(wrong);
      if (wrong) return;
    }
    setDraft(null);
    onDone();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      void keep();
    } else if (event.key === 'Escape' && (draft !== null || fresh)) {
      event.stopPropagation();
      setDraft(null);
      setFault(null);
      if (fresh) onDone();
    }
  };
  return (
    <div className="field note-box">
      <label htmlFor={id}>{label}</label>
      <div className="grows" data-text={`${draft ?? note.text}\u200b`}>
        <textarea
          ref={area}
          id={id}
          rows={1}
          aria-describedby={`${id}-says`}
          aria-invalid={fault !== null}
          data-draft={draft === null ? 'no' : 'yes'}
          disabled={locked !== null}
          value={draft ?? note.text}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={onKeyDown}
          onBlur={() => {
            if (draft !== null || fresh) void keep();
          }}
        />
      </div>
      <div id={`${id}-says`} className="field-notes">
        {fault ? (
          <p className="fails" role="alert">
            {faultSentence(fault, label)}
          </p>
        ) : (
          draft !== null && <p>Kept on leaving; Esc puts it back.</p>
        )}
      </div>
    </div>
  );
}
