import { type JSX, useId, useState } from 'react';
import { reserveText } from '../numbers/shown.ts';
import type { Beside } from '../worker/model-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { WideTable } from './WideTable.tsx';

/** Another build, such as the donor vehicle typed as one, run through the same checks. */
export function BesidePanel(props: { model: RemoteModel; onOpen: (finding: string) => void }): JSX.Element {
  const { model, onOpen } = props;
  const [beside, setBeside] = useState<Beside | null>(null);
  const id = useId();
  const read = async (file: File | undefined): Promise<void> => {
    if (file) setBeside(await model.beside(await file.text()));
  };
  return (
    <section className="list" aria-labelledby="beside-heading">
      <h2 id="beside-heading">Beside another build</h2>
      <p className="lead">
        What holds in a vehicle that has proved itself is a measure for this one. Type the donor as a build of its own,
        then choose its build.json here.
      </p>
      <label htmlFor={id} className="file-choice">
        Build to put beside this one
      </label>
      <input
        id={id}
        type="file"
        accept=".json,application/json"
        onChange={(event) => void read(event.target.files?.[0])}
      />
      {beside && !beside.ok && (
        <p className="wrong" role="alert">
          This file is no build that can be read: {beside.faults[0]?.address} {beside.faults[0]?.problem}
        </p>
      )}
      {beside?.ok && beside.rows.length === 0 && <p>The two have no check in common that gives a number.</p>}
      {beside?.ok && beside.rows.length > 0 && (
        <WideTable label="Reserves of both builds">
          <table className="figures">
            <caption>Lowest reserve of each check</caption>
            <thead>
              <tr>
                <th scope="col">Check</th>
                <th scope="col" className="number">
                  Yours
                </th>
                <th scope="col">at</th>
                <th scope="col" className="number">
                  {beside.name}
                </th>
                <th scope="col">at</th>
              </tr>
            </thead>
            <tbody>
              {beside.rows.map((row) => (
                <tr key={row.check}>
                  <th scope="row">
                    <button type="button" className="link" onClick={() => onOpen(row.here.id)}>
                      {row.title}
                    </button>
                  </th>
                  <td className="number">{reserveText(row.here.reserve)}</td>
                  <td>{row.here.element}</td>
                  <td className="number">{reserveText(row.there.reserve)}</td>
                  <td>{row.there.element}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </WideTable>
      )}
    </section>
  );
}
