import type { RatioAnswer } from '@oddwheel/build/ratios/types';
import type { JSX } from 'react';
import { show, shownText } from '../numbers/shown.ts';
import { Wide } from '../plots/Wide.tsx';

const certain = (value: number) => ({ value, lo: value, hi: value });

/** What is easily taken for something else, and which sprockets on the shelf run on which chain. */
export function BuyingFacts(props: {
  readonly answer: RatioAnswer;
  readonly units: Readonly<Record<string, string>>;
}): JSX.Element | null {
  const { answer, units } = props;
  const { nearMisses, shelf, sources } = answer.buying;
  const others = shelf.filter(({ chain, sprocket }) => chain !== sprocket);
  const length = (value: number): string => shownText(show(certain(value), 'length', units));
  if (nearMisses.length === 0 && others.length === 0) return null;
  return (
    <details className="plot-table buying">
      <summary>What to look at when buying</summary>
      {others.length > 0 && (
        <Wide name="Chains and the sprockets on the shelf">
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">chain</th>
                <th scope="col">sprockets on the shelf</th>
                <th scope="col">pitch</th>
                <th scope="col">roller</th>
                <th scope="col">inner width</th>
              </tr>
            </thead>
            <tbody>
              {others.map(({ stage, chain, sprocket, agreement }) => (
                <tr key={stage + sprocket}>
                  <th scope="row">{chain}</th>
                  <td>cut for {sprocket}</td>
                  {agreement.map(({ what, agrees, chain: here, sprocket: there }) => (
                    <td key={what}>{agrees ? 'agrees' : `differs, ${length(here)} against ${length(there)}`}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Wide>
      )}
      <ul className="plain-list">
        {nearMisses.map(({ size, other, says }) => (
          <li key={size + other}>
            <span>{says}</span>
          </li>
        ))}
      </ul>
      <p className="note">Hubs, bores and hardened teeth after: {sources.join('; ')}.</p>
    </details>
  );
}
