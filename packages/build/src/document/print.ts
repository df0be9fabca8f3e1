import { isJsonArray, isJsonObject, type Json } from './json.ts';

/** How a text is laid out. */
export interface Layout {
  /** Line end of the text. */
  readonly eol: '\n' | '\r\n';
  /** One step of indentation; the empty text prints everything on one line. */
  readonly step: string;
}

/** Our own layout: line feed and two spaces. */
export const OWN_LAYOUT: Layout = { eol: '\n', step: '  ' };

/** Columns a list may take on one line. */
const WIDTH = 100;

/** A whole file in our own layout, ending in a line feed. */
export function printFile(value: Json): string {
  return `${printValue(value, OWN_LAYOUT, '', 0)}\n`;
}

/**
 * A value as text. Lists without objects stay on one line when they end within 100 columns; objects take one line a key.
 * `indent` is the indentation of the line that the value begins on, `column` the number of characters before it there.
 */
export function printValue(value: Json, layout: Layout, indent: string, column: number): string {
  if (isJsonArray(value)) {
    const flat = flatArray(value);
    if (flat !== undefined && (layout.step === '' || column + flat.length <= WIDTH)) return flat;
    const inner = indent + layout.step;
    return block(
      '[',
      value.map((item) => printValue(item, layout, inner, inner.length)),
      ']',
      layout,
      indent,
    );
  }
  if (isJsonObject(value)) {
    const inner = indent + layout.step;
    const lines = Object.entries(value).map(([key, item]) => {
      const head = `${JSON.stringify(key)}: `;
      return head + printValue(item, layout, inner, inner.length + head.length);
    });
    return block('{', lines, '}', layout, indent);
  }
  return printScalar(value);
}

/** JSON.stringify would lose the sign of zero. */
function printScalar(value: null | boolean | number | string): string {
  return Object.is(value, -0) ? '-0' : JSON.stringify(value);
}

function block(open: string, items: readonly string[], close: string, { eol, step }: Layout, indent: string): string {
  if (items.length === 0) return open + close;
  if (step === '') return `${open}${items.join(', ')}${close}`;
  const inner = eol + indent + step;
  return `${open}${inner}${items.join(`,${inner}`)}${eol}${indent}${close}`;
}

/** A list on one line, or undefined when it holds an object with keys, which never goes on one line. */
function flatArray(list: readonly Json[]): string | undefined {
  const parts: string[] = [];
  for (const item of list) {
    const part = isJsonArray(item)
      ? flatArray(item)
      : isJsonObject(item)
        ? Object.keys(item).length === 0
          ? '{}'
          : undefined
        : printScalar(item);
    if (part === undefined) return undefined;
    parts.push(part);
  }
  return `[${parts.join(', ')}]`;
}
