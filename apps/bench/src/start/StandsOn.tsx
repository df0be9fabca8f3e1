import type { BeginAssumption } from '@oddwheel/build/begin/types';
import { type JSX, useEffect, useState } from 'react';
import { Panel } from '../layout-panels/Panel.tsx';
import type { RemoteModel } from '../worker/remote.ts';

/** Rows shown before the rest is asked for. */
const FIRST_ROWS = 6;
/** Pause after an edit before the list is asked for again, ms: numbers come first. */
const PAUSE = 500;

interface Props {
  readonly model: RemoteModel;
  /** Hash of the build on the page. */
  readonly hash: string;
  readonly onReveal: (address: string) => void;
}

/** What the build stands on and nobody typed, by how many checks hang on it; each leads to where the right value is typed. */
export function StandsOn({ model, hash, onReveal }: Props): JSX.Element {
  const [rows, setRows] = useState<readonly BeginAssumption[] | null>(null);
  const [all, setAll] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every text of the build has its own list
  useEffect(() => {
    let current = true;
    const timer = setTimeout(() => {
      // A build that is left meanwhile has no list any more; the next one asks for its own.
      model.standsOn().then(
        (next) => current && next && setRows(next),
        () => undefined,
      );
    }, PAUSE);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [model, hash]);
  const shown = all ? (rows ?? []) : (rows ?? []).slice(0, FIRST_ROWS);
  return (
    <Panel name="What the build stands on">
      {rows === null ? (
        <p className="lead">Working out what hangs on each value that nobody typed.</p>
      ) : rows.length === 0 ? (
        <p className="lead">Everything that a check needs is typed.</p>
      ) : (
        <>
          <p className="lead">
            {rows.length} values that nobody typed. The more checks hang on one, the sooner it pays to find it out.
          </p>
          <ol className="plain-list stands-on">
            {shown.map((row) => (
              <li key={row.address}>
                <span className="list-name">
                  <button type="button" className="link" onClick={() => onReveal(row.address)}>
                    {row.name}
                  </button>{' '}
                  <span className="stands-value">{row.text}</span>
                  <span className="note">{row.why}</span>
                </span>
                <span className="list-value">
                  {row.findings === 0 ? 'no check' : `${row.findings} ${row.findings === 1 ? 'check' : 'checks'}`}
                </span>
              </li>
            ))}
          </ol>
          {rows.length > shown.length && (
            <button type="button" className="link" onClick={() => setAll(true)}>
              Show all {rows.length}
            </button>
          )}
        </>
      )}
    </Panel>
  );
}
