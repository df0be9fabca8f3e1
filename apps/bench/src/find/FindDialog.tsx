import type { Assessment } from '@oddwheel/build/assess/types';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { Actions } from '../state/actions.ts';
import type { Part } from '../worker/model-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import './find.css';
import { allPlaces, findPlaces, type Place } from './places.ts';

interface Props {
  readonly assessment: Assessment;
  readonly parts: readonly Part[];
  readonly model: RemoteModel;
  readonly actions: Actions;
  readonly onClose: () => void;
}

/** Finds elements, fields, checks and steps by name, and goes there. */
export function FindDialog({ assessment, parts, model, actions, onClose }: Props): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const chosen = useRef<Place | null>(null);
  const [typed, setTyped] = useState('');
  const [fields, setFields] = useState<ReadonlyMap<string, readonly Field[]>>(new Map());
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    // The dialog gives the focus to its first button; what is typed now is a name.
    input.current?.focus();
  }, []);
  useEffect(() => {
    let current = true;
    const addresses = [...new Set([...assessment.path, ...parts].map((one) => one.address))];
    const read = addresses.map(async (address) => [address, await model.fields(address)] as const);
    void Promise.all(read).then((all) => {
      if (current) setFields(new Map(all));
    });
    return () => {
      current = false;
    };
  }, [assessment, parts, model]);
  const found = findPlaces(allPlaces(assessment, parts, fields), typed);

  const leave = (place: Place): void => {
    chosen.current = place;
    dialog.current?.close();
  };
  // The dialog gives the focus back as it closes; where the choice leads comes after, so that it keeps the focus.
  const closed = (): void => {
    onClose();
    if (chosen.current) go(chosen.current, actions);
  };
  const walk = (event: KeyboardEvent<HTMLElement>): void => {
    const way = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (way === 0) return;
    event.preventDefault();
    const stops = [...event.currentTarget.querySelectorAll<HTMLElement>('input, .found button')];
    const now = stops.indexOf(document.activeElement as HTMLElement);
    stops[Math.min(stops.length - 1, Math.max(0, now + way))]?.focus();
  };

  return (
    <dialog ref={dialog} className="keys find" aria-labelledby="find-heading" onClose={closed} onKeyDown={walk}>
      <div className="section-head">
        <h2 id="find-heading">Find</h2>
        <button type="button" className="link" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <label className="find-label" htmlFor="find-input">
        Name of a part, a field, a check or a step
      </label>
      <input
        ref={input}
        id="find-input"
        className="find-input"
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          const [first] = found;
          if (event.key === 'Enter' && first) {
            event.preventDefault();
            leave(first);
          }
        }}
      />
      <p className="note" role="status">
        {typed.trim() === ''
          ? 'Enter goes to the first one found, arrows walk the list.'
          : found.length === 0
            ? 'Nothing has this name.'
            : `${found.length} found`}
      </p>
      <ul className="found plain-list">
        {found.map((place) => (
          <li key={JSON.stringify(place.to)}>
            <button type="button" onClick={() => leave(place)}>
              <b>{place.name}</b> <span className="lead">{place.kind}</span>
            </button>
          </li>
        ))}
      </ul>
    </dialog>
  );
}

function go(place: Place, actions: Actions): void {
  const { to } = place;
  if ('step' in to) actions.goTo(to.step);
  else if ('element' in to) actions.select(to.element);
  else if ('field' in to) actions.reveal(to.field);
  else actions.openFinding(to.finding);
}
