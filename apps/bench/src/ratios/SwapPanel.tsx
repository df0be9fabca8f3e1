import type { RatioChoices, SwapRow } from '@oddwheel/build/ratios/types';
import { type JSX, useId, useState } from 'react';
import { Panel } from '../layout-panels/Panel.tsx';
import { show, shownText, unitOf } from '../numbers/shown.ts';
import { Wide } from '../plots/Wide.tsx';
import type { SwapAnswer } from '../worker/ratios-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { readTeeth } from './train-form.ts';
import { changeLines } from './train-words.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });
/** Teeth to either side of the drawn ones that are tried at first. */
const BESIDE = 3;
/** Teeth tried at once at most. */
const MOST = 60;

interface Props {
  readonly model: RemoteModel;
  readonly hash: string;
  readonly stages: RatioChoices['stages'];
  readonly units: Readonly<Record<string, string>>;
  readonly onApply: (row: SwapRow) => void;
}

/** What each sprocket, pulley or gear would do in one place, all else as drawn. */
export function SwapPanel({ model, hash, stages, units, onApply }: Props): JSX.Element | null {
  const id = useId();
  const [place, setPlace] = useState<string | null>(null);
  const [typed, setTyped] = useState<string | null>(null);
  const [shelf, setShelf] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const [rows, setRows] = useState<(SwapAnswer & { readonly hash: string; readonly of: string }) | null>(null);
  const [busy, setBusy] = useState(false);
  const places = stages.flatMap(({ stage, name, kind, driver, driven }) => [
    {
      key: `${stage}/driver`,
      stage,
      end: 'driver' as const,
      kind,
      name: `${name}, driver, ${driver} teeth`,
      drawn: driver,
    },
    {
      key: `${stage}/driven`,
      stage,
      end: 'driven' as const,
      kind,
      name: `${name}, driven, ${driven} teeth`,
      drawn: driven,
    },
  ]);
  const chosen = places.find(({ key }) => key === place) ?? places[0];
  if (!chosen) return null;
  // Another place has other teeth: what was typed for the one before does not count there.
  const go = (next: string): void => {
    setPlace(next);
    setTyped(null);
    setFault(null);
    setShelf(false);
  };
  const text = typed ?? `${chosen.drawn - BESIDE}..${chosen.drawn + BESIDE}`;
  const work = async (): Promise<void> => {
    const range = readTeeth(text);
    const read = shelf ? 'shelf' : range && range[1] - range[0] < MOST ? range : null;
    setFault(
      read === null
        ? `${text || 'Nothing'} was read. A range such as 13..19 is accepted, of up to ${MOST} teeth.`
        : null,
    );
    if (read === null) return;
    setBusy(true);
    try {
      const outcome = await model.swapTable({ stage: chosen.stage, end: chosen.end, teeth: read });
      if (outcome?.ok) setRows({ ...outcome.answer, hash, of: chosen.name });
      else if (outcome) setFault(outcome.says);
    } catch (why) {
      setFault(why instanceof Error ? why.message : String(why));
    }
    setBusy(false);
  };
  const stale = rows !== null && rows.hash !== hash;
  return (
    <Panel name="One tooth more">
      <p className="lead">What other teeth would do in one place, with all else as drawn.</p>
      <div className="train-more">
        <div className="field">
          <label htmlFor={`${id}-place`}>Place</label>
          <select id={`${id}-place`} value={chosen.key} onChange={(event) => go(event.target.value)}>
            {places.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${id}-teeth`}>Teeth to try</label>
          <input
            id={`${id}-teeth`}
            type="text"
            autoComplete="off"
            className={fault === null ? '' : 'wrong'}
            aria-invalid={fault !== null}
            disabled={shelf}
            value={text}
            onChange={(event) => setTyped(event.target.value)}
          />
        </div>
        {chosen.kind === 'chain' && (
          <label className="tick">
            <input type="checkbox" checked={shelf} onChange={(event) => setShelf(event.target.checked)} /> those on the
            shelf
          </label>
        )}
      </div>
      {fault !== null && (
        <p className="fails" role="alert">
          {fault}
        </p>
      )}
      <div className="train-deeds">
        <button type="button" className="button" disabled={busy} onClick={() => void work()}>
          Try these teeth
        </button>
        {busy && <span className="lead">working</span>}
      </div>
      {rows && (
        <>
          {stale && <p className="thin">The build has changed since. Try the teeth again before one is taken.</p>}
          <SwapTable rows={rows} name={rows.of} stale={stale} units={units} onApply={onApply} />
        </>
      )}
    </Panel>
  );
}

function SwapTable(props: {
  readonly rows: SwapAnswer;
  readonly name: string;
  readonly stale: boolean;
  readonly units: Props['units'];
  readonly onApply: (row: SwapRow) => void;
}): JSX.Element {
  const { rows: answer, name, stale, units, onApply } = props;
  const { rows, roadSpeed } = answer;
  const gears = rows[0]?.gears ?? [];
  const turns = (value: number): string => show(certain(value), 'angularSpeed', units, 3).number;
  return (
    <>
      <p className="note">
        {name}. Each gear with its overall reduction, and below it the engine speed at{' '}
        {shownText(show(certain(roadSpeed), 'speed', units, 3))} in {unitOf('angularSpeed', units)}.
      </p>
      <Wide name={`Other teeth in ${name}`}>
        <table className="plain-table swap-table">
          <thead>
            <tr>
              <th scope="col">teeth</th>
              {gears.map(({ gear }) => (
                <th key={gear} scope="col" className="right">
                  {gear}
                </th>
              ))}
              <th scope="col" className="right">
                pull in 1st
              </th>
              <th scope="col">what it takes</th>
              <th scope="col">
                <span className="hidden-name">take it</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.teeth} className={row.drawn ? 'chosen' : undefined}>
                <th scope="row">
                  {row.teeth}
                  <span className="lead swap-note">
                    {row.drawn ? 'drawn' : row.onShelf > 0 ? `${row.onShelf} on the shelf` : ''}
                  </span>
                </th>
                {row.gears.map(({ gear, overall, engineSpeed }) => (
                  <td key={gear} className="right">
                    {show(certain(overall), 'number', units, 4).number}
                    <span className="lead swap-note">{Number.isNaN(engineSpeed) ? '–' : turns(engineSpeed)}</span>
                  </td>
                ))}
                <td className="right">
                  {row.gears[0]?.force == null ? '–' : shownText(show(certain(row.gears[0].force), 'force', units, 4))}
                </td>
                <td className="swap-takes">{changeLines(row, units).join(' ')}</td>
                <td>
                  {!row.drawn && (
                    <button type="button" className="link" disabled={stale} onClick={() => onApply(row)}>
                      Take<span className="hidden-name"> {row.teeth} teeth</span>
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </>
  );
}
