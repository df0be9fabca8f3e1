import type { NotKnown } from '@oddwheel/build/assess/road/types';
import type { JSX } from 'react';

/** Why a part of the road is not known, with a way to each input that it wants. */
export function NotYet(props: { why: NotKnown; onReveal: (address: string) => void }): JSX.Element {
  const { missing, says } = props.why;
  if (missing.length === 0) return <span>{says}</span>;
  return (
    <span className="not-yet">
      Not known yet. Missing:{' '}
      {missing.map((one, index) => (
        <span key={one.address}>
          {index > 0 && ', '}
          <button type="button" className="link" onClick={() => props.onReveal(one.address)}>
            {one.says}
          </button>
        </span>
      ))}
      .
    </span>
  );
}
