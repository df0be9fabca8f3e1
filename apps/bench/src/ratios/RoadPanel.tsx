import type { Road } from '@oddwheel/build/assess/road/types';
import type { Finding } from '@oddwheel/build/assess/types';
import { type JSX, memo, useMemo } from 'react';
import { Severity } from '../face/Severity.tsx';
import { NotYet } from './NotYet.tsx';
import { roadRows } from './road-rows.ts';

interface Props {
  readonly road: Road;
  readonly findings: readonly Finding[];
  readonly units: Readonly<Record<string, string>>;
  readonly onOpen: (finding: string) => void;
  readonly onReveal: (address: string) => void;
}

/** What the vehicle does on the road, with a way to each check that speaks of it. */
export const RoadPanel = memo(function RoadPanel({ road, findings, units, onOpen, onReveal }: Props): JSX.Element {
  const rows = useMemo(() => roadRows(road, units), [road, units]);
  return (
    <section className="list" aria-labelledby="road-heading">
      <h2 id="road-heading">On the road</h2>
      <dl className="road-rows">
        {rows.map((row) => {
          const about = findings.filter((finding) => row.checks.includes(finding.check));
          return (
            <div key={row.name}>
              <dt>{row.name}</dt>
              <dd className="road-value">
                {'missing' in row.value ? (
                  <NotYet why={row.value} onReveal={onReveal} />
                ) : (
                  <>
                    <b>{row.value.main}</b>
                    {row.value.range !== '' && <span className="lead">{row.value.range}</span>}
                  </>
                )}
              </dd>
              <dd className="road-says">
                {row.says}
                {about.length > 0 && (
                  <ul className="road-checks">
                    {about.map((finding) => (
                      <li key={finding.id}>
                        <Severity severity={finding.severity} />
                        <button type="button" className="link" onClick={() => onOpen(finding.id)}>
                          {finding.title.charAt(0).toUpperCase() + finding.title.slice(1)}
                        </button>
                      </li>
                    ))}
                  </ul>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
});
