import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { EntrySheet } from '@oddwheel/build/true/sheet-types';
import { type JSX, useState } from 'react';
import { type PictureTools, SetPicture } from './SetPicture.tsx';

interface Props {
  readonly entries: readonly EntrySheet[];
  readonly pictures: PictureTools;
  /** Ids of entries that are kept on this device only. */
  readonly waiting: readonly string[];
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
}

const SHOWN = 8;

/** Everything that was put on the record, newest first. What was wrong is struck out by a later entry, and stays. */
export function EntryList({ entries, pictures, waiting, onAdd }: Props): JSX.Element {
  const [all, setAll] = useState(false);
  const newest = entries.toReversed();
  return (
    <section className="true-entries" aria-labelledby="entries-heading">
      <h2 id="entries-heading">Record</h2>
      <ul className="plain-list">
        {newest.slice(0, all ? newest.length : SHOWN).map(({ id, kind, says, why, struckBy, picture }) => (
          <li key={id}>
            <div>
              {struckBy === undefined ? <span>{says}</span> : <del>{says}</del>}
              <p className="note">
                {id}, {waiting.includes(id) ? 'kept on this device, not sent yet' : 'saved'}
                {struckBy === undefined ? '' : '; struck out'}
                {why === undefined ? '' : `; does not count now: ${why}`}
              </p>
              {picture !== undefined && <EntryPicture hash={picture} id={id} tools={pictures} />}
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

/** The picture of a set, fetched when it is asked for. */
function EntryPicture({ hash, id, tools }: { hash: string; id: string; tools: PictureTools }): JSX.Element {
  const [shown, setShown] = useState(false);
  return (
    <>
      <button type="button" className="link" aria-expanded={shown} onClick={() => setShown(!shown)}>
        {shown ? 'Fold the picture' : 'Its picture'}
        <span className="hidden-name"> of {id}</span>
      </button>
      {shown && <SetPicture hash={hash} of={id} tools={tools} />}
    </>
  );
}
