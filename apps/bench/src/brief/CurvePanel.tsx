import type { EditRequest } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import { toSi } from '@oddwheel/quantity/units';
import { type JSX, type ReactNode, useCallback, useState } from 'react';
import { unitOf } from '../numbers/shown.ts';
import { CurvePlot } from './CurvePlot.tsx';
import { CurveTable } from './CurveTable.tsx';
import type { Row } from './curve-scale.ts';
import { PasteTable } from './PasteTable.tsx';
import type { Curve } from './sections.ts';
import './curve.css';

interface Props {
  readonly curve: Curve | null;
  readonly units: Readonly<Record<string, string>>;
  readonly locked: boolean;
  /** Where the units of the curve are chosen. */
  readonly children: ReactNode;
  /** Makes a change of the curve; gives what is wrong with it, empty when it was taken. */
  readonly onEdit: (request: EditRequest) => Promise<readonly Fault[]>;
}

const NONE: Curve = { speedUnit: 'rpm', torqueUnit: 'N.m', rows: [] };

/** The torque curve: drawn, as a table, and to be pasted from one. */
export function CurvePanel({ curve, units, locked, children, onEdit }: Props): JSX.Element {
  const [chosen, setChosen] = useState<number | null>(null);
  const [loose, setLoose] = useState<readonly Row[]>([]);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const symbol = unitOf('power', units);
  const shown = curve ?? { ...NONE, rows: loose };

  const ask = useCallback(
    async (request: EditRequest): Promise<readonly Fault[]> => {
      const wrong = await onEdit(request);
      setFaults(wrong);
      return wrong;
    },
    [onEdit],
  );
  /** Before there is a curve its points wait here; two of them make it. */
  const add = async ([speed, torque]: Row): Promise<readonly Fault[]> => {
    if (curve) return ask({ do: 'add curve point', speed, torque });
    const rows = [...loose.filter(([other]) => other !== speed), [speed, torque] as const].sort((a, b) => a[0] - b[0]);
    setLoose(rows);
    if (rows.length < 2) return [];
    const table = rows.map((row) => row.join('\t')).join('\n');
    const wrong = await ask({ do: 'paste curve', text: `${NONE.speedUnit}\t${NONE.torqueUnit}\n${table}` });
    if (wrong.length === 0) setLoose([]);
    return wrong;
  };
  const move = async (row: number, [speed, torque]: Row): Promise<readonly Fault[]> => {
    if (curve) return ask({ do: 'move curve point', row, speed, torque });
    setLoose(loose.map((one, index) => (index === row ? ([speed, torque] as const) : one)));
    return [];
  };
  const remove = (row: number): void => {
    if (curve) void ask({ do: 'remove curve point', row });
    else setLoose(loose.filter((_, index) => index !== row));
  };

  return (
    <section className="curve-panel" aria-labelledby="curve-heading">
      <h3 id="curve-heading">Torque curve at full throttle</h3>
      {curve === null && (
        <p className="lead">
          Not given in this build. Click its points on the plot, type them, or paste a table; until then the peaks stand
          for it.
        </p>
      )}
      <CurvePlot
        curve={shown}
        loose={curve === null}
        power={{ size: toSi('power', symbol, 1), symbol }}
        locked={locked}
        chosen={chosen}
        onChoose={setChosen}
        onAdd={(row) => void add(row)}
        onMove={async (index, row) => (await move(index, row)).length === 0}
        onRemove={remove}
      />
      {faults.length > 0 && (
        <ul className="curve-faults" role="alert">
          {faults.map((fault) => (
            <li key={`${fault.problem} ${fault.read}`}>
              {fault.problem} {fault.accepted}
            </li>
          ))}
        </ul>
      )}
      <details className="curve-points" open={curve === null}>
        <summary>Points as a table</summary>
        <CurveTable
          curve={shown}
          power={symbol}
          locked={locked}
          chosen={chosen}
          onChoose={setChosen}
          onAdd={add}
          onMove={move}
          onRemove={remove}
          onPaste={(text) => void ask({ do: 'paste curve', text })}
        />
        {children}
      </details>
      <PasteTable locked={locked} replaces={curve !== null} onPaste={(text) => onEdit({ do: 'paste curve', text })} />
    </section>
  );
}
