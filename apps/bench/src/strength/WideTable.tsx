import type { JSX, ReactNode } from 'react';

/** A table wider than a phone, in a frame that scrolls sideways. */
export function WideTable(props: { label: string; children: ReactNode }): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled with the arrow keys
    <section className="wide-table" tabIndex={0} aria-label={`${props.label}, scrolls sideways`}>
      {props.children}
    </section>
  );
}
