import type { Answers, Form } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import { type FormEvent, type JSX, type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { today } from '../numbers/today.ts';
import { Also } from './Also.tsx';
import type { Adding } from './adding.ts';
import { FormField } from './FormField.tsx';
import { faultSentence } from './fault-sentence.ts';
import { fieldGroups } from './field-groups.ts';
import type { Planned, StructureTools } from './structure-tools.ts';

interface Props {
  readonly adding: Adding;
  readonly tools: StructureTools;
  /** The file can't be written now: why. */
  readonly locked: string | null;
  /** It was opened by a press: the keys go on in its first field. */
  readonly takesFocus: boolean;
  readonly onClose: () => void;
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** What the form begins with: names that are free, and the day for a date. */
const firstAnswers = (form: Form): Answers =>
  Object.fromEntries(
    form.fields.map((field) => [
      field.address,
      field.text ?? (field.address.startsWith('/overrides/') && field.address.endsWith('/when') ? today() : ''),
    ]),
  );

/**
 * The form that is filled before something is added. What the edit changes besides is told before it is made; what is wrong
 * stands at its fields, and nothing that was typed is lost.
 */
export function AddForm({ adding, tools, locked, takesFocus, onClose }: Props): JSX.Element {
  const [kind, setKind] = useState(adding.kinds?.[0] ?? null);
  const [form, setForm] = useState<Form | null>(null);
  const [typed, setTyped] = useState<Answers>({});
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const [planned, setPlanned] = useState<Planned | null>(null);
  const [waiting, setWaiting] = useState(false);
  const box = useRef<HTMLFormElement>(null);
  const heading = useId();
  const kindId = useId();

  // biome-ignore lint/correctness/useExhaustiveDependencies: another form only when another thing or kind is asked for
  useEffect(() => {
    let overtaken = false;
    void tools.form(adding.at, kind).then((next) => {
      if (overtaken) return;
      const first = form === null;
      // What was typed for another kind stays where both ask for it.
      flushSync(() => setForm(next));
      if (first && takesFocus) box.current?.querySelector<HTMLElement>('select, input')?.focus();
    });
    return () => {
      overtaken = true;
    };
  }, [adding.key, kind]);

  const answers = form === null ? typed : { ...firstAnswers(form), ...typed };
  const change = (address: string, text: string): void => {
    setTyped((before) => ({ ...before, [address]: text }));
    setFaults((before) => before.filter((fault) => fault.address !== address));
    setPlanned(null);
  };
  const refuse = (next: readonly Fault[]): void => {
    flushSync(() => {
      setFaults(next);
      setPlanned(null);
    });
    box.current?.querySelector<HTMLElement>('[aria-invalid="true"], .form-faults')?.focus();
  };
  const make = async (edit: Planned): Promise<void> => {
    const fault = await tools.make(edit);
    if (fault) refuse([fault]);
    else {
      onClose();
      if (edit.shows !== null) tools.reveal(edit.shows);
    }
  };
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (form === null || waiting) return;
    setWaiting(true);
    try {
      if (planned) await make(planned);
      else {
        const edit = await tools.plan(adding.request(kind, answers));
        if (!edit.ok) refuse(edit.faults);
        else if (edit.also.length === 0) await make(edit);
        else setPlanned(edit);
      }
    } finally {
      setWaiting(false);
    }
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    onClose();
  };
  const known = new Set(form?.fields.map((field) => field.address));
  const others = faults.filter((fault) => !known.has(fault.address));
  return (
    <form
      ref={box}
      className="add-form"
      aria-labelledby={heading}
      onSubmit={(event) => void send(event)}
      onKeyDown={onKeyDown}
    >
      <h4 id={heading}>{form?.title ?? `Add ${adding.name.toLowerCase()}`}</h4>
      {adding.kinds && (
        <div className="field kind">
          <label htmlFor={kindId}>Kind</label>
          <select
            id={kindId}
            value={kind ?? ''}
            onChange={(event) => {
              setKind(event.target.value);
              setFaults([]);
              setPlanned(null);
            }}
          >
            {adding.kinds.map((one) => (
              <option key={one} value={one}>
                {capital(one)}
              </option>
            ))}
          </select>
        </div>
      )}
      {fieldGroups(form?.fields ?? []).map((group) => (
        <fieldset key={group.name ?? ''} className="field-group">
          {group.name !== null && <legend>{group.name}</legend>}
          <div className="fields">
            {group.fields.map((field) => (
              <FormField
                key={field.address}
                field={field}
                text={answers[field.address] ?? ''}
                fault={faults.find((fault) => fault.address === field.address) ?? null}
                onText={(text) => change(field.address, text)}
              />
            ))}
          </div>
        </fieldset>
      ))}
      {others.length > 0 && (
        <ul className="plain-list form-faults fails" tabIndex={-1} role="alert">
          {others.map((fault) => (
            <li key={fault.address + fault.code}>{faultSentence(fault, '')}</li>
          ))}
        </ul>
      )}
      {planned && <Also also={planned.also} />}
      <div className="form-foot">
        <button type="submit" className="button main" disabled={locked !== null || form === null}>
          {planned ? 'Add it' : 'Add'}
        </button>
        <button type="button" className="button" onClick={onClose}>
          Leave it
        </button>
        {faults.length > 0 && (
          <span className="note" role="status">
            {faults.length === 1 ? 'One thing is' : `${faults.length} things are`} to be put right.
          </span>
        )}
      </div>
    </form>
  );
}
