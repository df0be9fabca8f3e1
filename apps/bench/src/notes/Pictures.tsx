import type { Pictured } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import { type JSX, useEffect, useRef, useState } from 'react';
import { FieldEditor } from '../inspector/FieldEditor.tsx';
import type { StructureTools } from '../inspector/structure-tools.ts';
import { TakeOut } from '../inspector/TakeOut.tsx';
import { AttachPicture } from './AttachPicture.tsx';
import './notes.css';

interface Props {
  readonly pictures: readonly Pictured[];
  readonly tools: StructureTools;
  readonly locked: string | null;
  /** With every field of each picture; else its name and what it shows. */
  readonly all: boolean;
  readonly onCommit: (address: string, typed: string | null) => Promise<Fault | null>;
}

/** What the browser can show of a picture: its address, or why there is none; null while it is asked for. */
type Seen = { readonly url: string } | { readonly says: string } | null;

function usePicture(tools: StructureTools, hash: string): Seen {
  const [seen, setSeen] = useState<{ readonly hash: string; readonly seen: Seen }>({ hash, seen: null });
  // biome-ignore lint/correctness/useExhaustiveDependencies: a picture never changes under its hash
  useEffect(() => {
    let overtaken = false;
    tools.pictureUrl(hash).then(
      (url) => {
        if (!overtaken) setSeen({ hash, seen: { url } });
      },
      (why: unknown) => {
        if (!overtaken) setSeen({ hash, seen: { says: why instanceof Error ? why.message : String(why) } });
      },
    );
    return () => {
      overtaken = true;
    };
  }, [hash]);
  return seen.hash === hash ? seen.seen : null;
}

/** The pictures of an element: each small, with its name; pressed, it opens large. */
export function Pictures(props: Props): JSX.Element | null {
  const { pictures, tools, locked, all, onCommit } = props;
  const [large, setLarge] = useState<Pictured | null>(null);
  if (pictures.length === 0) return null;
  return (
    <section className="pictures" aria-label="Pictures">
      <ul>
        {pictures.map((picture) => (
          <li key={picture.at}>
            <Thumbnail picture={picture} tools={tools} onOpen={() => setLarge(picture)} />
            <div className="picture-words">
              {picture.fields
                .filter(({ address }) => all || [`${picture.at}/name`, `${picture.at}/of`].includes(address))
                .map((field) => (
                  <FieldEditor key={field.address} field={field} locked={locked} onCommit={onCommit} />
                ))}
              <div className="picture-deeds">
                <AttachPicture of={null} name={picture.name} at={picture.at} tools={tools} locked={locked} />
                <TakeOut
                  at={picture.at}
                  name={picture.name}
                  words="Take off"
                  seen="words"
                  tools={tools}
                  locked={locked}
                />
              </div>
            </div>
          </li>
        ))}
      </ul>
      {large && <LargePicture picture={large} tools={tools} onClose={() => setLarge(null)} />}
    </section>
  );
}

function Thumbnail(props: { picture: Pictured; tools: StructureTools; onOpen: () => void }): JSX.Element {
  const { picture, tools, onOpen } = props;
  const seen = usePicture(tools, picture.file);
  const [broken, setBroken] = useState(false);
  if (seen !== null && 'says' in seen) return <p className="thumbnail note">{seen.says}</p>;
  if (broken) return <p className="thumbnail note">The browser cannot show this picture.</p>;
  return (
    <button type="button" className="thumbnail" onClick={onOpen} disabled={seen === null}>
      {seen && <img src={seen.url} alt="" loading="lazy" decoding="async" onError={() => setBroken(true)} />}
      <span className="hidden-name">Open {picture.name} large</span>
    </button>
  );
}

function LargePicture(props: { picture: Pictured; tools: StructureTools; onClose: () => void }): JSX.Element {
  const { picture, tools, onClose } = props;
  const seen = usePicture(tools, picture.file);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className="large-picture" aria-labelledby="large-picture-heading" onClose={onClose}>
      <div className="section-head">
        <h2 id="large-picture-heading">{picture.name}</h2>
        <button type="button" className="link" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      {seen && 'url' in seen && <img src={seen.url} alt={picture.name} />}
    </dialog>
  );
}
