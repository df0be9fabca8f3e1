import type { Drawing, DrawnNote, DrawnPart, Element, LineType, Point, View } from './drawing.ts';
import { lineHeight } from './lettering.ts';
import { pathData } from './path-data.ts';

/** Line widths on paper, mm (ISO 128-2 line group 0.5), and dashes in the same. */
const WIDTH: Readonly<Record<LineType, number>> = {
  visible: 0.5,
  thin: 0.25,
  hidden: 0.25,
  centre: 0.25,
  'keep-out': 0.35,
};
const DASH: Readonly<Partial<Record<LineType, readonly number[]>>> = {
  hidden: [1.5, 0.75],
  centre: [6, 0.75, 0.5, 0.75],
  'keep-out': [6, 0.75, 0.5, 0.75, 0.5, 0.75],
};

const num = (x: number): string => String(Math.round(x * 100) / 100 + 0);
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Prints elements; `paper` is mm of the view for a mm of paper. */
class Printer {
  readonly #paper: number;
  readonly #height: number;

  constructor(paper: number, height: number) {
    this.#paper = paper;
    this.#height = height;
  }

  #stroke(line: LineType): string {
    const dash = DASH[line]?.map((part) => num(part * this.#paper)).join(' ');
    return `stroke-width="${num(WIDTH[line] * this.#paper)}"${dash === undefined ? '' : ` stroke-dasharray="${dash}"`}`;
  }

  text(at: Point, text: string, anchor: string, angle: number, strong: boolean): string {
    const turn = angle === 0 ? '' : ` transform="rotate(${num(-angle)} ${num(at[0])} ${num(-at[1])})"`;
    const halo = `stroke="#fff" stroke-width="${num(0.35 * this.#height)}" paint-order="stroke"`;
    return `<text x="${num(at[0])}" y="${num(-at[1])}" text-anchor="${anchor}" fill="#000" ${halo}${strong ? ' font-weight="600"' : ''}${turn}>${escaped(text)}</text>`;
  }

  element(element: Element): string {
    switch (element.kind) {
      case 'line':
        return `<path d="M${num(element.from[0])} ${num(-element.from[1])}L${num(element.to[0])} ${num(-element.to[1])}" ${this.#stroke(element.line)}/>`;
      case 'circle':
      case 'path':
        return `<path d="${pathData(element)}" ${this.#stroke(element.line)}${element.fill === 'sheet' ? ' fill="#fff" fill-rule="evenodd"' : ''}/>`;
      case 'hatch':
        return `<path d="${element.lines.map(([a, b]) => `M${num(a[0])} ${num(-a[1])}L${num(b[0])} ${num(-b[1])}`).join('')}" ${this.#stroke('thin')}/>`;
      case 'loop':
        return `<path d="${pathData(element)}" stroke-width="${num(element.height)}"/><path d="${pathData(element)}" stroke="#fff" stroke-width="${num(element.height - 2 * WIDTH.visible * this.#paper)}" stroke-dasharray="${num(element.pitch / 2)}"/>`;
      case 'text':
        return this.text(element.at, element.text, element.anchor, element.angle, element.weight === 'strong');
      case 'dimension':
        return this.#dimension(element);
    }
  }

  #dimension({ measured, ends, text, textAt, angle }: Extract<Element, { kind: 'dimension' }>): string {
    const [a, b] = ends;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    const [x, y] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const size = 0.7 * this.#height;
    const arrow = (tip: Point, way: 1 | -1): string => {
      const back = (side: number): string =>
        `${num(tip[0] + way * size * x - side * 0.18 * size * y)} ${num(-(tip[1] + way * size * y + side * 0.18 * size * x))}`;
      return `<path d="M${num(tip[0])} ${num(-tip[1])}L${back(1)}L${back(-1)}Z" fill="#000" stroke="none"/>`;
    };
    const lines = [
      [measured[0], a],
      [measured[1], b],
      [a, b],
    ] as const;
    const drawn = lines
      .filter(([from, to]) => Math.hypot(from[0] - to[0], from[1] - to[1]) > 0.01)
      .map(([from, to]) => this.element({ kind: 'line', line: 'thin', from, to }))
      .join('');
    return `${drawn}${arrow(a, 1)}${arrow(b, -1)}${this.text(textAt, text, 'middle', angle, false)}`;
  }
}

const group = (printer: Printer, { of, elements }: DrawnPart | DrawnNote): string =>
  `<g${of === null ? '' : ` data-of="${escaped(of)}"`}>${elements.map((element) => printer.element(element)).join('')}</g>`;

function viewSvg(printer: Printer, view: View, height: number): string {
  const title: Point = [view.bounds.left, view.bounds.top + 0.8 * lineHeight(height)];
  const body = [...view.parts, ...view.notes].map((one) => group(printer, one)).join('\n');
  return `<g transform="translate(${num(view.at[0])} ${num(-view.at[1])})">\n${body}\n${printer.text(title, view.title, 'start', 0, true)}\n</g>`;
}

/**
 * A drawing as an SVG file, black on white, to be printed at a scale.
 * @param scale mm of the vehicle for a mm of paper: 5 for 1 : 5
 */
export function drawingSvg(drawing: Drawing, scale: number): string {
  const { bounds, textHeight } = drawing;
  const margin = textHeight;
  const [x, y] = [bounds.left - margin, -bounds.top - margin];
  const [width, height] = [bounds.right - bounds.left + 2 * margin, bounds.top - bounds.bottom + 2 * margin];
  const printer = new Printer(scale, textHeight);
  const size = `width="${num(width / scale)}mm" height="${num(height / scale)}mm" viewBox="${[x, y, width, height].map(num).join(' ')}"`;
  const views = drawing.views.map((view) => viewSvg(printer, view, textHeight)).join('\n');
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="Barlow Semi Condensed, DejaVu Sans Condensed, sans-serif" font-size="${num(textHeight)}">\n<rect x="${num(x)}" y="${num(y)}" width="${num(width)}" height="${num(height)}" fill="#fff"/>\n<g fill="none" stroke="#000" stroke-linejoin="round">\n${views}\n</g>\n</svg>\n`;
}
