import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useId, useRef, useState } from 'react';

interface Props {
  readonly locked: boolean;
  /** There is a curve already. */
  readonly replaces: boolean;
  readonly onPaste: (text: string) => Promise<readonly Fault[]>;
}

/** A place to paste or type the columns of a table. What stands there stays until it was read without a fault. */
export function PasteTable({ locked, replaces, onPaste }: Props): JSX.Element {
  const [text, setText] = useState('');
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const fold = useRef<HTMLDetailsElement>(null);
  const id = useId();
  const read = async (): Promise<void> => {
    const wrong = await onPaste(text);
    setFaults(wrong);
    if (wrong.length > 0) return;
    setText('');
    fold.current?.removeAttribute('open');
  };
  return (
    <details className="paste-table" ref={fold}>
      <summary>Paste a table</summary>
      <label htmlFor={id}>Columns from a table, under a line with their units</label>
      <textarea
        id={id}
        rows={6}
        value={text}
        placeholder={'rpm\tN.m\n2500\t32.5\n5500\t40.2'}
        spellCheck={false}
        aria-describedby={`${id}-notes`}
        aria-invalid={faults.length > 0}
        onChange={(event) => setText(event.target.value)}
      />
      <div id={`${id}-notes`}>
        <p className="note">
          Speed in rpm or rad/s with torque in N·m or lbf·ft, or power in kW, W, hp or PS. Decimal point or comma.
          {replaces ? ' The table takes the place of the curve; Undo brings it back.' : ''}
        </p>
        {faults.length > 0 && (
          <ul className="curve-faults" role="alert">
            {faults.map((fault) => (
              <li key={`${fault.problem} ${fault.read}`}>
                {fault.problem} {fault.accepted}
              </li>
            ))}
          </ul>
        )}
      </div>
      <button type="button" className="button" disabled={locked || text.trim() === ''} onClick={() => void read()}>
        Read the table
      </button>
    </details>
  );
}
