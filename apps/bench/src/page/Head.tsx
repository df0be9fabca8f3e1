import { type JSX, memo } from 'react';
import type { Actions, Mode } from '../state/actions.ts';

interface Props {
  readonly name: string;
  readonly about: string;
  /** "saved 14:07", "saving", "2 edits not saved". */
  readonly saved: string;
  readonly undo: string | null;
  readonly redo: string | null;
  readonly units: Readonly<Record<string, string>>;
  readonly mode: Mode;
  readonly actions: Actions;
  readonly onShow: (what: 'keys' | 'find' | 'builds') => void;
}

/** The head of the sheet: whose build it is, whether it is saved, and what can be taken back. */
export const Head = memo(function Head(props: Props): JSX.Element {
  const { name, about, saved, undo, redo, units, mode, actions, onShow } = props;
  return (
    <header className="head">
      <span className="maker">
        <Logo />
        Oddwheel
      </span>
      <div className="build-name">
        <h1>{name}</h1> <span className="lead">{about}</span>
      </div>
      <div className="head-tools">
        <span className="lead saved">{saved}</span>
        <button type="button" className="link" onClick={() => onShow('builds')}>
          Build
        </button>
        <button type="button" className="link" disabled={undo === null} onClick={actions.undo}>
          Undo{undo !== null && ` ${undo}`}
        </button>
        <button type="button" className="link" disabled={redo === null} onClick={actions.redo}>
          Redo{redo !== null && ` ${redo}`}
        </button>
        <button type="button" className="link" onClick={() => actions.select('/units')}>
          <span className="hidden-name">Units: </span>
          {[units.length, units.torque, units.speed].filter(Boolean).join(', ')}
        </button>
        <button
          type="button"
          className="link"
          aria-pressed={mode === 'shop'}
          onClick={() => actions.setMode(mode === 'shop' ? 'desk' : 'shop')}
        >
          {mode === 'shop' ? 'Desk mode' : 'Shop mode'}
        </button>
        <button type="button" className="link" onClick={() => onShow('find')}>
          Find
        </button>
        <button type="button" className="link" onClick={() => onShow('keys')}>
          Keys
        </button>
      </div>
    </header>
  );
});

/** The head while there is no build to show; `onBuilds` opens the builds that the page keeps itself. */
export function PlainHead({ onBuilds }: { onBuilds: (() => void) | null }): JSX.Element {
  return (
    <header className="head">
      <h1 className="maker">
        <Logo />
        Oddwheel
      </h1>
      {onBuilds && (
        <div className="head-tools">
          <button type="button" className="link" onClick={onBuilds}>
            Build
          </button>
        </div>
      )}
    </header>
  );
}

/** A wheel whose hub is off its centre. */
function Logo(): JSX.Element {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <circle cx="11" cy="11" r="9.6" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <circle cx="13.6" cy="8.6" r="2.2" fill="currentColor" />
      <path d="M13.6 1v4M13.6 12.4V21" stroke="currentColor" strokeWidth=".9" />
    </svg>
  );
}
