import type { Finding, PathElement, ReserveMark, ShaftPlace } from '@oddwheel/build/assess/types';
import { type CSSProperties, type JSX, memo } from 'react';
import { SeverityShape } from '../face/Severity.tsx';
import { ReserveBar } from '../findings/ReserveBar.tsx';
import { type Marks, marksWords } from '../notes/marks.ts';
import { reserveText, type Shown, shownText, withoutNumber } from '../numbers/shown.ts';
import { isStage, type PathCell, pathRows } from './rows.ts';
import { UnrolledDrive } from './UnrolledDrive.tsx';

interface Props {
  readonly path: readonly PathElement[];
  readonly shafts: readonly ShaftPlace[];
  readonly findings: readonly Finding[];
  readonly units: Readonly<Record<string, string>>;
  /** Notes and pictures of each column. */
  readonly marks: ReadonlyMap<string, Marks>;
  readonly selected: string | null;
  /** With the drawing, the powers and the worst case; folded, the table says what is here only. */
  readonly open: boolean;
  readonly onSelect: (address: string) => void;
  readonly onOpen: (open: boolean) => void;
}

/** The path of power, engine to ground: the drive in symbols, and its table. A column's heading takes its element into the inspector. */
export const PathTable = memo(function PathTable(props: Props): JSX.Element {
  const { path, findings, units, selected, open, onSelect } = props;
  const column = (element: PathElement): string =>
    [element.address === selected ? 'selected moves' : 'moves', isStage(element) ? 'lead' : ''].join(' ').trim();
  const key = (element: PathElement): string => element.address + element.kind;
  return (
    <div className="path-scroll">
      <table
        className={open ? 'path-table open' : 'path-table'}
        style={{ '--columns': path.length } as CSSProperties & Record<'--columns', number>}
      >
        <caption className="hidden-name">
          Path of power, engine to ground, at the gear and road speed of the slider
        </caption>
        <thead>
          <tr>
            <th scope="col" className="row-name">
              Path
              <button type="button" className="link fold" aria-expanded={open} onClick={() => props.onOpen(!open)}>
                {open ? 'fold' : 'unfold'}
              </button>
            </th>
            {path.map((element) => (
              <th key={key(element)} scope="col" className={element.address === selected ? 'selected moves' : 'moves'}>
                <button
                  type="button"
                  className="column-button"
                  aria-pressed={element.address === selected}
                  onClick={() => onSelect(element.address)}
                >
                  {element.name}
                  <ColumnMarks marks={props.marks.get(element.address)} />
                </button>
              </th>
            ))}
          </tr>
          {open && (
            <tr className="drawn">
              <td className="row-name" />
              <td colSpan={path.length}>
                <UnrolledDrive path={path} shafts={props.shafts} selected={selected} onSelect={onSelect} />
              </td>
            </tr>
          )}
        </thead>
        <tbody>
          {pathRows(units)
            .filter((row) => open || row.always)
            .map((row) => (
              <tr key={row.name}>
                <th scope="row" className="row-name">
                  {row.name}
                </th>
                {path.map((element) => (
                  <td key={key(element)} className={column(element)}>
                    <Cell cell={row.of(element)} />
                  </td>
                ))}
              </tr>
            ))}
          {(open ? (['reserveHere', 'worst'] as const) : (['reserveHere'] as const)).map((which) => (
            <tr key={which} className={`reserves ${which}`}>
              <th scope="row" className="row-name">
                {which === 'worst' ? 'worst case' : 'reserve here'}
              </th>
              {path.map((element) => (
                <td key={key(element)} className={column(element)}>
                  <Mark mark={element[which]} element={element} />
                  {open && which === 'reserveHere' && <SmallBar mark={element[which]} findings={findings} />}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
});

/** A sheet with its corner turned down for notes, a frame for pictures; the words beside say how many. */
function ColumnMarks({ marks }: { marks: Marks | undefined }): JSX.Element | null {
  if (!marks) return null;
  return (
    <span className="column-marks">
      <svg viewBox="0 0 10 10" aria-hidden="true">
        <path d={marks.notes > 0 ? 'M1.5 .5h4.5l3 3v6h-7.5zM6 .5v3h3' : 'M.5 1.5h9v7h-9zM.5 7l3-3 3 3 1.5-1.5 2 2'} />
      </svg>
      <span className="hidden-name">, has </span>
      {marksWords(marks)}
    </span>
  );
}

function Cell({ cell }: { cell: PathCell | null }): JSX.Element | null {
  if (cell === null) return null;
  if ('shown' in cell)
    return (
      <>
        <Amount shown={cell.shown} />
        {cell.word !== '' && ` ${cell.word}`}
      </>
    );
  return (
    <>
      {cell.teeth}
      {cell.teeth !== null && cell.ratio !== null && ', '}
      {cell.teeth === null && 'ratio '}
      {cell.ratio !== null && <Amount shown={cell.ratio} />}
    </>
  );
}

function Amount({ shown }: { shown: Shown }): JSX.Element {
  return <span className="number">{shownText(shown)}</span>;
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

/** The reserve bar of a mark, small; the number beside it says the same. */
function SmallBar(props: { mark: ReserveMark | null; findings: readonly Finding[] }): JSX.Element | null {
  const { mark, findings } = props;
  const finding = mark && findings.find((one) => one.id === mark.finding);
  if (!finding || mark.reserve === null) return null;
  const { reserve } = mark;
  return (
    <span className="small-bar">
      <ReserveBar
        severity={mark.severity}
        reserve={{ value: reserve, lo: reserve, hi: reserve }}
        wanted={finding.wanted}
      />
    </span>
  );
}
