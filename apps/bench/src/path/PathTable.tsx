import type { PathElement, ReserveMark } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { SeverityShape } from '../face/Severity.tsx';
import { reserveText, type Shown, withoutNumber } from '../numbers/shown.ts';
import { type PathCell, pathRows } from './rows.ts';

interface Props {
  readonly path: readonly PathElement[];
  readonly units: Readonly<Record<string, string>>;
  readonly selected: string | null;
  readonly onSelect: (address: string) => void;
}

/** The path of power as a table, engine to ground. A column's heading takes its element into the inspector. */
export const PathTable = memo(function PathTable({ path, units, selected, onSelect }: Props): JSX.Element {
  const column = (element: PathElement): string => (element.address === selected ? 'selected moves' : 'moves');
  return (
    <div className="path-scroll">
      <table className="path-table">
        <caption className="hidden-name">
          Path of power, engine to ground, at the gear and road speed of the slider
        </caption>
        <thead>
          <tr>
            <th scope="col" className="row-name">
              Path
            </th>
            {path.map((element) => (
              <th key={element.address + element.kind} scope="col" className={column(element)}>
                <button
                  type="button"
                  className="column-button"
                  aria-pressed={element.address === selected}
                  onClick={() => onSelect(element.address)}
                >
                  {element.name}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {pathRows(units).map((row) => (
            <tr key={row.name}>
              <th scope="row" className="row-name">
                {row.name}
              </th>
              {path.map((element) => (
                <td key={element.address + element.kind} className={column(element)}>
                  <Cell cell={row.of(element)} />
                </td>
              ))}
            </tr>
          ))}
          {(['reserveHere', 'worst'] as const).map((key) => (
            <tr key={key} className={`reserves ${key}`}>
              <th scope="row" className="row-name">
                {key === 'worst' ? 'worst case' : 'reserve here'}
              </th>
              {path.map((element) => (
                <td key={element.address + element.kind} className={column(element)}>
                  <Mark mark={element[key]} element={element} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
});

function Cell({ cell }: { cell: PathCell | null }): JSX.Element | null {
  if (cell === null) return null;
  if ('shown' in cell) return <Amount shown={cell.shown} />;
  return (
    <>
      {cell.teeth}
      {cell.teeth !== null && cell.ratio !== null && ' '}
      {cell.ratio !== null && (
        <span className="lead">
          {cell.teeth === null && 'ratio '}
          <Amount shown={cell.ratio} />
        </span>
      )}
    </>
  );
}

function Amount({ shown }: { shown: Shown }): JSX.Element {
  return (
    <span className="number">
      {shown.number}
      {shown.give !== null && <span className="give">{` ± ${shown.give}`}</span>}
      {shown.unit !== '' && ` ${shown.unit}`}
    </span>
  );
}

function Mark({ mark, element }: { mark: ReserveMark | null; element: PathElement }): JSX.Element {
  if (mark === null)
    return (
      <span className="lead">
        {element.kind === 'engine' || element.kind === 'gearbox' ? 'maker’s own' : 'no check'}
      </span>
    );
  return (
    <span className={`severity ${mark.severity}`}>
      <SeverityShape severity={mark.severity} />
      {mark.reserve !== null ? (
        reserveText(mark.reserve)
      ) : mark.severity === 'unknown' ? (
        <span aria-hidden="true">unknown</span>
      ) : (
        withoutNumber(mark.severity)
      )}
    </span>
  );
}
