import { type JSX, useEffect, useRef } from 'react';

/** MathML as the page's own elements, with a sentence as its name for those who don't see it. */
export function Formula({ mathml, sentence }: { mathml: string; sentence: string }): JSX.Element {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const parsed = new DOMParser().parseFromString(mathml, 'application/xml').documentElement;
    const math = document.importNode(parsed, true);
    math.setAttribute('aria-label', sentence);
    place.current?.replaceChildren(math);
  }, [mathml, sentence]);
  return <span ref={place} />;
}
