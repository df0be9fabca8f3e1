import { BAD, type Io } from './io.ts';
import { plainLine } from './text-width.ts';

/** One thing wrong with what was given: where, what, what was read and what is accepted. */
export interface Complaint {
  /** Address in the file, file, or argument; "" is the whole of it. */
  readonly at: string;
  readonly line?: number;
  readonly column?: number;
  readonly problem: string;
  readonly read: string;
  readonly accepted: string;
}

/**
 * Writes every complaint to standard error and gives the exit code for bad input.
 * @param source file or argument that the addresses are in; stands in front of each line
 */
export function complain(io: Io, source: string, complaints: readonly Complaint[]): typeof BAD {
  for (const { at, line, column, problem, read, accepted } of complaints) {
    const place = line === undefined ? '' : ` (${line}:${column ?? 1})`;
    const head = `${source}${at === '' ? '' : ` ${at}`}${place}: ${problem}`;
    io.stderr.write(`${plainLine(head)}\n    read:     ${plainLine(read)}\n    accepted: ${plainLine(accepted)}\n`);
  }
  return BAD;
}
