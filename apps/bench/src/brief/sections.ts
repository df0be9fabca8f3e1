import type { Field } from '@oddwheel/build/session-types';
import type { Part } from '../worker/model-api.ts';

/** One ruled part of the brief's sheet. */
export interface Section {
  /** For its place in the page: "engine", "vehicle". */
  readonly key: string;
  readonly name: string;
  /** Element of the build that it belongs to. */
  readonly address: string;
  readonly fields: readonly Field[];
}

const ENGINE = '/brief/engine';
const WHEEL = '/brief/wheel';
const IN_GEARBOX = /^\/brief\/engine\/(?:primary|gears|boxEfficiency|output)(?:\/|$)/;
const IN_CURVE = /^\/brief\/engine\/curve\//;

/** Parts in the order in which a builder comes to know them; what is not named comes after, in the order of the file. */
const ORDER = ['vehicle', 'targets', 'space', 'duty', 'reference', 'speedometer', 'suspension', 'mounts', 'shop'];

const keyOf = (address: string): string => address.split('/').at(-1) ?? '';

function place(part: Part): number {
  const at = ORDER.indexOf(keyOf(part.address));
  if (at >= 0) return at;
  return part.address.startsWith('/brief/') ? ORDER.length : ORDER.length + 1;
}

/** The parts on the sheet, in their order, behind engine and wheel. */
const inOrder = (parts: readonly Part[]): readonly Part[] => [...parts].sort((a, b) => place(a) - place(b));

/** Addresses whose fields make the sheet. */
export const sheetAddresses = (parts: readonly Part[]): readonly string[] => [
  ENGINE,
  WHEEL,
  ...inOrder(parts).map(({ address }) => address),
];

/** The sections of the sheet; the torque curve is left to the plot and its table. */
export function sheetSections(
  parts: readonly Part[],
  fields: ReadonlyMap<string, readonly Field[]>,
): readonly Section[] {
  const engine = fields.get(ENGINE) ?? [];
  const of = (key: string, name: string, wanted: (address: string) => boolean): Section => ({
    key,
    name,
    address: ENGINE,
    fields: engine.filter(({ address }) => wanted(address)),
  });
  return [
    of('engine', 'Engine', (address) => !IN_GEARBOX.test(address) && !IN_CURVE.test(address)),
    of('gearbox', 'Gearbox', (address) => IN_GEARBOX.test(address)),
    { key: 'wheel', name: 'Wheel and tyre', address: WHEEL, fields: fields.get(WHEEL) ?? [] },
    ...inOrder(parts).map(({ address, name }) => ({
      key: keyOf(address),
      name,
      address,
      fields: fields.get(address) ?? [],
    })),
  ];
}

/** What of a section is not written in the build, in words. */
export function stateOf(fields: readonly Field[]): string {
  if (fields.length === 0) return 'not given';
  const blank = fields.filter(({ text }) => text === null);
  const assumed = blank.filter((field) => field.assumed !== null).length;
  const words = [
    assumed > 0 ? `${assumed} assumed` : '',
    blank.length > assumed ? `${blank.length - assumed} not given` : '',
  ].filter((word) => word !== '');
  return words.length === 0 ? 'as written' : words.join(', ');
}

/** The torque curve as the file has it. */
export interface Curve {
  readonly speedUnit: string;
  readonly torqueUnit: string;
  readonly rows: readonly (readonly [speed: number, torque: number])[];
}

/** The torque curve among the fields of the engine; null where there is none. */
export function curveOf(engine: readonly Field[]): Curve | null {
  const unit = (key: string): string | null =>
    engine.find(({ address }) => address === `${ENGINE}/curve/units/${key}`)?.text ?? null;
  const rows = engine.flatMap(({ address, text }) => {
    if (!address.startsWith(`${ENGINE}/curve/rows/`) || text === null) return [];
    const row = text.split(' ');
    return [[Number(row[0]), Number(row[1])] as const];
  });
  const [speedUnit, torqueUnit] = [unit('speed'), unit('torque')];
  return speedUnit === null || torqueUnit === null ? null : { speedUnit, torqueUnit, rows };
}

/** The units of the torque curve, to be chosen beside its table. */
export const curveUnits = (engine: readonly Field[]): readonly Field[] =>
  engine.filter(({ address }) => address.startsWith(`${ENGINE}/curve/units/`));

/** The section that shows an address; undefined where none does. */
export function sectionOf(sections: readonly Section[], address: string): Section | undefined {
  if (address.startsWith(`${ENGINE}/`))
    return sections.find(({ key }) => key === (IN_GEARBOX.test(address) ? 'gearbox' : 'engine'));
  return sections.find((section) => address === section.address || address.startsWith(`${section.address}/`));
}
