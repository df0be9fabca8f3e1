import { stepLike } from '@oddwheel/build/placing/length-text';
import type { Placed } from '@oddwheel/build/placing/types';
import type { JSX } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import type { Mover } from './use-move.ts';

interface Props {
  readonly placed: Placed;
  readonly mover: Mover;
  readonly locked: string | null;
  readonly onOpen: () => void;
}

const MILLIMETRE = 0.001;

/** How the chosen thing is moved, and why a move was not made. */
export function MovePanel({ placed, mover, locked, onOpen }: Props): JSX.Element {
  const { fault } = mover;
  return (
    <section className="move-panel" aria-labelledby="move-heading">
      <h3 id="move-heading">Moving {placed.name}</h3>
      {locked !== null ? (
        <p className="lead">{locked}</p>
      ) : (
        <p id="move-help" className="lead">
          Drag it, or put the focus on Move and use the arrow keys: {stepWords(placed)}. Enter keeps the place, Escape
          puts it back. Places near at hand are taken: whole links, other shafts, room wanted; with Alt a drag takes
          none.
        </p>
      )}
      {fault && (
        <p className="fails" role="alert">
          Not moved: {faultSentence(fault, placed.name)}
        </p>
      )}
      <button type="button" className="link" onClick={onOpen}>
        Its inputs and checks
      </button>
    </section>
  );
}

/** Steps of the keys, in the units that its place is typed in. */
function stepWords({ points, station }: Placed): string {
  const text = station?.coordinate.text ?? points[0]?.coordinates[0].text ?? '';
  return stepLike(text, 'plain') === MILLIMETRE
    ? '1 mm, with Shift 10 mm, with Alt 0.1 mm'
    : '1/16 in, with Shift 1/2 in, with Alt 1/64 in';
}
