import type { ChainOverStroke, Rise, SpanRoom, Stroke } from '@oddwheel/build/assess/stroke/types';
import type { Finding } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { Severity } from '../face/Severity.tsx';
import { show, shownText } from '../numbers/shown.ts';
import { Wide } from '../plots/Wide.tsx';
import { Panel } from './Panel.tsx';
import { SlackPlot } from './SlackPlot.tsx';

const certain = (value: number) => ({ value, lo: value, hi: value });

interface Props {
  readonly stroke: Stroke;
  readonly findings: readonly Finding[];
  readonly armAngle: number;
  readonly units: Readonly<Record<string, string>>;
  readonly shop: boolean;
  readonly onReveal: (address: string) => void;
  readonly onOpen: (finding: string) => void;
}

/** Checks that speak of a chain over the stroke. */
const isAbout = (finding: Finding, chain: string): boolean =>
  finding.address === chain && (finding.check.startsWith('arm.') || finding.check === 'chain.stroke');

/** What the chains to the swinging arm do over its stroke, and the slack to set by hand. */
export const StrokePanel = memo(function StrokePanel(props: Props): JSX.Element | null {
  const { stroke, units, onReveal, onOpen } = props;
  if (stroke.chains.length === 0) return null;
  const degrees = (value: number): string => shownText(show(certain(value), 'angle', units, 3));
  return (
    <Panel name="Over the stroke of the arm">
      <p className="lead">
        The arm goes {degrees(stroke.rebound)} down to full rebound and {degrees(stroke.bump)} up to full bump.
      </p>
      {stroke.chains.map((chain) => {
        const about = props.findings.filter((finding) => isAbout(finding, chain.address));
        return (
          <div key={chain.address} className="stroke-chain">
            {chain.slack && <Setting slack={chain.slack} name={chain.name} units={units} onReveal={onReveal} />}
            <SlackPlot chain={chain} armAngle={props.armAngle} units={units} shop={props.shop} />
            {[chain.tightest, chain.slot].map((said) => said && <p key={said.text}>{said.text}</p>)}
            {chain.room.length > 0 && <RoomTable room={chain.room} name={chain.name} units={units} />}
            {chain.rise && <RisePart rise={chain.rise} name={chain.name} units={units} />}
            {chain.missing.length > 0 && (
              <ul className="plain-list">
                {chain.missing.map((missing) => (
                  <li key={missing.address + missing.says}>
                    <span>Missing: {missing.says}.</span>
                    <button type="button" className="link" onClick={() => onReveal(missing.address)}>
                      Go there<span className="hidden-name">: {missing.says}</span>
                    </button>
                  </li>
                ))}
              </ul>
            )}
            {about.length > 0 && (
              <ul className="stroke-checks">
                {about.map((finding) => (
                  <li key={finding.id}>
                    <Severity severity={finding.severity} />
                    <button type="button" className="link" onClick={() => onOpen(finding.id)}>
                      {finding.title.charAt(0).toUpperCase() + finding.title.slice(1)}
                    </button>
                  </li>
                ))}
              </ul>
            )}
          </div>
        );
      })}
    </Panel>
  );
});

/** Slack to set by hand, on the stand and on the wheels. */
function Setting(props: {
  slack: NonNullable<ChainOverStroke['slack']>;
  name: string;
  units: Props['units'];
  onReveal: Props['onReveal'];
}): JSX.Element {
  const { slack, name, units, onReveal } = props;
  const length = (value: number): string => shownText(show(certain(value), 'length', units, 3));
  return (
    <>
      <h3>Slack to set in {name}</h3>
      <dl className="stroke-slack">
        <div>
          <dt>on the stand</dt>
          <dd>{length(slack.onStand)}</dd>
        </div>
        <div>
          <dt>on its wheels</dt>
          <dd>{length(slack.onWheels)}</dd>
        </div>
        <div>
          <dt>left where tightest</dt>
          <dd>{length(slack.wanted)}</dd>
        </div>
      </dl>
      <p className="instruction">{slack.text}</p>
      {slack.standAssumed && (
        <p className="lead">
          Where the arm hangs on the stand is not given: full rebound is taken.{' '}
          <button type="button" className="link" onClick={() => onReveal('/brief/suspension/stand')}>
            Say where it hangs
          </button>
        </p>
      )}
    </>
  );
}

function RoomTable({
  room,
  name,
  units,
}: {
  room: readonly SpanRoom[];
  name: string;
  units: Props['units'];
}): JSX.Element {
  const gap = (value: number | null): string => {
    if (value === null) return '–';
    const text = shownText(show(certain(Math.abs(value)), 'length', units, 3));
    return value < 0 ? `rubs by ${text}` : text;
  };
  return (
    <>
      <h3>Room between chain and arm</h3>
      <Wide name={`Room between ${name} and the arm`}>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">arm</th>
              <th scope="col">span</th>
              <th scope="col" className="right">
                pulled straight
              </th>
              <th scope="col" className="right">
                hanging slack
              </th>
            </tr>
          </thead>
          <tbody>
            {room.map((one) => (
              <tr key={one.place + one.span}>
                <th scope="row">{one.place}</th>
                <td>{one.span}</td>
                <td className="right">{gap(one.pulling)}</td>
                <td className="right">{gap(one.slack)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </>
  );
}

function RisePart({ rise, name, units }: { rise: Rise; name: string; units: Props['units'] }): JSX.Element {
  const torque = (value: number): string => shownText(show(certain(value), 'torque', units, 3));
  return (
    <>
      <h3>Rise under pull</h3>
      <p>{rise.text}</p>
      <Wide name={`Rise under the pull of ${name}`}>
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">arm</th>
              <th scope="col" className="right">
                by the chain
              </th>
              <th scope="col" className="right">
                by the thrust
              </th>
              <th scope="col" className="right">
                together
              </th>
              <th scope="col">the vehicle</th>
            </tr>
          </thead>
          <tbody>
            {rise.places.map((place) => (
              <tr key={place.place}>
                <th scope="row">{place.place}</th>
                <td className="right">{torque(place.torqueChain)}</td>
                <td className="right">{torque(place.torqueThrust)}</td>
                <td className="right">{torque(place.torque)}</td>
                <td>{place.sense === 'neither' ? 'stays level' : place.sense}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <p className="note">Torque about the pivot; positive lifts the wheel toward bump.</p>
    </>
  );
}
