import type { JSX } from 'react';
import { type Draft, dialOf, MARKS, placeDegrees } from './draft.ts';

const HOURS = Array.from({ length: MARKS }, (_, k) => (k === 0 ? 12 : k));

interface Props {
  readonly draft: Draft;
  /** Opens a mark; with highest and lowest alone it says where the one in hand stands. */
  readonly onMark: (k: number) => void;
  /** What stands in the middle. */
  readonly children: JSX.Element;
}

/** Twelve marks on a clock face, twelve at the punch mark, each a button with its dial value. */
export function ClockRing({ draft, onMark, children }: Props): JSX.Element {
  const ends = draft.marks === 0;
  return (
    <fieldset className="ring">
      <legend className="hidden-name">{ends ? 'Where it stands on the clock' : 'Marks round the part'}</legend>
      <svg className="ring-lines" viewBox="-100 -100 200 200" aria-hidden="true">
        <circle r="82" className="thin-line" />
        <circle r="58" className="thin-line" strokeDasharray="1 2" />
        <path d="M0-52 4-44H-4Z" className="solid" />
        <path d="M-49-18A52 52 0 0 1-30-42" className="turn-line" />
        <path d="m-25-46-10 2 6 7z" className="solid" />
      </svg>
      {HOURS.map((hour, k) => {
        const turn = (k * 2 * Math.PI) / MARKS;
        const { value, current, said } = ends ? endAt(draft, k) : valueAt(draft, k);
        return (
          <button
            key={hour}
            type="button"
            className="ring-mark"
            aria-current={current}
            aria-label={`${hour} o’clock: ${said}`}
            style={{ left: `${50 + 41 * Math.sin(turn)}%`, top: `${50 - 41 * Math.cos(turn)}%` }}
            onClick={() => onMark(k)}
          >
            <span className="ring-hour">{hour}</span>
            <b>{value}</b>
          </button>
        );
      })}
      <div className="ring-middle">{children}</div>
    </fieldset>
  );
}

function valueAt(draft: Draft, k: number) {
  const typed = draft.values[k] ?? '';
  return { value: typed, current: draft.at === k, said: dialOf(typed) === undefined ? 'not yet' : typed };
}

function endAt({ highAt, lowAt, at }: Draft, k: number) {
  const is = (place: string) => placeDegrees(place) === k * 30;
  const value = is(highAt) ? 'high' : is(lowAt) ? 'low' : '';
  return { value, current: is(at === 0 ? highAt : lowAt), said: value === '' ? 'neither' : value };
}
