import { ORDER_KEYS, type OrderKey, type RankedTrain, type RatioAnswer } from '@oddwheel/build/ratios/types';
import { type JSX, useId, useMemo, useState } from 'react';
import { Panel } from '../layout-panels/Panel.tsx';
import { type Curve, Plot } from '../plots/Plot.tsx';
import { SearchState } from './SearchState.tsx';
import { isOrderKey, MEASURES, measured, measureText, teethText, trainKey } from './train-words.ts';
import type { Found, Trains } from './use-trains.ts';

/** Trains that the front gives at most: each takes a search of its own. */
const MOST_ON_FRONT = 30;
const HEIGHT = 320;

interface Props {
  readonly trains: Trains;
  readonly found: Found<RatioAnswer>;
  readonly stale: boolean;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
}

/** Two measures against each other: the trains of the list, and the front that no train betters in both. */
export function FrontPlot({ trains, found, stale, units, shop }: Props): JSX.Element {
  const id = useId();
  const [first, setFirst] = useState<OrderKey>('ratio');
  const [second, setSecond] = useState<OrderKey>('mass');
  const { front, busy } = trains;
  const known = front && front.answer.first === first && front.answer.second === second ? front.answer.answer : null;
  const choose = (label: string, value: OrderKey, other: OrderKey, set: (key: OrderKey) => void): JSX.Element => (
    <div className="field">
      <label htmlFor={`${id}-${label}`}>{label}</label>
      <select
        id={`${id}-${label}`}
        value={value}
        onChange={(event) => {
          if (isOrderKey(event.target.value)) set(event.target.value);
        }}
      >
        {ORDER_KEYS.filter((key) => key !== other && (key !== 'price' || found.request.order.includes('price'))).map(
          (key) => (
            <option key={key} value={key}>
              {MEASURES[key].axis}
            </option>
          ),
        )}
      </select>
    </div>
  );
  return (
    <Panel name="Two things that count">
      <div className="train-more">
        {choose('Across', first, second, setFirst)}
        {choose('Upwards', second, first, setSecond)}
      </div>
      <div className="train-deeds">
        <button
          type="button"
          className="button"
          disabled={busy !== null || stale}
          onClick={() => trains.findFront({ ...found.request, best: MOST_ON_FRONT }, first, second)}
        >
          Find the front
        </button>
        <SearchState trains={trains} what="front" />
      </div>
      <MeasurePlot listed={found.answer.trains} front={known} first={first} second={second} units={units} shop={shop} />
    </Panel>
  );
}

function MeasurePlot(props: {
  readonly listed: readonly RankedTrain[];
  readonly front: (RatioAnswer & { readonly whole: boolean }) | null;
  readonly first: OrderKey;
  readonly second: OrderKey;
  readonly units: Props['units'];
  readonly shop: boolean;
}): JSX.Element {
  const { listed, front, first, second, units, shop } = props;
  const all = useMemo(() => [...listed, ...(front?.trains ?? [])], [listed, front]);
  const axis = useMemo(() => {
    const of = (key: OrderKey) => {
      const values = all.map((train) => measured(train, key));
      const [low, high] = [Math.min(...values), Math.max(...values)];
      const { axis: name, unit, size } = MEASURES[key];
      // A measure that all share still needs some height; counts begin at none.
      const room = (high - low) * 0.06 || size(units);
      return { name, unit: unit(units), size: size(units), low: Math.max(0, low - room), high: high + room };
    };
    return { x: of(first), y: of(second) };
  }, [all, first, second, units]);
  const curves = useMemo(() => {
    const at = (train: RankedTrain) => [measured(train, first), measured(train, second)] as const;
    const steps = (front?.trains ?? []).flatMap((train, k, line) => {
      const before = line[k - 1];
      return before ? [[at(train)[0], at(before)[1]] as const, at(train)] : [at(train)];
    });
    return [
      ...(steps.length > 1
        ? [{ key: 'front', text: 'front', points: steps, look: 'chosen', wish: 0.6 } satisfies Curve]
        : []),
      ...listed.map((train, k): Curve => {
        return { key: trainKey(train.pairs), text: String(k + 1), points: [at(train)], look: 'plain', wish: 0 };
      }),
    ];
  }, [listed, front, first, second]);
  const dots = useMemo(
    () => [
      ...new Map(
        all.map((train) => {
          const dot = [measured(train, first), measured(train, second)] as const;
          return [dot.join(' '), dot];
        }),
      ).values(),
    ],
    [all, first, second],
  );
  return (
    <Plot
      heading="One against the other"
      says={`${listed.length} listed trains by number${front ? `, and ${front.trains.length} trains on the front` : ''}: ${MEASURES[second].axis} over ${MEASURES[first].axis}. Less is better in both. The numbers stand in the table below.`}
      x={axis.x}
      y={axis.y}
      curves={curves}
      cursor={null}
      dots={dots}
      reading={
        <>
          Less is better in both; ratios within half a per cent count as equal. Numbers are those of the list.{' '}
          {front &&
            `${front.trains.length} ${front.trains.length === 1 ? 'train is' : 'trains are'} on the front: no other is better in one and as good in the other.${front.whole ? '' : ' It goes on; these are the first.'}`}
        </>
      }
      table={
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">train</th>
              <th scope="col">teeth</th>
              <th scope="col" className="right">
                {MEASURES[first].axis}
              </th>
              <th scope="col" className="right">
                {MEASURES[second].axis}
              </th>
            </tr>
          </thead>
          <tbody>
            {[
              ...listed.map((train, k) => [`${k + 1}`, train] as const),
              ...(front?.trains ?? []).map((train) => ['on the front', train] as const),
            ].map(([name, train]) => (
              <tr key={name + trainKey(train.pairs)}>
                <th scope="row">{name}</th>
                <td>{teethText(train.pairs)}</td>
                <td className="right">{measureText(train, first, units)}</td>
                <td className="right">{measureText(train, second, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      }
      shop={shop}
      height={HEIGHT}
    />
  );
}
