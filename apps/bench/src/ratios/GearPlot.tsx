import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Spread } from '@oddwheel/build/assess/types';
import { type JSX, memo, useMemo } from 'react';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import { Plot } from '../plots/Plot.tsx';
import { engineCurves, gearOf, mostSpeed } from './curves.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Props {
  readonly curves: RoadCurves;
  readonly gear: string;
  readonly speed: number;
  /** Engine speed there, as the path has it. */
  readonly engine: Spread | null;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
  readonly height: number;
}

/** Engine speed over road speed in each gear, with the shifts, beside the reference vehicle. */
export const GearPlot = memo(function GearPlot(props: Props): JSX.Element {
  const { curves, gear, speed, engine, units, shop, height } = props;
  const { redline, reference, gears } = curves;
  const x = useMemo(() => {
    return {
      name: 'road speed',
      unit: unitOf('speed', units),
      size: unitSize('speed', units),
      low: 0,
      high: mostSpeed(curves),
    };
  }, [curves, units]);
  const y = useMemo(() => {
    const size = unitSize('angularSpeed', units);
    return { name: 'engine speed', unit: unitOf('angularSpeed', units), size, low: 0, high: redline * 1.02 };
  }, [redline, units]);
  const lines = useMemo(() => engineCurves(curves, gear), [curves, gear]);
  const here = gearOf(curves, gear);
  const turns = (value: number): string => shownText(show(certain(value), 'angularSpeed', units, 3));
  const there = reference?.gears[Number(gear) - 1];
  return (
    <Plot
      heading="Speed in gears"
      says={`Engine speed over road speed in ${gears.length === 1 ? 'the one gear' : `${gears.length} gears`}, from idle to ${turns(redline)} at the redline${reference ? `, and dotted that of the reference vehicle, ${reference.name}` : ''}. The numbers stand in the table below.`}
      x={x}
      y={y}
      curves={lines}
      cursor={{ across: 'x', at: speed }}
      dots={here ? [[speed, speed * here.turns]] : []}
      reading={
        <>
          <span className="whole">{shownText(show(certain(speed), 'speed', units, 3))}</span> in {here?.name ?? gear}{' '}
          gear{' '}
          {engine === null ? (
            'is not known in engine speed'
          ) : (
            <>
              turns the engine at <b>{shownText(show(engine, 'angularSpeed', units, 3))}</b>
            </>
          )}
          {reference && there && (
            <>
              ; {reference.name} would turn at <span className="whole">{turns(speed * there.turns)}</span>
            </>
          )}
          .
        </>
      }
      table={<ShiftTable curves={curves} units={units} />}
      shop={shop}
      height={height}
    />
  );
});

const ShiftTable = memo(function ShiftTable(props: Pick<Props, 'curves' | 'units'>): JSX.Element {
  const { curves, units } = props;
  const { gears, reference } = curves;
  const speed = (value: number): string => show(certain(value), 'speed', units, 3).number;
  const turns = (value: number): string => show(certain(value), 'angularSpeed', units, 3).number;
  return (
    <>
      <p className="note">
        Speeds of the road in {unitOf('speed', units)}, of the engine in {unitOf('angularSpeed', units)}.
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">gear</th>
            <th scope="col" className="right">
              at idle
            </th>
            <th scope="col" className="right">
              at redline
            </th>
            <th scope="col" className="right">
              next gear from
            </th>
            <th scope="col" className="right">
              engine before
            </th>
            <th scope="col" className="right">
              engine after
            </th>
            {reference && (
              <th scope="col" className="right">
                reference at redline
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {gears.map(({ gear, name, atIdle, atRedline, shift }, k) => {
            const there = reference?.gears[k];
            return (
              <tr key={gear}>
                <th scope="row">{name}</th>
                <td className="right">{speed(atIdle)}</td>
                <td className="right">{speed(atRedline)}</td>
                <td className="right">{shift ? speed(shift.speed) : '–'}</td>
                <td className="right">{shift ? turns(shift.engineBefore) : '–'}</td>
                <td className="right">{shift ? turns(shift.engineAfter) : '–'}</td>
                {reference && <td className="right">{there ? speed(curves.redline / there.turns) : '–'}</td>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
});
