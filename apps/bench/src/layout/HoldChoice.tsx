import type { MoveAids } from '@oddwheel/build/placing/types';
import type { JSX } from 'react';

/** Chooses the chain whose centres a move keeps: the shaft then runs on a circle about the other one. */
export function HoldChoice(props: {
  readonly aids: MoveAids;
  readonly held: string | null;
  readonly onHold: (stage: string | null) => void;
}): JSX.Element {
  const { aids, held, onHold } = props;
  return (
    <fieldset className="hold">
      <legend>Hold the links of</legend>
      {[{ stage: null, name: 'no chain' }, ...aids.held].map(({ stage, name }) => (
        <label key={stage ?? ''}>
          <input type="radio" name="hold" checked={held === stage} onChange={() => onHold(stage)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}
