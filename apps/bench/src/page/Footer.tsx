import { type JSX, memo } from 'react';
import type { Step } from '../steps/steps.ts';
import { cautionOf } from './cautions.ts';

/** The title block, with the cautions that go with every number above it. */
export const Footer = memo(function Footer(props: {
  name: string;
  step: Step;
  units: Readonly<Record<string, string>>;
  /** First digits of the hash of the build file: which state of the build the sheet shows. */
  revision: string;
}): JSX.Element {
  const { name, step, units, revision } = props;
  return (
    <footer className="title-block">
      <div className="cautions">
        <p>Design aid only: local codes, inspection and licensed practice decide.</p>
        <p className="note">{cautionOf(step.id)}</p>
      </div>
      <div>
        <span className="note">build</span>
        {name}
      </div>
      <div>
        <span className="note">sheet</span>
        {step.number} of 9, {step.name}
      </div>
      <div>
        <span className="note">revision</span>
        {revision}
      </div>
      <div>
        <span className="note">units</span>
        {[units.length, units.torque, units.force, units.power].filter(Boolean).join(', ')}
      </div>
      <div className="projection">
        <span className="note">projection</span>
        <span className="projection-words">
          third angle
          <ThirdAngle />
        </span>
      </div>
    </footer>
  );
});

/** Symbol of third-angle projection after ISO 5456-2: the cone seen from its small end stands left of its side view. */
function ThirdAngle(): JSX.Element {
  return (
    <svg width="46" height="20" viewBox="0 0 46 20" aria-hidden="true" className="third-angle">
      <circle cx="10" cy="10" r="4" />
      <circle cx="10" cy="10" r="8" />
      <path d="M26 6L42 2V18L26 14Z" />
      <path className="centre" d="M0 10H20M10 0V20M23 10H45" />
    </svg>
  );
}
