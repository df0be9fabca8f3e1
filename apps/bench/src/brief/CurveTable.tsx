import type { Fault } from '@oddwheel/build/fault';
import { fromSi } from '@oddwheel/quantity/units';
import { type ClipboardEvent, type JSX, type KeyboardEvent, useState } from 'react';
import { digits } from '../numbers/shown.ts';
import { symbolOf } from './CurveLines.tsx';
import { type Row, sizesOf } from './curve-scale.ts';
import type { Curve } from './sections.ts';

interface Props {
  readonly curve: Curve;
  /** Unit in which power is shown. */
  readonly power: string;
  readonly locked: boolean;
  readonly chosen: number | null;
  readonly onChoose: (row: number | null) => void;
  readonly onAdd: (row: Row) => Promise<readonly Fault[]>;
  readonly onMove: (index: number, row: Row) => Promise<readonly Fault[]>;
  readonly onRemove: (index: number) => void;
  /** A whole table was pasted into a cell. */
  readonly onPaste: (text: string) => void;
}

/** Digits with a decimal point or comma; null for anything else. */
function numberIn(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^\d+(\.\d*)?$|^\.\d+$/.test(plain) ? Number(plain) : null;
}

/** The points of the curve as a table: all that the plot can do, by typing. */
export function CurveTable(props: Props): JSX.Element {
  const { curve, power, locked, chosen, onChoose, onAdd, onMove, onRemove, onPaste } = props;
  const [speedSize, torqueSize] = sizesOf(curve);
  const [speedUnit, torqueUnit] = [symbolOf(curve.speedUnit), symbolOf(curve.torqueUnit)];
  const pasted = (event: ClipboardEvent): void => {
    const text = event.clipboardData.getData('text/plain');
    if (!text.trim().includes('\n')) return;
    event.preventDefault();
    // Columns without a head are in the units of this table.
    onPaste(/[a-z]/i.test(text) ? text : `${curve.speedUnit}\t${curve.torqueUnit}\n${text}`);
  };
  return (
    <table className="plain-table curve-table" onPaste={locked ? undefined : pasted}>
      <caption className="hidden-name">Points of the torque curve</caption>
      <thead>
        <tr>
          <th scope="col">point</th>
          <th scope="col" className="right">
            {speedUnit}
          </th>
          <th scope="col" className="right">
            {torqueUnit}
          </th>
          <th scope="col" className="right">
            {power}
          </th>
          <th scope="col">
            <span className="hidden-name">take out</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {curve.rows.map(([speed, torque], index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the curve
          <tr key={index} aria-current={chosen === index ? 'true' : undefined} onFocus={() => onChoose(index)}>
            <th scope="row">{index + 1}</th>
            <td className="right">
              <Cell
                name={`Speed of point ${index + 1}, ${speedUnit}`}
                value={speed}
                locked={locked}
                onValue={(value) => onMove(index, [value, torque])}
              />
            </td>
            <td className="right">
              <Cell
                name={`Torque of point ${index + 1}, ${torqueUnit}`}
                value={torque}
                locked={locked}
                onValue={(value) => onMove(index, [speed, value])}
              />
            </td>
            <td className="right">
              <span className="derived">
                {digits(fromSi('power', power, speed * speedSize * torque * torqueSize), 1)}
              </span>
            </td>
            <td>
              <button
                type="button"
                className="link"
                disabled={locked}
                aria-label={`Take out point ${index + 1}`}
                onClick={() => onRemove(index)}
              >
                Take out
              </button>
            </td>
          </tr>
        ))}
        <NewRow speedUnit={speedUnit} torqueUnit={torqueUnit} locked={locked} onAdd={onAdd} />
      </tbody>
    </table>
  );
}

/** One number of the table: kept with Enter or on leaving, taken back with Escape. */
function Cell(props: {
  name: string;
  value: number;
  locked: boolean;
  onValue: (value: number) => Promise<readonly Fault[]>;
}): JSX.Element {
  const { name, value, locked, onValue } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const keep = async (): Promise<void> => {
    if (draft === null) return;
    const number = numberIn(draft);
    const refused = number === null || (number !== value && (await onValue(number)).length > 0);
    setWrong(refused);
    if (!refused) setDraft(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') void keep();
    else if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      setDraft(null);
      setWrong(false);
    }
  };
  return (
    <input
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={name}
      aria-invalid={wrong}
      disabled={locked}
      className={wrong ? 'wrong' : ''}
      value={draft ?? String(value)}
      onChange={(event) => setDraft(event.target.value)}
      onKeyDown={onKeyDown}
      onBlur={() => void keep()}
    />
  );
}

function NewRow(props: {
  speedUnit: string;
  torqueUnit: string;
  locked: boolean;
  onAdd: (row: Row) => Promise<readonly Fault[]>;
}): JSX.Element {
  const { speedUnit, torqueUnit, locked, onAdd } = props;
  const [typed, setTyped] = useState({ speed: '', torque: '' });
  const [speed, torque] = [numberIn(typed.speed), numberIn(typed.torque)];
  const ready = !locked && speed !== null && torque !== null;
  const add = async (): Promise<void> => {
    if (!ready) return;
    if ((await onAdd([speed, torque])).length === 0) setTyped({ speed: '', torque: '' });
  };
  const input = (key: 'speed' | 'torque', name: string): JSX.Element => (
    <input
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={name}
      disabled={locked}
      value={typed[key]}
      onChange={(event) => setTyped({ ...typed, [key]: event.target.value })}
      onKeyDown={(event) => {
        if (event.key === 'Enter') void add();
      }}
    />
  );
  return (
    <tr className="new-point">
      <th scope="row">new</th>
      <td className="right">{input('speed', `Speed of a new point, ${speedUnit}`)}</td>
      <td className="right">{input('torque', `Torque of a new point, ${torqueUnit}`)}</td>
      <td />
      <td>
        <button type="button" className="link" disabled={!ready} onClick={() => void add()}>
          Add the point
        </button>
      </td>
    </tr>
  );
}
