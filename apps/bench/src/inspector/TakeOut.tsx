import type { Fault } from '@oddwheel/build/fault';
import { type JSX, type KeyboardEvent, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { Also } from './Also.tsx';
import { faultSentence } from './fault-sentence.ts';
import type { Planned, StructureTools } from './structure-tools.ts';

interface Props {
  /** Address of what is taken out. */
  readonly at: string;
  readonly name: string;
  readonly words?: string;
  /** What of “Take out sprocket 30” is seen; the rest is there for a screen reader. */
  readonly seen?: 'words' | 'name' | 'both';
  readonly tools: StructureTools;
  readonly locked: string | null;
}

/** Addresses that a refusal names: who still uses the thing. */
const users = (fault: Fault): readonly string[] => fault.read.split(', ').filter((at) => at.startsWith('/'));

/** Takes something out: at once where nothing else changes, else after saying what does. Why it cannot go stands in its place. */
export function TakeOut({ at, name, words = 'Take out', seen = 'both', tools, locked }: Props): JSX.Element {
  const [planned, setPlanned] = useState<Planned | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const button = useRef<HTMLButtonElement>(null);
  const sure = useRef<HTMLButtonElement>(null);
  const make = async (edit: Planned): Promise<void> => {
    const wrong = await tools.make(edit);
    if (wrong) {
      setPlanned(null);
      setFault(wrong);
    } else if (edit.shows !== null) tools.reveal(edit.shows);
    else document.getElementById('inspector-heading')?.focus();
  };
  const ask = async (): Promise<void> => {
    const edit = await tools.plan({ do: 'remove', at });
    setFault(edit.ok ? null : (edit.faults[0] ?? null));
    if (!edit.ok) return;
    if (edit.also.length === 0) return make(edit);
    flushSync(() => setPlanned(edit));
    sure.current?.focus();
  };
  const keep = (): void => {
    flushSync(() => {
      setPlanned(null);
      setFault(null);
    });
    button.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || (planned === null && fault === null)) return;
    event.stopPropagation();
    keep();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape leaves the question, from whichever button has the focus
    <div className="take-out" onKeyDown={onKeyDown}>
      {planned === null ? (
        <button ref={button} type="button" className="link" disabled={locked !== null} onClick={() => void ask()}>
          <span className={seen === 'name' ? 'hidden-name' : ''}>{words} </span>
          <span className={seen === 'words' ? 'hidden-name' : ''}>{name}</span>
        </button>
      ) : (
        <div className="add-form">
          <h4>{planned.name}</h4>
          <Also also={planned.also} />
          <div className="form-foot">
            <button ref={sure} type="button" className="button main" onClick={() => void make(planned)}>
              Take it out
            </button>
            <button type="button" className="button" onClick={keep}>
              Keep it
            </button>
          </div>
        </div>
      )}
      {fault && (
        <p className="fails" role="alert">
          {users(fault).length > 0 ? `${fault.problem} ${fault.accepted}` : faultSentence(fault, name)}{' '}
          {users(fault).map((user) => (
            <button key={user} type="button" className="link" onClick={() => tools.reveal(user)}>
              Show {user.split('/').at(-1)}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}
