import { useEffect } from 'react';

/** While something is moved, Escape puts it back, before anything else takes the key. */
export function useEscape(moving: boolean, cancel: () => void): void {
  useEffect(() => {
    if (!moving) return;
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      cancel();
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [moving, cancel]);
}
