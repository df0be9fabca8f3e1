import { dot, times } from '@oddwheel/mechanics/numerics/vector';
import type { DrawnPart, View } from '@oddwheel/sheets/drawing';
import type { JSX } from 'react';
import type { Moved } from '../worker/layout-api.ts';
import { DrawnElement } from './DrawnElement.tsx';
import type { Move } from './use-move.ts';

const END_ON = 1 - 1e-6;

/** What a move shows over a view: the circle that it is held to, and chains and belts as they then run. */
export function MoveMarks(props: {
  readonly view: View;
  readonly at: readonly [number, number];
  readonly height: number;
  readonly move: Move;
  readonly moved: Moved | null;
}): JSX.Element {
  const { view, at, height, move, moved } = props;
  const { circle } = move;
  const centre = circle && times(1000, circle.centre);
  const loops: readonly DrawnPart[] = moved?.ok ? (moved.loops.find((one) => one.view === view.id)?.parts ?? []) : [];
  return (
    <g transform={`translate(${at[0]} ${-at[1]})`} className="move-marks">
      {circle && centre && Math.abs(dot(circle.along, view.towards)) > END_ON && (
        <circle
          className="held-circle"
          cx={dot(centre, view.right)}
          cy={-dot(centre, view.up)}
          r={circle.radius * 1000}
        />
      )}
      {loops.map((part) => (
        <g key={part.of} className="part redrawn">
          {part.elements.map((element, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: elements of a part have no name
            <DrawnElement key={k} element={element} height={height} />
          ))}
        </g>
      ))}
    </g>
  );
}
