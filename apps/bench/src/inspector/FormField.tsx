import type { Fault } from '@oddwheel/build/fault';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, useId } from 'react';
import { Choices } from './Choices.tsx';
import { faultSentence } from './fault-sentence.ts';
import { UnitTaps } from './UnitTaps.tsx';

interface Props {
  readonly field: Field;
  /** What stands in it. */
  readonly text: string;
  readonly fault: Fault | null;
  readonly onText: (text: string) => void;
}

/** One field of a form that is filled before something is added: nothing is in force until the form is sent. */
export function FormField({ field, text, fault, onText }: Props): JSX.Element {
  const notes = useId();
  const shared = {
    id: `form:${field.address}`,
    'aria-invalid': fault !== null,
    'aria-describedby': notes,
    'aria-required': !field.optional,
    className: fault ? 'wrong' : '',
    value: text,
  };
  return (
    <div className="field">
      <label htmlFor={shared.id}>
        {field.name}
        {field.optional && ', if known'}
      </label>
      {field.choices ? (
        <select {...shared} onChange={(event) => onText(event.target.value)}>
          <Choices field={{ ...field, text: null }} blank={field.optional ? 'not given' : 'choose'} />
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          data-draft="yes"
          inputMode={field.entry === 'integer' ? 'numeric' : 'text'}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onChange={(event) => onText(event.target.value)}
        />
      )}
      {field.quantity !== null && !field.choices && (
        <UnitTaps name={field.name} kind={field.quantity} text={text} disabled={text.trim() === ''} onText={onText} />
      )}
      <div id={notes} className="field-notes">
        {fault && <p className="fails">{faultSentence(fault, field.name)}</p>}
        {!fault && text === '' && field.example !== null && !field.choices && <p>for example {field.example}</p>}
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
