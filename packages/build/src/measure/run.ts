import { EXAMPLES } from '@oddwheel/quantity/accepted';
import { THIN_SPACE } from '@oddwheel/quantity/format';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { isBareNumber, parseInput } from '@oddwheel/quantity/range';
import { findUnit, fromSi } from '@oddwheel/quantity/units';
import { reckonWorking } from '../reckon.ts';
import { nodeAt, valueAt } from '../schema/describe.ts';
import type { Session } from '../session-types.ts';
import { measureById } from './measures.ts';
import type { Ask, Measure, Measured, Readings } from './types.ts';

/** Several values as typed; the unit may stand once, at the last of them. */
function listOf(text: string, ask: Ask): readonly string[] {
  const entries = text
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  const last = ask.kind && parseQuantity(entries.at(-1) ?? '', ask.kind);
  const unit = last?.ok ? last.unit : '';
  return entries.map((entry) => (unit !== '' && isBareNumber(entry) ? `${entry} ${unit}` : entry));
}

const typedValue = (text: string, ask: Ask): unknown => {
  if (ask.list) return listOf(text, ask);
  return ask.kind === null ? Number(text) : text;
};

/** Unit for the result: the one that the field has now, else the usual one for the build's lengths. */
function unitFor(session: Session, measure: Measure, address: string): string {
  const now = valueAt(session.build, address);
  const parsed = typeof now === 'string' ? parseInput(now, measure.kind) : null;
  if (parsed?.ok && findUnit(measure.kind, parsed.unit)) return parsed.unit;
  return (session.assessment.units.length ?? 'mm').startsWith('in') ? measure.units.inch : measure.units.metric;
}

/** Decimals that show a spread with one figure, or two where it begins with 1 or 2. */
function decimalsFor(value: number, spread: number): number {
  const size = spread > 0 ? spread : Math.abs(value) / 1000;
  const first = Math.floor(Math.log10(size));
  const figure = Math.floor(size / 10 ** first);
  return Math.min(9, Math.max(0, (figure < 3 ? 1 : 0) - first));
}

/** Numbers with as many decimals as wanted, less the zeros at the end that all of them have. */
function inDecimals(decimals: number, ...values: readonly number[]): readonly string[] {
  for (let most = decimals; most > 0; most -= 1) {
    const texts = values.map((value) => value.toFixed(most));
    if (texts.some((text) => !text.endsWith('0'))) return texts;
  }
  return values.map((value) => value.toFixed(0));
}

/** Typed on a keyboard: "kg.m2", not "kg·m²". */
const asTyped = (unit: string): string => unit.replaceAll('·', '.').replaceAll('²', '2');

/**
 * Does the sum of a measure. The text it gives goes into the field: a range from what the readings may be off by, rounded outward, where
 * the field takes one. All faults at once, by reading.
 *
 * @param address field that the result is for
 * @throws RangeError when there is no such measure.
 */
export function runMeasure(session: Session, id: string, address: string, readings: Readings): Measured {
  const measure = measureById(id);
  if (!measure) throw new RangeError(`There is no measure "${id}".`);
  const typed = measure.asks.map((ask) => ({ ask, text: (readings[ask.key] ?? '').trim() || (ask.usual ?? '') }));
  const wanted = typed.filter(({ text }) => text === '').map(({ ask }) => ask.key);
  const json = Object.fromEntries(
    typed.filter(({ text }) => text !== '').map(({ ask, text }) => [ask.key, typedValue(text, ask)]),
  );
  const run = reckonWorking(measure.method, json);
  if (!run.ok) {
    const faults = run.faults.flatMap(({ input, problem }) => {
      const key = input.split('/')[0] ?? '';
      const ask = measure.asks.find((one) => one.key === key);
      if (wanted.includes(key)) return [];
      const example = ask?.example ?? EXAMPLES[measure.kind][0];
      return [{ key: ask ? key : '', problem, accepted: `For example ${example}.` }];
    });
    return { ok: false, wanted, faults };
  }
  if (wanted.length > 0) return { ok: false, wanted, faults: [] };
  const unit = unitFor(session, measure, address);
  const scaled = (key: string): number => fromSi(measure.kind, unit, Number(run.values[key]));
  const [value, spread] = [scaled(measure.result), scaled(measure.spread)];
  const decimals = decimalsFor(value, spread);
  const step = 10 ** decimals;
  const low = Math.floor((value - spread) * step + 1e-6) / step;
  const high = Math.ceil((value + spread) * step - 1e-6) / step;
  const ranges = nodeAt(session.build, address)?.['x-field']?.range === true;
  const number = inDecimals(decimals, ...(ranges && high > low ? [low, high] : [value])).join('..');
  const symbol = findUnit(measure.kind, unit)?.symbol ?? '';
  const gap = symbol === '' ? '' : THIN_SPACE;
  const says = inDecimals(decimals, value, ...(spread > 0 ? [spread] : [])).join(' ± ');
  return {
    ok: true,
    text: `${number} ${asTyped(unit)}`.trim(),
    says: `${says}${gap}${symbol}`,
    working: run.working,
  };
}
