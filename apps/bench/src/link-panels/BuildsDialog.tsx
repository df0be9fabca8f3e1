import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useEffect, useId, useRef, useState } from 'react';
import type { BuildActions } from '../link/build-actions.ts';
import type { KeptBuild, Shelf } from '../worker/keeper-api.ts';
import './builds.css';

interface Props {
  /** The builds that the page keeps itself; null where a host serves one. */
  readonly shelf: Shelf | null;
  /** Name of the build on the page; null when there is none. */
  readonly name: string | null;
  readonly builds: BuildActions;
  readonly onClose: () => void;
}

/** What can be done with whole builds: save as one file, and where no host serves the page, begin, open and delete. */
export function BuildsDialog({ shelf, name, builds, onClose }: Props): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    void builds.refresh();
  }, [builds]);
  const close = (): void => dialog.current?.close();
  return (
    <dialog ref={dialog} className="keys builds" aria-labelledby="builds-heading" onClose={onClose}>
      <div className="section-head">
        <h2 id="builds-heading">Build</h2>
        <button type="button" className="link" onClick={close}>
          Close
        </button>
      </div>
      <p className="lead">{whereKept(shelf)}</p>
      {name !== null && (
        <p>
          <button type="button" className="button" onClick={() => void builds.saveFile()}>
            Save as one file
          </button>{' '}
          <span className="lead">{name}, with its record, what can be undone, and its pictures.</span>
        </p>
      )}
      {shelf && (
        <>
          <p>
            <button type="button" className="button" onClick={() => void builds.startNew().then(close)}>
              New
            </button>{' '}
            <span className="lead">Begin another build on an empty sheet.</span>
          </p>
          <OpenFile builds={builds} onOpened={close} />
          <KeptList shelf={shelf} builds={builds} onOpened={close} />
        </>
      )}
    </dialog>
  );
}

function whereKept(shelf: Shelf | null): string {
  if (!shelf) return 'The build lies in the folder that the host serves.';
  return shelf.place === 'browser'
    ? 'Builds are kept in this browser, on this device. Clearing the data of the browser deletes them: save those that matter as files.'
    : 'This browser keeps nothing for this page. Builds last only until the page closes: save them as files.';
}

/** Opens a saved file as a new build; a file that cannot be opened changes nothing and is told why. */
export function OpenFile({ builds, onOpened }: { builds: BuildActions; onOpened: () => void }): JSX.Element {
  const [refused, setRefused] = useState<{ readonly file: string; readonly faults: readonly Fault[] } | null>(null);
  const id = useId();
  const open = async (file: File): Promise<void> => {
    const faults = await builds.load(file);
    if (faults.length > 0) setRefused({ file: file.name, faults });
    else onOpened();
  };
  return (
    <div className="open-file">
      <label htmlFor={id}>Open a saved file</label>{' '}
      <input
        id={id}
        type="file"
        accept=".zip,application/zip"
        onChange={(event) => {
          const file = event.target.files?.[0];
          setRefused(null);
          // The same file can be chosen again after it was put right.
          event.target.value = '';
          if (file) void open(file);
        }}
      />
      {refused && (
        <div role="alert" className="refused">
          <p>
            <b>{refused.file} was not opened.</b> Nothing was changed.
          </p>
          <ul className="plain-list">
            {refused.faults.slice(0, 5).map((fault) => (
              <li key={`${fault.code} ${fault.address} ${fault.read}`}>
                {fault.address !== '' && <b>{fault.address} </b>}
                {fault.problem}{' '}
                <span className="lead">
                  Read: {fault.read}. Accepted: {fault.accepted}
                </span>
              </li>
            ))}
            {refused.faults.length > 5 && <li className="lead">and {refused.faults.length - 5} more</li>}
          </ul>
        </div>
      )}
    </div>
  );
}

/** Every build that is kept here, and those deleted since the page was opened. */
export function KeptList(props: { shelf: Shelf; builds: BuildActions; onOpened: () => void }): JSX.Element | null {
  const { shelf, builds, onOpened } = props;
  const [asking, setAsking] = useState<string | null>(null);
  if (shelf.builds.length === 0 && shelf.deleted.length === 0) return null;
  const row = ({ id, name }: KeptBuild): JSX.Element => (
    <li key={id}>
      <span className="kept-name">{name}</span>
      {asking === id ? (
        <>
          <span>Delete {name}?</span>
          <button
            type="button"
            className="button"
            onClick={() => {
              setAsking(null);
              void builds.remove(id);
            }}
          >
            Delete it
          </button>
          <button type="button" className="button" onClick={() => setAsking(null)}>
            Keep it
          </button>
        </>
      ) : (
        <>
          {shelf.open === id ? (
            <span className="lead">on the page</span>
          ) : (
            <button type="button" className="link" onClick={() => void builds.open(id).then(onOpened)}>
              Open<span className="hidden-name"> {name}</span>
            </button>
          )}
          <button type="button" className="link" onClick={() => setAsking(id)}>
            Delete<span className="hidden-name"> {name}</span>
          </button>
        </>
      )}
    </li>
  );
  return (
    <section aria-labelledby="kept-heading" className="kept">
      <h3 id="kept-heading">Kept here</h3>
      {shelf.builds.length === 0 ? (
        <p className="lead">None.</p>
      ) : (
        <ul className="plain-list">{shelf.builds.map(row)}</ul>
      )}
      {shelf.deleted.length > 0 && (
        <ul className="plain-list">
          {shelf.deleted.map(({ id, name }) => (
            <li key={id}>
              <span className="kept-name lead">{name}: deleted, and gone when this page closes</span>
              <button type="button" className="link" onClick={() => void builds.putBack(id)}>
                Put back<span className="hidden-name"> {name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
