import type { RankedTrain, RatioAnswer } from '@oddwheel/build/ratios/types';
import { Fragment, type JSX, useId, useState } from 'react';
import { SeverityShape } from '../face/Severity.tsx';
import { reserveText, show, shownText } from '../numbers/shown.ts';
import { Wide } from '../plots/Wide.tsx';
import { changeLines, MEASURES, measureText, teethText, trainKey } from './train-words.ts';
import type { Found } from './use-trains.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Props {
  readonly found: Found<RatioAnswer & { readonly roadSpeed: number }>;
  readonly stale: boolean;
  readonly compared: readonly RankedTrain['pairs'][];
  /** As many are compared as can be. */
  readonly full: boolean;
  readonly units: Readonly<Record<string, string>>;
  readonly onCompare: (pairs: RankedTrain['pairs']) => void;
  readonly onApply: (train: RankedTrain) => void;
}

/** The trains in their order, with what ranked them, and what each asks for once it is opened. */
export function TrainList(props: Props): JSX.Element {
  const { found, stale, compared, full, units, onCompare, onApply } = props;
  const { answer, request } = found;
  const [open, setOpen] = useState<string | null>(null);
  const id = useId();
  const keys = request.order.filter((key) => key !== 'buy');
  const last = answer.trains[0]?.gears.at(-1)?.gear ?? '';
  const isCompared = (pairs: RankedTrain['pairs']): boolean =>
    compared.some((one) => trainKey(one) === trainKey(pairs));
  const tick = (pairs: RankedTrain['pairs'], name: string): JSX.Element => (
    <label className="tick train-tick">
      <input
        type="checkbox"
        checked={isCompared(pairs)}
        disabled={full && !isCompared(pairs)}
        onChange={() => onCompare(pairs)}
      />
      <span className="hidden-name">Compare {name}</span>
    </label>
  );
  const columns = 7 + keys.length;
  return (
    <>
      <Wide name="Best trains">
        <table className="plain-table train-table">
          <thead>
            <tr>
              <th scope="col">compare</th>
              <th scope="col">teeth</th>
              <th scope="col" className="right">
                ratio
              </th>
              <th scope="col" className="right">
                engine at {shownText(show(certain(answer.roadSpeed), 'speed', units, 3))}, {last}
              </th>
              <th scope="col" className="right">
                pull in 1st
              </th>
              <th scope="col">lowest reserve</th>
              <th scope="col">to buy</th>
              {keys.map((key) => (
                <th key={key} scope="col" className="right">
                  {MEASURES[key].axis}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {answer.trains.map((train, k) => {
              const key = trainKey(train.pairs);
              const opened = open === key;
              const engine = train.gears.at(-1);
              const force = train.gears[0]?.force ?? null;
              return (
                <Fragment key={key}>
                  <tr className={opened ? 'opened' : undefined}>
                    <td>{tick(train.pairs, `train ${k + 1}`)}</td>
                    <th scope="row">
                      <button
                        type="button"
                        className="link"
                        aria-expanded={opened}
                        aria-controls={`${id}-${k}`}
                        onClick={() => setOpen(opened ? null : key)}
                      >
                        <span className="train-number">{k + 1}</span> {teethText(train.pairs)}
                      </button>
                    </th>
                    <td className="right">{train.path.toFixed(3)}</td>
                    <td className="right">
                      {engine ? shownText(show(certain(engine.engineSpeed), 'angularSpeed', units)) : '–'}
                    </td>
                    <td className="right">{force === null ? '–' : shownText(show(certain(force), 'force', units))}</td>
                    <td>
                      <Lowest train={train} />
                    </td>
                    <td>{buyText(train)}</td>
                    {keys.map((one) => (
                      <td key={one} className="right">
                        {measureText(train, one, units)}
                      </td>
                    ))}
                  </tr>
                  {opened && (
                    <tr className="train-more-row">
                      <td colSpan={columns} id={`${id}-${k}`}>
                        <Opened train={train} stale={stale} units={units} onApply={() => onApply(train)} />
                      </td>
                    </tr>
                  )}
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </Wide>
      <div className="train-drawn">
        {tick([], 'the build as drawn')}{' '}
        <span className="lead">Compare with the build as drawn; up to four at once.</span>
      </div>
      <p className="note">
        The lowest reserve against breaking is that of the whole build with the train, at the middle of all ranges; it
        is shown and never ranks. Parts are counted stage by stage; where two stages share a slot, the list of parts is
        that of the train as it is fitted.
      </p>
    </>
  );
}

/** A sprocket is named by its chain and its teeth. */
const buyText = ({ toBuy }: RankedTrain): string =>
  toBuy.length === 0 ? 'nothing' : toBuy.map((part) => part.replace(/^sprocket /, '')).join(', ');

function Lowest({ train }: { readonly train: RankedTrain }): JSX.Element {
  const { weakest } = train.strength;
  if (weakest === null) return <span className="lead">not known</span>;
  return (
    <span className="train-lowest">
      <SeverityShape severity={weakest.severity} /> {reserveText(weakest.reserve)}
    </span>
  );
}

function Opened(props: {
  readonly train: RankedTrain;
  readonly stale: boolean;
  readonly units: Props['units'];
  readonly onApply: () => void;
}): JSX.Element {
  const { train, stale, units, onApply } = props;
  const { weakest, fails, unknown } = train.strength;
  const drawn = train.patches.length === 0;
  return (
    <div className="train-opened">
      <ul className="plain-list">
        {changeLines(train, units).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {weakest && (
          <li>
            Lowest reserve: {weakest.title}, {weakest.element}, {reserveText(weakest.reserve)}, {weakest.severity}.
            {fails > 0 && ` ${fails} ${fails === 1 ? 'check fails' : 'checks fail'}.`}
            {unknown > 0 && ` ${unknown} not known.`}
          </li>
        )}
        {train.blanks.map(({ part, end, says }) => (
          <li key={part + end}>
            Buy {part}: {says}
          </li>
        ))}
      </ul>
      <button type="button" className="button" disabled={stale || drawn} onClick={onApply}>
        {drawn ? 'This is as drawn' : 'Take this train'}
      </button>
    </div>
  );
}
