import type { Element, Point } from '@oddwheel/sheets/drawing';
import { pathData } from '@oddwheel/sheets/path-data';
import type { JSX } from 'react';

type Dimension = Extract<Element, { kind: 'dimension' }>;

/** Length and half width of an arrow over the height of the lettering. */
const ARROW = { length: 0.7, half: 0.13 } as const;

/** One element of a drawing on the screen: millimetres of the view, y down. */
export function DrawnElement({ element, height }: { readonly element: Element; readonly height: number }): JSX.Element {
  switch (element.kind) {
    case 'line':
      return <path d={lineData(element.from, element.to)} className={`line-${element.line}`} />;
    case 'circle':
    case 'path':
      return <path d={pathData(element)} className={`line-${element.line} fill-${element.fill}`} />;
    case 'hatch':
      return <path d={element.lines.map(([a, b]) => lineData(a, b)).join('')} className="line-thin" />;
    case 'loop':
      return (
        <>
          <path d={pathData(element)} className="loop-outside" strokeWidth={element.height} />
          <path
            d={pathData(element)}
            className="loop-inside"
            strokeWidth={element.height * 0.72}
            strokeDasharray={element.pitch / 2}
          />
        </>
      );
    case 'text':
      return (
        <Lettering
          at={element.at}
          angle={element.angle}
          anchor={element.anchor}
          look={`${element.weight} ${element.severity ?? ''}`}
          text={element.text}
        />
      );
    case 'dimension':
      return <DimensionLines dimension={element} height={height} />;
  }
}

const num = (x: number): number => Math.round(x * 100) / 100 + 0;
const lineData = (from: Point, to: Point): string => `M${num(from[0])} ${num(-from[1])}L${num(to[0])} ${num(-to[1])}`;

/** Lettering with a halo, so that lines behind it do not cross it. */
export function Lettering(props: {
  readonly at: Point;
  readonly angle: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly look: string;
  readonly text: string;
}): JSX.Element {
  const [x, y] = [num(props.at[0]), num(-props.at[1])];
  return (
    <text
      x={x}
      y={y}
      textAnchor={props.anchor}
      className={`lettering ${props.look}`}
      transform={props.angle === 0 ? undefined : `rotate(${num(-props.angle)} ${x} ${y})`}
    >
      {props.text}
    </text>
  );
}

function DimensionLines(props: { readonly dimension: Dimension; readonly height: number }): JSX.Element {
  const { measured, ends, text, textAt, angle, severity } = props.dimension;
  const [a, b] = ends;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [x, y] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const [long, half] = [ARROW.length * props.height, ARROW.half * props.height];
  const arrow = (tip: Point, way: 1 | -1): string => {
    const base: Point = [tip[0] + way * long * x, tip[1] + way * long * y];
    const corner = (side: 1 | -1): string => `${num(base[0] - side * half * y)} ${num(-(base[1] + side * half * x))}`;
    return `M${num(tip[0])} ${num(-tip[1])}L${corner(1)}L${corner(-1)}Z`;
  };
  const lines = (
    [
      [measured[0], a],
      [measured[1], b],
      [a, b],
    ] as const
  )
    .filter(([from, to]) => Math.hypot(from[0] - to[0], from[1] - to[1]) > 0.01)
    .map(([from, to]) => lineData(from, to));
  return (
    <>
      <path d={lines.join('')} className="line-thin" />
      <path d={arrow(a, 1) + arrow(b, -1)} className="arrow" />
      <Lettering at={textAt} angle={angle} anchor="middle" look={`plain ${severity ?? ''}`} text={text} />
    </>
  );
}
