import type { Assessment } from '@oddwheel/build/assess/types';
import type { ViewId } from '@oddwheel/sheets/drawing';
import { useMemo, useState } from 'react';
import type { Actions } from '../state/actions.ts';
import { keepChoice, keptChoice } from '../state/device.ts';
import { layPicture, type UnderPlace } from './lay.ts';
import { type PictureFile, usePictureFiles } from './use-picture-files.ts';

type Picture = Assessment['pictures'][number];

/** A picture as it is drawn under a view. */
export interface Laid {
  readonly address: string;
  readonly url: string;
  readonly width: number;
  readonly height: number;
  readonly matrix: readonly number[];
  /** Part of its full strength. */
  readonly strength: number;
}

/** A picture that is being laid, as far as it is known. */
interface Draft {
  readonly address: string;
  readonly under: UnderPlace | null;
}

export interface Underlays {
  readonly pictures: readonly Picture[];
  readonly files: ReadonlyMap<string, PictureFile>;
  readonly laid: ReadonlyMap<ViewId, readonly Laid[]>;
  readonly strength: number;
  readonly setStrength: (strength: number) => void;
  /** Hashes of the pictures that are not shown on this device. */
  readonly hidden: ReadonlySet<string>;
  readonly show: (hash: string, shown: boolean) => void;
  readonly draft: Draft | null;
  readonly setDraft: (draft: Draft | null) => void;
}

const STRENGTH = 0.5;

function keptStrength(): number {
  const kept = Number(keptChoice('picture strength') ?? STRENGTH);
  return kept >= 0.1 && kept <= 1 ? kept : STRENGTH;
}

const keptHidden = (): ReadonlySet<string> =>
  new Set((keptChoice('hidden pictures') ?? '').split(' ').filter((x) => x !== ''));

/** The pictures of the build under their views. Whether and how strongly they are shown belongs to this device, where they lie to the build. */
export function useUnderlays(pictures: readonly Picture[], pictureUrl: Actions['pictureUrl']): Underlays {
  const [strength, setStrength] = useState(keptStrength);
  const [hidden, setHidden] = useState(keptHidden);
  const [draft, setDraft] = useState<Draft | null>(null);
  const files = usePictureFiles(
    pictureUrl,
    pictures.filter(({ under, address }) => under !== null || address === draft?.address).map(({ file }) => file),
  );
  const laid = useMemo(() => {
    const views = new Map<ViewId, readonly Laid[]>();
    for (const picture of pictures) {
      const drafted = picture.address === draft?.address;
      const under = drafted ? draft.under : hidden.has(picture.file) ? null : picture.under;
      const file = files.get(picture.file);
      if (!under || !file?.ok) continue;
      const lay = layPicture(under, file);
      if (!lay.ok) continue;
      const { url, width, height } = file;
      const one: Laid = { address: picture.address, url, width, height, matrix: lay.matrix, strength };
      views.set(under.view, [...(views.get(under.view) ?? []), one]);
    }
    return views;
  }, [pictures, files, hidden, draft, strength]);
  return {
    pictures,
    files,
    laid,
    strength,
    setStrength: (next) => {
      setStrength(next);
      keepChoice('picture strength', String(next));
    },
    hidden,
    show: (hash, shown) => {
      const next = new Set(hidden);
      if (shown) next.delete(hash);
      else next.add(hash);
      setHidden(next);
      keepChoice('hidden pictures', [...next].join(' '));
    },
    draft,
    setDraft,
  };
}
