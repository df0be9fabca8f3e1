import type { JSX } from 'react';
import { digits } from '../numbers/shown.ts';
import type { Trains } from './use-trains.ts';

/** How far a search is, with a way to stop it; or why it gave nothing. */
export function SearchState({
  trains,
  what,
}: {
  readonly trains: Trains;
  readonly what: 'trains' | 'front';
}): JSX.Element {
  const { busy, progress, says, stop } = trains;
  return (
    <div className="search-state" aria-live="polite">
      {busy === what && (
        <>
          <button type="button" className="button" onClick={stop}>
            Stop
          </button>
          <span className="lead">
            {progress === null || progress.round === 0
              ? progress && progress.found > 0
                ? `Fitting and assessing, ${progress.found} done.`
                : 'Fitting chains and belts to their places.'
              : `Round ${progress.round}, ${digits(100 * progress.part, 0)} %; ${progress.found} trains so far.`}
          </span>
        </>
      )}
      {busy === null && says !== null && <span>{says}</span>}
    </div>
  );
}
