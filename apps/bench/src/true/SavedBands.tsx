import type { JSX } from 'react';
import type { Place } from '../link/host-client.ts';
import type { RunOut, RunOutState } from './run-out.ts';

interface Props {
  readonly state: RunOutState;
  readonly runOut: RunOut;
  readonly place: Place;
  /** Name that the record of this build is kept under. */
  readonly build: string;
}

const counted = (count: number): string => `${count} ${count === 1 ? 'entry' : 'entries'}`;

/** Where what was keyed in is kept just now, when it is not simply saved. */
export function SavedBands({ state, runOut, place, build }: Props): JSX.Element {
  const { waiting, elsewhere, online, lasting, trouble } = state;
  const kept = lasting ? 'kept on this device' : 'kept in this page only';
  return (
    <div className="true-bands" role="status">
      {place === 'host' && !online && (
        <p>
          No connection. {waiting.length === 0 ? `What you key in is ${kept},` : `${counted(waiting.length)} ${kept},`}{' '}
          and sent once it returns.
          {!window.isSecureContext &&
            ' Leave this page open: over plain http the browser cannot load it again without the host.'}
        </p>
      )}
      {online && waiting.length > 0 && (
        <p>
          Sending {counted(waiting.length)}, {kept}.
        </p>
      )}
      {!lasting && place === 'host' && (
        <p>This browser keeps nothing for this page: without a connection, readings last only until it closes.</p>
      )}
      {elsewhere.map(({ build: other, count }) => (
        <p key={other}>
          {counted(count)} of the build {other} {count === 1 ? 'is' : 'are'} kept on this device, and sent once that
          build is open.{' '}
          <button type="button" className="link" onClick={() => void runOut.adopt(other)}>
            Put them into {build}
          </button>
        </p>
      ))}
      {trouble !== null && (
        <p role="alert">
          {trouble}{' '}
          <button type="button" className="link" onClick={runOut.dismissTrouble}>
            Close
          </button>
        </p>
      )}
    </div>
  );
}
