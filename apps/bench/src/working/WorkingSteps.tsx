import { sym } from '@oddwheel/mechanics/method/expr';
import { stepMathML, toMathML } from '@oddwheel/mechanics/method/mathml';
import type { Source } from '@oddwheel/mechanics/method/method';
import { stepSentence, toSentence } from '@oddwheel/mechanics/method/sentence';
import { namesOf, type Working, type WorkingSymbol } from '@oddwheel/mechanics/method/working';
import { type JSX, memo } from 'react';
import { Formula } from './Formula.tsx';
import { originWords, symbolValue } from './value.ts';

interface Props {
  readonly working: Working;
  readonly units: Readonly<Record<string, string>>;
  readonly onReveal: (address: string) => void;
}

/** One method of a working: its formulas, each symbol with value, unit and origin, what it takes for granted, and its sources. */
export const WorkingSteps = memo(function WorkingSteps({ working, units, onReveal }: Props): JSX.Element {
  const names = namesOf(working);
  return (
    <section className="working-steps">
      <h4>{sentenceCase(working.title)}</h4>
      {working.steps.map((step) => (
        <div key={step.key} className="step">
          <p className="note">{sentenceCase(step.says)}</p>
          <div className="formula">
            <Formula mathml={stepMathML(step, names)} sentence={stepSentence(step, names)} />
          </div>
        </div>
      ))}
      <div className="symbol-scroll">
        <table className="symbols">
          <thead>
            <tr>
              <th scope="col">
                <span className="hidden-name">symbol</span>
              </th>
              <th scope="col">meaning</th>
              <th scope="col" className="value">
                value
              </th>
              <th scope="col">unit</th>
              <th scope="col">from</th>
            </tr>
          </thead>
          <tbody>
            {working.symbols.map((symbol) => (
              <SymbolRow key={symbol.key} symbol={symbol} working={working} units={units} onReveal={onReveal} />
            ))}
          </tbody>
        </table>
      </div>
      {working.holds.length > 0 && <p className="note">Taken for granted: {working.holds.join(' ')}</p>}
      <ul className="sources note">
        {working.sources.map((source) => (
          <li key={`${source.title} ${source.at ?? ''}`}>{sourceWords(source)}</li>
        ))}
      </ul>
    </section>
  );
});

function SymbolRow(props: Props & { symbol: WorkingSymbol }): JSX.Element {
  const { symbol, working, units, onReveal } = props;
  const names = namesOf(working);
  const { number, unit } = symbolValue(symbol, units);
  const { origin } = symbol;
  return (
    <tr className={symbol.role === 'result' ? 'outcome' : ''}>
      <td>
        <Formula mathml={toMathML(sym(symbol.key), names)} sentence={toSentence(sym(symbol.key), names)} />
      </td>
      <th scope="row">{symbol.meaning}</th>
      <td className="value">{number}</td>
      <td className="unit">{unit}</td>
      <td className="origin">
        {origin?.startsWith('/') ? (
          <button type="button" className="link" onClick={() => onReveal(origin)}>
            {originWords(origin)}
          </button>
        ) : (
          origin
        )}
      </td>
    </tr>
  );
}

const HOW: Readonly<Record<Source['how'], string>> = {
  read: '',
  memory: 'From memory.',
  derived: 'Worked out for this program.',
  'common practice': 'Common practice.',
};

/** Title, edition, place, and how it was come by. */
function sourceWords(source: Source): string {
  const parts = [source.title, source.edition, source.at].filter((part) => part !== undefined && part !== '');
  return `${parts.join(', ')}. ${HOW[source.how]}`.trim();
}

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
