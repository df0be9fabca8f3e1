/** Tables for the terminal. */
import { plainLine, textWidth, wrap } from './text-width.ts';

/** Widest line that the command prints, columns. */
export const WIDTH = 100;
const GAP = '  ';
/** Least columns that are left to the wrapping column. */
const LEAST = 20;

export interface Column {
  readonly title: string;
  readonly align?: 'left' | 'right';
  /** This column wraps; all that do share the room that the others leave. */
  readonly wraps?: boolean;
  /** Paints a cell once its columns are counted; must not change what is read. */
  readonly paint?: (cell: string, text: string) => string;
}

function pad(text: string, width: number, align: 'left' | 'right'): string {
  const room = ' '.repeat(Math.max(0, width - textWidth(text)));
  return align === 'right' ? room + text : text + room;
}

function widths(columns: readonly Column[], rows: readonly (readonly string[])[]): number[] {
  const natural = columns.map((column, i) =>
    Math.max(textWidth(column.title), ...rows.map((row) => textWidth(row[i] ?? ''))),
  );
  const wrapping = columns.flatMap((column, i) => (column.wraps ? [i] : []));
  const width = [...natural];
  let room =
    WIDTH -
    natural.reduce((sum, one, i) => (wrapping.includes(i) ? sum : sum + one), 0) -
    GAP.length * (columns.length - 1);
  // The narrow ones first: what they leave goes to the wide ones.
  wrapping.sort((i, j) => (natural[i] ?? 0) - (natural[j] ?? 0));
  wrapping.forEach((i, k) => {
    width[i] = Math.min(natural[i] ?? 0, Math.max(LEAST, Math.floor(room / (wrapping.length - k))));
    room -= width[i];
  });
  return width;
}

/**
 * A table as lines: titles, a rule, and one line or more for each row. Columns that are empty in every row are left out.
 * @param rows cells in the order of `columns`
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const used = columns.map((_, i) => i).filter((i) => rows.some((row) => (row[i] ?? '') !== ''));
  const shown = used.map((i) => columns[i]).filter((column) => column !== undefined);
  const cells = rows.map((row) => used.map((i) => plainLine(row[i] ?? '')));
  const width = widths(shown, cells);

  const line = (texts: readonly string[], paint: boolean): string =>
    shown
      .map((column, i) => {
        const text = texts[i] ?? '';
        const padded = pad(text, width[i] ?? 0, column.align ?? 'left');
        return paint && column.paint ? column.paint(padded, text) : padded;
      })
      .join(GAP)
      .trimEnd();

  const body = cells.flatMap((row) => {
    const parts = row.map((cell, i) => (shown[i]?.wraps ? wrap(cell, width[i] ?? LEAST) : [cell]));
    const height = Math.max(1, ...parts.map((part) => part.length));
    return Array.from({ length: height }, (_, k) =>
      line(
        parts.map((part) => part[k] ?? ''),
        true,
      ),
    );
  });
  return [
    line(
      shown.map((column) => column.title),
      false,
    ),
    width.map((columns) => '─'.repeat(columns)).join(GAP),
    ...body,
  ];
}
