import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { PathElement } from '@oddwheel/build/assess/types';
import type { JSX } from 'react';
import { show, shownText } from '../numbers/shown.ts';
import { valueAt } from './curves.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Step {
  readonly address: string;
  readonly name: string;
  /** Power that goes in and comes out. */
  readonly before: number;
  readonly after: number;
}

/** What each part of the path takes in and passes on at the slider: the box, then each stage with the shaft behind it. */
function stepsOf(path: readonly PathElement[]): readonly Step[] {
  const steps: Step[] = [];
  let power = path[0]?.here.power?.value ?? null;
  let stage: PathElement | null = null;
  for (const element of path.slice(1)) {
    const own = element.here.power?.value ?? null;
    if (own === null) {
      stage = element;
      continue;
    }
    if (power !== null && (element.kind === 'gearbox' || stage !== null))
      steps.push({ address: (stage ?? element).address, name: (stage ?? element).name, before: power, after: own });
    power = own;
    stage = null;
  }
  return steps;
}

interface Props {
  readonly path: readonly PathElement[];
  /** Null while they are not known. */
  readonly curves: RoadCurves | null;
  readonly gear: string;
  readonly speed: number;
  readonly units: Readonly<Record<string, string>>;
  readonly onSelect: (address: string) => void;
}

/** Where the power goes at the slider, from crank to ground: what each stage loses, and what the road takes of the rest. */
export function PowerTable({ path, curves, gear, speed, units, onSelect }: Props): JSX.Element {
  const steps = stepsOf(path);
  const whole = path[0]?.here.power?.value ?? null;
  const arrives = steps.at(-1)?.after ?? null;
  const power = (value: number): string => shownText(show(certain(value), 'power', units, 3));
  const level = curves?.loads.find((load) => load.grade === 0);
  const resists = level ? valueAt(level.points, speed) : null;
  const road = resists === null ? null : resists * speed;
  if (whole === null || whole <= 0 || arrives === null)
    return (
      <section className="list" aria-labelledby="power-heading">
        <h2 id="power-heading">Where the power goes</h2>
        <p className="lead">Not known until the torque curve and the roll-out of the wheel are.</p>
      </section>
    );
  const part = (value: number): string => shownText(show(certain(value / whole), 'percent', units, 3));
  const left = road === null ? null : arrives - road;
  return (
    <section className="list" aria-labelledby="power-heading">
      <h2 id="power-heading">Where the power goes</h2>
      <p className="lead">
        Full throttle at {shownText(show(certain(speed), 'speed', units, 3))} in gear {gear}: {power(whole)} from the
        engine, {part(arrives)} of it at the ground.
      </p>
      <svg className="hidden-name" aria-hidden="true">
        <defs>
          <pattern id="power-hatch" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path className="power-stroke" d="M0 0V4" />
          </pattern>
        </defs>
      </svg>
      <table className="plain-table power-table">
        <thead>
          <tr>
            <th scope="col">along the path</th>
            <th scope="col" className="right">
              lost here
            </th>
            <th scope="col" className="right wide-part">
              of the engine’s
            </th>
            <th scope="col" className="right">
              goes on
            </th>
            <th scope="col" className="power-bar-head">
              <span className="hidden-name">as a bar</span>
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Engine</th>
            <td className="right">–</td>
            <td className="right wide-part">–</td>
            <td className="right">{power(whole)}</td>
            <PowerBar from={1} to={1} />
          </tr>
          {steps.map((step) => (
            <tr key={step.address}>
              <th scope="row">
                <button type="button" className="link" onClick={() => onSelect(step.address)}>
                  {step.name}
                </button>
              </th>
              <td className="right">{power(step.before - step.after)}</td>
              <td className="right wide-part">{part(step.before - step.after)}</td>
              <td className="right">{power(step.after)}</td>
              <PowerBar from={step.before / whole} to={step.after / whole} />
            </tr>
          ))}
          {road !== null && left !== null && (
            <tr className="power-ground">
              <th scope="row">Level road</th>
              <td className="right">{power(road)}</td>
              <td className="right wide-part">{part(road)}</td>
              <td className="right">
                {left >= 0 ? (
                  <>
                    <b>{power(left)}</b> left
                  </>
                ) : (
                  <>
                    <b>{power(-left)}</b> short
                  </>
                )}
              </td>
              <PowerBar from={arrives / whole} to={Math.max(0, left / whole)} />
            </tr>
          )}
        </tbody>
      </table>
      <p className="note">
        What is left over speeds the vehicle up or takes it up a slope. Hatched: lost or used there.
      </p>
    </section>
  );
}

/** Power in and power out as parts of the engine's: full where it goes on, hatched where it stays. */
function PowerBar({ from, to }: { from: number; to: number }): JSX.Element {
  const percent = (value: number): string => `${(100 * value).toFixed(2)}%`;
  return (
    <td className="power-bar">
      <svg aria-hidden="true" width="100%" height="14">
        <rect className="power-on" x="0" y="3" width={percent(to)} height="8" />
        <rect className="power-lost" x={percent(to)} y="3" width={percent(Math.max(0, from - to))} height="8" />
      </svg>
    </td>
  );
}
