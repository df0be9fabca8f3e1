/** What is asked of the search, as it is typed. */
import type { Asked, OrderKey, RatioChoices, RatioRequest, TargetKey } from '@oddwheel/build/ratios/types';

export type From = 'usual' | 'as drawn' | 'shelf' | 'range' | 'pairs';

export interface StageForm {
  readonly from: From;
  /** "11..30". */
  readonly driver: string;
  readonly driven: string;
  /** "14:33, 15:34". */
  readonly pairs: string;
}

export interface TrainForm {
  /** Null: those that the build usually goes by. */
  readonly targets: readonly TargetKey[] | null;
  readonly stages: Readonly<Record<string, StageForm>>;
  readonly order: readonly OrderKey[];
  readonly shelfOnly: boolean;
  readonly best: number;
}

const MOST_TEETH = 200;

/** "11..30" or "17"; null where it cannot be read. */
export function readTeeth(text: string): readonly [number, number] | null {
  const [, low, high] = /^\s*(\d{1,3})\s*(?:\.\.\s*(\d{1,3})\s*)?$/.exec(text) ?? [];
  if (low === undefined) return null;
  const range = [Number(low), Number(high ?? low)] as const;
  return range[0] >= 5 && range[0] <= range[1] && range[1] <= MOST_TEETH ? range : null;
}

/** "14:33, 15:34"; null where one of them cannot be read. */
export function readPairs(text: string): readonly (readonly [number, number])[] | null {
  const pairs = text.split(',').map((one) => /^\s*(\d{1,3})\s*:\s*(\d{1,3})\s*$/.exec(one));
  const read = pairs.flatMap((found) => (found ? [[Number(found[1]), Number(found[2])] as const] : []));
  const fit = read.every((pair) => pair.every((teeth) => teeth >= 5 && teeth <= MOST_TEETH));
  return read.length === pairs.length && fit ? read : null;
}

type StageChoice = RatioChoices['stages'][number];

/** A stage before anything is typed. */
export function blankStage({ driver, driven, usual }: StageChoice): StageForm {
  const range = (ends: readonly [number, number] | undefined, drawn: number): string =>
    ends ? `${ends[0]}..${ends[1]}` : String(drawn);
  return {
    from: 'usual',
    driver: range(usual?.driver, driver),
    driven: range(usual?.driven, driven),
    pairs: `${driver}:${driven}`,
  };
}

/** Where the teeth of a stage may come from, with its words. */
export function fromWords({ kind, usual }: StageChoice): readonly (readonly [From, string])[] {
  const gears = kind === 'bevel' || kind === 'spur';
  return [
    ['usual', usual ? `usual, ${usual.driver.join('..')} and ${usual.driven.join('..')}` : 'as drawn and on the shelf'],
    ['as drawn', 'as drawn'],
    ...(kind === 'chain' ? [['shelf', 'as drawn and on the shelf'] as const] : []),
    gears ? (['pairs', 'pairs of my own'] as const) : (['range', 'teeth of my own'] as const),
  ];
}

export type Fault = { readonly stage: string; readonly key: 'driver' | 'driven' | 'pairs'; readonly says: string };

const TEETH = 'A range of teeth such as 11..30, or one number, is accepted; at least 5 and at most 200.';
const PAIRS = 'Pairs such as 14:33, 15:34 are accepted, the driver first; each wheel with 5 to 200 teeth.';

/** The request, or everything that cannot be read. */
export function requestOf(
  form: TrainForm,
  choices: RatioChoices,
): { readonly ok: true; readonly request: RatioRequest } | { readonly ok: false; readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const stages: Record<string, Asked> = {};
  for (const choice of choices.stages) {
    const { stage } = choice;
    const { from, ...typed } = form.stages[stage] ?? blankStage(choice);
    if (from === 'usual') continue;
    if (from === 'as drawn' || from === 'shelf') stages[stage] = { from };
    else if (from === 'pairs') {
      const pairs = readPairs(typed.pairs);
      if (pairs) stages[stage] = { from, pairs };
      else faults.push({ stage, key: 'pairs', says: `${typed.pairs || 'Nothing'} was read. ${PAIRS}` });
    } else {
      const [driver, driven] = [readTeeth(typed.driver), readTeeth(typed.driven)];
      if (driver && driven) stages[stage] = { from, driver, driven };
      if (!driver) faults.push({ stage, key: 'driver', says: `${typed.driver || 'Nothing'} was read. ${TEETH}` });
      if (!driven) faults.push({ stage, key: 'driven', says: `${typed.driven || 'Nothing'} was read. ${TEETH}` });
    }
  }
  if (faults.length > 0) return { ok: false, faults };
  const { best, order, shelfOnly, targets } = form;
  return { ok: true, request: { best, order, shelfOnly, targets: targets ?? [], stages, prices: {} } };
}

/** Moves what counts one place up or down in the order. */
export function moved(order: readonly OrderKey[], key: OrderKey, by: 1 | -1): readonly OrderKey[] {
  const at = order.indexOf(key);
  const other = order[at + by];
  if (at < 0 || other === undefined) return order;
  return order.map((one) => (one === key ? other : one === other ? key : one));
}
