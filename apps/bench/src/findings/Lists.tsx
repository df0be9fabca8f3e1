import type { Assessment } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { show, shownText } from '../numbers/shown.ts';

type Reveal = (address: string) => void;

/** What to find out next: uncertain inputs by how many findings they settle, each with its workshop recipe. */
export const FindOutList = memo(function FindOutList(props: {
  items: Assessment['findOut'];
  onReveal: Reveal;
}): JSX.Element {
  return (
    <section className="list" aria-labelledby="find-out-heading">
      <h2 id="find-out-heading">What to find out next</h2>
      {props.items.length === 0 ? (
        <p className="lead">Nothing uncertain changes what any check says.</p>
      ) : (
        <ol className="plain-list">
          {props.items.map((item) => (
            <li key={item.address}>
              <span className="list-name">
                <button type="button" className="link" onClick={() => props.onReveal(item.address)}>
                  {item.name}
                </button>
                <span className="note">{item.text}</span>
              </span>
              <span className="list-value">
                settles {item.findings.length} {item.findings.length === 1 ? 'check' : 'checks'}
              </span>
              {item.recipe !== '' && (
                <details className="recipe">
                  <summary>How to measure it</summary>
                  <p className="instruction">{item.recipe}</p>
                </details>
              )}
            </li>
          ))}
        </ol>
      )}
    </section>
  );
});

/** Inputs left blank, with the sourced row that each stands on. */
export const AssumedList = memo(function AssumedList(props: {
  items: Assessment['assumed'];
  onReveal: Reveal;
}): JSX.Element {
  return (
    <section className="list" aria-labelledby="assumed-heading">
      <h2 id="assumed-heading">Assumed</h2>
      {props.items.length === 0 ? (
        <p className="lead">Nothing is assumed: every input is written in the build.</p>
      ) : (
        <ul className="plain-list">
          {props.items.map((item) => (
            <li key={item.address}>
              <span className="list-name">
                <button type="button" className="link" onClick={() => props.onReveal(item.address)}>
                  {item.name}
                </button>
                <span className="note">{item.source}</span>
              </span>
              <span className="list-value">{item.text}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
});

/** Parts that the path needs, against what lies on the shelf. */
export const PartList = memo(function PartList({ parts }: { parts: Assessment['parts'] }): JSX.Element | null {
  if (parts.length === 0) return null;
  const short = parts.filter((part) => part.have < part.need).length;
  return (
    <section className="list" aria-labelledby="parts-heading">
      <h2 id="parts-heading">Parts against the shelf</h2>
      <p className="lead">{short === 0 ? 'Everything is on the shelf.' : `${short} to get.`}</p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">part</th>
            <th scope="col" className="right">
              needed
            </th>
            <th scope="col" className="right">
              on the shelf
            </th>
            <th scope="col" className="right">
              to get
            </th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={part.address + part.what}>
              <th scope="row">{part.what}</th>
              <td className="right">{part.need}</td>
              <td className="right">{part.have}</td>
              <td className="right">{part.have < part.need ? <b>{part.need - part.have}</b> : '0'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
});

/** Engine speed in each gear, beside the reference vehicle's. */
export const ReferenceTable = memo(function ReferenceTable(props: {
  rows: Assessment['reference'];
  units: Assessment['units'];
}): JSX.Element | null {
  if (props.rows.length === 0) return null;
  return (
    <section className="list" aria-labelledby="reference-heading">
      <h2 id="reference-heading">Against the reference vehicle</h2>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">gear</th>
            <th scope="col" className="right">
              this build
            </th>
            <th scope="col" className="right">
              reference
            </th>
            <th scope="col">in words</th>
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={row.gear}>
              <th scope="row">{row.gear}</th>
              <td className="right">{shownText(show(row.here, 'angularSpeed', props.units))}</td>
              <td className="right">{shownText(show(row.reference, 'angularSpeed', props.units))}</td>
              <td className="lead">{row.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
});
