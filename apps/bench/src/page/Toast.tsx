import { type JSX, useEffect, useState } from 'react';

const SHOWN_FOR = 8000;

/** The edit just made and its Undo, at the bottom left for 8 s, and as long as the pointer or the focus rests on it. */
export function Toast(props: { text: string; onUndo: () => void; onGone: () => void }): JSX.Element {
  const { text, onUndo, onGone } = props;
  const [held, setHeld] = useState(false);
  useEffect(() => {
    if (held) return;
    const timer = setTimeout(onGone, SHOWN_FOR);
    return () => clearTimeout(timer);
  }, [held, onGone]);
  return (
    <section
      className="toast"
      aria-label="Last edit"
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      {text}
      <button type="button" className="link" onClick={onUndo}>
        Undo
      </button>
    </section>
  );
}
