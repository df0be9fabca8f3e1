import type { RoadCurves, RunPoint } from '@oddwheel/build/assess/road/curve-types';
import type { Known, Sprint } from '@oddwheel/build/assess/road/types';
import { type JSX, memo, useMemo } from 'react';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import { Plot } from '../plots/Plot.tsx';
import { isNotKnown, plainText, runCurves, valueAt } from './curves.ts';
import { NotYet } from './NotYet.tsx';

const certain = (value: number) => ({ value, lo: value, hi: value });
const NO_POINTS = { points: [], wanted: null } as const;

interface Props {
  readonly run: RoadCurves['run'];
  readonly sprint: Known<Sprint>;
  readonly speed: number;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
  readonly height: number;
  readonly onReveal: (address: string) => void;
}

/** Speed over time from standstill at full throttle, with the speed asked for. */
export const RunPlot = memo(function RunPlot(props: Props): JSX.Element {
  const { run, sprint, speed, units, shop, height, onReveal } = props;
  const known = isNotKnown(run) ? NO_POINTS : run;
  const end = known.points.at(-1) ?? { time: 10, speed: 10 };
  const x = useMemo(() => {
    const high = Math.max(end.time, 1.03 * (known.wanted ?? 0));
    return { name: 'time', unit: unitOf('time', units), size: unitSize('time', units), low: 0, high };
  }, [end.time, known.wanted, units]);
  const y = useMemo(() => {
    return {
      name: 'road speed',
      unit: unitOf('speed', units),
      size: unitSize('speed', units),
      low: 0,
      high: end.speed * 1.02,
    };
  }, [end.speed, units]);
  const lines = useMemo(() => (isNotKnown(run) ? [] : runCurves(run, sprint, units)), [run, sprint, units]);
  // Speed falls a little in each shift: the first time counts.
  const after = known.points.findIndex((point) => point.speed >= speed);
  const [upTo, before] = [known.points[after], known.points[after - 1]];
  const time =
    upTo && before
      ? valueAt(
          [
            [before.speed, before.time],
            [upTo.speed, upTo.time],
          ],
          speed,
        )
      : null;
  const speedText = shownText(show(certain(speed), 'speed', units, 3));
  const timeText = (value: number): string => shownText(show(certain(value), 'time', units, 2));
  return (
    <Plot
      heading="Speeding up"
      says={`Speed over time at full throttle from standstill, up to ${shownText(show(certain(end.speed), 'speed', units, 3))} after ${timeText(end.time)}. The numbers stand in the table below.`}
      x={x}
      y={y}
      curves={lines}
      cursor={{ across: 'y', at: speed }}
      dots={time === null ? [] : [[time, speed]]}
      reading={
        isNotKnown(run) ? (
          <NotYet why={run} onReveal={onReveal} />
        ) : (
          <>
            {time === null ? (
              <>
                <span className="whole">{speedText}</span> is not reached within this run.
              </>
            ) : (
              <>
                From standstill <span className="whole">{speedText}</span> is reached after <b>{timeText(time)}</b>.
              </>
            )}{' '}
            {!isNotKnown(sprint) && sprint.shifts > 0 && (
              <span className="lead">Each shift takes {plainText(sprint.shiftTime, 'time', units)} without pull.</span>
            )}
          </>
        )
      }
      table={<RunTable points={known.points} units={units} />}
      shop={shop}
      height={height}
    />
  );
});

const RunTable = memo(function RunTable(props: { points: readonly RunPoint[]; units: Props['units'] }): JSX.Element {
  const { points, units } = props;
  return (
    <table className="plain-table">
      <thead>
        <tr>
          <th scope="col">time, {unitOf('time', units)}</th>
          <th scope="col" className="right">
            road speed, {unitOf('speed', units)}
          </th>
        </tr>
      </thead>
      <tbody>
        {points.map((point) => (
          <tr key={point.time}>
            <th scope="row">{show(certain(point.time), 'time', units, 3).number}</th>
            <td className="right">{show(certain(point.speed), 'speed', units, 3).number}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
});
