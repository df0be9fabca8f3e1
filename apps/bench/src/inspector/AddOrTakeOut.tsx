import type { Removal, Structure } from '@oddwheel/build/edit/types';
import { type JSX, useRef, useState } from 'react';
import { AttachPicture } from '../notes/AttachPicture.tsx';
import { AddForm } from './AddForm.tsx';
import { type Adding, addings } from './adding.ts';
import type { StructureTools } from './structure-tools.ts';
import { TakeOut } from './TakeOut.tsx';

interface Props {
  readonly name: string;
  readonly structure: Structure;
  readonly tools: StructureTools;
  readonly locked: string | null;
  /** Addresses of lists that have their own place for a new row. */
  readonly inPlace: ReadonlySet<string>;
  /** What is taken out here: the element itself, and groups without a place of their own. */
  readonly removals: readonly Removal[];
  /** What a new picture shows, null for nothing in particular; left out where none can be attached. */
  readonly picture?: { readonly of: string | null } | undefined;
  /** Opens an empty note; null where one stands already, or none can. */
  readonly onNote: (() => void) | null;
}

/** What can be added to the element in view, each by its name, and what of it can be taken out. */
export function AddOrTakeOut(props: Props): JSX.Element | null {
  const { name, picture, structure, tools, locked, removals, onNote } = props;
  const choices = addings(structure, props.inPlace);
  // A part that is not there and can only be added as a whole: its form stands open.
  const [chosen, setChosen] = useState<Adding | null>(
    !structure.present && choices.length === 1 ? (choices[0] ?? null) : null,
  );
  // A form that stands open by itself leaves the focus where the keys are.
  const [pressed, setPressed] = useState(false);
  const buttons = useRef(new Map<string, HTMLButtonElement>());
  if (choices.length === 0 && removals.length === 0 && !picture) return null;
  const close = (): void => {
    const opener = chosen && buttons.current.get(chosen.key);
    setChosen(null);
    opener?.focus();
  };
  return (
    <section className="add-or-take-out" aria-label={`Add to ${name}, or take out`}>
      {(choices.length > 0 || picture || onNote !== null) && (
        <div className="add-row">
          <h3>Add</h3>
          <ul>
            {choices.map((choice) => (
              <li key={choice.key}>
                <button
                  ref={(button) => {
                    if (button) buttons.current.set(choice.key, button);
                    else buttons.current.delete(choice.key);
                  }}
                  type="button"
                  className="link"
                  disabled={locked !== null}
                  aria-expanded={chosen?.key === choice.key}
                  onClick={() => {
                    setPressed(true);
                    setChosen(chosen?.key === choice.key ? null : choice);
                  }}
                >
                  {choice.name}
                </button>
              </li>
            ))}
            {onNote !== null && (
              <li>
                <button type="button" className="link" disabled={locked !== null} onClick={onNote}>
                  Note
                </button>
              </li>
            )}
            {picture && (
              <li>
                <AttachPicture of={picture.of} name={name} tools={tools} locked={locked} />
              </li>
            )}
          </ul>
        </div>
      )}
      {chosen !== null && (
        <AddForm key={chosen.key} adding={chosen} tools={tools} locked={locked} takesFocus={pressed} onClose={close} />
      )}
      {removals.length > 0 && (
        <div className="add-row">
          <h3>Take out</h3>
          <ul>
            {removals.map((removal) => (
              <li key={removal.at}>
                <TakeOut at={removal.at} name={removal.name} seen="name" tools={tools} locked={locked} />
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}
