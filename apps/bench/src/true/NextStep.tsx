import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import { clockText } from '@oddwheel/build/true/clock';
import type { PartSheet } from '@oddwheel/build/true/sheet-types';
import { WAYS } from '@oddwheel/build/true/types';
import { lengthWords } from '@oddwheel/build/true/words';
import { type JSX, useState } from 'react';
import { Field } from './Field.tsx';
import { NextFace } from './NextFace.tsx';

interface Props {
  readonly sheet: PartSheet;
  readonly onMeasure: (station: string) => void;
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
}

/** What to do next, why, and what to expect of it; big enough to be read from beside the machine. */
export function NextStep({ sheet, onMeasure, onAdd }: Props): JSX.Element {
  const { next, now, unit, rounds, part } = sheet;
  const { words, kind, bead } = next;
  const [noting, setNoting] = useState<'bead' | 'other' | null>(null);
  const station = next.station ?? part.goal.station;
  const round =
    rounds.length === 0 ? '' : `, after ${rounds.length === 1 ? 'the first reading' : `${rounds.length} readings`}`;
  return (
    <section className="next-step" aria-labelledby="next-heading">
      <h2 id="next-heading">Next{round}</h2>
      <p className="instruction">{words.say}</p>
      {kind === 'bead' && bead && now && next.expected && (
        <div className="next-picture">
          <NextFace high={now.high} bead={bead.clock} />
          <dl className="next-figures">
            <div>
              <dt>high spot</dt>
              <dd>{clockText(now.high)}</dd>
            </div>
            <div>
              <dt>bead, {bead.length}</dt>
              <dd className="marked">{bead.clock}</dd>
            </div>
            <div>
              <dt>TIR it should leave</dt>
              <dd>{lengthWords(next.expected.tir, unit)}</dd>
              <dd className="note">
                {lengthWords(next.expected.low, unit)} to {lengthWords(next.expected.high, unit)} likely
              </dd>
            </div>
          </dl>
        </div>
      )}
      <p className="next-why">{words.why}</p>
      {words.expect !== '' && <p className="next-why">Expect: {words.expect}</p>}
      {noting === null ? (
        <div className="true-buttons">
          {kind === 'bead' ? (
            <button type="button" className="button main" onClick={() => setNoting('bead')}>
              Bead is on: wait, then read
            </button>
          ) : (
            <button
              type="button"
              className={kind === 'measure' || kind === 'wait' ? 'button main' : 'button'}
              onClick={() => onMeasure(station)}
            >
              Take readings at {station}
            </button>
          )}
          {kind !== 'refused' && rounds.length > 0 && (
            <button type="button" className="button" onClick={() => setNoting('other')}>
              {kind === 'bead' ? 'Another way than a bead' : 'Note what was done to it'}
            </button>
          )}
        </div>
      ) : (
        <RoundForm
          key={noting}
          part={part.part}
          way={noting === 'bead' ? 'bead' : 're-clock'}
          {...(bead ? { bead } : {})}
          onAdd={onAdd}
          onDone={() => setNoting(null)}
        />
      )}
      {words.otherwise !== undefined && <p className="next-why">{words.otherwise}</p>}
      {words.cautions.length > 0 && (
        <ul className="true-cautions" aria-label="Cautions">
          {words.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <p className="note">{words.stopWhen}</p>
    </section>
  );
}

interface RoundProps {
  readonly part: string;
  readonly way: string;
  readonly bead?: { readonly clock: string; readonly length: string; readonly segment?: number };
  readonly onAdd: Props['onAdd'];
  readonly onDone: () => void;
}

/** What was done, as it was done: the next reading teaches from it. */
function RoundForm({ part, way: first, bead, onAdd, onDone }: RoundProps): JSX.Element {
  const [way, setWay] = useState(first);
  const [clock, setClock] = useState(bead?.clock ?? '');
  const [length, setLength] = useState(bead?.length ?? '');
  const [note, setNote] = useState('');
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const wrong = (address: string): string | undefined => {
    const fault = faults.find((one) => one.address === address);
    return fault && `${fault.problem} Accepted: ${fault.accepted}.`;
  };
  const keep = async (): Promise<void> => {
    const segment = bead?.segment === undefined ? {} : { segment: bead.segment };
    const found = await onAdd('true-round', {
      part,
      way,
      ...(way === 'bead' ? { bead: { clock: clock.trim(), length: length.trim(), ...segment } } : {}),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
    setFaults(found);
    if (found.length === 0) onDone();
  };
  return (
    <div className="round-form">
      <p className="lead">As it was really done:</p>
      <div className="fields">
        {first !== 'bead' && (
          <Field label="Way" value={way} onChange={setWay} choices={WAYS.map((one) => [one, one])} />
        )}
        {way === 'bead' && (
          <>
            <Field label="Middle of the bead at" value={clock} onChange={setClock} wrong={wrong('/bead/clock')} />
            <Field label="Length of the bead" value={length} onChange={setLength} wrong={wrong('/bead/length')} />
          </>
        )}
        <Field label="Note" value={note} onChange={setNote} />
      </div>
      <div className="true-buttons">
        <button type="button" className="button main" onClick={() => void keep()}>
          Keep it
        </button>
        <button type="button" className="button" onClick={onDone}>
          Not done
        </button>
      </div>
    </div>
  );
}
