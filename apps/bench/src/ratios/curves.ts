/** The road's curves as the plots draw them. */
import type { GearCurve, RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Known, NotKnown, Road, SpeedPull, Sprint } from '@oddwheel/build/assess/road/types';
import type { Use } from '@oddwheel/build/assess/types';
import { show, shownText } from '../numbers/shown.ts';
import type { Curve } from '../plots/Plot.tsx';

type Units = Readonly<Record<string, string>>;

const certain = (value: number) => ({ value, lo: value, hi: value });

/** A number that someone chose, or nearly so: without noughts that say nothing. */
export function plainText(value: number, use: Use, units: Units): string {
  const shown = show(certain(value), use, units, 3);
  const number = shown.number.includes('.') ? shown.number.replace(/\.?0+$/, '') : shown.number;
  return shownText({ ...shown, number });
}

/** A part of the road that could not be worked out. */
export const isNotKnown = <T extends object>(part: Known<T>): part is NotKnown => 'missing' in part;

/** Value of a curve at a place, straight between its points; null beyond its ends. */
export function valueAt(curve: readonly SpeedPull[], at: number): number | null {
  const k = curve.findIndex(([x]) => x >= at);
  const [here, before] = [curve[k], curve[k - 1]];
  if (!here) return null;
  if (!before) return here[0] - at < 1e-9 ? here[1] : null;
  return before[1] + ((here[1] - before[1]) * (at - before[0])) / (here[0] - before[0]);
}

/** "level" or "12 % climb". */
export const gradeName = (grade: number, units: Units): string =>
  grade === 0 ? 'level' : `${plainText(grade, 'percent', units)} climb`;

/** Greatest pull of any gear. */
export const mostPull = ({ gears }: RoadCurves): number =>
  Math.max(0, ...gears.flatMap((gear) => gear.pulls.map(([, pull]) => pull)));

/** Fastest road speed of any gear. */
export const mostSpeed = ({ gears }: RoadCurves): number => Math.max(0, ...gears.map((gear) => gear.atRedline));

/** A line of one pull may stand so far above the strongest gear and is still drawn. */
const ABOVE = 1.6;

/** A pull that cannot be passed. */
export interface PullLimit {
  readonly key: string;
  readonly text: string;
  readonly force: number;
}

/** What the tyre passes on and what lifts the front, where that is known. */
export function pullLimits(road: Road): readonly PullLimit[] {
  const grip = isNotKnown(road.grip) ? null : road.grip;
  const lift = road.lift === null || isNotKnown(road.lift) ? null : road.lift;
  const { low, high } = grip ?? { low: null, high: null };
  return [
    ...(low && high && low.friction < high.friction
      ? [
          { key: 'grip-low', text: `grip at ${low.friction}`, force: low.force },
          { key: 'grip-high', text: `grip at ${high.friction}`, force: high.force },
        ]
      : []),
    ...(low && high && low.friction === high.friction
      ? [{ key: 'grip', text: `grip at ${low.friction}`, force: low.force }]
      : []),
    ...(lift ? [{ key: 'lift', text: 'front lifts', force: lift.force.value }] : []),
  ].filter(({ force }) => Number.isFinite(force));
}

/** Pull of each gear, road load on each slope, and the limits of tyre and front wheel. */
export function pullCurves(curves: RoadCurves, limits: readonly PullLimit[], chosen: string, units: Units): Curve[] {
  const [fastest, strongest] = [mostSpeed(curves), mostPull(curves)];
  return [
    ...[...curves.gears]
      .sort((a, b) => Number(b.gear === chosen) - Number(a.gear === chosen))
      .map(
        ({ gear, name, pulls }): Curve => ({
          key: `gear-${gear}`,
          text: name,
          points: pulls,
          look: gear === chosen ? 'chosen' : 'plain',
          wish: 0.5,
        }),
      ),
    ...curves.loads.map(
      ({ grade, wanted, points }): Curve => ({
        key: `load-${grade}`,
        text: wanted ? `${plainText(grade, 'percent', units)} wanted` : gradeName(grade, units),
        points,
        look: wanted ? 'wanted' : 'load',
        wish: 0.9,
      }),
    ),
    ...limits
      .filter(({ force }) => force <= ABOVE * strongest)
      .map(
        ({ key, text, force }): Curve => ({
          key,
          text,
          points: [
            [0, force],
            [1.1 * fastest, force],
          ],
          look: 'limit',
          wish: 0.9,
        }),
      ),
  ];
}

/** Engine speed of each gear over the road speed, the shifts, and the same of the reference vehicle. */
export function engineCurves(curves: RoadCurves, chosen: string): Curve[] {
  const { idle, redline, gears, reference } = curves;
  const fastest = mostSpeed(curves);
  const level = (key: string, text: string, speed: number): Curve => ({
    key,
    text,
    points: [
      [0, speed],
      [fastest, speed],
    ],
    look: 'limit',
    wish: key === 'idle' ? 0.9 : 0.05,
  });
  const line = (turns: number): Curve['points'] => {
    const [from, to] = [idle / turns, Math.min(redline / turns, fastest)];
    return to > from
      ? [
          [from, from * turns],
          [to, to * turns],
        ]
      : [];
  };
  return [
    ...gears.map(
      ({ gear, name, turns }): Curve => ({
        key: `gear-${gear}`,
        text: name,
        points: line(turns),
        look: gear === chosen ? 'chosen' : 'plain',
        wish: 0.75,
      }),
    ),
    level('redline', 'redline', redline),
    level('idle', 'idle', idle),
    ...gears.flatMap(({ gear, shift }): Curve[] =>
      shift
        ? [
            {
              key: `shift-${gear}`,
              text: '',
              points: [
                [shift.speed, shift.engineBefore],
                [shift.speed, shift.engineAfter],
              ],
              look: 'drop',
              wish: 0.5,
            },
          ]
        : [],
    ),
    ...(reference?.gears ?? []).map(
      ({ name, turns }, k): Curve => ({
        key: `reference-${name}`,
        text: k === 0 ? `reference ${name}` : name,
        points: line(turns),
        look: 'reference',
        wish: 1,
      }),
    ),
  ];
}

/** Speed over time at full throttle, the speed asked for, and the time it may take. */
export function runCurves(run: Exclude<RoadCurves['run'], NotKnown>, sprint: Known<Sprint>, units: Units): Curve[] {
  const most = run.points.at(-1)?.speed ?? 0;
  const { wanted } = run;
  return [
    {
      key: 'run',
      text: 'full throttle',
      points: run.points.map(({ time, speed }) => [time, speed]),
      look: 'plain',
      wish: 0.85,
    },
    ...(isNotKnown(sprint)
      ? []
      : [
          {
            key: 'sprint',
            text: `${plainText(sprint.to, 'speed', units)} after ${shownText(show(certain(sprint.time.value), 'time', units, 3))}`,
            points: [
              [0, sprint.to],
              [sprint.time.value, sprint.to],
              [sprint.time.value, 0],
            ],
            look: 'wanted',
            wish: 0.8,
          } as const,
        ]),
    ...(wanted === null
      ? []
      : [
          {
            key: 'wanted',
            text: `wanted in ${plainText(wanted, 'time', units)}`,
            points: [
              [wanted, 0],
              [wanted, most],
            ],
            look: 'limit',
            wish: 0.1,
          } as const,
        ]),
  ];
}

/** The gear that the slider stands in. */
export const gearOf = (curves: RoadCurves, gear: string): GearCurve | null =>
  curves.gears.find((one) => one.gear === gear) ?? null;
