import { type JSX, useEffect, useRef } from 'react';

/** MathML as the page's own elements, with a sentence as its name for those who don't see it. */
export function Formula({ mathml, sentence }: { mathml: string; sentence: string }): JSX.Element {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const parsed = new DOMParser().parseFromString(mathml, 'application/xml').documentElement;
    const math = document.importNode(parsed, true);
    math.setAttribute('aria-label', sentence);
    for (const letter of math.querySelectorAll('mi:not([mathvariant])'))
      if ([...letter.textContent].length === 1) letter.classList.add('quantity');
    place.current?.replaceChildren(math);
    void document.fonts.ready.then(() => stretchFences(math));
  }, [mathml, sentence]);
  return <span ref={place} />;
}

/** The lettering's font has no tall brackets, so each is drawn as tall as what stands between it and its partner. */
function stretchFences(math: Element): void {
  for (const fence of math.querySelectorAll<HTMLElement>('mo[form="prefix"], mo[form="postfix"]')) {
    if (!/^[()[\]{}‖|⌊⌋⌈⌉]$/.test(fence.textContent)) continue;
    const own = fence.getBoundingClientRect();
    const row = fence.parentElement?.getBoundingClientRect();
    if (!row || own.height === 0 || row.height < own.height * 1.2) continue;
    const lift = row.top + row.height / 2 - (own.top + own.height / 2);
    fence.style.transform = `translateY(${lift.toFixed(1)}px) scaleY(${(row.height / own.height).toFixed(2)})`;
  }
}
