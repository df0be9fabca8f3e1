/** An axis of a plot, in the unit that it shows. */
export interface Axis {
  readonly name: string;
  readonly unit: string;
  /** SI value of one unit. */
  readonly size: number;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Decimals that tell two ticks apart. */
  readonly decimals: number;
}

const ROUND_STEPS = [1, 2, 2.5, 5, 10] as const;

/** The least round step (1, 2, 2½ or 5 times a power of ten) that a span holds no more than `most` times. */
function roundStep(span: number, most: number): number {
  const least = span / Math.max(1, most);
  const ten = 10 ** Math.floor(Math.log10(least));
  return (ROUND_STEPS.find((step) => step * ten >= least * (1 - 1e-9)) ?? 10) * ten;
}

/**
 * An axis over a span, ended at ticks.
 * @param low SI; `high` too
 * @param most most steps between ticks
 */
export function axisOver(
  named: { readonly name: string; readonly unit: string; readonly size: number },
  low: number,
  high: number,
  most: number,
): Axis {
  const [from, to] = [low / named.size, high / named.size];
  const span = to > from ? to - from : Math.abs(from) || 1;
  const step = roundStep(span, most);
  const first = Math.floor(from / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil((from + span) / step - 1e-9));
  const decimals = [0, 1, 2, 3, 4, 5].find((n) => Math.abs(step * 10 ** n - Math.round(step * 10 ** n)) < 1e-6) ?? 6;
  const ticks = Array.from({ length: last - first + 1 }, (_, k) => Number(((first + k) * step).toFixed(decimals)));
  return { ...named, low: first * step, high: last * step, ticks, decimals };
}

/** Part of the length of an axis at which an SI value stands, 0 to 1 within it. */
export const placeOn = (axis: Axis, si: number): number => (si / axis.size - axis.low) / (axis.high - axis.low);
