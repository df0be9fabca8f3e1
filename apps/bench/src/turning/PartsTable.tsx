import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { SpacePart } from '@oddwheel/sheets/space-parts';
import type { JSX } from 'react';
import { lengthShown } from '../layout/length-shown.ts';
import { Wide } from '../plots/Wide.tsx';
import { boxAround } from './sight.ts';

const AXES = ['Forward', 'Left', 'Up'] as const;

/** One row for each thing that is drawn, all its pieces together. */
function rowsOf(
  parts: readonly SpacePart[],
): readonly { readonly part: SpacePart; readonly least: Vec3; readonly most: Vec3 }[] {
  const named = new Map<string, SpacePart[]>();
  for (const part of parts) named.set(part.of, [...(named.get(part.of) ?? []), part]);
  return [...named.values()].flatMap((pieces) => {
    const [part] = pieces;
    const box = boxAround(pieces);
    return part && box ? [{ part, ...box }] : [];
  });
}

/** The picture in words: every part with how far it reaches from the wheel’s centre; each can be chosen. */
export function PartsTable(props: {
  readonly parts: readonly SpacePart[];
  readonly units: Readonly<Record<string, string>>;
  readonly chosen: string | null;
  readonly onChoose: (part: SpacePart) => void;
}): JSX.Element {
  const { parts, units, chosen, onChoose } = props;
  const show = (mm: number): string => lengthShown(units, Math.round(mm) / 1000);
  return (
    <details className="parts-in-words">
      <summary>The parts in words</summary>
      <Wide name="The parts in words">
        <table className="plain-table">
          <caption className="note">
            How far each part reaches from the wheel’s centre, to a millimetre: forward, to the left and up count as
            positive.
          </caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              {AXES.map((axis) => (
                <th key={axis} scope="col">
                  {axis}, from to
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rowsOf(parts).map(({ part, least, most }) => (
              <tr key={part.of} className={part.of === chosen ? 'chosen' : ''}>
                <th scope="row">
                  <button
                    type="button"
                    className="link"
                    aria-pressed={part.of === chosen}
                    onClick={() => onChoose(part)}
                  >
                    {part.name}
                  </button>
                </th>
                {AXES.map((axis, k) => (
                  <td key={axis}>
                    {show(least[k] ?? 0)} to {show(most[k] ?? 0)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </details>
  );
}
