/** One thing wrong with a build file or with an edit. Plain data: `code` is stable, the sentences are not. */
export interface Fault {
  /** Stable name of the fault: "quantity.unit-missing". */
  readonly code: string;
  /** JSON Pointer of the place (RFC 6901); "" is the whole file. */
  readonly address: string;
  readonly line?: number;
  readonly column?: number;
  /** What is wrong, one sentence. */
  readonly problem: string;
  /** What was read there, as written. */
  readonly read: string;
  /** What is accepted there, with a right example. */
  readonly accepted: string;
}
