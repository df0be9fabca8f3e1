import type { Kind } from '@oddwheel/quantity/kinds';
import type { Quantity, Vec3 } from '@oddwheel/quantity/quantity';
import type { Expr } from './expr.ts';

/** Where a formula or number comes from. */
export interface Source {
  readonly title: string;
  readonly edition?: string;
  /** Clause, table, equation, example or page. */
  readonly at?: string;
  /** `read`: seen in a published page. `memory`: recalled. `derived`: worked out here. `common practice`: the trade holds it. */
  readonly how: 'read' | 'memory' | 'derived' | 'common practice';
}

export interface Range {
  readonly min?: number;
  readonly max?: number;
  /** The limits themselves are not allowed. */
  readonly open?: boolean;
}

interface ParamBase {
  /** Symbol as printed; `_` starts a subscript: "d_1". */
  readonly symbol: string;
  readonly meaning: string;
}

/** One named value of a method. Ranges are in SI units. */
export type Param =
  | (ParamBase & { readonly form: 'value'; readonly kind: Kind; readonly range?: Range; readonly default?: number })
  | (ParamBase & { readonly form: 'integer'; readonly range?: Range; readonly default?: number })
  | (ParamBase & { readonly form: 'vector'; readonly kind: Kind })
  | (ParamBase & { readonly form: 'list'; readonly kind: Kind; readonly range?: Range; readonly atLeast?: number })
  | (ParamBase & { readonly form: 'choice'; readonly choices: readonly string[]; readonly default?: string })
  | (ParamBase & { readonly form: 'text'; readonly example: string });

export type Params = Readonly<Record<string, Param>>;

/** The TypeScript type of a parameter's value. */
export type ValueOf<P extends Param> = P extends { form: 'value'; kind: infer K extends Kind }
  ? Quantity<K>
  : P extends { form: 'integer' }
    ? number
    : P extends { form: 'vector' }
      ? Vec3
      : P extends { form: 'list' }
        ? readonly number[]
        : P extends { form: 'choice'; choices: readonly (infer C)[] }
          ? C
          : P extends { form: 'text' }
            ? string
            : never;

export type ValuesOf<P extends Params> = { readonly [N in keyof P]: ValueOf<P[N]> };

/** One line of a working. */
export type Step =
  /** The value `key` equals the tree `is`. */
  | { readonly key: string; readonly is: Expr; readonly says: string }
  /** The value `key` is found so that both trees agree. */
  | { readonly key: string; readonly left: Expr; readonly right: Expr; readonly says: string };

/**
 * A public method of mechanics: plain data, and `run`.
 * `run` returns every output and every intermediate that a step names, in SI units.
 */
export interface Method<I extends Params = Params, O extends Params = Params> {
  /** Element and quantity: "chain.length". */
  readonly id: string;
  readonly gives: string;
  readonly inputs: I;
  /** Results first, then intermediates that the steps name. */
  readonly outputs: O;
  /** Keys of `outputs` that are results; the rest are intermediates. */
  readonly results: readonly (keyof O & string)[];
  readonly steps: readonly Step[];
  readonly sources: readonly Source[];
  /** What the method takes for granted, in sentences. */
  readonly holds?: readonly string[];
  /** Method syntax on purpose: a list of methods with different inputs can then be typed. */
  run(input: ValuesOf<I>): ValuesOf<O>;
}

/**
 * Declares a method; types of `run` follow from the declared inputs and outputs.
 *
 * Errors: `run` throws `MethodError` when an input is out of its range or the case has no solution.
 */
export function defineMethod<const I extends Params, const O extends Params>(method: Method<I, O>): Method<I, O> {
  return method;
}

/** A method refused its input. `input` names the parameter at fault. */
export class MethodError extends Error {
  readonly method: string;
  readonly input: string;
  constructor(method: string, input: string, message: string) {
    super(message);
    this.name = 'MethodError';
    this.method = method;
    this.input = input;
  }
}
