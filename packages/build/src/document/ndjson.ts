import type { Json } from './json.ts';
import { parseJsonText } from './json-text.ts';

/** A line that could not be used. It stays in the file as it is. */
export interface BadLine {
  /** From 1. */
  readonly line: number;
  readonly text: string;
  readonly problem: string;
}

export interface Lines {
  readonly values: { readonly line: number; readonly text: string; readonly value: Json }[];
  readonly bad: BadLine[];
  /** A last line without line end that is no whole JSON value: what a write that was cut off leaves behind. */
  readonly torn?: BadLine;
}

/** Reads a file of one JSON value a line. Empty lines are skipped; a last line may lack its line end if it is whole. */
export function parseLines(text: string): Lines {
  const values: Lines['values'] = [];
  const bad: BadLine[] = [];
  const lines = text.split('\n');
  for (const [i, raw] of lines.entries()) {
    const line = i + 1;
    const content = raw.endsWith('\r') ? raw.slice(0, -1) : raw;
    if (content.trim() === '') continue;
    const value = quickValue(content);
    if (value !== undefined) {
      values.push({ line, text: content, value });
    } else if (line === lines.length) {
      return { values, bad, torn: { line, text: content, problem: 'The last line was cut off while it was written.' } };
    } else {
      bad.push({ line, text: content, problem: problemOf(content) });
    }
  }
  return { values, bad };
}

/** Programs write these lines, thousands of them, so they are read by the quick way. */
function quickValue(line: string): Json | undefined {
  try {
    return JSON.parse(line) as Json;
  } catch {
    return undefined;
  }
}

function problemOf(line: string): string {
  const parsed = parseJsonText(line);
  return parsed.ok ? '' : parsed.faults.map(({ problem }) => problem).join(' ');
}

/** Text to append to a file of lines so that `lines` stand each on its own, also after a line that was cut off. */
export function appendedLines(existing: string, lines: readonly Json[]): string {
  const start = existing === '' || existing.endsWith('\n') ? '' : '\n';
  return start + lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}
