import type { Assessment, Finding } from '@oddwheel/build/assess/types';
import { type JSX, memo, useState } from 'react';
import { Severity } from '../face/Severity.tsx';
import { reserveText, withoutNumber } from '../numbers/shown.ts';
import { ReserveBar, ReserveScale } from './ReserveBar.tsx';

interface Props {
  readonly heading: string;
  readonly findings: readonly Finding[];
  /** Findings of the build that belong to other steps. */
  readonly others: number;
  /** Those are in the list too. */
  readonly whole: boolean;
  readonly cases: Assessment['cases'];
  readonly closure: Assessment['closure'];
  readonly opened: string | null;
  readonly onOpen: (id: string) => void;
  readonly onWhole: (whole: boolean) => void;
}

/** Holding findings past this many fold away, lowest reserve first to stay. */
const HOLDING_SHOWN = 8;

/** Findings, worst first: each with its severity, sentence, reserve and bar. */
export const FindingList = memo(function FindingList(props: Props): JSX.Element {
  const { heading, findings, others, whole, cases, closure, opened, onOpen } = props;
  const [all, setAll] = useState(false);
  const holding = findings.filter((finding) => finding.severity === 'holds');
  const folded = all ? [] : holding.slice(HOLDING_SHOWN).filter((finding) => finding.id !== opened);
  const shown = folded.length === 0 ? findings : findings.filter((finding) => !folded.includes(finding));
  const caseName = new Map(cases.map((load) => [load.id, load.name]));
  return (
    <section className="findings" aria-labelledby="findings-heading">
      <div className="section-head">
        <h2 id="findings-heading">{heading}</h2>
        <span className="lead">
          {findings.length} {findings.length === 1 ? 'check' : 'checks'} in {cases.length} load cases, worst first
        </span>
        {others > 0 && (
          <button type="button" className="link" aria-pressed={whole} onClick={() => props.onWhole(!whole)}>
            {whole ? 'Show: this step' : 'Show: whole build'}
          </button>
        )}
      </div>
      {findings.length === 0 ? (
        <p className="lead">No check of this step applies to the path yet.</p>
      ) : (
        <>
          <div className="finding finding-scale" aria-hidden="true">
            <span className="reserve">reserve</span>
            <ReserveScale />
          </div>
          <ol className="finding-list">
            {shown.map((finding) => (
              <FindingRow
                key={finding.id}
                finding={finding}
                caseName={finding.governing === null ? null : (caseName.get(finding.governing) ?? finding.governing)}
                opened={finding.id === opened}
                onOpen={onOpen}
              />
            ))}
          </ol>
        </>
      )}
      <p className="more lead">
        {folded.length > 0 && (
          <>
            {folded.length} more {folded.length === 1 ? 'holds' : 'hold'}
            {lowest(folded)}.{' '}
            <button type="button" className="link" onClick={() => setAll(true)}>
              Show them
            </button>{' '}
          </>
        )}
        {all && holding.length > HOLDING_SHOWN && (
          <>
            <button type="button" className="link" onClick={() => setAll(false)}>
              Fold what holds
            </button>{' '}
          </>
        )}
        {closure && (
          <>
            Torques on every shaft close to {residue(closure.torque)} of the torque, power from end to end to{' '}
            {residue(closure.power)}
            {closure.shafts === null ? '' : `, forces on shafts and their bearings to ${residue(closure.shafts)}`}.
          </>
        )}
      </p>
    </section>
  );
});

const lowest = (folded: readonly Finding[]): string => {
  const reserves = folded.flatMap((finding) => (finding.reserve === null ? [] : [finding.reserve.value]));
  return reserves.length === 0 ? '' : `, lowest ${reserveText(Math.min(...reserves))}`;
};

/** A rounding residue as "2 × 10⁻¹²". */
function residue(part: number): JSX.Element {
  if (part === 0) return <>0</>;
  const [figure = '0', exponent = '0'] = part.toExponential(0).split('e');
  return (
    <>
      {figure} × 10<sup>{exponent.replace('-', '−').replace('+', '')}</sup>
    </>
  );
}

const FindingRow = memo(function FindingRow(props: {
  finding: Finding;
  caseName: string | null;
  opened: boolean;
  onOpen: (id: string) => void;
}): JSX.Element {
  const { finding, caseName, opened, onOpen } = props;
  return (
    <li className={opened ? 'finding opened moves' : 'finding moves'}>
      <Severity severity={finding.severity} />
      <div className="finding-words">
        <button
          type="button"
          className="finding-button"
          data-finding={finding.id}
          aria-expanded={opened}
          onClick={() => onOpen(finding.id)}
        >
          <b>{finding.element}</b>, {finding.title}
        </button>
        <p className="note">
          {finding.says}
          {finding.either !== null && ` ${sentence(finding.either)}`}
          {caseName !== null && ` ${sentence(caseName)}`}
        </p>
      </div>
      <Reserve finding={finding} />
      <div className="bar-cell">
        <ReserveBar severity={finding.severity} reserve={finding.reserve} wanted={finding.wanted} />
      </div>
    </li>
  );
});

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function Reserve({ finding }: { finding: Finding }): JSX.Element {
  if (finding.reserve === null) return <span className="reserve lead">{withoutNumber(finding.severity)}</span>;
  return (
    <span className={`reserve ${finding.severity}`}>
      <span className="hidden-name">reserve </span>
      <b>{reserveText(finding.reserve.value)}</b>
      <span className="hidden-name"> of {reserveText(finding.wanted)} wanted</span>
    </span>
  );
}
