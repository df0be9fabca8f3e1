import { useEffect, useState } from 'react';
import type { Actions } from '../state/actions.ts';

/** A picture as the browser shows it, by hash; or why it does not. */
export type PictureFile =
  | { readonly ok: true; readonly url: string; readonly width: number; readonly height: number }
  | { readonly ok: false; readonly says: string };

async function read(pictureUrl: Actions['pictureUrl'], hash: string): Promise<PictureFile> {
  try {
    const url = await pictureUrl(hash);
    const image = new Image();
    image.src = url;
    await image.decode();
    return { ok: true, url, width: image.naturalWidth, height: image.naturalHeight };
  } catch {
    return { ok: false, says: 'The browser cannot show this picture.' };
  }
}

/** The pictures with these hashes, each asked for once. */
export function usePictureFiles(
  pictureUrl: Actions['pictureUrl'],
  hashes: readonly string[],
): ReadonlyMap<string, PictureFile> {
  const [files, setFiles] = useState<ReadonlyMap<string, PictureFile>>(new Map());
  const wanted = hashes.filter((hash) => !files.has(hash)).join(' ');
  useEffect(() => {
    if (wanted === '') return;
    let left = false;
    void Promise.all(wanted.split(' ').map(async (hash) => [hash, await read(pictureUrl, hash)] as const)).then(
      (found) => {
        if (!left) setFiles((before) => new Map([...before, ...found]));
      },
    );
    return () => {
      left = true;
    };
  }, [pictureUrl, wanted]);
  return files;
}
