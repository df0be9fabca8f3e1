import { type JSX, memo } from 'react';

/** The title block, with the cautions that go with every number above it. */
export const Footer = memo(function Footer(props: {
  name: string;
  units: Readonly<Record<string, string>>;
  /** First digits of the hash of the build file: which state of the build the sheet shows. */
  revision: string;
}): JSX.Element {
  const { name, units, revision } = props;
  return (
    <footer className="title-block">
      <div className="cautions">
        <p>Design aid only: local codes, inspection and licensed practice decide.</p>
        <p className="note">
          Chains and gears take fingers and clothes: engine off and wheel blocked before reaching in, guards on before
          running.
        </p>
      </div>
      <div>
        <span className="note">build</span>
        {name}
      </div>
      <div>
        <span className="note">sheet</span>
        path and strength
      </div>
      <div>
        <span className="note">state of the file</span>
        {revision}
      </div>
      <div>
        <span className="note">units</span>
        {[units.length, units.torque, units.force, units.power].filter(Boolean).join(', ')}
      </div>
    </footer>
  );
});
