import type { Fault } from '../fault.ts';
import type { DialReading } from './types.ts';

export type ReadReadings =
  | { readonly ok: true; readonly readings: readonly DialReading[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const NUMBER = /^[-+\u2212]?(\d+([.,]\d+)?|[.,]\d+)$/;

/**
 * Readings from a CSV file or pasted text. Lines of two numbers are mark in degrees and dial; lines of one number, or all on one line, are dial
 * readings at equal marks from 0, clockwise. Separators: comma, semicolon, tab or spaces; a first line of words is a heading; "#" begins a remark.
 */
export function readReadings(text: string): ReadReadings {
  const lines = text
    .split(/\r?\n/)
    .map((line, k) => ({ line: k + 1, cells: cellsOf(line.replace(/#.*/, '')) }))
    .filter(({ cells }) => cells.length > 0);
  const rows = lines[0]?.cells.every((cell) => !NUMBER.test(cell)) ? lines.slice(1) : lines;
  const faults: Fault[] = [];
  for (const { line, cells } of rows)
    for (const cell of cells)
      if (!NUMBER.test(cell)) faults.push(fault(line, 'This is no number.', cell, 'a number, such as 4.5'));
  if (faults.length > 0) return { ok: false, faults };
  if (rows.length === 0)
    return { ok: false, faults: [fault(1, 'There are no readings.', '', 'mark and dial, one reading a line')] };
  const numbers = rows.map(({ line, cells }) => ({ line, values: cells.map(numberOf) }));
  const single = numbers.length === 1 || numbers.every(({ values }) => values.length === 1);
  if (single) return { ok: true, readings: evenly(numbers.flatMap(({ values }) => values)) };
  const odd = numbers.filter(({ values }) => values.length !== 2);
  if (odd.length > 0)
    return {
      ok: false,
      faults: odd.map(({ line, values }) =>
        fault(line, `${values.length} numbers stand here.`, values.join(' '), 'mark and dial'),
      ),
    };
  return { ok: true, readings: numbers.map(({ values }) => ({ at: values[0] as number, value: values[1] as number })) };
}

const evenly = (values: readonly number[]): DialReading[] =>
  values.map((value, k) => ({ at: (360 * k) / values.length, value }));

/** A comma parts cells, unless cells are parted by something else: then it is a decimal sign. */
function cellsOf(line: string): string[] {
  const trimmed = line.trim();
  if (trimmed === '') return [];
  const by = /[;\t]/.test(trimmed)
    ? /[;\t]/
    : /,/.test(trimmed) && !/\s/.test(trimmed.replace(/,\s+/g, ','))
      ? /,/
      : /\s+/;
  return trimmed
    .split(by)
    .map((cell) => cell.trim().replace(/,$/, ''))
    .filter((cell) => cell !== '');
}

const numberOf = (cell: string): number => Number(cell.replace('\u2212', '-').replace(',', '.'));

const fault = (line: number, problem: string, read: string, accepted: string): Fault => ({
  code: 'true.readings',
  address: '',
  line,
  problem,
  read,
  accepted,
});
