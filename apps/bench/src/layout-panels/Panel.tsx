import { type JSX, type ReactNode, useId, useState, useSyncExternalStore } from 'react';

const PHONE = '(max-width: 599px)';

function watchPhone(tell: () => void): () => void {
  const query = window.matchMedia(PHONE);
  query.addEventListener('change', tell);
  return () => query.removeEventListener('change', tell);
}

/** A panel below the drawing. On a phone it is folded until its heading is tapped; on paper it is always written out. */
export function Panel(props: { readonly name: string; readonly children: ReactNode }): JSX.Element {
  const id = useId();
  const phone = useSyncExternalStore(watchPhone, () => window.matchMedia(PHONE).matches);
  const [open, setOpen] = useState(false);
  return (
    <section className={phone && !open ? 'list panel folded' : 'list panel'} aria-labelledby={id}>
      <h2 id={id}>
        {phone ? (
          <button type="button" className="panel-fold" aria-expanded={open} onClick={() => setOpen(!open)}>
            {props.name}
          </button>
        ) : (
          props.name
        )}
      </h2>
      <div className="panel-body">{props.children}</div>
    </section>
  );
}
