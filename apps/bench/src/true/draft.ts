import type { Json } from '@oddwheel/build/document/json';
import { isJsonObject } from '@oddwheel/build/document/json';
import type { DialReading, Setup, TrueSet } from '@oddwheel/build/true/types';

/** A set while it is keyed in: everything as typed, so that nothing is lost half way. */
export interface Draft {
  readonly part: string;
  readonly station: string;
  readonly setup: Setup;
  readonly vAngle: string;
  /** Diameter where it is a face that is read; empty for the outside. */
  readonly face: string;
  readonly unit: string;
  readonly step: string;
  readonly side: string;
  readonly sign: TrueSet['sign'];
  /** Number of marks round the part; 0 for highest and lowest alone. */
  readonly marks: number;
  /** Dial at each mark, as typed; one more at the end, the first mark read again. */
  readonly values: readonly string[];
  /** Mark that is keyed in now. */
  readonly at: number;
  /** Clock places of highest and lowest. */
  readonly highAt: string;
  readonly lowAt: string;
  /** Temperature of two opposite sides; empty when the part is at the temperature of the shop. */
  readonly near: string;
  readonly far: string;
  readonly clocking: Readonly<Record<string, number>>;
  readonly note: string;
}

export const MARKS = 12;
const UNIT_STEPS: Readonly<Record<string, string>> = { thou: '0.5', mm: '0.01', µm: '1' };
export const UNITS = Object.keys(UNIT_STEPS);

/** Smallest step that dials of this unit usually have. */
export const usualStep = (unit: string): string => UNIT_STEPS[unit] ?? '0.01';

/** A new set of a part at a station, set up as the one before. */
export function newDraft(part: string, station: string, before?: TrueSet): Draft {
  const unit = before?.unit ?? 'thou';
  const marks = before === undefined ? MARKS : before.ends ? 0 : marksOf(before);
  return {
    part,
    station,
    setup: before?.setup ?? 'own bearings',
    vAngle: before?.vAngle ?? '',
    face: '',
    unit,
    step: before ? String(before.step) : usualStep(unit),
    side: before?.side ?? '',
    sign: before?.sign ?? 'out',
    marks,
    values: blank(marks),
    at: 0,
    highAt: '',
    lowAt: '',
    near: '',
    far: '',
    clocking: before?.clocking ?? {},
    note: '',
  };
}

/** Readings of a set without the first mark read again. */
function marksOf({ readings = [] }: TrueSet): number {
  const [first, last] = [readings[0], readings.at(-1)];
  return first && last && readings.length > 4 && (first.at - last.at) % 360 === 0
    ? readings.length - 1
    : Math.max(4, readings.length);
}

const blank = (marks: number): string[] => Array.from({ length: marks === 0 ? 2 : marks + 1 }, () => '');

/** The draft with another number of marks; what was keyed in stays at its place in the row. */
export function withMarks(draft: Draft, marks: number): Draft {
  const values = blank(marks).map((_, k) => (k < marks ? (draft.values[k] ?? '') : ''));
  return { ...draft, marks, values, at: 0 };
}

/** The draft with a dial value at the mark that is keyed in now. */
export function withValue(draft: Draft, typed: string): Draft {
  return { ...draft, values: draft.values.map((value, k) => (k === draft.at ? typed : value)) };
}

/** The next mark round the part that has no value yet; the same one when all have. */
export function advanced(draft: Draft): Draft {
  const count = draft.marks === 0 ? 2 : draft.marks;
  const rest = Array.from({ length: count }, (_, k) => (draft.at + 1 + k) % count);
  return { ...draft, at: rest.find((k) => (draft.values[k] ?? '').trim() === '') ?? draft.at };
}

/** What the keys of the keypad do to a typed value. */
export function keyed(value: string, key: string): string {
  if (key === 'back') return value.slice(0, -1);
  if (key === 'sign') return value.startsWith('−') ? value.slice(1) : `−${value}`;
  if (key === '½') return value.includes('.') ? value : `${value === '' || value === '−' ? `${value}0` : value}.5`;
  if (key === '.') return value.includes('.') ? value : `${value === '' || value === '−' ? `${value}0` : value}.`;
  return value.replace('−', '').replace('.', '').length >= 6 ? value : value + key;
}

/** A typed dial value; undefined when it is no number. */
export function dialOf(typed: string): number | undefined {
  const text = typed.trim().replace('−', '-').replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : undefined;
}

/** Degrees of a mark, clockwise from twelve. */
export const markAt = (draft: Pick<Draft, 'marks'>, k: number): number => ((k % draft.marks) * 360) / draft.marks;

/** Readings that are keyed in, in the order of their marks. */
export function readingsOf(draft: Draft): DialReading[] {
  return draft.values.flatMap((typed, k) => {
    const value = dialOf(typed);
    return value === undefined ? [] : [{ at: markAt(draft, k), value }];
  });
}

/** The body of the set, with the readings given or those that are keyed in. Whether all of it is right is checked later. */
export function setBody(draft: Draft, readings: readonly DialReading[]): { readonly [key: string]: Json } {
  const given = (key: string, text: string) => (text.trim() === '' ? {} : { [key]: text.trim() });
  const [high = '', low = ''] = draft.values;
  const dial =
    draft.marks === 0
      ? { ends: { highest: end(draft.highAt, high), lowest: end(draft.lowAt, low) } }
      : { readings: readings.map(({ at, value }) => ({ at, value })) };
  const clocking = Object.fromEntries(Object.entries(draft.clocking).filter(([, mark]) => mark !== 0));
  return {
    part: draft.part,
    station: draft.station.trim(),
    setup: draft.setup,
    ...(draft.setup === 'V-blocks' ? { vAngle: draft.vAngle.trim() } : {}),
    ...given('face', draft.face),
    unit: draft.unit,
    step: dialOf(draft.step) ?? 0,
    ...given('side', draft.side),
    sign: draft.sign,
    ...dial,
    ...(draft.near.trim() === '' && draft.far.trim() === ''
      ? {}
      : { warm: { near: draft.near.trim(), far: draft.far.trim() } }),
    ...(Object.keys(clocking).length === 0 ? {} : { clocking }),
    ...given('note', draft.note),
  };
}

/** Highest or lowest with its place, an hour such as "7", "7:30", or degrees such as "225°". */
function end(place: string, typed: string): { readonly [key: string]: Json } {
  return { at: placeDegrees(place) ?? null, value: dialOf(typed) ?? null };
}

/** Degrees of a place on the clock or in degrees; undefined when it is neither. */
export function placeDegrees(text: string): number | undefined {
  const degrees = /^(\d{1,3}(?:\.\d+)?)\s*(?:°|deg)$/.exec(text.trim());
  if (degrees) return Number(degrees[1]);
  const clock = /^(1[0-2]|[1-9])(?::([0-5]\d))?$/.exec(text.trim());
  return clock ? (Number(clock[1]) % 12) * 30 + Number(clock[2] ?? 0) / 2 : undefined;
}

/** The draft that was kept for a build; null when there is none. */
export function readDraft(noted: Json | undefined, build: string): Draft | null {
  if (noted === undefined || !isJsonObject(noted) || noted.build !== build) return null;
  const { build: _, ...draft } = noted;
  // It was written by this page; a page of another version may have kept less.
  return Array.isArray(draft.values) && typeof draft.marks === 'number' ? (draft as unknown as Draft) : null;
}
