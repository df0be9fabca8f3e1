import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { PartSheet } from '@oddwheel/build/true/sheet-types';
import type { JSX } from 'react';
import { AxisLine } from './AxisLine.tsx';
import { EntryList } from './EntryList.tsx';
import { NextStep } from './NextStep.tsx';
import { PolarPlot } from './PolarPlot.tsx';
import { RoundsPlot } from './RoundsPlot.tsx';

interface Props {
  readonly parts: readonly PartSheet[];
  readonly sheet: PartSheet;
  readonly waiting: readonly string[];
  readonly onChoose: (id: string) => void;
  readonly onForm: (what: 'new' | 'change') => void;
  readonly onMeasure: (station: string) => void;
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
}

/** Everything about one part: what the dial says, what comes next, how it went, and the record. */
export function PartView(props: Props): JSX.Element {
  const { parts, sheet, waiting, onChoose, onForm, onMeasure, onAdd } = props;
  const { drawn, stations, rounds, ways, budget, part, now } = sheet;
  return (
    <>
      <header className="true-head">
        <div>
          <h2>{sheet.name}</h2>
          <p className="lead">
            Wanted at {part.goal.station}: TIR {sheet.goalWords} or less. {now ? now.words : 'Not yet measured.'}
          </p>
        </div>
        <div className="true-tools">
          {parts.length > 1 && (
            <label>
              <span className="note">Part on the bench</span>
              <select value={sheet.id} onChange={(event) => onChoose(event.target.value)}>
                {parts.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
          <button type="button" className="link" onClick={() => onForm('change')}>
            What it is
          </button>
          <button type="button" className="link" onClick={() => onForm('new')}>
            Another part
          </button>
          <button type="button" className="link" onClick={() => window.print()}>
            Print this sheet
          </button>
        </div>
      </header>
      <div className="true-columns">
        {drawn && (
          <section className="says" aria-labelledby="says-heading">
            <h2 id="says-heading">What it says, at {drawn.station}</h2>
            <PolarPlot set={drawn} />
            <dl className="four-numbers">
              {drawn.numbers.map(({ name, means, value }) => (
                <div key={name}>
                  <dt>
                    {name}
                    <span className="note">{means}</span>
                  </dt>
                  <dd>{value}</dd>
                </div>
              ))}
            </dl>
            {drawn.doubts.map((doubt) => (
              <p key={doubt} className="thin">
                {doubt}
              </p>
            ))}
          </section>
        )}
        <NextStep key={sheet.id} sheet={sheet} onMeasure={onMeasure} onAdd={onAdd} />
        {stations.length > 1 && (
          <section className="along" aria-labelledby="along-heading">
            <h2 id="along-heading">Along the part</h2>
            {sheet.diagnosis !== undefined && <p className="diagnosis">{sheet.diagnosis}</p>}
            <AxisLine sheet={sheet} />
            <ul className="plain-list">
              {stations
                .filter(({ role }) => role !== 'seat')
                .map(({ station, words }) => (
                  <li key={station}>{words}</li>
                ))}
            </ul>
          </section>
        )}
        {rounds.length > 0 && (
          <section className="rounds" aria-labelledby="rounds-heading">
            <h2 id="rounds-heading">Rounds</h2>
            <p className="note">
              TIR in {sheet.unit} at {part.goal.station}, after each round
            </p>
            <RoundsPlot sheet={sheet} />
            <ol className="plain-list round-list">
              {rounds.toReversed().map(({ id, label, did, words }) => (
                <li key={id}>
                  <b>{label}</b> <span>{did}</span> <b className="right">{words}</b>
                </li>
              ))}
            </ol>
          </section>
        )}
        {ways.length > 0 && (
          <section className="other-ways" aria-labelledby="ways-heading">
            <h2 id="ways-heading">Other ways, cheapest first</h2>
            <ul className="plain-list">
              {ways.map(({ way, say }) => (
                <li key={way}>{say}</li>
              ))}
            </ul>
          </section>
        )}
        {budget.length > 0 && (
          <section className="true-budget" aria-labelledby="budget-heading">
            <h2 id="budget-heading">Is it good enough</h2>
            <ul className="plain-list">
              {budget.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </section>
        )}
        <section className="more-sets" aria-labelledby="more-heading">
          <h2 id="more-heading">Measure elsewhere</h2>
          <p className="lead">Three stations or more tell bent from offset and tilted.</p>
          <div className="choice-row">
            {[...new Set([part.seats.a, part.seats.b, part.goal.station])].map((station) => (
              <button key={station} type="button" className="true-choice" onClick={() => onMeasure(station)}>
                {station}
              </button>
            ))}
            <button type="button" className="true-choice" onClick={() => onMeasure('')}>
              another station
            </button>
          </div>
        </section>
        <EntryList entries={sheet.entries} waiting={waiting} onAdd={onAdd} />
      </div>
      <p className="note true-foot">
        Not for steering, suspension or brake parts: a licensed shop decides there. Guards on, hair and sleeves away
        from what turns; the dial is read with the spindle turned by hand. The numbers are design aids: local codes and
        licensed practice decide.
      </p>
    </>
  );
}
