import type { Placing } from '@oddwheel/build/placing/types';
import { useEffect, useState } from 'react';
import type { RemoteModel } from '../worker/remote.ts';

/** What can be moved in the build on the page, and what positions are told from. */
export function usePlacing(model: RemoteModel, hash: string): Placing | null {
  const [placing, setPlacing] = useState<Placing | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    model.placing().then(
      (found) => {
        if (wanted) setPlacing(found);
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [model, hash]);
  return placing;
}
