import type { Assessment } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import { Severity } from '../face/Severity.tsx';
import { reserveText, show, shownText } from '../numbers/shown.ts';
import type { DrawnPush, ShaftDrawn } from '../worker/shaft-api.ts';

type Units = Readonly<Record<string, string>>;

const WAYS = { start: 'Toward its start, left in the drawing', end: 'Toward its end, right in the drawing' } as const;

/** What keeps a shaft in place along its length: which bearing is fixed, and the way of the push part by part. */
export const ShaftHold = memo(function ShaftHold(props: {
  address: string;
  pushes: ShaftDrawn['pushes'];
  findings: Assessment['findings'];
  units: Units;
  onOpen: (finding: string) => void;
  onReveal: (address: string) => void;
}): JSX.Element | null {
  const { address, pushes, findings, units, onOpen, onReveal } = props;
  const told = ['bearing.location', 'bearing.thrust'].flatMap(
    (check) => findings.find((one) => one.check === check && one.address === address) ?? [],
  );
  if (told.length === 0) return null;
  return (
    <>
      <h3>What holds it along its length</h3>
      <ul className="hold-checks">
        {told.map(({ id, check, severity, title, says, reserve }) => (
          <li key={id}>
            <Severity severity={severity} />
            <span>
              <button type="button" className="link" onClick={() => onOpen(id)}>
                {title}
              </button>
              {reserve && <b> {reserveText(reserve.value)}</b>}
              {/* The way of the push is told part by part below. */}
              {check === 'bearing.location' && <span className="note hold-says">{says}</span>}
            </span>
          </li>
        ))}
      </ul>
      {'missing' in pushes ? (
        pushes.missing.map(({ address: at, says }) => (
          <p key={at + says}>
            Not known yet: {says}.{' '}
            <button type="button" className="link" onClick={() => onReveal(at)}>
              Go there<span className="hidden-name">: {says}</span>
            </button>
          </p>
        ))
      ) : (
        <div className="hold-ways">
          {pushes.map((one) => (
            <Way key={one.way} push={one} units={units} onReveal={onReveal} />
          ))}
        </div>
      )}
    </>
  );
});

/** The parts that a push passes through, first to last. */
function Way(props: { push: DrawnPush; units: Units; onReveal: (address: string) => void }): JSX.Element {
  const { push, units, onReveal } = props;
  const force = (value: number): string => shownText(show({ value, lo: value, hi: value }, 'force', units, 3));
  return (
    <div>
      <h4>{WAYS[push.way]}</h4>
      <p className="lead">
        {push.push > 0 ? `${force(push.push)} at most over all cases, through:` : 'Nothing pushes; it is stopped by:'}
      </p>
      <ol className="numbered">
        {push.links.map(({ name, demand, state, capacity, missing }, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: parts in their order, two of which may share a name
          <li key={k} className={state === 'gap' ? 'fails' : undefined}>
            {name}
            {state === 'bears' && capacity !== null && (
              <span className="lead">
                , bears {force(capacity)}
                {demand > 0 ? `, ${reserveText(capacity / demand)} times what is asked` : ''}
              </span>
            )}
            {state === 'solid' && <span className="lead">, whole metal</span>}
            {state === 'gap' && <b>: nothing is there</b>}
            {state === 'open' &&
              missing.map(({ address, says }) => (
                <span key={address + says} className="lead">
                  , not known: {says}{' '}
                  <button type="button" className="link" onClick={() => onReveal(address)}>
                    Go there<span className="hidden-name">: {says}</span>
                  </button>
                </span>
              ))}
          </li>
        ))}
      </ol>
    </div>
  );
}
