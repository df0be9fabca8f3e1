import type { Assumed } from '@oddwheel/build/assess/types';
import { type JSX, memo } from 'react';
import '../brief/band.css';
import type { Part } from '../worker/model-api.ts';

interface Props {
  /** Parts of the build that are no column of the path. */
  readonly parts: readonly Part[];
  readonly assumed: readonly Assumed[];
  readonly selected: string | null;
  readonly onSelect: (address: string) => void;
}

/** The rest of the build, one ruled cell each: what the path's table has no column for. */
export const BriefBand = memo(function BriefBand({ parts, assumed, selected, onSelect }: Props): JSX.Element {
  return (
    <nav className="brief-band" aria-label="Brief">
      <span className="band-name" aria-hidden="true">
        Brief
      </span>
      <ul>
        {parts.map((part) => {
          const blank = assumed.filter((item) => item.address.startsWith(`${part.address}/`)).length;
          return (
            <li key={part.address}>
              <button
                type="button"
                className="moves"
                aria-current={part.address === selected ? 'true' : undefined}
                onClick={() => onSelect(part.address)}
              >
                {part.name}
                <span className="lead">
                  {part.present ? (blank === 0 ? 'as written' : `${blank} assumed`) : 'not given'}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </nav>
  );
});
