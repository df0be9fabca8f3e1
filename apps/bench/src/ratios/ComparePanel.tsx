import type { Compared } from '@oddwheel/build/ratios/compare';
import type { StagePair } from '@oddwheel/build/ratios/types';
import { type JSX, type ReactNode, useEffect, useMemo, useState } from 'react';
import { Panel } from '../layout-panels/Panel.tsx';
import { digits, show, shownText, unitOf, unitSize } from '../numbers/shown.ts';
import { type Curve, Plot } from '../plots/Plot.tsx';
import { Wide } from '../plots/Wide.tsx';
import type { RemoteModel } from '../worker/remote.ts';
import { isNotKnown } from './curves.ts';
import { NotYet } from './NotYet.tsx';
import { teethText, trainKey } from './train-words.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });
const HEIGHT = 320;
const LOOKS = ['chosen', 'plain', 'wanted', 'load'] as const;

interface Props {
  readonly model: RemoteModel;
  readonly hash: string;
  readonly compared: readonly (readonly StagePair[])[];
  readonly stale: boolean;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
  readonly onReveal: (address: string) => void;
}

/** Up to four trains on the road, side by side; each number is what the build would show with that train. */
export function ComparePanel(props: Props): JSX.Element {
  const { model, hash, compared, stale, units, shop, onReveal } = props;
  const [answer, setAnswer] = useState<readonly Compared[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    if (compared.length === 0 || stale) {
      setAnswer([]);
      return undefined;
    }
    model.compareTrains(compared).then(
      (outcome) => {
        if (!wanted || outcome === null) return;
        setTrouble(outcome.ok ? null : outcome.says);
        if (outcome.ok) setAnswer(outcome.answer);
      },
      (why: unknown) => {
        if (wanted) setTrouble(why instanceof Error ? why.message : String(why));
      },
    );
    return () => {
      wanted = false;
    };
  }, [model, hash, compared, stale]);
  return (
    <Panel name="Side by side">
      {trouble !== null && <p className="fails">They could not be compared: {trouble}</p>}
      {answer.length === 0 ? (
        <p className="lead">Tick trains in the list, up to four.</p>
      ) : (
        <>
          <EffortPlot trains={answer} units={units} shop={shop} />
          <CompareTable trains={answer} units={units} onReveal={onReveal} />
        </>
      )}
    </Panel>
  );
}

/** Greatest pull of all gears at each speed. */
function effortOf({ pulls }: Compared): Curve['points'] {
  if (isNotKnown(pulls)) return [];
  const curves = pulls.gears.map(({ curve }) => curve);
  const speeds = [...new Set(curves.flatMap((curve) => curve.map(([speed]) => speed)))].sort((a, b) => a - b);
  const pullAt = (curve: Curve['points'], speed: number): number => {
    const k = curve.findIndex(([at]) => at >= speed);
    const [b, a] = [curve[k], curve[k - 1]];
    if (!b || (!a && b[0] !== speed)) return Number.NEGATIVE_INFINITY;
    return a && b[0] !== speed ? a[1] + ((b[1] - a[1]) * (speed - a[0])) / (b[0] - a[0]) : b[1];
  };
  return speeds.flatMap((speed) => {
    const most = Math.max(...curves.map((curve) => pullAt(curve, speed)));
    return Number.isFinite(most) ? [[speed, most] as const] : [];
  });
}

function EffortPlot(props: {
  readonly trains: readonly Compared[];
  readonly units: Props['units'];
  readonly shop: boolean;
}): JSX.Element | null {
  const { trains, units, shop } = props;
  const curves = useMemo(
    () =>
      trains.map((train, k): Curve => {
        return {
          key: trainKey(train.pairs),
          text: teethText(train.pairs),
          points: effortOf(train),
          look: LOOKS[k % LOOKS.length] ?? 'plain',
          wish: 0.25 + 0.2 * k,
        };
      }),
    [trains],
  );
  const points = curves.flatMap((curve) => curve.points);
  const [fast, strong] = [Math.max(0, ...points.map(([x]) => x)), Math.max(0, ...points.map(([, y]) => y))];
  const axes = useMemo(
    () => ({
      x: { name: 'road speed', unit: unitOf('speed', units), size: unitSize('speed', units), low: 0, high: fast },
      y: { name: 'pull', unit: unitOf('force', units), size: unitSize('force', units), low: 0, high: strong * 1.05 },
    }),
    [fast, strong, units],
  );
  if (points.length === 0) return null;
  return (
    <Plot
      heading="Pull of each train"
      says={`Greatest pull at the ground over road speed, in whichever gear gives it, for ${trains.length} trains. The numbers stand in the table below.`}
      x={axes.x}
      y={axes.y}
      curves={curves}
      cursor={null}
      dots={[]}
      reading={null}
      table={<EffortTable trains={trains} curves={curves} units={units} />}
      shop={shop}
      height={HEIGHT}
    />
  );
}

