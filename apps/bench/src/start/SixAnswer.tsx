import type { BeginResult, SoFar } from '@oddwheel/build/begin/types';
import type { JSX } from 'react';
import { digits } from '../numbers/shown.ts';
import { SIX, stillToType, type Typed } from './six.ts';

const toOne = (ratio: number): string => `${digits(ratio, 2)} : 1`;

/** The reduction that the fields ask for, as far as it is known; and the one that the layout makes of it. */
export function SixAnswer(props: { typed: Typed; known: SoFar; result: BeginResult | null }): JSX.Element {
  const { typed, known, result } = props;
  const { overall, path } = known;
  const open = stillToType(typed);
  return (
    <div className="six-answer" aria-live="polite">
      <p>
        {overall === null ? (
          <span className="lead">
            The overall reduction wanted stands here once the engine speed at peak power, the wheel and the road speed
            are typed.
          </span>
        ) : (
          <>
            Overall reduction wanted in top gear <b>{toOne(overall)}</b>
            {path !== null && (
              <>
                , of which <b>{toOne(path)}</b> after {typed.gears === null ? 'a usual gearbox' : 'the gearbox'}
              </>
            )}
            .
          </>
        )}
      </p>
      {result?.ok ? (
        <p>
          Laid out as {result.train}: <b>{toOne(result.path)}</b>, and {toOne(result.overall)} in all.
        </p>
      ) : (
        open.length > 0 && open.length < SIX.length && <p className="lead">Still to type: {open.join(', ')}.</p>
      )}
    </div>
  );
}
