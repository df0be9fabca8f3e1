import type { Assessment, Finding } from '@oddwheel/build/assess/types';
import type { Explanation } from '@oddwheel/build/session-types';
import { type JSX, useId } from 'react';
import { Severity } from '../face/Severity.tsx';
import { reserveText, withoutNumber } from '../numbers/shown.ts';
import { WorkingSteps } from './WorkingSteps.tsx';

interface Props {
  readonly finding: Finding;
  /** Null while it is built. */
  readonly explanation: Explanation | null;
  readonly cases: Assessment['cases'];
  readonly reserves: Assessment['reserves'];
  readonly units: Assessment['units'];
  readonly onCase: (caseId: string | null) => void;
  readonly onReveal: (address: string) => void;
}

/** The opened finding: what it says, its working from formula to result, and where every number comes from. */
export function WorkingView(props: Props): JSX.Element {
  const { finding, explanation, cases, reserves, units, onCase, onReveal } = props;
  return (
    <section className="working" aria-labelledby="working-heading">
      <h3 id="working-heading">
        {finding.element}, {finding.title}
      </h3>
      <p>{finding.says}</p>
      {finding.either !== null && <p className="lead">It {finding.either}.</p>}
      <p className="note">If it is not met: {finding.consequence}.</p>
      {finding.missing.length > 0 && (
        <ul className="plain-list">
          {finding.missing.map((missing) => (
            <li key={missing.address}>
              <button type="button" className="link" onClick={() => onReveal(missing.address)}>
                {missing.says}
              </button>
            </li>
          ))}
        </ul>
      )}
      {explanation === null ? (
        <p className="lead">Working it out.</p>
      ) : (
        <>
          {explanation.caseId !== null && (
            <CaseChoice
              finding={finding}
              chosen={explanation.caseId}
              cases={cases}
              reserves={reserves}
              onCase={onCase}
            />
          )}
          {explanation.workings.map((working, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one method may work twice in a list that never changes order
            <WorkingSteps key={`${working.methodId} ${place}`} working={working} units={units} onReveal={onReveal} />
          ))}
          <Result finding={finding} explanation={explanation} />
          {explanation.signs.length > 0 && (
            <>
              <h4>Early signs and service checks</h4>
              <ul className="plain-list">
                {explanation.signs.map((sign) => (
                  <li key={sign.id} className="note">
                    <b>{sign.name}.</b> {sign.early} Service check, {sign.every}: {sign.service}
                  </li>
                ))}
              </ul>
            </>
          )}
        </>
      )}
    </section>
  );
}

function CaseChoice(props: {
  finding: Finding;
  chosen: string;
  cases: Assessment['cases'];
  reserves: Assessment['reserves'];
  onCase: (caseId: string | null) => void;
}): JSX.Element {
  const { finding, chosen, cases, reserves, onCase } = props;
  const id = useId();
  return (
    <div className="field case-choice">
      <label htmlFor={id}>Load case</label>
      <select
        id={id}
        value={chosen}
        onChange={(event) => onCase(event.target.value === finding.governing ? null : event.target.value)}
      >
        {cases.map((load, index) => {
          const reserve = reserves[finding.row * cases.length + index];
          const number = reserve === undefined || Number.isNaN(reserve) ? '' : `, ${reserveText(reserve)}`;
          return (
            <option key={load.id} value={load.id}>
              {load.name}
              {number}
              {load.id === finding.governing ? ', governs' : ''}
            </option>
          );
        })}
      </select>
    </div>
  );
}

function Result({ finding, explanation }: { finding: Finding; explanation: Explanation }): JSX.Element {
  const { demand, capacity, reserve } = explanation;
  const give = finding.reserve ? (finding.reserve.hi - finding.reserve.lo) / 2 : 0;
  const governs = explanation.caseId === null || explanation.caseId === finding.governing;
  return (
    <div className="result">
      {governs && <Severity severity={finding.severity} />}
      <span>
        reserve <b>{reserve === null ? withoutNumber(finding.severity) : reserveText(reserve)}</b>
        {governs && give >= 0.005 && <span className="lead"> ± {reserveText(give)}</span>}
      </span>
      {demand && (
        <span className="lead">
          {demand.name} {demand.text}
        </span>
      )}
      {capacity && (
        <span className="lead">
          {capacity.name} {capacity.text}
        </span>
      )}
      <span className="lead">
        limit 1, wanted {reserveText(finding.wanted)} ({finding.wantedFrom})
      </span>
    </div>
  );
}
