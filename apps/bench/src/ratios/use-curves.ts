import type { RoadCurves } from '@oddwheel/build/assess/road/curve-types';
import type { Known } from '@oddwheel/build/assess/road/types';
import { useEffect, useState } from 'react';
import type { RemoteModel } from '../worker/remote.ts';

/** Curves of the build in view. Those of before stay until the new ones come; null before the first, and the reason where they failed. */
export function useRoadCurves(
  model: RemoteModel,
  hash: string,
): { readonly curves: Known<RoadCurves> | null; readonly trouble: string | null } {
  const [curves, setCurves] = useState<Known<RoadCurves> | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  // A new hash is a new build: its curves are others.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    model.roadCurves().then(
      (next) => {
        if (!wanted) return;
        setCurves(next);
        setTrouble(null);
      },
      (why: unknown) => {
        if (wanted) setTrouble(why instanceof Error ? why.message : String(why));
      },
    );
    return () => {
      wanted = false;
    };
  }, [model, hash]);
  return { curves, trouble };
}