function EffortTable(props: {
  readonly trains: readonly Compared[];
  readonly curves: readonly Curve[];
  readonly units: Props['units'];
}): JSX.Element {
  const { trains, curves, units } = props;
  const fast = Math.max(...curves.flatMap((curve) => curve.points.map(([speed]) => speed)));
  const rows = Array.from({ length: 11 }, (_, k) => (k * fast) / 10);
  const pullAt = (points: Curve['points'], speed: number): string => {
    const k = points.findIndex(([at]) => at >= speed);
    const [b, a] = [points[k], points[k - 1]];
    if (!a || !b) return '–';
    return show(certain(a[1] + ((b[1] - a[1]) * (speed - a[0])) / (b[0] - a[0])), 'force', units, 3).number;
  };
  return (
    <table className="plain-table">
      <thead>
        <tr>
          <th scope="col" className="right">
            road speed, {unitOf('speed', units)}
          </th>
          {trains.map(({ pairs }) => (
            <th key={trainKey(pairs)} scope="col" className="right">
              {teethText(pairs)}, {unitOf('force', units)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((speed) => (
          <tr key={speed}>
            <th scope="row" className="right">
              {show(certain(speed), 'speed', units, 3).number}
            </th>
            {curves.map((curve) => (
              <td key={curve.key} className="right">
                {pullAt(curve.points, speed)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface Line {
  readonly name: string;
  readonly of: (train: Compared) => ReactNode;
}

function CompareTable(props: {
  readonly trains: readonly Compared[];
  readonly units: Props['units'];
  readonly onReveal: (address: string) => void;
}): JSX.Element {
  const { trains, units, onReveal } = props;
  const text = (value: number, use: Parameters<typeof show>[1]): string =>
    shownText(show(certain(value), use, units, 3));
  const known = <T extends object>(
    name: string,
    part: (
      train: Compared,
    ) =>
      | T
      | { readonly missing: readonly { readonly says: string; readonly address: string }[]; readonly says: string }
      | null,
    says: (value: T) => string,
  ): Line => ({
    name,
    of: (train) => {
      const value = part(train);
      if (value === null) return '–';
      return isNotKnown(value) ? <NotYet why={value} onReveal={onReveal} /> : says(value as T);
    },
  });
  const gears = trains[0]?.gears ?? [];
  const cycle = trains.some((train) => train.cycle !== null);
  const lines: readonly Line[] = [
    { name: 'overall reduction, 1st', of: ({ gears: all }) => (all[0] ? digits(all[0].overall.value, 2) : '–') },
    known(
      'pull in 1st at peak torque',
      ({ pulls }) => pulls,
      ({ gears: all }) => (all[0] ? text(all[0].atPeakTorque.value, 'force') : '–'),
    ),
    ...gears.map(
      ({ id, name }, k): Line => ({
        name: `${name}, idle to redline`,
        of: ({ gears: all }) => {
          const gear = all[k];
          if (!gear || gear.id !== id) return '–';
          const low = show(certain(gear.speedAtIdle.value), 'speed', units, 3).number;
          return `${low} to ${text(gear.speedAtRedline.value, 'speed')}`;
        },
      }),
    ),
    known(
      'top speed',
      ({ top }) => top,
      (top) => `${text(top.speed.value, 'speed')} in gear ${top.gear}`,
    ),
    known(
      'standing start',
      ({ sprint }) => sprint,
      (sprint) =>
        `${text(sprint.time.value, 'time')} to ${text(sprint.to, 'speed')}, over ${digits(sprint.distance.value, 0)} m`,
    ),
    {
      name: 'clutch in one start',
      of: ({ launch }) =>
        launch
          ? `${text(launch.energy, 'energy')} in ${text(launch.time, 'time')}, to ${text(launch.speed, 'speed')}`
          : '–',
    },
    ...(cycle
      ? [
          known(
            'cycle: mean engine speed',
            (train) => train.cycle,
            (driven) => text(driven.meanEngineSpeed.value, 'angularSpeed'),
          ),
          known(
            'cycle: energy at the wheel',
            (train) => train.cycle,
            (driven) => text(driven.energy.value, 'energy'),
          ),
          known(
            'cycle: time in gears',
            (train) => train.cycle,
            (driven) =>
              driven.gearTimes
                .filter(({ time }) => time > 0)
                .map(({ name, time }) => `${name} ${digits(time, 0)} s`)
                .join(', '),
          ),
        ]
      : []),
  ];
  return (
    <Wide name="Trains side by side">
      <table className="plain-table compare-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="hidden-name">what</span>
            </th>
            {trains.map(({ pairs }) => (
              <th key={trainKey(pairs)} scope="col">
                {teethText(pairs)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name, of }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {trains.map((train) => (
                <td key={trainKey(train.pairs)}>{of(train)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
