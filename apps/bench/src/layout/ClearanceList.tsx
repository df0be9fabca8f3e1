import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';
import { type JSX, useState } from 'react';
import { clearanceWords } from './clearance-words.ts';

/** Clearances shown before the rest is asked for. */
const FIRST_ROWS = 8;

/** Room between what moves and what is near it, smallest first. */
export function ClearanceList(props: {
  readonly rows: readonly ClearanceRow[];
  readonly onSelect: (address: string) => void;
}): JSX.Element {
  const { rows, onSelect } = props;
  const [all, setAll] = useState(false);
  const shown = all ? rows : rows.slice(0, FIRST_ROWS);
  return (
    <section className="clearances" aria-labelledby="clearances-heading">
      <h2 id="clearances-heading">
        Clearances <span className="lead">smallest first</span>
      </h2>
      {rows.length === 0 ? (
        <p>No two parts stand near each other, or their sizes are not known yet.</p>
      ) : (
        <ol>
          {shown.map((row) => (
            <li key={`${row.first.address} ${row.second.address}`}>
              <button type="button" className="link" onClick={() => onSelect(row.first.address)}>
                {row.first.name} to {row.second.name}
              </button>
              <span className="lead">{clearanceWords(row)}</span>
              <span className="lead">{row.place}</span>
            </li>
          ))}
        </ol>
      )}
      {rows.length > shown.length && (
        <button type="button" className="link" onClick={() => setAll(true)}>
          Show all {rows.length}
        </button>
      )}
    </section>
  );
}
