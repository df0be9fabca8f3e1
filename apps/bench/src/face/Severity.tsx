import type { Severity as SeverityWord } from '@oddwheel/build/assess/types';
import type { JSX } from 'react';

const SHAPES: Record<SeverityWord, JSX.Element> = {
  holds: <circle cx="7" cy="7" r="5" fill="none" stroke="currentColor" strokeWidth="1.5" />,
  thin: (
    <>
      <path d="M7 1.6 13 12.6H1Z" fill="none" stroke="currentColor" strokeWidth="1.5" strokeLinejoin="round" />
      <path d="M3.6 9 10.4 9 12.4 12.4H1.6Z" fill="currentColor" />
    </>
  ),
  fails: (
    <path d="M1.2 1.2H7.4L5.4 5.2 7.6 7.6 5.2 12.8H1.2ZM9.6 1.2h3.2v11.6H7.4L9.8 7.4 7.6 5Z" fill="currentColor" />
  ),
  unknown: (
    <>
      <circle cx="7" cy="7" r="5.4" fill="none" stroke="currentColor" strokeWidth="1.4" strokeDasharray="2.1 1.7" />
      <path d="M5.3 5.6c.1-2 3.4-1.9 3.3 0 0 1.2-1.6 1.2-1.6 2.5" fill="none" stroke="currentColor" strokeWidth="1.3" />
      <circle cx="7" cy="9.9" r=".9" fill="currentColor" />
    </>
  ),
};

/**
 * The shape of a severity alone, for a table whose row names it; the word is there for a screen reader.
 *
 * @param props.said false where the words beside it name the severity themselves
 */
export function SeverityShape(props: { severity: SeverityWord; said?: boolean }): JSX.Element {
  const { severity, said = true } = props;
  return (
    <>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" className={severity}>
        {SHAPES[severity]}
      </svg>
      {said && <span className="hidden-name">{severity}</span>}
    </>
  );
}

/** Shape and word of a severity. */
export function Severity({ severity }: { severity: SeverityWord }): JSX.Element {
  return (
    <span className={`severity ${severity}`}>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
        {SHAPES[severity]}
      </svg>
      {severity}
    </span>
  );
}
