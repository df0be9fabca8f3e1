import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { TruePart } from '@oddwheel/build/true/types';
import { type JSX, type SyntheticEvent, useEffect, useId, useRef, useState } from 'react';
import { Field } from './Field.tsx';
import { fieldOf, formOf, idFor, partBody, type PartForm as Typed } from './part-form.ts';

interface Props {
  /** The part that is changed; none for a new one. */
  readonly part?: TruePart;
  /** Ids that other parts have. */
  readonly taken: readonly string[];
  /** Shafts of the build with their bearings, to begin from. */
  readonly shafts: readonly Partial<TruePart>[];
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
  readonly onDone: (id: string | null) => void;
}

const USES = [
  ['drive', 'drive'],
  ['steering', 'steering'],
  ['suspension', 'suspension'],
  ['brake', 'brake'],
] as const;

/** A part and what is wanted of it: two bearing seats, the station that matters, and what is known for each way of correction. */
export function PartForm({ part, taken, shafts, onAdd, onDone }: Props): JSX.Element {
  const [form, setForm] = useState<Typed>(() => formOf(part));
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const set = (key: keyof Typed) => (value: string) => setForm((now) => ({ ...now, [key]: value }));
  const wrong = (key: keyof Typed): string | undefined => {
    const fault = faults.find(({ address }) => fieldOf(address) === key);
    return fault && `${fault.problem} Accepted: ${fault.accepted}.`;
  };
  const field = (key: keyof Typed, label: string, note?: string): JSX.Element => (
    <Field
      label={label}
      value={form[key]}
      onChange={set(key)}
      wrong={wrong(key)}
      {...(note === undefined ? {} : { note })}
    />
  );
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const id = part?.part ?? idFor(form.name, taken);
    const found = await onAdd('true-part', partBody(id, form, part));
    setFaults(found);
    if (found.length === 0) onDone(id);
  };
  const unplaced = faults.filter(({ address }) => fieldOf(address) === undefined);
  return (
    <form className="part-form" onSubmit={(event) => void submit(event)} aria-label={part ? 'Part' : 'New part'}>
      <h2 ref={heading} tabIndex={-1}>
        {part ? `${part.name ?? part.part}: what it is` : 'Which part is on the bench?'}
      </h2>
      {!part && shafts.length > 0 && (
        <fieldset className="choice-row">
          <legend>From this build</legend>
          {shafts.map((shaft) => (
            <button
              key={shaft.name}
              type="button"
              className="true-choice"
              aria-pressed={form.name === shaft.name}
              onClick={() => setForm(formOf(shaft))}
            >
              {shaft.name}
            </button>
          ))}
        </fieldset>
      )}
      <p className="lead">Stations are measured along the part, from one end that you choose.</p>
      <div className="fields">
        {field('name', 'Name')}
        {field('seatA', 'Bearing seat', 'such as 20 mm')}
        {field('seatB', 'The other bearing seat')}
        {field('station', 'Station that matters', 'where the sprocket or gear sits')}
        {field('tir', 'TIR that is good enough there')}
        <Field label="It is a part of the" value={form.use} onChange={set('use')} choices={USES} wrong={wrong('use')} />
      </div>
      <details>
        <summary>Joints that can be re-clocked</summary>
        <Lines
          label="Name, station, positions; one a line"
          value={form.joints}
          onChange={set('joints')}
          wrong={wrong('joints')}
          example="spline, 200 mm, 6"
        />
      </details>
      <details open={form.weldMode !== ''}>
        <summary>Weld: asked before the first arc</summary>
        <div className="fields">
          <Field
            wide
            label="Beads"
            value={form.weldMode}
            onChange={set('weldMode')}
            choices={[
              ['', 'none on this part'],
              ['correct', 'extra ones on a finished part'],
              ['weld-up', 'of the weld that the joint owes'],
            ]}
          />
          {form.weldMode !== '' && (
            <>
              {field('weldStation', 'Station of the weld')}
              {field('steel', 'Steel', 'such as E355; not cast iron')}
              {field('hardness', 'Hardness', 'none, or such as 58 HRC')}
              {field('coating', 'Coating', 'none, or zinc, chromium')}
              {field('smallest', 'Shortest bead')}
              {field('largest', 'Longest bead of a round')}
            </>
          )}
        </div>
        {form.weldMode === 'weld-up' && (
          <Lines
            label="Weld that is owed: clock, length with all passes; one a line"
            value={form.owed}
            onChange={set('owed')}
            wrong={wrong('owed')}
            example="3:00, 20 mm"
          />
        )}
      </details>
      <details>
        <summary>What it carries, and what pressing needs</summary>
        <div className="fields">
          {field('sprocketRoot', 'Sprocket, root diameter')}
          <Field
            label="Sprocket is"
            value={form.sprocketMade}
            onChange={set('sprocketMade')}
            choices={[
              ['turned', 'turned'],
              ['welded', 'welded'],
            ]}
          />
          {field('stiffness', 'Stiffness of the mounts', 'such as 200 N/mm')}
          {field('pressDiameter', 'Diameter at a bend')}
          {field('pressYield', 'Yield strength', 'such as 350 MPa')}
        </div>
      </details>
      {unplaced.map(({ address, problem, accepted }) => (
        <p key={address} className="fails" role="alert">
          {address}: {problem} Accepted: {accepted}.
        </p>
      ))}
      <div className="true-buttons">
        <button type="submit" className="button main">
          {part ? 'Keep it so' : 'Put it on the bench'}
        </button>
        <button type="button" className="button" onClick={() => onDone(null)}>
          Leave it
        </button>
      </div>
    </form>
  );
}

function Lines(props: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  wrong: string | undefined;
  example: string;
}): JSX.Element {
  const id = useId();
  return (
    <div className="lines-field">
      <label htmlFor={id} className="note">
        {props.label}
      </label>
      <textarea
        id={id}
        rows={3}
        value={props.value}
        placeholder={props.example}
        onChange={(event) => props.onChange(event.target.value)}
      />
      {props.wrong !== undefined && (
        <p className="fails" role="alert">
          {props.wrong}
        </p>
      )}
    </div>
  );
}
