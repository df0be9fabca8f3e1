import { wayWords } from '@oddwheel/build/placing/move';
import { type CSSProperties, type JSX, type RefObject, useState } from 'react';
import { Severity, SeverityShape } from '../face/Severity.tsx';
import { faultSentence } from '../inspector/fault-sentence.ts';
import { reserveText, withoutNumber } from '../numbers/shown.ts';
import type { Moved, MovedCheck } from '../worker/layout-api.ts';
import { clearanceWords } from './clearance-words.ts';
import { lengthShown } from './length-shown.ts';
import type { Move, Mover } from './use-move.ts';

/** So many of each are told while something moves. */
const TOLD = { clearances: 3, checks: 4 } as const;

/** While something moves: how far, what it was brought to, and what becomes of chains, clearances and reserves. It stands over the half of the window that the handle is not in, and moves nothing on the page. */
export function MoveReadout(props: {
  readonly move: Move;
  readonly mover: Mover;
  readonly units: Readonly<Record<string, string>>;
  /** What the drawing stands in. */
  readonly frame: RefObject<HTMLElement | null>;
}): JSX.Element {
  const { move, mover, units, frame } = props;
  const [place] = useState(() => placeFor(frame.current));
  return (
    <section className="move-readout" style={place} aria-label={`${move.placed.name} is being moved`}>
      <div className="move-head">
        <p className="move-now">
          <b>{wayWords(move.by, (si) => lengthShown(units, si))}</b>
          {move.to.length > 0 && <span className="brought"> {move.to.join(', ')}</span>}
        </p>
        <button type="button" className="button main" onPointerDown={stay} onClick={mover.finish}>
          Keep this place
        </button>
        <button type="button" className="button" onPointerDown={stay} onClick={mover.cancel}>
          Put it back
        </button>
      </div>
      {mover.moved && <WhatBecomes moved={mover.moved} name={move.placed.name} units={units} />}
    </section>
  );
}

/** As wide as the drawing; at the top where the handle stands in the lower half of the window. */
function placeFor(frame: HTMLElement | null): CSSProperties {
  const around = frame?.getBoundingClientRect();
  const handle = frame?.querySelector('.move-handle')?.getBoundingClientRect();
  const low = handle !== undefined && handle.top + handle.height / 2 > window.innerHeight / 2;
  return { left: around?.left ?? 0, width: around?.width ?? window.innerWidth, ...(low ? { top: 0 } : { bottom: 0 }) };
}

/** Pressing a button here must not take the focus from the handle first, which would keep the place. */
const stay = (event: { readonly preventDefault: () => void }): void => event.preventDefault();

function WhatBecomes(props: {
  readonly moved: Moved;
  readonly name: string;
  readonly units: Readonly<Record<string, string>>;
}): JSX.Element {
  const { moved, name, units } = props;
  if (!moved.ok) return <p className="fails">It cannot stand there: {faultSentence(moved.fault, name)}</p>;
  const { chains, clearances, checks } = moved;
  return (
    <>
      <div className="becomes">
        {chains.length > 0 && (
          <ul className="plain-list">
            {chains.map((chain) => (
              <li key={chain.address}>
                <b>{chain.name}</b> centres {chain.centres}
                {chain.links !== '' && <span>, links {chain.links}</span>}
                {chain.slack && (
                  <span className="slack">
                    slack <Severity severity={chain.slack.severity} /> <span className="lead">{chain.slack.says}</span>
                  </span>
                )}
              </li>
            ))}
          </ul>
        )}
        {clearances.length > 0 && (
          <ul className="plain-list">
            {clearances.slice(0, TOLD.clearances).map((row) => (
              <li key={`${row.first.address} ${row.second.address}`}>
                <SeverityShape severity={row.smallest <= 0 ? 'fails' : row.smallest < row.wanted ? 'thin' : 'holds'} />
                {row.first.name} to {row.second.name}{' '}
                <b>{row.smallest <= 0 ? 'touch' : lengthShown(units, row.smallest)}</b>{' '}
                <span className="lead">{clearanceWords(row)}</span>
              </li>
            ))}
          </ul>
        )}
        {checks.length > 0 && (
          <ul className="plain-list">
            {checks.slice(0, TOLD.checks).map((check) => (
              <li key={check.id}>
                <SeverityShape severity={check.now.severity} />
                {check.element}, {check.title}{' '}
                <b>
                  {reserveWords(check.before)} → {reserveWords(check.now)}
                </b>
              </li>
            ))}
            {checks.length > TOLD.checks && <li className="lead">and {checks.length - TOLD.checks} more</li>}
          </ul>
        )}
      </div>
      <p className="note">Being moved: ranges stand at their middle until the place is kept.</p>
    </>
  );
}

const reserveWords = ({ severity, reserve }: MovedCheck['now']): string =>
  reserve === null ? withoutNumber(severity) : reserveText(reserve);
