import type { Fault } from '@oddwheel/build/fault';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, type KeyboardEvent, useId, useState } from 'react';
import { Choices } from './Choices.tsx';
import { faultSentence } from './fault-sentence.ts';
import { UnitTaps } from './UnitTaps.tsx';

interface Props {
  readonly field: Field;
  /** The file can't be written now: why. */
  readonly locked: string | null;
  /** Where on the page it stands, when the inspector may show the same field at the same time. */
  readonly place?: string;
  readonly onCommit: (address: string, typed: string | null) => Promise<Fault | null>;
}

/** Characters past which a text takes two columns. */
const WIDE_TEXT = 20;

/** Id of a field's input, so that links elsewhere on the page can put the focus there. */
export const fieldInputId = (address: string, place = ''): string => `${place}field:${address}`;

/**
 * One editable field: label above, value as typed on a mark underline, and beneath it what it comes to or stands on.
 * Enter or leaving commits, Escape reverts. What is being typed survives a change of the same field from elsewhere.
 */
export function FieldEditor({ field, locked, place, onCommit }: Props): JSX.Element {
  const [draft, setDraft] = useState<{ readonly text: string; readonly over: string | null } | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const notes = useId();
  const inForce = field.text ?? '';
  const text = draft?.text ?? inForce;
  const changedElsewhere = draft !== null && draft.over !== field.text;

  const commit = async (typed: string): Promise<void> => {
    if (typed.trim() === inForce) {
      setDraft(null);
      setFault(null);
      return;
    }
    const wrong = await onCommit(field.address, typed.trim() === '' && field.optional ? null : typed.trim());
    setFault(wrong);
    if (wrong === null) setDraft(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      if (draft) void commit(draft.text);
    } else if (event.key === 'Escape' && (draft || fault)) {
      event.stopPropagation();
      setDraft(null);
      setFault(null);
    }
  };

  const shared = {
    id: fieldInputId(field.address, place),
    'aria-invalid': fault !== null,
    'aria-describedby': notes,
    disabled: locked !== null,
    className: fault ? 'wrong' : '',
  };
  return (
    <div className={field.entry === 'text' && inForce.length > WIDE_TEXT ? 'field wide' : 'field'}>
      <label htmlFor={shared.id}>{field.name}</label>
      {field.choices ? (
        <select {...shared} value={inForce} onChange={(event) => void commit(event.target.value)}>
          <Choices field={field} blank={field.optional || field.text === null ? 'not given' : null} />
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          data-draft={draft ? 'yes' : 'no'}
          inputMode={field.entry === 'integer' ? 'numeric' : 'text'}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          value={text}
          onChange={(event) => setDraft({ text: event.target.value, over: draft ? draft.over : field.text })}
          onKeyDown={onKeyDown}
          onBlur={() => {
            if (draft) void commit(draft.text);
          }}
        />
      )}
      {field.quantity !== null && !field.choices && (
        <UnitTaps
          name={field.name}
          kind={field.quantity}
          text={text}
          disabled={locked !== null || text.trim() === ''}
          onText={(next) => void commit(next)}
        />
      )}
      <div id={notes} className="field-notes">
        {fault && (
          <p className="fails" role="alert">
            {faultSentence(fault, field.name)}
            {field.text !== null && ` In force: ${field.text}.`}
          </p>
        )}
        {changedElsewhere && <p>Changed elsewhere to {field.text ?? 'blank'} while you typed.</p>}
        {!fault && field.resolved !== null && <p>{field.resolved}</p>}
        {!fault && field.text === null && <Blank field={field} />}
      </div>
      {field.recipe !== null && (
        <details className="recipe">
          <summary>How to measure it</summary>
          <p className="instruction">{field.recipe}</p>
        </details>
      )}
    </div>
  );
}

function Blank({ field }: { field: Field }): JSX.Element {
  if (field.assumed === null)
    return <p>{field.example === null ? 'not given' : `not given; for example ${field.example}`}</p>;
  return (
    <p>
      assumed {field.assumed.text}
      <span className="source">{field.assumed.source}</span>
    </p>
  );
}
