import type { Fault } from '@oddwheel/build/fault';
import { SETUPS, type TruePart, type TrueSet } from '@oddwheel/build/true/types';
import { type JSX, useState } from 'react';
import { type Draft, UNITS, usualStep, withMarks } from './draft.ts';
import { Field } from './Field.tsx';

interface Props {
  readonly part: TruePart;
  readonly draft: Draft;
  readonly faults: readonly Fault[];
  readonly open: boolean;
  readonly onDraft: (draft: Draft) => void;
  /** The set-up is folded; the readings come next. */
  readonly onDone: () => void;
}

const SIGNS = [
  ['out', 'counts up as it comes out'],
  ['in', 'counts up as it goes in'],
] as const;

/** What a set is about: where, held how, with which dial. Folded once it is known from the set before. */
export function SetUp({ part, draft, faults, open: first, onDraft, onDone }: Props): JSX.Element {
  const [open, setOpen] = useState(first);
  const done = (): void => {
    setOpen(false);
    onDone();
  };
  const [warm, setWarm] = useState(draft.near !== '' || draft.far !== '');
  const wrong = (address: string): string | undefined => {
    const fault = faults.find((one) => one.address === address);
    return fault && `${fault.problem} Accepted: ${fault.accepted}.`;
  };
  const set = (key: keyof Draft) => (value: string) => onDraft({ ...draft, [key]: value });
  const [marksTyped, setMarksTyped] = useState(String(draft.marks || 12));
  const stations = [...new Set([part.seats.a, part.seats.b, part.goal.station])];
  const way = draft.marks === 0 ? 'highest and lowest' : `${draft.marks} marks`;
  const number = Number(marksTyped);
  const marksWrong =
    Number.isInteger(number) && number >= 4 && number <= 72 ? undefined : 'A whole number from 4 to 72.';
  return (
    <details className="set-up" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {draft.setup}, {draft.unit}, {way}
        {draft.sign === 'in' ? ', dial counts up inwards' : ''}
      </summary>
      <fieldset className="choice-row">
        <legend>Station</legend>
        {stations.map((station) => (
          <button
            key={station}
            type="button"
            className="true-choice"
            aria-pressed={draft.station === station}
            onClick={() => onDraft({ ...draft, station })}
          >
            {station}
            <span className="note">{station === part.goal.station ? 'what matters' : 'bearing seat'}</span>
          </button>
        ))}
      </fieldset>
      <div className="fields">
        <Field
          label="Station, from the end"
          value={draft.station}
          onChange={set('station')}
          wrong={wrong('/station')}
        />
        <Field
          label="Held"
          value={draft.setup}
          onChange={(setup) => onDraft({ ...draft, setup: setup as Draft['setup'] })}
          choices={SETUPS.map((setup) => [setup, setup])}
        />
        {draft.setup === 'V-blocks' && (
          <Field
            label="Angle of the V"
            value={draft.vAngle}
            onChange={set('vAngle')}
            wrong={wrong('/vAngle')}
            note="such as 90 deg"
          />
        )}
        <Field
          wide
          label="Readings"
          value={draft.marks === 0 ? 'ends' : 'marks'}
          onChange={(value) => onDraft(withMarks(draft, value === 'ends' ? 0 : marksWrong ? 12 : number))}
          choices={[
            ['marks', 'at marks round the part'],
            ['ends', 'highest and lowest alone'],
          ]}
        />
        {draft.marks === 0 ? (
          <>
            <Field
              label="Highest stands at"
              value={draft.highAt}
              onChange={set('highAt')}
              wrong={wrong('/ends/highest/at')}
              note="7:30, or 225°"
            />
            <Field
              label="Lowest stands at"
              value={draft.lowAt}
              onChange={set('lowAt')}
              wrong={wrong('/ends/lowest/at')}
            />
          </>
        ) : (
          <Field
            label="Marks, 4 to 72"
            value={marksTyped}
            wrong={marksWrong}
            onChange={(typed) => {
              setMarksTyped(typed);
              const marks = Number(typed);
              if (Number.isInteger(marks) && marks >= 4 && marks <= 72) onDraft(withMarks(draft, marks));
            }}
          />
        )}
        <Field
          label="Unit of the dial"
          value={draft.unit}
          onChange={(unit) => onDraft({ ...draft, unit, step: usualStep(unit) })}
          choices={UNITS.map((unit) => [unit, unit])}
        />
        <Field label="Smallest step of the dial" value={draft.step} onChange={set('step')} wrong={wrong('/step')} />
        <Field
          wide
          label="The dial"
          value={draft.sign}
          onChange={(sign) => onDraft({ ...draft, sign: sign as TrueSet['sign'] })}
          choices={SIGNS}
        />
        <Field
          label="Seen from, dial stands"
          value={draft.side}
          onChange={set('side')}
          note="such as: from the sprocket end, on top"
        />
        <Field
          label="Face read at diameter"
          value={draft.face}
          onChange={set('face')}
          wrong={wrong('/face')}
          note="blank for the outside"
        />
        {(part.joints ?? []).map(({ joint, positions }) => (
          <Field
            key={joint}
            label={`Clocking of ${joint}`}
            value={String(draft.clocking[joint] ?? 0)}
            onChange={(mark) => onDraft({ ...draft, clocking: { ...draft.clocking, [joint]: Number(mark) } })}
            choices={Array.from({ length: positions }, (_, k) => [
              String(k),
              k === 0 ? 'on its match marks' : `${k} on, clockwise`,
            ])}
          />
        ))}
        <Field label="Note" value={draft.note} onChange={set('note')} />
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={warm}
          onChange={(event) => {
            setWarm(event.target.checked);
            if (!event.target.checked) onDraft({ ...draft, near: '', far: '' });
          }}
        />
        There was heat on it since it was cold
      </label>
      {warm && (
        <div className="fields">
          <Field
            label="Temperature beside the bead"
            value={draft.near}
            onChange={set('near')}
            wrong={wrong('/warm/near')}
            note="such as 30 °C"
          />
          <Field label="Temperature opposite" value={draft.far} onChange={set('far')} wrong={wrong('/warm/far')} />
        </div>
      )}
      <button type="button" className="button main set-up-done" onClick={done}>
        Set up: key the readings in
      </button>
    </details>
  );
}
