import type { ChainOverStroke } from '@oddwheel/build/assess/stroke/types';
import { type JSX, memo, useMemo } from 'react';
import { show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import type { Point } from '../plots/labels.ts';
import { type Curve, Plot } from '../plots/Plot.tsx';

const certain = (value: number) => ({ value, lo: value, hi: value });
const HEIGHT = 240;
/** A plot with nothing in it still has an axis, m. */
const LEAST = 0.005;

interface Props {
  readonly chain: ChainOverStroke;
  /** Arm from where the wheel is drawn, rad. */
  readonly armAngle: number;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
}

/** Movement by hand of a chain over the stroke of the arm, as the axle is drawn. */
export const SlackPlot = memo(function SlackPlot({ chain, armAngle, units, shop }: Props): JSX.Element {
  const { places, slack, name } = chain;
  const points = useMemo(
    () => places.flatMap(({ angle, movement }): Point[] => (movement === null ? [] : [[angle, movement]])),
    [places],
  );
  const ends = [places[0]?.angle ?? 0, places.at(-1)?.angle ?? 0] as const;
  const x = useMemo(() => {
    return {
      name: 'arm, up from where it is drawn',
      unit: unitOf('angle', units),
      size: unitSize('angle', units),
      low: ends[0],
      high: ends[1],
    };
  }, [ends[0], ends[1], units]);
  const most = Math.max(LEAST, slack?.wanted ?? 0, ...points.map((point) => point[1])) * 1.1;
  const y = useMemo(() => {
    return {
      name: 'movement by hand',
      unit: unitOf('length', units),
      size: unitSize('length', units),
      low: 0,
      high: most,
    };
  }, [most, units]);
  const length = (value: number): string => shownText(show(certain(value), 'length', units, 3));
  const curves = useMemo((): Curve[] => {
    const wanted = slack ? shownText(show(certain(slack.wanted), 'length', units, 3)) : '';
    return [
      { key: 'movement', text: 'as the axle is drawn', points, look: 'chosen', wish: 0.3 },
      ...(slack
        ? [
            {
              key: 'wanted',
              text: `${wanted} wanted where tightest`,
              points: [
                [ends[0], slack.wanted],
                [ends[1], slack.wanted],
              ],
              look: 'wanted',
              wish: 0.9,
            } as const,
          ]
        : []),
    ];
  }, [points, slack, ends[0], ends[1], units]);
  const here = between(points, armAngle);
  return (
    <Plot
      heading={`Slack of ${name} over the stroke`}
      says={`Movement by hand at mid-span over the angle of the arm, from ${points[0] ? length(points[0][1]) : 'not known'} at full rebound to ${points.at(-1) ? length(points.at(-1)?.[1] ?? 0) : 'not known'} at full bump. The numbers stand in the table below.`}
      x={x}
      y={y}
      curves={curves}
      cursor={{ across: 'x', at: armAngle }}
      dots={here === null ? [] : [[armAngle, here]]}
      reading={
        here === null ? (
          'How far the chain moves is not known until the links fitted are.'
        ) : (
          <>
            With the arm {armAngle === 0 ? 'as drawn' : shownText(show(certain(armAngle), 'angle', units, 2))} it moves{' '}
            <b>{length(here)}</b> in all, from one side to the other.
          </>
        )
      }
      table={<PlaceTable chain={chain} units={units} />}
      shop={shop}
      height={HEIGHT}
    />
  );
});

/** Value between two points of a curve; null beyond its ends. */
function between(points: readonly Point[], at: number): number | null {
  const k = points.findIndex((point) => point[0] >= at - 1e-9);
  const [here, before] = [points[k], points[k - 1]];
  if (!here) return null;
  if (!before) return Math.abs(here[0] - at) < 1e-6 ? here[1] : null;
  return before[1] + ((here[1] - before[1]) * (at - before[0])) / (here[0] - before[0]);
}

/** The chain at each place of the stroke. */
function PlaceTable({ chain, units }: { chain: ChainOverStroke; units: Props['units'] }): JSX.Element {
  const length = (value: number): string => shownText(show(certain(value), 'length', units));
  const angle = (value: number): string => shownText(show(certain(value), 'angle', units, 3));
  return (
    <table className="plain-table">
      <thead>
        <tr>
          <th scope="col">arm</th>
          <th scope="col" className="right">
            up from drawn
          </th>
          <th scope="col" className="right">
            centres
          </th>
          <th scope="col" className="right">
            links needed
          </th>
          <th scope="col" className="right">
            moves by hand
          </th>
          <th scope="col" className="right">
            of the span
          </th>
          <th scope="col" className="right">
            wrap, small sprocket
          </th>
        </tr>
      </thead>
      <tbody>
        {chain.places.map((place) => (
          <tr key={place.angle}>
            <th scope="row">{place.name ?? <span className="lead">between</span>}</th>
            <td className="right">{angle(place.angle)}</td>
            <td className="right">{length(place.centreDistance)}</td>
            <td className="right">{place.linksNeeded.toFixed(3)}</td>
            <td className="right">{place.movement === null ? '–' : length(place.movement)}</td>
            <td className="right">
              {place.movementOverSpan === null
                ? '–'
                : shownText(show(certain(place.movementOverSpan), 'percent', units, 2))}
            </td>
            <td className="right">{angle(place.wrapSmall)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
