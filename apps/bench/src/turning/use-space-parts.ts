import type { SpacePart } from '@oddwheel/sheets/space-parts';
import { useEffect, useState } from 'react';
import type { RemoteModel } from '../worker/remote.ts';

/** Parts in space with the build that they are of. */
export interface SpaceShown {
  readonly parts: readonly SpacePart[];
  readonly hash: string;
}

/**
 * All parts of the build on the page in space, asked anew when the build or the arm changes.
 * @param armAngle rad; null asks for nothing
 */
export function useSpaceParts(
  model: RemoteModel,
  hash: string,
  armAngle: number | null,
): { readonly shown: SpaceShown | null; readonly trouble: string | null } {
  const [shown, setShown] = useState<SpaceShown | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    if (armAngle === null) return;
    let wanted = true;
    model.inSpace(armAngle).then(
      (parts) => {
        if (!wanted) return;
        setShown({ parts, hash });
        setTrouble(null);
      },
      (why: unknown) => {
        if (wanted) setTrouble(why instanceof Error ? why.message : String(why));
      },
    );
    return () => {
      wanted = false;
    };
  }, [model, hash, armAngle]);
  return { shown, trouble };
}
