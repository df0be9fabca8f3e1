import type { ShaftLine } from '@oddwheel/build/assess/strength/shaft-lines';
import type { Assessment } from '@oddwheel/build/assess/types';
import { type JSX, useDeferredValue, useId, useState } from 'react';
import { reserveText, unitOf, unitSize } from '../numbers/shown.ts';
import { elementInView } from '../state/bench.ts';
import type { ScreenProps } from '../steps/screen.ts';
import type { DrawnSeat } from '../worker/shaft-api.ts';
import { ShaftBearings } from './ShaftBearings.tsx';
import { ShaftHold } from './ShaftHold.tsx';
import { ShaftSheet } from './ShaftSheet.tsx';
import { CurvesTable, PlacesTable, StationReading } from './ShaftTables.tsx';
import { governingPlace, type KnownLine, lengthText } from './shaft-rows.ts';
import './shaft.css';
import { useShaftLines } from './use-shaft-lines.ts';

/** What goes on along a shaft: one is chosen, and a load case; the chosen element's own shaft first, else the one that is listed first. */
export function ShaftPanel({ state, actions, model }: ScreenProps): JSX.Element | null {
  const { assessment, hash, mode } = state;
  const id = useId();
  const [picked, setPicked] = useState<{ readonly shaft: string; readonly at: string | null } | null>(null);
  const [wanted, setWanted] = useState<string | null>(null);
  const known = wanted === null || (assessment?.cases ?? []).some((one) => one.id === wanted);
  const caseId = known ? wanted : null;
  const here = caseId === 'here' ? `${assessment?.here.gear} ${assessment?.here.roadSpeed}` : '';
  const { shafts: latest, gone, trouble } = useShaftLines(model, `${hash} ${here}`, caseId);
  const element = elementInView(state);
  // What is picked here holds until another element is looked at.
  const address =
    (picked && picked.at === element ? picked.shaft : null) ??
    assessment?.shafts.find((one) => one.address === element)?.address ??
    (assessment ? firstNamed(assessment) : undefined);
  // What is touched answers first; the sheet follows when there is time.
  const shafts = useDeferredValue(latest);
  const drawnAddress = useDeferredValue(address);
  if (!assessment) return null;
  const drawn = shafts?.find(({ line }) => line.address === drawnAddress) ?? shafts?.[0];
  return (
    <section className="list shaft-panel" aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>Along a shaft</h2>
      <div className="shaft-choices">
        <div>
          <label className="note" htmlFor={`${id}-shaft`}>
            Shaft
          </label>
          <select
            id={`${id}-shaft`}
            className="choice"
            value={address ?? ''}
            onChange={(event) => setPicked({ shaft: event.target.value, at: element })}
          >
            {assessment.shafts.map((one) => (
              <option key={one.address} value={one.address}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label className="note" htmlFor={`${id}-case`}>
            Load case
          </label>
          <select
            id={`${id}-case`}
            className="choice"
            value={caseId ?? ''}
            onChange={(event) => setWanted(event.target.value || null)}
          >
            <option value="">
              {caseId === null && drawn?.line.ok
                ? `${drawn.line.caseName}, nearest to yield`
                : 'the one nearest to yield'}
            </option>
            {assessment.cases.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </div>
      </div>
      {trouble !== null && <p className="fails">The shafts could not be drawn: {trouble}</p>}
      {gone && <p>This build has no such load case any more. Choose another one.</p>}
      {drawn && !drawn.line.ok && <NotKnown line={drawn.line} onReveal={actions.reveal} />}
      {drawn?.line.ok && (
        <Known
          key={drawn.line.address}
          line={drawn.line}
          seats={drawn.seats}
          units={assessment.units}
          shop={mode === 'shop'}
        />
      )}
      {drawn?.line.ok && (
        <ShaftBearings
          line={drawn.line}
          seats={drawn.seats}
          findings={assessment.findings}
          units={assessment.units}
          onOpen={actions.openFinding}
        />
      )}
      {drawn && (
        <ShaftHold
          address={drawn.line.address}
          pushes={drawn.pushes}
          findings={assessment.findings}
          units={assessment.units}
          onOpen={actions.openFinding}
          onReveal={actions.reveal}
        />
      )}
    </section>
  );
}

/** The shaft whose strength is listed first of all. */
function firstNamed({ findings, shafts }: Assessment): string | undefined {
  const worst = findings.find(({ check }) => check.startsWith('shaft.'));
  return shafts.find(({ address }) => address === worst?.address)?.address ?? shafts[0]?.address;
}

function NotKnown(props: {
  line: Extract<ShaftLine, { ok: false }>;
  onReveal: (address: string) => void;
}): JSX.Element {
  return (
    <ul className="plain-list">
      {props.line.missing.map(({ address, says }) => (
        <li key={address + says}>
          <span>
            Not known yet: {says}.{' '}
            <button type="button" className="link" onClick={() => props.onReveal(address)}>
              Go there<span className="hidden-name">: {says}</span>
            </button>
          </span>
        </li>
      ))}
    </ul>
  );
}

function Known(props: {
  line: KnownLine;
  seats: readonly DrawnSeat[];
  units: Assessment['units'];
  shop: boolean;
}): JSX.Element {
  const { line, seats, units, shop } = props;
  const id = useId();
  const [thin, setThin] = useState(false);
  const [asked, setAsked] = useState<number | null>(null);
  const governs = governingPlace(line);
  const [first, last] = [line.points[0]?.station ?? 0, line.points.at(-1)?.station ?? 0];
  const reading = asked === null ? null : Math.min(last, Math.max(first, asked));
  const station = reading ?? governs?.station ?? first;
  const [drawnReading, drawnStation] = [useDeferredValue(reading), useDeferredValue(station)];
  const length = (value: number): string => lengthText(value, units);
  const size = unitSize('length', units);
  return (
    <>
      {governs && (
        <p>
          Over all cases <b>{governs.name}</b> at {length(governs.station)} governs:{' '}
          {[
            governs.fatigueReserve === null ? '' : `fatigue ${reserveText(governs.fatigueReserve)}`,
            governs.yieldReserve === null ? '' : `yield ${reserveText(governs.yieldReserve)}`,
          ]
            .filter(Boolean)
            .join(', ')}
          . <span className="lead">The dashed line is there.</span>
        </p>
      )}
      <p>
        <button type="button" className="button" aria-pressed={thin} onClick={() => setThin(!thin)}>
          How thin could it be
        </button>
        {thin && (
          <span className="beside-button">
            The dashed outline just meets the design reserves at each place, with the same notch there.
          </span>
        )}
      </p>
      <ShaftSheet
        line={line}
        seats={seats}
        units={units}
        shop={shop}
        thin={thin}
        reading={drawnReading}
        onRead={setAsked}
      />
      <div className="station-choice">
        <label htmlFor={id}>Read at station {length(station)}</label>
        <input
          id={id}
          type="range"
          min={first}
          max={last}
          step={size * (unitOf('length', units) === 'mm' ? 0.5 : 0.02)}
          value={station}
          aria-valuetext={length(station)}
          onChange={(event) => setAsked(Number(event.target.value))}
        />
      </div>
      <StationReading line={line} station={drawnStation} units={units} />
      <PlacesTable line={line} governs={governs?.station ?? null} units={units} />
      <details className="plot-table">
        <summary>
          All curves as a table<span className="hidden-name">: {line.name}</span>
        </summary>
        <CurvesTable line={line} units={units} />
      </details>
    </>
  );
}
