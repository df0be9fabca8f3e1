import { type JSX, useId } from 'react';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** What is wrong with it. */
  readonly wrong?: string | undefined;
  readonly note?: string;
  /** Choices, where it is one of a few; value and words. */
  readonly choices?: readonly (readonly [value: string, words: string])[];
  readonly wide?: boolean;
}

/** A labelled value on a line; it stays as typed. */
export function Field(props: Props): JSX.Element {
  const { label, value, onChange, wrong, note, choices, wide = false } = props;
  const id = useId();
  const notes = `${id}-notes`;
  const shared = {
    id,
    value,
    'aria-describedby': wrong !== undefined || note !== undefined ? notes : undefined,
    'aria-invalid': wrong !== undefined,
  };
  return (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      {choices ? (
        <select {...shared} onChange={(event) => onChange(event.target.value)}>
          {choices.map(([choice, words]) => (
            <option key={choice} value={choice}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          className={wrong === undefined ? undefined : 'wrong'}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      {(wrong !== undefined || note !== undefined) && (
        <div className="field-notes" id={notes}>
          {note !== undefined && <p>{note}</p>}
          {wrong !== undefined && (
            <p className="fails" role="alert">
              {wrong}
            </p>
          )}
        </div>
      )}
    </div>
  );
}
