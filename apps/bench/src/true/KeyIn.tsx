import type { Json } from '@oddwheel/build/document/json';
import type { Fault } from '@oddwheel/build/fault';
import type { DialReading, TruePart } from '@oddwheel/build/true/types';
import { type JSX, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { ClockRing } from './ClockRing.tsx';
import { advanced, type Draft, dialOf, keyed, MARKS, markAt, readingsOf, setBody, withValue } from './draft.ts';
import { Keypad } from './Keypad.tsx';
import { MarkList } from './MarkList.tsx';
import { PasteReadings } from './PasteReadings.tsx';
import { SetUp } from './SetUp.tsx';

interface Props {
  readonly part: TruePart;
  readonly draft: Draft;
  /** No set was taken of this part before: its set-up is asked first. */
  readonly first: boolean;
  readonly onDraft: (draft: Draft | null) => void;
  readonly onAdd: (kind: string, body: Json) => Promise<readonly Fault[]>;
}

const FEWEST = 4;

/** A set of dial readings keyed in beside the machine: clock face, keypad, and what the set is about. */
export function KeyIn({ part, draft, first, onDraft, onAdd }: Props): JSX.Element {
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const input = useRef<HTMLInputElement>(null);
  const section = useRef<HTMLElement>(null);
  const toReadings = (): void => {
    section.current?.scrollIntoView();
    input.current?.focus({ preventScroll: true });
  };
  useEffect(toReadings, []);

  const ends = draft.marks === 0;
  const filled = draft.values.slice(0, ends ? 2 : draft.marks).filter((typed) => dialOf(typed) !== undefined).length;
  const whole = filled === (ends ? 2 : draft.marks);
  const closing = !ends && draft.at === draft.marks;
  const read = async (readings: readonly DialReading[]): Promise<void> => {
    const found = await onAdd('true-set', setBody(draft, readings));
    setFaults(found);
    if (found.length === 0) onDraft(null);
  };
  const finish = (): Promise<void> => read(readingsOf(draft));
  const next = (): void => {
    if (whole) void finish();
    else onDraft(advanced(draft));
  };
  const onMark = (k: number): void => {
    if (ends) onDraft({ ...draft, [draft.at === 0 ? 'highAt' : 'lowAt']: `${k === 0 ? 12 : k}:00` });
    else onDraft({ ...draft, at: k });
    input.current?.focus({ preventScroll: true });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    if (event.key === 'Enter') next();
    else if (step === undefined) return;
    else onDraft({ ...draft, at: Math.min(Math.max(draft.at + step, 0), draft.values.length - 1) });
    event.preventDefault();
  };

  const place = placeWords(draft);
  const middle = (
    <>
      <p className="ring-place" aria-live="polite">
        {place}
      </p>
      <input
        ref={input}
        className="ring-value"
        aria-label={`Dial, ${place}, ${draft.unit}`}
        // The keypad is below: no other keyboard comes up over it.
        inputMode="none"
        autoComplete="off"
        placeholder="–"
        value={draft.values[draft.at] ?? ''}
        onChange={(event) => onDraft(withValue(draft, event.target.value.replace('-', '−')))}
        onKeyDown={onKeyDown}
      />
      <p className="ring-unit">{draft.unit}</p>
    </>
  );
  return (
    <section className="keying" ref={section} aria-labelledby="keying-heading">
      <div className="keying-head">
        <h2 id="keying-heading">
          {part.name ?? part.part}, {draft.face.trim() === '' ? 'at' : 'face at'} {draft.station || '…'}
        </h2>
        <LeaveSet count={filled} onLeave={() => onDraft(null)} />
      </div>
      <SetUp part={part} draft={draft} faults={faults} open={first} onDraft={onDraft} onDone={toReadings} />
      {draft.marks === MARKS || ends ? (
        <ClockRing draft={draft} onMark={onMark}>
          {middle}
        </ClockRing>
      ) : (
        <MarkList draft={draft} onMark={onMark}>
          {middle}
        </MarkList>
      )}
      <Keypad
        next={nextWords(draft, whole)}
        onKey={(key) => onDraft(withValue(draft, keyed(draft.values[draft.at] ?? '', key)))}
        onNext={next}
      />
      {faults.length > 0 && (
        <div className="keying-faults" role="alert">
          {faults.map(({ address, problem, accepted }) => (
            <p key={`${address} ${problem}`} className="fails">
              {address.replace(/^\//, '').replaceAll('/', ', ')}: {problem} Accepted: {accepted}.
            </p>
          ))}
        </div>
      )}
      <div className="keying-more">
        {!ends && !whole && filled >= FEWEST && (
          <button type="button" className="button" onClick={() => void finish()}>
            Read it with {filled}
          </button>
        )}
        {whole && !ends && !closing && (
          <button type="button" className="button" onClick={() => onDraft({ ...draft, at: draft.marks })}>
            Turn back to the first mark and read it again
          </button>
        )}
        <PasteReadings onTake={(readings) => void read(readings)} />
      </div>
    </section>
  );
}

/** Leaves the set; with readings in it, after asking once. */
function LeaveSet({ count, onLeave }: { count: number; onLeave: () => void }): JSX.Element {
  const [asked, setAsked] = useState(false);
  return (
    <button
      type="button"
      className="link"
      onBlur={() => setAsked(false)}
      onClick={count === 0 || asked ? onLeave : () => setAsked(true)}
    >
      {asked ? `Throw ${count} away: sure?` : 'Leave this set'}
    </button>
  );
}

const hourOf = (degrees: number): string => `${degrees === 0 ? 12 : degrees / 30} o’clock`;

function placeWords(draft: Draft): string {
  if (draft.marks === 0) return draft.at === 0 ? 'highest' : 'lowest';
  const at = markAt(draft, draft.at);
  const mark = draft.marks === MARKS ? hourOf(at) : `${Math.round(at * 10) / 10}°`;
  return draft.at === draft.marks ? `back at ${mark}` : `at ${mark}`;
}

function nextWords(draft: Draft, whole: boolean): string {
  if (draft.marks === 0) return whole ? 'Both in: read it' : draft.at === 0 ? 'Next: lowest' : 'Next: highest';
  if (whole) return `All ${draft.marks} in: read it`;
  const { at } = advanced(draft);
  return draft.marks === MARKS
    ? `Next: ${hourOf(markAt(draft, at))}`
    : `Next: ${Math.round(markAt(draft, at) * 10) / 10}°`;
}
