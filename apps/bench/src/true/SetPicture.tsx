import { type JSX, useEffect, useState } from 'react';
import { smallPicture } from '../notes/attach.ts';
import { ChooseFile } from '../notes/ChooseFile.tsx';
import type { RunOut } from './run-out.ts';

/** What a picture of a set is kept and shown by. */
export interface PictureTools {
  readonly keep: RunOut['keepPicture'];
  readonly drop: RunOut['dropPicture'];
  readonly url: (hash: string) => Promise<string>;
}

const HAS_CAMERA = window.matchMedia('(pointer: coarse)');

/** Takes or chooses the picture of the set that is keyed in. */
export function TakePicture(props: { hash: string; tools: PictureTools; onHash: (hash: string) => void }): JSX.Element {
  const { hash, tools, onHash } = props;
  const [says, setSays] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const change = (to: string): void => {
    if (hash !== '' && hash !== to) void tools.drop(hash);
    onHash(to);
  };
  const take = async (file: File): Promise<void> => {
    setBusy(true);
    setSays(null);
    try {
      const made = await smallPicture(file);
      if (made.ok) change(await tools.keep(made.bytes));
      else setSays(made.says);
    } catch (why) {
      setSays(`The picture was not kept: ${why instanceof Error ? why.message : String(why)}`);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="take-picture">
      {hash !== '' && <SetPicture hash={hash} of="this set" tools={tools} />}
      <ChooseFile
        words={hash === '' ? 'Picture from a file' : 'Another picture'}
        of="this set"
        disabled={busy}
        camera={false}
        onFile={take}
      />
      {HAS_CAMERA.matches && <ChooseFile words="Take a picture" of="this set" disabled={busy} camera onFile={take} />}
      {hash !== '' && (
        <button type="button" className="link" onClick={() => change('')}>
          Leave the picture out
        </button>
      )}
      {hash === '' && <p className="note">Kept with the set, made small: at most 1600 pixels and 2 MiB.</p>}
      {busy && <span role="status">Making the picture small.</span>}
      {says !== null && (
        <p className="fails" role="alert">
          {says}
        </p>
      )}
    </div>
  );
}

/** The picture that was kept with a set. */
export function SetPicture({ hash, of, tools }: { hash: string; of: string; tools: PictureTools }): JSX.Element {
  const [seen, setSeen] = useState<{ readonly url?: string; readonly says?: string }>({});
  // biome-ignore lint/correctness/useExhaustiveDependencies: a picture never changes under its hash
  useEffect(() => {
    let late = false;
    setSeen({});
    tools.url(hash).then(
      (url) => {
        if (!late) setSeen({ url });
      },
      (why: unknown) => {
        if (!late) setSeen({ says: why instanceof Error ? why.message : String(why) });
      },
    );
    return () => {
      late = true;
    };
  }, [hash]);
  const gone = 'The picture is not on this device and cannot be fetched just now.';
  return (
    <figure className="set-picture">
      {seen.url !== undefined && seen.says === undefined && (
        <img src={seen.url} alt={`Taken with ${of}`} onError={() => setSeen({ says: gone })} />
      )}
      {seen.says !== undefined && <p className="note">{seen.says}</p>}
    </figure>
  );
}
