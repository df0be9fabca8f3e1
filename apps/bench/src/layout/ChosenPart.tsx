import type { Placed, PlacedKind, Placing } from '@oddwheel/build/placing/types';
import type { View, ViewId } from '@oddwheel/sheets/drawing';
import type { JSX } from 'react';

interface Props {
  readonly placing: Placing | null;
  /** Views that the handle may stand in; one or none leave no choice. */
  readonly views: readonly View[];
  readonly chosen: string | null;
  readonly active: ViewId;
  readonly onChoose: (address: string) => void;
  readonly onActive: (view: ViewId) => void;
}

const GROUPS: readonly { readonly name: string; readonly kinds: readonly PlacedKind[] }[] = [
  { name: 'Shafts', kinds: ['shaft'] },
  { name: 'On the shafts', kinds: ['seat', 'idler'] },
  { name: 'Around them', kinds: ['pivot', 'keep-out', 'tube'] },
];

/** Chooses a part without a pointer, and the view that its handle stands in. */
export function ChosenPart(props: Props): JSX.Element {
  const { placing, views, chosen, active } = props;
  const all: readonly Placed[] = placing?.placed ?? [];
  const known = all.some(({ address }) => address === chosen);
  return (
    <div className="choose-part">
      <label>
        Chosen in the drawing
        <select value={known && chosen !== null ? chosen : ''} onChange={(event) => props.onChoose(event.target.value)}>
          {!known && <option value="">{chosen === null ? 'nothing yet' : 'a part without a place of its own'}</option>}
          {GROUPS.map(({ name, kinds }) => (
            <optgroup key={name} label={name}>
              {all
                .filter(({ kind }) => kinds.includes(kind))
                .map((placed) => (
                  <option key={placed.address} value={placed.address}>
                    {placed.name}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      {known && views.length > 1 && (
        <label>
          Move it in
          <select value={active} onChange={(event) => props.onActive(event.target.value as ViewId)}>
            {views.map(({ id, title }) => (
              <option key={id} value={id}>
                {title.replace(/^Seen /, '')}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}
