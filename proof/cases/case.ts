import type { Case } from '@oddwheel/mechanics/method/cases';

/** A worked example, and the method it is run through. */
export interface ProofCase extends Case {
  /** Id of the method: "chain.length". */
  readonly method: string;
}
