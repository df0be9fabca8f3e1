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
          Drag it, or put the focus on Move and use the arrow keys: 1 mm or 1/16 in, with Shift ten times or eight times
          as far, with Alt a tenth or a quarter. Enter keeps the place, Escape puts it back.
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
