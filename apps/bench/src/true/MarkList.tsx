import type { JSX } from 'react';
import { type Draft, dialOf, markAt } from './draft.ts';

/** Any number of marks as a row of buttons, for what does not fit on a clock face. */
export function MarkList(props: { draft: Draft; onMark: (k: number) => void; children: JSX.Element }): JSX.Element {
  const { draft, onMark, children } = props;
  return (
    <div className="mark-list">
      <div className="mark-list-value">{children}</div>
      <ol className="plain-list">
        {draft.values.slice(0, draft.marks).map((typed, k) => {
          const at = `${Math.round(markAt(draft, k) * 10) / 10}°`;
          return (
            <li key={at}>
              <button
                type="button"
                className="mark-cell"
                aria-current={draft.at === k}
                aria-label={`${at}: ${dialOf(typed) === undefined ? 'not yet' : typed}`}
                onClick={() => onMark(k)}
              >
                <span className="ring-hour">{at}</span> <b>{typed}</b>
              </button>
            </li>
          );
        })}
      </ol>
    </div>
  );
}
