import { wayWords } from '@oddwheel/build/placing/move';
import type { MoveAids, Placed } from '@oddwheel/build/placing/types';
import type { JSX } from 'react';
import { Severity, SeverityShape } from '../face/Severity.tsx';
import { faultSentence } from '../inspector/fault-sentence.ts';
import { reserveText, withoutNumber } from '../numbers/shown.ts';
import type { Moved, MovedCheck } from '../worker/layout-api.ts';
import { lengthShown } from './length-shown.ts';
import type { Mover } from './use-move.ts';

interface Props {
  readonly placed: Placed;
  readonly mover: Mover;
  readonly units: Readonly<Record<string, string>>;
  readonly locked: string | null;
}

/** What is chosen and how it is moved; while it moves, what becomes of chains, clearances and reserves. */
export function MovePanel({ placed, mover, units, locked }: Props): JSX.Element {
  const { move, moved, aids, held, fault } = mover;
  const show = (si: number): string => lengthShown(units, si);
  return (
    <section className="move-panel" aria-labelledby="move-heading">
      <h3 id="move-heading">Moving {placed.name}</h3>
      {locked !== null ? (
        <p className="lead">{locked}</p>
      ) : (
        <p id="move-help" className="lead">
          Drag it, or put the focus on Move and use the arrow keys: 1 mm or 1/16 in, with Shift ten times or eight times
          as far, with Alt a tenth or a quarter. Enter keeps the place, Escape puts it back.
        </p>
      )}
      {aids && aids.held.length > 0 && <HoldChoice aids={aids} held={held} onHold={mover.hold} />}
      {fault && (
        <p className="fails" role="alert">
          Not moved: {faultSentence(fault, placed.name)}
        </p>
      )}
      {move && (
        <p className="move-now">
          <b>{wayWords(move.by, show)}</b>
          {move.to.length > 0 && <span className="brought"> {move.to.join(', ')}</span>}
        </p>
      )}
      {move && moved && <WhatBecomes moved={moved} name={placed.name} />}
      {move && (
        <p className="move-ends">
          <button type="button" className="button main" onPointerDown={stay} onClick={mover.finish}>
            Keep this place
          </button>
          <button type="button" className="button" onPointerDown={stay} onClick={mover.cancel}>
            Put it back
          </button>
        </p>
      )}
    </section>
  );
}

/** Pressing a button here must not take the focus from the handle first, which would keep the place. */
const stay = (event: { readonly preventDefault: () => void }): void => event.preventDefault();

function HoldChoice(props: {
  readonly aids: MoveAids;
  readonly held: string | null;
  readonly onHold: (stage: string | null) => void;
}): JSX.Element {
  const { aids, held, onHold } = props;
  return (
    <fieldset className="hold">
      <legend>Hold the links of</legend>
      {[{ stage: null, name: 'no chain' }, ...aids.held].map(({ stage, name }) => (
        <label key={stage ?? ''}>
          <input type="radio" name="hold" checked={held === stage} onChange={() => onHold(stage)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

function WhatBecomes({ moved, name }: { readonly moved: Moved; readonly name: string }): JSX.Element {
  if (!moved.ok)
    return (
      <p className="fails" role="status">
        It cannot stand there: {faultSentence(moved.fault, name)}
      </p>
    );
  const { chains, clearances, checks } = moved;
  return (
    <div className="becomes">
      <p className="note">Being moved: ranges stand at their middle until the place is kept.</p>
      {chains.map((chain) => (
        <dl key={chain.address} className="moved-chain">
          <dt>{chain.name}, centres</dt>
          <dd>{chain.centres}</dd>
          {chain.links !== '' && (
            <>
              <dt>links</dt>
              <dd>{chain.links}</dd>
            </>
          )}
          {chain.slack && (
            <>
              <dt>slack</dt>
              <dd>
                <Severity severity={chain.slack.severity} /> <span className="lead">{chain.slack.says}</span>
              </dd>
            </>
          )}
        </dl>
      ))}
      {clearances.length > 0 && (
        <>
          <h4>Smallest clearances</h4>
          <ul className="plain-list">
            {clearances.map((row) => (
              <li key={`${row.first.address} ${row.second.address}`}>
                <SeverityShape severity={row.smallest <= 0 ? 'fails' : row.smallest < row.wanted ? 'thin' : 'holds'} />
                {row.first.name} to {row.second.name}
                <span className="lead"> {row.text}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {checks.length > 0 && (
        <>
          <h4>Checks that change</h4>
          <ul className="plain-list">
            {checks.map((check) => (
              <li key={check.id}>
                <SeverityShape severity={check.now.severity} />
                {check.element}, {check.title}{' '}
                <b>
                  {reserveWords(check.before)} → {reserveWords(check.now)}
                </b>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

const reserveWords = ({ severity, reserve }: MovedCheck['now']): string =>
  reserve === null ? withoutNumber(severity) : reserveText(reserve);
