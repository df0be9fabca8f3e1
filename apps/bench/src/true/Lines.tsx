import { type JSX, useId } from 'react';

/** Rows of values, one a line; they stay as typed. */
export function Lines(props: {
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
