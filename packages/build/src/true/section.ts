import type { Section } from '@oddwheel/mechanics/runout/axis';
import { offsetByEnds, type Reading, type SectionForm, sectionForm } from '@oddwheel/mechanics/runout/readings';
import { type InVBlock, inVBlock } from '@oddwheel/mechanics/runout/supports';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { toSi } from '@oddwheel/quantity/units';
import type { DialReading, Kept, TrueSet } from './types.ts';

/** One set made out: what the dial says of its section. */
export interface SetMadeOut {
  readonly id: string;
  readonly taken: string;
  /** m */
  readonly station: number;
  readonly tir: number;
  readonly section: Section;
  /** Everything that many readings tell; left out for highest and lowest alone. */
  readonly form?: SectionForm;
  /** Lobes by what the V-block shows of them. */
  readonly lobes?: readonly InVBlock[];
  /** Diameter a face was read at, m. */
  readonly face?: number;
  readonly warm: boolean;
  /** Why the set cannot be trusted as it is, in words. */
  readonly doubts: readonly string[];
}

export type MadeOut =
  | { readonly ok: true; readonly set: SetMadeOut }
  | { readonly ok: false; readonly id: string; readonly problem: string };

/** Sides that differ by more than this bend the part, K. */
const UNEVEN = 2;
/** Above this a part is not at the temperature of the shop, K. */
const HOT = 273.15 + 40;

/** A text with its unit, checked before, in SI. */
export function lengthOf(text: string): number {
  const parsed = parseQuantity(text, 'length');
  if (!parsed.ok) throw new RangeError(`${text}: ${parsed.problem}`);
  return parsed.si;
}

function temperatureOf(text: string): number {
  const parsed = parseQuantity(text, 'temperature');
  return parsed.ok ? parsed.si : Number.NaN;
}

/** What a set says; not ok when its readings do not make a section. */
export function madeOut({ id, taken, body }: Kept<TrueSet>): MadeOut {
  const toReading = ({ at, value }: DialReading): Reading => ({
    angle: (at * Math.PI) / 180,
    value: toSi('length', body.unit, body.sign === 'in' ? -value : value),
  });
  const step = toSi('length', body.unit, body.step);
  const station = lengthOf(body.station);
  const warm = isWarm(body);
  const common = { id, taken, station, warm, ...(body.face === undefined ? {} : { face: lengthOf(body.face) }) };
  try {
    if (body.ends) {
      const [one, other] = [toReading(body.ends.highest), toReading(body.ends.lowest)];
      const [high, low] = one.value >= other.value ? [one, other] : [other, one];
      const found = offsetByEnds(high, low, step);
      const doubts = found.lopsided ? ['High and low do not stand opposite; take twelve readings.'] : [];
      const section = { station, offset: found.offset, spread: found.offsetSpread };
      return { ok: true, set: { ...common, tir: found.tir, section, doubts } };
    }
    const form = sectionForm((body.readings ?? []).map(toReading), step);
    const lobes = body.setup === 'V-blocks' && body.vAngle ? vLobes(form, body.vAngle) : undefined;
    const section = { station, offset: form.offset, spread: form.offsetSpread };
    const set = { ...common, tir: form.tir, section, form, ...(lobes ? { lobes } : {}), doubts: doubtsOf(form, body) };
    return { ok: true, set };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, id, problem: error.message };
  }
}

function vLobes(form: SectionForm, text: string): InVBlock[] {
  const angle = parseQuantity(text, 'angle');
  return angle.ok ? inVBlock(form.harmonics, angle.si) : [];
}

function isWarm({ warm }: TrueSet): boolean {
  if (!warm) return false;
  const [near, far] = [temperatureOf(warm.near), temperatureOf(warm.far)];
  return Math.abs(near - far) > UNEVEN || Math.max(near, far) > HOT;
}

function doubtsOf(form: SectionForm, { readings = [] }: TrueSet): string[] {
  const doubts: string[] = [];
  if (!form.closes) doubts.push('The first mark read differently at the end: take the set again.');
  for (const k of form.outliers)
    doubts.push(`The reading at ${readings[k]?.at ?? 0}° is far out of line: look at it again.`);
  return doubts;
}
