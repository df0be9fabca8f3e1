/** What a run of the command touches; a test gives its own. */
export interface Io {
  readonly stdin: AsyncIterable<Uint8Array | string> & { readonly isTTY?: boolean };
  readonly stdout: Output;
  readonly stderr: Output;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder of the program: demo builds and the page lie in it. */
  readonly home: string;
  /** Ends a verb that runs until it is told to stop. */
  readonly stop: AbortSignal;
}

export interface Output {
  write(text: string): unknown;
  readonly isTTY?: boolean;
}

/** Everything fine. */
export const DONE = 0;
/** `check` found something that fails. */
export const FAILS = 1;
/** Bad input or usage. */
export const BAD = 2;
export type ExitCode = typeof DONE | typeof FAILS | typeof BAD;

/** Writes lines to an output. */
export function print(output: Output, lines: readonly string[]): void {
  output.write(`${lines.join('\n')}\n`);
}
