import { useEffect, useRef, useState } from 'react';
import { latestWins } from '../worker/latest.ts';
import type { RemoteModel } from '../worker/remote.ts';
import type { ShaftDrawn } from '../worker/shaft-api.ts';

interface Asked {
  readonly model: RemoteModel;
  readonly caseId: string | null;
}

/**
 * Diagrams of the shafts, asked for anew when `of` changes. Those of before stay until the new ones come; null before the first.
 * @param of stands for the build, and for the place of the slider where that is the case asked for
 */
export function useShaftLines(
  model: RemoteModel,
  of: string,
  caseId: string | null,
): { readonly shafts: readonly ShaftDrawn[] | null; readonly gone: boolean; readonly trouble: string | null } {
  const [answer, setAnswer] = useState<{ readonly shafts: readonly ShaftDrawn[] | null; readonly gone: boolean }>({
    shafts: null,
    gone: false,
  });
  const [trouble, setTrouble] = useState<string | null>(null);
  const ask = useRef(
    latestWins<Asked>(
      async (asked) => {
        const shafts = await asked.model.shaftLines(asked.caseId);
        // An edit may have taken the case away; what was drawn is then of no case.
        setAnswer({ shafts, gone: shafts === null });
        setTrouble(null);
      },
      (why) => setTrouble(why instanceof Error ? why.message : String(why)),
    ),
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: `of` stands for what the worker holds
  useEffect(() => {
    ask.current({ model, caseId });
  }, [model, of, caseId]);
  return { ...answer, trouble };
}
