import type { Placed, Placing } from '@oddwheel/build/placing/types';
import { type JSX, type KeyboardEvent, useId, useState } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import type { Actions } from '../state/actions.ts';
import { type DatumCell, datumCells, type PlaceRow, placeRows, typedPlace } from './positions.ts';

interface Props {
  readonly placed: Placed;
  readonly placing: Placing;
  readonly actions: Actions;
  /** The file cannot be written now. */
  readonly disabled: boolean;
}

/** Where the chosen part stands, told from each datum of the shop; typing in any of them sets the place. */
export function Positions({ placed, placing, actions, disabled }: Props): JSX.Element {
  const rows = placeRows(placed);
  const told = placing.datums.filter(({ from }) => from !== '');
  return (
    <section className="positions" aria-labelledby="positions-heading">
      <h3 id="positions-heading">Where it stands</h3>
      {rows.length === 0 && (
        <p className="lead">Its shaft lies aslant: it is told along the shaft only, in its inputs.</p>
      )}
      {rows.map((row) => (
        <fieldset key={row.coordinate.address} className="position">
          <legend>{row.name}</legend>
          {datumCells(row, placed, placing.datums).map((cell) => (
            <PositionField
              key={cell.datum.id}
              row={row}
              cell={cell}
              disabled={disabled}
              onPlace={(text, said) =>
                actions.applyEdit(`${placed.name}, ${row.name.toLowerCase()} → ${said}`, [
                  ...placing.raise,
                  { op: 'set', at: row.coordinate.address, value: text },
                ])
              }
            />
          ))}
        </fieldset>
      ))}
      {told.length + placing.without.length > 0 && (
        <ul className="note datum-notes">
          {told.map(({ id, name, from }) => (
            <li key={id}>
              {name}: {from}
            </li>
          ))}
          {placing.without.map(({ name, why }) => (
            <li key={name}>
              Not told from {name}: {why}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** A length from one datum: Enter or leaving sets it, Escape puts the text back. */
function PositionField(props: {
  readonly row: PlaceRow;
  readonly cell: DatumCell;
  readonly disabled: boolean;
  readonly onPlace: (text: string, said: string) => ReturnType<Actions['applyEdit']>;
}): JSX.Element {
  const { row, cell, disabled, onPlace } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();

  const commit = async (): Promise<void> => {
    if (draft === null) return;
    if (draft.trim() === cell.text) {
      revert();
      return;
    }
    const read = typedPlace(draft, row, cell);
    if (!read.ok) {
      setProblem(read.problem);
      return;
    }
    const fault = read.text === row.coordinate.text ? null : await onPlace(read.text, read.said);
    if (fault) setProblem(faultSentence(fault, row.name));
    else revert();
  };
  const revert = (): void => {
    setDraft(null);
    setProblem(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      void commit();
    } else if (event.key === 'Escape' && (draft !== null || problem !== null)) {
      event.stopPropagation();
      revert();
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>
        <span className="hidden-name">{row.name}, </span>
        {cell.says}
      </label>
      <input
        id={id}
        type="text"
        disabled={disabled}
        className={problem === null ? '' : 'wrong'}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-notes`}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={draft ?? cell.text}
        onChange={(event) => setDraft(event.target.value)}
        onKeyDown={onKeyDown}
        onBlur={() => void commit()}
      />
      <div id={`${id}-notes`} className="field-notes">
        {problem !== null && (
          <p className="fails" role="alert">
            {problem} In force: {cell.text}.
          </p>
        )}
      </div>
    </div>
  );
}
