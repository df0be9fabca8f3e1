import type { Element, Point } from './drawing.ts';

const num = (x: number): string => String(Math.round(x * 100) / 100 + 0);
const pair = ([x, y]: Point): string => `${num(x)} ${num(-y)}`;

const circle = ([x, y]: Point, radius: number): string => {
  const r = num(radius);
  return `M${pair([x - radius, y])}A${r} ${r} 0 1 0 ${pair([x + radius, y])}A${r} ${r} 0 1 0 ${pair([x - radius, y])}Z`;
};

/** Outline of an element as path data of SVG, y down, to a hundredth of a millimetre. */
export function pathData(element: Extract<Element, { kind: 'circle' | 'path' | 'loop' }>): string {
  switch (element.kind) {
    case 'circle':
      return circle(element.centre, element.radius) + (element.hole > 0 ? circle(element.centre, element.hole) : '');
    case 'path': {
      const steps = element.steps.map((step) =>
        'radius' in step
          ? `A${num(step.radius)} ${num(step.radius)} 0 ${step.large ? 1 : 0} ${step.ccw ? 0 : 1} ${pair(step.to)}`
          : `L${pair(step.to)}`,
      );
      return `M${pair(element.start)}${steps.join('')}${element.closed ? 'Z' : ''}`;
    }
    case 'loop':
      return `M${element.pins.map(pair).join('L')}Z`;
  }
}
