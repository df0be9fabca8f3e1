import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Road } from '@oddwheel/build/assess/road/types';
import type { GearSpan } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { show, shownText, unitOf } from '../numbers/shown.ts';
import { Wide } from '../plots/Wide.tsx';
import { isNotKnown } from './curves.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Props {
  readonly gears: readonly GearSpan[];
  readonly curves: RoadCurves;
  readonly pulls: Road['pulls'];
  readonly gear: string;
  readonly speed: number;
  readonly units: Readonly<Record<string, string>>;
}

const ENDS = { pull: 'by pull', grip: 'by grip', 'front lift': 'as the front lifts' } as const;

/** Each gear in numbers: road speeds at the marks of the engine, the shift, the climb, and the engine at the slider. */
export const GearTable = memo(function GearTable(props: Props): JSX.Element | null {
  const { gears, curves, pulls, gear: chosen, speed, units } = props;
  if (gears.length === 0) return null;
  const road = (value: number): string => show(certain(value), 'speed', units, 3).number;
  const turns = (value: number): string => show(certain(value), 'angularSpeed', units, 3).number;
  const head = (name: string, unit: string): JSX.Element => (
    <th scope="col" className="right">
      {name}
      {unit !== '' && <span className="head-unit">{unit}</span>}
    </th>
  );
  return (
    <section className="list gear-table" aria-labelledby="gears-heading">
      <h2 id="gears-heading">Gears</h2>
      <Wide name="Gears">
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">gear</th>
              {head('reduction', '')}
              {head('at idle', unitOf('speed', units))}
              {head('at peak torque', unitOf('speed', units))}
              {head('at peak power', unitOf('speed', units))}
              {head('at redline', unitOf('speed', units))}
              {head('next gear from', unitOf('speed', units))}
              {head(`engine at ${shownText(show(certain(speed), 'speed', units, 3))}`, unitOf('angularSpeed', units))}
              <th scope="col">climbs</th>
            </tr>
          </thead>
          <tbody>
            {gears.map(({ id, name, overall, speedAtIdle, speedAtRedline }) => {
              const curve = curves.gears.find((one) => one.gear === id);
              const pull = isNotKnown(pulls) ? undefined : pulls.gears.find((one) => one.gear === id);
              const engine = curve ? curve.turns * speed : null;
              return (
                <tr key={id} className={id === chosen ? 'chosen' : undefined}>
                  <th scope="row">
                    {name}
                    {id === chosen && <span className="hidden-name"> chosen</span>}
                  </th>
                  <td className="right">{show(overall, 'number', units).number}</td>
                  <td className="right">{show(speedAtIdle, 'speed', units, 3).number}</td>
                  <td className="right">{curve ? road(curve.atPeakTorque) : '–'}</td>
                  <td className="right">{curve ? road(curve.atPeakPower) : '–'}</td>
                  <td className="right">{show(speedAtRedline, 'speed', units, 3).number}</td>
                  <td className="right">{curve?.shift ? road(curve.shift.speed) : '–'}</td>
                  <td className="right">
                    {engine === null
                      ? '–'
                      : engine > curves.redline * (1 + 1e-9)
                        ? 'past redline'
                        : engine < curves.idle * (1 - 1e-9)
                          ? 'below idle'
                          : turns(engine)}
                  </td>
                  <td>
                    {pull?.grade ? (
                      <>
                        {shownText(show(certain(pull.grade.value), 'percent', units, 2))}{' '}
                        <span className="lead">{ENDS[pull.gradeEnds]}</span>
                      </>
                    ) : (
                      '–'
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Wide>
      <p className="note">
        The next gear is taken where it first pulls as much, or at the redline. Climbs are steady ones at peak torque,
        with the middle of what is not known.
      </p>
    </section>
  );
});
