import type { Drawing } from '@oddwheel/sheets/drawing';
import { useEffect, useRef, useState } from 'react';
import type { DrawingRequest } from '../worker/layout-api.ts';
import type { RemoteModel } from '../worker/remote.ts';

/** A drawing with what it was asked for. */
export interface Shown {
  readonly drawing: Drawing;
  readonly request: DrawingRequest;
  readonly hash: string;
}

/** A drawing waits so long for the next turn of a wheel or width of a window. */
const SETTLED_AFTER = 60;

/** The drawing of the build on the page, asked anew when the build, the frame or the arm changes. */
export function useDrawing(
  model: RemoteModel,
  hash: string,
  request: DrawingRequest | null,
): { readonly shown: Shown | null; readonly trouble: string | null } {
  const [shown, setShown] = useState<Shown | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const first = useRef(true);
  const key = request === null ? null : JSON.stringify(request);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all of the request, and the hash stands for the build that the worker holds
  useEffect(() => {
    if (request === null) return;
    let wanted = true;
    const ask = (): void => {
      first.current = false;
      model.drawing(request).then(
        (drawing) => {
          if (!wanted) return;
          setShown({ drawing, request, hash });
          setTrouble(null);
        },
        (why: unknown) => {
          if (wanted) setTrouble(why instanceof Error ? why.message : String(why));
        },
      );
    };
    const timer = setTimeout(ask, first.current || shown?.hash !== hash ? 0 : SETTLED_AFTER);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [model, hash, key]);
  return { shown, trouble };
}
