import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { EntrySheet } from '@oddwheel/build/true/sheet-types';
import { type JSX, useState } from 'react';

interface Props {
  readonly entries: readonly EntrySheet[];
  /** Ids of entries that are kept on this device only. */
  readonly waiting: readonly string[];
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
}

const SHOWN = 8;

/** Everything that was put on the record, newest first. What was wrong is struck out by a later entry, and stays. */
export function EntryList({ entries, waiting, onAdd }: Props): JSX.Element {
  const [all, setAll] = useState(false);
  const newest = entries.toReversed();
  return (
    <section className="true-entries" aria-labelledby="entries-heading">
      <h2 id="entries-heading">Record</h2>
      <ul className="plain-list">
        {newest.slice(0, all ? newest.length : SHOWN).map(({ id, kind, says, why, struckBy }) => (
          <li key={id}>
            <div>
              {struckBy === undefined ? <span>{says}</span> : <del>{says}</del>}
              <p className="note">
                {id}, {waiting.includes(id) ? 'kept on this device, not sent yet' : 'saved'}
                {struckBy === undefined ? '' : '; struck out'}
                {why === undefined ? '' : `; does not count now: ${why}`}
              </p>
            </div>
            {(kind !== 'part' || struckBy !== undefined) && (
              <button
                type="button"
                className="link"
                aria-label={struckBy === undefined ? `Strike out ${id}` : `Put ${id} back`}
                onClick={() => void onAdd('strike', { of: struckBy ?? id })}
              >
                {struckBy === undefined ? 'Strike out' : 'Put back'}
              </button>
            )}
          </li>
        ))}
      </ul>
      {newest.length > SHOWN && !all && (
        <button type="button" className="link" onClick={() => setAll(true)}>
          All {newest.length} entries
        </button>
      )}
    </section>
  );
}
