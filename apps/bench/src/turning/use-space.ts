import { type RefObject, useEffect, useState } from 'react';
import type { Mode } from '../state/actions.ts';
import type { Inks, Space } from './space.ts';

/** The picture once it is there; or why there is none. */
export type SpaceState =
  | { readonly is: 'coming' }
  | { readonly is: 'here'; readonly space: Space }
  | { readonly is: 'missing' };

const PRINTED = window.matchMedia('print');

/** Colours of the page as they stand now: shop mode and paper have their own. */
function inksOf(element: HTMLElement): Inks {
  const style = getComputedStyle(element);
  const ink = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return { sheet: ink('sheet'), ink: ink('ink'), mark: ink('mark'), wash: ink('wash') };
}

/** Loads the picture and starts it on its canvas; gives it back when the canvas goes. */
export function useSpace(canvas: RefObject<HTMLCanvasElement | null>, mode: Mode): SpaceState {
  const [state, setState] = useState<SpaceState>({ is: 'coming' });
  useEffect(() => {
    let space: Space | null = null;
    let gone = false;
    import('./space.ts').then(
      ({ startSpace }) => {
        if (gone || !canvas.current) return;
        try {
          space = startSpace(canvas.current);
          setState({ is: 'here', space });
        } catch {
          setState({ is: 'missing' });
        }
      },
      () => setState({ is: 'missing' }),
    );
    return () => {
      gone = true;
      space?.dispose();
    };
  }, [canvas]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another mode has other colours
  useEffect(() => {
    if (state.is !== 'here') return;
    const bring = (): void => {
      if (canvas.current) state.space.setInks(inksOf(canvas.current));
    };
    bring();
    PRINTED.addEventListener('change', bring);
    return () => PRINTED.removeEventListener('change', bring);
  }, [state, mode, canvas]);
  return state;
}
