import type { Use } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { reserveText, show, unitOf } from '../numbers/shown.ts';
import type { Point } from '../plots/labels.ts';
import { type AlongCurve, type AlongRow, type KnownLine, lengthNumber, rowsOf, valuesAt } from './shaft-rows.ts';
import { WideTable } from './WideTable.tsx';

type Units = Readonly<Record<string, string>>;

const certain = (value: number) => ({ value, lo: value, hi: value });
const reserve = (value: number | null): string =>
  value === null ? 'no load' : value > 999 ? 'over 999' : reserveText(value);

/** The places of a shaft, what each bears over all cases, and how thin it could be. */
export const PlacesTable = memo(function PlacesTable(props: {
  line: KnownLine;
  governs: number | null;
  units: Units;
}): JSX.Element {
  const { line, governs, units } = props;
  const length = (value: number): string => lengthNumber(value, units);
  const unit = unitOf('length', units);
  return (
    <WideTable label={`Places of ${line.name}`}>
      <table className="figures places">
        <caption>Places along the shaft: reserves over all cases</caption>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col" className="number">
              Station, {unit}
            </th>
            <th scope="col" className="number">
              Ø there, {unit}
            </th>
            <th scope="col" className="number">
              Yield
            </th>
            <th scope="col" className="number">
              Fatigue
            </th>
            <th scope="col" className="number">
              Ø that would just do, {unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {line.places.map((place) => (
            <tr key={place.station} className={place.station === governs ? 'governs' : undefined}>
              <th scope="row">
                {place.name}
                {place.station === governs && <span className="note"> governs</span>}
              </th>
              <td className="number">{length(place.station)}</td>
              <td className="number">{length(place.diameter)}</td>
              <td className={place.yieldReserve !== null && place.yieldReserve < 1 ? 'number fails' : 'number'}>
                {reserve(place.yieldReserve)}
              </td>
              <td className={place.fatigueReserve !== null && place.fatigueReserve < 1 ? 'number fails' : 'number'}>
                {reserve(place.fatigueReserve)}
              </td>
              <td className="number">{place.least === null ? '–' : length(place.least)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  );
});

/** Values at a station as they stand in the table: before and after, where something jumps there. */
function cell(points: readonly Point[], station: number, use: Use, units: Units): string {
  const texts = valuesAt(points, station).map((value) => show(certain(value), use, units, 3).number);
  return [...new Set(texts)].join(' to ');
}

const headOf = (row: AlongRow, curve: AlongCurve): string =>
  curve.text === '' ? row.name : `${row.name}, ${curve.text}`;

/** The curves as numbers, at the ends, the bearings and every place. */
export const CurvesTable = memo(function CurvesTable({ line, units }: { line: KnownLine; units: Units }): JSX.Element {
  const rows = rowsOf(line);
  const names = new Map<number, string>();
  for (const { station, name } of [...line.places, ...line.bearings]) names.set(station, name);
  const stations = [...names.keys()].sort((a, b) => a - b);
  return (
    <WideTable label={`${line.name} along its length`}>
      <table className="figures along">
        <caption>Along the shaft: {line.caseName}</caption>
        <thead>
          <tr>
            <th scope="col">Station, {unitOf('length', units)}</th>
            {rows.flatMap((row) =>
              row.curves.map((curve) => (
                <th key={`${row.key} ${curve.key}`} scope="col" className="number">
                  {headOf(row, curve)},{' '}
                  {row.use === 'angle' && unitOf('angle', units) === '°' ? 'degrees' : unitOf(row.use, units)}
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {stations.map((station) => (
            <tr key={station}>
              <th scope="row">
                {lengthNumber(station, units)} <span className="note">{names.get(station)}</span>
              </th>
              {rows.flatMap((row) =>
                row.curves.map((curve) => (
                  <td key={`${row.key} ${curve.key}`} className="number">
                    {cell(curve.points, station, row.use, units)}
                  </td>
                )),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  );
});

/** What goes on at one station, in words. */
export const StationReading = memo(function StationReading(props: {
  line: KnownLine;
  station: number;
  units: Units;
}): JSX.Element {
  const { line, station, units } = props;
  return (
    <dl className="station-reading">
      {rowsOf(line).map((row) => {
        const unit = unitOf(row.use, units);
        return (
          <div key={row.key}>
            <dt>{row.name}</dt>
            {row.curves.map(({ key, text, points }) => (
              <dd key={key}>
                {cell(points, station, row.use, units)}
                {unit === '°' ? '°' : ` ${unit}`} <span className="lead">{text}</span>
              </dd>
            ))}
          </div>
        );
      })}
    </dl>
  );
});
