import type { Fault } from '@oddwheel/build/fault';
import { type JSX, memo } from 'react';
import type { Place } from '../link/host-client.ts';
import type { HeldConflict } from '../link/sync.ts';
import type { Actions } from '../state/actions.ts';

/** A band under the head: what keeps the build is out of reach, and what is kept where. */
export function OfflineBand({ kept, place }: { kept: number; place: Place }): JSX.Element {
  const why = place === 'host' ? 'No connection to the host.' : 'The browser does not keep the build just now.';
  const until = place === 'host' ? 'saved once it returns' : 'saved once it does';
  return (
    <p className="band" role="status">
      {why}{' '}
      {kept === 0
        ? `Edits made now are kept in this page, and ${until}.`
        : `${kept} ${kept === 1 ? 'edit is' : 'edits are'} kept in this page only, and ${until}.`}
    </p>
  );
}

/** A standing band: this browser keeps nothing for this page. */
export function PageOnlyBand({ onSave }: { onSave: () => void }): JSX.Element {
  return (
    <p className="band">
      This browser keeps nothing for this page: the build lasts only until the page closes.{' '}
      <button type="button" className="link" onClick={onSave}>
        Save as one file
      </button>
    </p>
  );
}

/** The page itself could not do something: said plainly, with what it was. */
export function TroubleBand({ trouble, onDismiss }: { trouble: string; onDismiss: () => void }): JSX.Element {
  return (
    <p className="band" role="alert">
      {trouble}{' '}
      <button type="button" className="link" onClick={onDismiss}>
        Close
      </button>
    </p>
  );
}

/** Both values of each field that two people changed, side by side. */
export const ConflictPanel = memo(function ConflictPanel(props: {
  held: readonly HeldConflict[];
  actions: Actions;
}): JSX.Element {
  return (
    <section className="conflicts" aria-labelledby="conflicts-heading">
      <h2 id="conflicts-heading">Changed twice</h2>
      <p className="lead">
        The file was changed elsewhere before your edit reached it. Theirs is in force until you choose.
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">field</th>
            <th scope="col">before</th>
            <th scope="col">mine</th>
            <th scope="col">theirs</th>
            <th scope="col">choose</th>
          </tr>
        </thead>
        <tbody>
          {props.held.map((row) => (
            <tr key={row.address}>
              <th scope="row">{fieldName(row)}</th>
              <td className="lead">{valueText(row.base)}</td>
              <td>{valueText(row.mine)}</td>
              <td>{valueText(row.theirs)}</td>
              <td>
                <button type="button" className="button" onClick={() => props.actions.keepMine(row.address)}>
                  Keep mine<span className="hidden-name"> for {fieldName(row)}</span>
                </button>{' '}
                <button type="button" className="button" onClick={() => props.actions.takeTheirs(row.address)}>
                  Take theirs<span className="hidden-name"> for {fieldName(row)}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
});

/** The name of the edit without its values, with the address: "Chain 1, driver teeth". */
function fieldName(row: HeldConflict): string {
  const arrow = row.name.indexOf(' → ');
  const before = valueText(row.base);
  const name = arrow < 0 ? row.name : row.name.slice(0, arrow);
  return name.endsWith(` ${before}`) ? name.slice(0, -before.length - 1) : `${name} (${row.address})`;
}

/** A value in few words: a whole part by its name, a list by what is in it. */
function valueText(value: unknown): string {
  if (value === undefined) return 'blank';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.map(valueText).join(', ');
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const { name } = value as { readonly name?: unknown };
  if (typeof name === 'string') return name;
  return Object.entries(value)
    .map(([key, one]) => (typeof one === 'object' ? valueText(one) : `${key} ${String(one)}`))
    .join(', ');
}

/** What is wrong with a file that can't be read: every fault with its place, what was read and what is accepted. */
export function FaultList({ faults, lastGood }: { faults: readonly Fault[]; lastGood: boolean }): JSX.Element {
  return (
    <section className="faults" aria-labelledby="faults-heading" role="alert">
      <h2 id="faults-heading">{faults.length === 1 ? 'One fault' : `${faults.length} faults`} in build.json</h2>
      <p className="lead">
        {lastGood
          ? 'The numbers below are of the last good file. Nothing can be edited here until the file is right again.'
          : 'Correct the file in a text editor; the page follows as soon as it is saved. The file stays as it is.'}
      </p>
      <ol className="plain-list">
        {faults.map((fault) => (
          <li key={`${fault.address} ${fault.code} ${fault.problem}`}>
            <b>{fault.address === '' ? 'whole file' : fault.address}</b>
            {fault.line !== undefined && (
              <span className="lead">
                {' '}
                line {fault.line}
                {fault.column !== undefined && `, column ${fault.column}`}
              </span>
            )}
            <br />
            {fault.problem}{' '}
            <span className="lead">
              Read: {fault.read}. Accepted: {fault.accepted}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
