import type { JSX, ReactNode } from 'react';

/** Holds a table that may be wider than the screen: it scrolls by itself, by finger and by arrow keys. */
export function Wide(props: { readonly name: string; readonly children: ReactNode }): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen is scrolled with the arrow keys
    <section className="plot-scroll" tabIndex={0} aria-label={`${props.name}, as a table`}>
      {props.children}
    </section>
  );
}
