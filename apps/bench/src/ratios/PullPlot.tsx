import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Spread } from '@oddwheel/build/assess/types';
import { type JSX, memo, useMemo } from 'react';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import { Plot } from '../plots/Plot.tsx';
import { gearOf, gradeName, mostPull, mostSpeed, type PullLimit, pullCurves, valueAt } from './curves.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Props {
  readonly curves: RoadCurves;
  readonly limits: readonly PullLimit[];
  readonly gear: string;
  readonly speed: number;
  /** Pull at the ground there, as the path has it. */
  readonly pull: Spread | null;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
  readonly height: number;
}

/** Pull of each gear against what resists. */
export const PullPlot = memo(function PullPlot(props: Props): JSX.Element {
  const { curves, limits, gear, speed, pull, units, shop, height } = props;
  const x = useMemo(() => {
    return {
      name: 'road speed',
      unit: unitOf('speed', units),
      size: unitSize('speed', units),
      low: 0,
      high: mostSpeed(curves),
    };
  }, [curves, units]);
  const lines = useMemo(() => pullCurves(curves, limits, gear, units), [curves, limits, gear, units]);
  const y = useMemo(() => {
    const limits = lines
      .filter((line) => line.look === 'limit')
      .flatMap((line) => line.points.map((point) => point[1]));
    const high = Math.max(mostPull(curves), ...limits) * 1.03;
    return { name: 'pull at the ground', unit: unitOf('force', units), size: unitSize('force', units), low: 0, high };
  }, [curves, lines, units]);
  const here = gearOf(curves, gear);
  const atGear = here && valueAt(here.pulls, speed);
  const level = curves.loads.find((load) => load.grade === 0);
  const against = level ? valueAt(level.points, speed) : null;
  const force = (value: number): string => shownText(show(certain(value), 'force', units, 3));
  const above = limits.filter((limit) => !lines.some((line) => line.key === limit.key));
  const strongest = force(mostPull(curves));
  return (
    <Plot
      heading="Pull against road load"
      says={`Pull at the ground in ${curves.gears.length === 1 ? 'the one gear' : `${curves.gears.length} gears`} over the road speed, ${strongest} at most, against what resists on a road that is ${curves.loads.map((load) => gradeName(load.grade, units)).join(', ')}. The numbers stand in the table below.`}
      x={x}
      y={y}
      curves={lines}
      cursor={{ across: 'x', at: speed }}
      dots={[
        ...(atGear === null ? [] : [[speed, atGear] as const]),
        ...(against === null ? [] : [[speed, against] as const]),
      ]}
      reading={
        <>
          At {shownText(show(certain(speed), 'speed', units, 3))} in {here?.name ?? gear} gear
          {pull === null || against === null ? (
            ' the pull is not known.'
          ) : (
            <>
              {' '}
              the drive pulls <span className="whole">{shownText(show(pull, 'force', units, 3))}</span> and the level
              road resists with <span className="whole">{force(against)}</span>: <b>{surplus(pull, against, units)}</b>.
            </>
          )}
          {above.map((limit) => (
            <span key={limit.key} className="lead">
              {' '}
              Above the plot: {limit.text} at <span className="whole">{force(limit.force)}</span>.
            </span>
          ))}
        </>
      }
      table={<PullTable curves={curves} limits={limits} units={units} />}
      shop={shop}
      height={height}
    />
  );
});

/** Pull less load, with the pull's own give. */
function surplus(pull: Spread, against: number, units: Props['units']): string {
  const sign = pull.value >= against ? 1 : -1;
  const ends = [sign * (pull.lo - against), sign * (pull.hi - against)] as const;
  const left = { value: sign * (pull.value - against), lo: Math.min(...ends), hi: Math.max(...ends) };
  return `${shownText(show(left, 'force', units, 3))} ${sign > 0 ? 'left' : 'short'}`;
}

/** Rows of the table. */
const ROWS = 12;

const PullTable = memo(function PullTable(props: Pick<Props, 'curves' | 'limits' | 'units'>): JSX.Element {
  const { curves, limits, units } = props;
  const top = mostSpeed(curves);
  const speeds = Array.from({ length: ROWS + 1 }, (_, k) => (top * k) / ROWS);
  const cell = (value: number | null): string =>
    value === null ? '–' : show(certain(value), 'force', units, 3).number;
  return (
    <>
      <p className="note">
        Speeds in {unitOf('speed', units)}, forces in {unitOf('force', units)}. Grip is named by its friction.
        {limits.map((limit) => ` ${limit.text}: ${cell(limit.force)}.`)}
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">road speed</th>
            {curves.gears.map(({ gear, name }) => (
              <th key={gear} scope="col" className="right">
                {name}
              </th>
            ))}
            {curves.loads.map(({ grade }) => (
              <th key={grade} scope="col" className="right">
                {gradeName(grade, units)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {speeds.map((speed) => (
            <tr key={speed}>
              <th scope="row">{show(certain(speed), 'speed', units, 3).number}</th>
              {curves.gears.map(({ gear, pulls }) => (
                <td key={gear} className="right">
                  {cell(valueAt(pulls, speed))}
                </td>
              ))}
              {curves.loads.map(({ grade, points }) => (
                <td key={grade} className="right">
                  {cell(valueAt(points, speed))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
});
