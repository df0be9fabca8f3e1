import type { Layout, SenseFix } from '@oddwheel/build/assess/layout/types';
import { type JSX, memo } from 'react';
import { Panel } from './Panel.tsx';

type Reveal = (address: string) => void;

/** Which body carries which bearings, and what passes between bodies that move. */
export const BodiesPanel = memo(function BodiesPanel(props: { layout: Layout; onReveal: Reveal }): JSX.Element | null {
  const { layout, onReveal } = props;
  if (layout.lines.length === 0) return null;
  return (
    <Panel name="What carries what">
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">shaft</th>
            <th scope="col">carried by</th>
            <th scope="col">in</th>
          </tr>
        </thead>
        <tbody>
          {layout.lines.map((line) => (
            <tr key={line.shafts.join(' ')}>
              <th scope="row">{line.name}</th>
              <td>{line.bodies.length === 0 ? <span className="lead">not said</span> : line.bodies.join(', ')}</td>
              <td>
                {line.bearings.length === 0 ? (
                  <span className="lead">no bearing named</span>
                ) : (
                  line.bearings.map((bearing, index) => (
                    <span key={bearing.address}>
                      {index > 0 && ', '}
                      <button type="button" className="link" onClick={() => onReveal(bearing.address)}>
                        {bearing.name}
                        <span className="hidden-name"> of {line.name}</span>
                      </button>
                    </span>
                  ))
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {layout.crossings.length > 0 && (
        <>
          <h3>Between bodies that move</h3>
          <ul className="plain-list">
            {layout.crossings.map((crossing) => (
              <li key={crossing.address}>
                <span>{crossing.text}</span>
                <button type="button" className="link" onClick={() => onReveal(crossing.address)}>
                  {crossing.name}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </Panel>
  );
});

/** Changes after which a wheel that turns backward rolls forward. */
export function SenseFixes(props: { fixes: readonly SenseFix[]; onReveal: Reveal }): JSX.Element | null {
  const { fixes, onReveal } = props;
  if (fixes.length === 0) return null;
  return (
    <section className="sense-fixes" aria-labelledby="sense-heading">
      <h2 id="sense-heading">The wheel turns backward</h2>
      <p className="lead">Any one of these turns it round; each was tried out.</p>
      <ul className="plain-list">
        {fixes.map((fix) => (
          <li key={fix.address + fix.text}>
            <span>
              {fix.text.charAt(0).toUpperCase() + fix.text.slice(1)}.
              {fix.edits.map((edit) => (
                <span key={edit.address} className="note">
                  {edit.address}: {edit.text}
                </span>
              ))}
            </span>
            <button type="button" className="link" onClick={() => onReveal(fix.edits[0]?.address ?? fix.address)}>
              Go there<span className="hidden-name">: {fix.text}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
