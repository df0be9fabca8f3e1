import type { Assessment, LoadCase } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { show, shownText } from '../numbers/shown.ts';
import { WideTable } from './WideTable.tsx';

const ENDED = { grip: 'the tyre slips', clutch: 'the clutch slips' } as const;

/** Every load case: what the engine gives, what ends it, and the torque that reaches each shaft. */
export const LoadCases = memo(function LoadCases(props: {
  cases: readonly LoadCase[];
  shafts: Assessment['shafts'];
  units: Readonly<Record<string, string>>;
  onReveal: (address: string) => void;
}): JSX.Element | null {
  const { cases, shafts, units, onReveal } = props;
  const made = cases.filter(({ id }) => id !== 'here');
  if (made.length === 0) return null;
  const torque = (value: number): string => shownText(show({ value, lo: value, hi: value }, 'torque', units));
  return (
    <section className="list" aria-labelledby="cases-heading">
      <h2 id="cases-heading">Load cases</h2>
      <p className="lead">
        Full throttle in each gear, then peaks that come rarely and must be stood once. What ends a peak is{' '}
        <button type="button" className="link" onClick={() => onReveal('/brief/loads/grip')}>
          the highest grip
        </button>{' '}
        with the full load, or{' '}
        <button type="button" className="link" onClick={() => onReveal('/brief/engine/clutchTorque')}>
          the clutch
        </button>
        .
      </p>
      <WideTable label="Load cases">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Case</th>
              <th scope="col" className="number">
                Crank
              </th>
              <th scope="col" className="number">
                Engine
              </th>
              {shafts.map(({ address, name }) => (
                <th key={address} scope="col" className="number">
                  {name}
                </th>
              ))}
              <th scope="col">Ended by</th>
            </tr>
          </thead>
          <tbody>
            {made.map((one) => (
              <tr key={one.id}>
                <th scope="row">{one.name}</th>
                <td className="number">{shownText(show(one.engineSpeed, 'angularSpeed', units))}</td>
                <td className="number">{shownText(show(one.engineTorque, 'torque', units))}</td>
                {shafts.map(({ address }, k) => (
                  <td key={address} className="number">
                    {torque(one.torques[k] ?? Number.NaN)}
                  </td>
                ))}
                <td>{one.capped === null ? (one.kind === 'rare' ? '' : 'the engine') : ENDED[one.capped]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </section>
  );
});
