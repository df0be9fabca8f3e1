import type { Assessment } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { digits, show, shownText } from '../numbers/shown.ts';
import { WideTable } from './WideTable.tsx';

/** How the drive swings against the engine, and how far the wheel turns free while the crank is held. */
export const TurningPanel = memo(function TurningPanel(props: {
  turning: Assessment['turning'];
  units: Readonly<Record<string, string>>;
  onReveal: (address: string) => void;
}): JSX.Element {
  const { turning, units, onReveal } = props;
  const angle = (value: number): string => shownText(show({ value, lo: value, hi: value }, 'angle', units));
  const most = Math.max(0, ...turning.gears.map(({ modes }) => modes.length));
  return (
    <section className="list" aria-labelledby="turning-heading">
      <h2 id="turning-heading">Swing and free play</h2>
      {turning.gears.length > 0 && (
        <WideTable label="Swings in each gear">
          <table className="figures">
            <caption>Swings of engine against vehicle, times a second</caption>
            <thead>
              <tr>
                <th scope="col">Gear</th>
                {Array.from({ length: most }, (_, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the place is what the column stands for
                  <th key={k} scope="col" className="number">
                    {['slowest', 'next', 'then'][k] ?? `${k + 1}th`}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {turning.gears.map(({ gear, modes }) => (
                <tr key={gear}>
                  <th scope="row">{gear}</th>
                  {modes.map((f) => (
                    <td key={f} className="number">
                      {digits(f, f < 10 ? 2 : f < 100 ? 1 : 0)} Hz
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </WideTable>
      )}
      {turning.parts.length > 0 && (
        <dl className="play-list">
          <div>
            <dt>Free play at the wheel, crank held</dt>
            <dd>{angle(turning.total)}</dd>
          </div>
          {turning.parts.map((part) => (
            <div key={part.address}>
              <dt>
                of it{' '}
                <button type="button" className="link" onClick={() => onReveal(part.address)}>
                  {part.name}
                </button>
              </dt>
              <dd>{angle(part.angle)}</dd>
            </div>
          ))}
        </dl>
      )}
      {turning.missing.map((missing) => (
        <p key={missing.address + missing.says}>
          Not counted: {missing.says}.{' '}
          <button type="button" className="link" onClick={() => onReveal(missing.address)}>
            Go there<span className="hidden-name">: {missing.says}</span>
          </button>
        </p>
      ))}
    </section>
  );
});
