import type { PathElement, ShaftPlace } from '@oddwheel/build/assess/types';
import { type JSX, memo, type ReactNode } from 'react';
import { Bearing, Crank, StageSymbol, Wheel } from './symbols.tsx';
import { type DrawnShaft, unroll } from './unroll.ts';

interface Props {
  readonly path: readonly PathElement[];
  readonly shafts: readonly ShaftPlace[];
  readonly selected: string | null;
  readonly onSelect: (address: string) => void;
}

/**
 * The drive unrolled in kinematic symbols, one column wide for each element of the path. Only the pointer acts on it: the
 * headings of the table above do the same for everyone.
 */
export const UnrolledDrive = memo(function UnrolledDrive({ path, shafts, selected, onSelect }: Props): JSX.Element {
  const drive = unroll(path, shafts);
  const { columns, crank, box, wheel } = drive;
  const middle = (column: number): string => percent((column + 0.5) / columns);
  const chosen = (address: string | undefined): string | undefined =>
    address !== undefined && address === selected ? 'chosen' : undefined;
  const engine = path[0]?.address;
  const ground = path.at(-1)?.address;
  return (
    <svg className="unrolled" width="100%" height={drive.height} role="img" aria-label={said(path, drive.shafts)}>
      {path.map((element, column) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the column's heading is the button; this only widens it
        <rect
          key={element.address + element.kind}
          className={element.address === selected ? 'wash' : 'ground'}
          x={percent(column / columns)}
          width={percent(1 / columns)}
          height="100%"
          onClick={() => onSelect(element.address)}
        />
      ))}
      <g className={chosen(engine)}>
        <line
          className="shaft"
          x1={middle(crank.column)}
          x2={middle(crank.column + 1)}
          y1={crank.y}
          y2={crank.y}
          style={{ strokeWidth: crank.thickness }}
        />
        <At x={percent(1 / columns)} symbol="bearing">
          <Bearing x={0} y={crank.y} />
        </At>
        <At x={middle(crank.column)} symbol="crank">
          <Crank y={crank.y} />
        </At>
      </g>
      {drive.shafts.map((shaft) => (
        <g key={shaft.address} className={chosen(shaft.address)}>
          <ShaftLine shaft={shaft} middle={middle} />
          <At x={percent(shaft.bearingsAt / columns)} symbol="bearing">
            {Array.from({ length: shaft.bearings }, (_, index) => {
              const x = (index - (shaft.bearings - 1) / 2) * (shaft.bearings > 2 ? 24 : 44);
              return <Bearing key={x} x={x} y={shaft.y} />;
            })}
          </At>
        </g>
      ))}
      {(box ? [box, ...drive.stages] : drive.stages).map((stage) => (
        <g key={stage.address} className={chosen(stage.address)}>
          <At x={middle(stage.column)} symbol={stage.symbol}>
            <StageSymbol stage={stage} />
          </At>
        </g>
      ))}
      {wheel && (
        <g className={chosen(ground)}>
          <At x={middle(wheel.column)} symbol="wheel">
            <Wheel y={wheel.y} radius={wheel.radius} />
          </At>
        </g>
      )}
    </svg>
  );
});

/** A shaft between the middles of two columns, with what of it shows beyond the parts on its ends. */
function ShaftLine({ shaft, middle }: { shaft: DrawnShaft; middle: (column: number) => string }): JSX.Element {
  const { from, to, y, past } = shaft;
  const style = { strokeWidth: shaft.thickness };
  return (
    <g data-shaft={shaft.address}>
      <line className="shaft" x1={middle(from)} x2={middle(to)} y1={y} y2={y} style={style} />
      <At x={middle(from)} symbol="end">
        <path className="shaft" d={`M${-past.start} ${y}H0`} style={style} />
      </At>
      <At x={middle(to)} symbol="end">
        <path className="shaft" d={`M0 ${y}H${past.end}`} style={style} />
      </At>
    </g>
  );
}

function At(props: { x: string; symbol: string; children: ReactNode }): JSX.Element {
  return (
    <svg aria-hidden="true" className="at" x={props.x} overflow="visible" data-symbol={props.symbol}>
      {props.children}
    </svg>
  );
}

const percent = (part: number): string => `${Number((part * 100).toFixed(4))}%`;

/** The drawing in words. */
function said(path: readonly PathElement[], shafts: readonly DrawnShaft[]): string {
  const words = path.map((element) => {
    const bearings = shafts.find((shaft) => shaft.address === element.address)?.bearings ?? 0;
    if (element.kind !== 'shaft' || bearings === 0) return element.name;
    return `${element.name} in ${bearings} ${bearings === 1 ? 'bearing' : 'bearings'}`;
  });
  return `The drive unrolled, from engine to ground: ${words.join(', ')}.`;
}
