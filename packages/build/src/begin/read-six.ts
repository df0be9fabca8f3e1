import { parseInput } from '@oddwheel/quantity/range';
import type { Fault } from '../fault.ts';
import type { Value } from '../model/model.ts';
import { blankRow } from '../model/rows.ts';
import { tyreFault } from '../model/tyre.ts';
import { typedNumber, value } from '../model/value.ts';
import { resolveWheel } from '../model/wheel.ts';
import { engineFaults } from '../read/engine-references.ts';
import { quantityFault } from '../read/quantities.ts';
import { nodeAt } from '../schema/describe.ts';
import type { FieldFacts } from '../schema/field.ts';
import { UNKNOWN_GEARS, UNKNOWN_WIDTH } from './stock.ts';
import type { FieldFault, SixFields, SixKey, SoFar } from './types.ts';

/** The six fields read, SI; texts stay beside them for the file. */
export interface ReadSix {
  readonly peakTorque: number;
  readonly powerAt: number;
  readonly gears: readonly Value[];
  readonly primary: Value;
  readonly boxEfficiency: number;
  /** The tyre field holds a measured roll-out, not a size. */
  readonly rollOutTyped: boolean;
  readonly rollOut: number;
  readonly tyreRadius: number;
  readonly tyreWidth: number;
  readonly speed: number;
}

const ADDRESS: Readonly<Record<SixKey, string>> = {
  power: '/brief/engine/peaks/power',
  powerAt: '/brief/engine/peaks/powerAt',
  torque: '/brief/engine/peaks/torque',
  torqueAt: '/brief/engine/peaks/torqueAt',
  gears: '/brief/engine/gears',
  primary: '/brief/engine/primary',
  tyre: '/brief/wheel/tyre',
  mass: '/brief/vehicle/mass',
  speed: '/brief/targets/topSpeed',
};

const reader = { facts: (address: string): FieldFacts | undefined => nodeAt({}, address)?.['x-field'] };

/** Smallest wheel that a roll-out stands for, m: below it the text is a diameter more likely. */
const LEAST_ROLL_OUT = 1;

/** Ratios of a list, apart by blanks, semicolons, or a comma and a blank. */
export function gearList(text: string): string[] {
  return text
    .split(/[;\s]+|,(?=\s)/)
    .map((one) => one.replace(/,$/, ''))
    .filter((one) => one !== '');
}

/** Whether the tyre field holds a length, and so a measured roll-out. */
const isLength = (text: string): boolean => parseInput(text, 'length').ok;

function tyreFaults(text: string): FieldFault[] {
  const at = (fault: Fault): FieldFault => ({ ...fault, field: 'tyre' });
  if (isLength(text)) {
    const address = '/brief/wheel/rollOut';
    const fault = quantityFault(address, text, reader.facts(address) ?? { name: 'Roll-out' });
    if (fault) return [at(fault)];
    if (typedNumber('length', text) >= LEAST_ROLL_OUT) return [];
    return [
      at({
        code: 'begin.roll-out',
        address,
        problem: 'A length here is the way of one turn of the wheel, and this one is shorter than any road wheel’s.',
        read: text,
        accepted: 'A roll-out of 1 m or more, such as "1.98 m", or the size on the tyre’s wall, such as "110/85R36".',
      }),
    ];
  }
  const fault = tyreFault(text);
  return fault
    ? [at({ ...fault, address: ADDRESS.tyre, accepted: `${fault.accepted}; or the roll-out, such as "1.98 m"` })]
    : [];
}

function gearFaults(text: string): FieldFault[] {
  const list = gearList(text);
  const facts = reader.facts(`${ADDRESS.gears}/0`) ?? { name: 'Gear ratio' };
  const accepted =
    'Ratios with blanks between, first gear first, such as "2.75 1.78 1.36"; "1" for an engine without a box.';
  const found = list.flatMap((one, k) => quantityFault(`${ADDRESS.gears}/${k}`, one, facts) ?? []);
  if (found.length > 0) return found.map((fault) => ({ ...fault, accepted, field: 'gears' }));
  const fault = (problem: string): FieldFault[] => [
    { code: 'begin.gears', address: ADDRESS.gears, problem, read: text, accepted, field: 'gears' },
  ];
  if (list.length === 0 || list.length > 12) return fault('A gearbox has 1 to 12 ratios.');
  const [first, last] = [list[0] ?? '', list.at(-1) ?? ''].map((one) => typedNumber('ratio', one));
  return (first ?? 0) < (last ?? 0) ? fault('First gear has the largest ratio, and stands first.') : [];
}

/** Faults of single fields, then of figures that contradict each other. */
function sixFaults(six: SixFields): FieldFault[] {
  const plain = (['power', 'powerAt', 'torque', 'torqueAt', 'mass', 'speed'] as const).flatMap(
    (field): FieldFault[] => {
      const facts = reader.facts(ADDRESS[field]) ?? { name: field };
      const fault = quantityFault(ADDRESS[field], six[field], facts);
      return fault ? [{ ...fault, field }] : [];
    },
  );
  const primary =
    six.primary === ''
      ? null
      : quantityFault(ADDRESS.primary, six.primary, reader.facts(ADDRESS.primary) ?? { name: 'Primary ratio' });
  const faults = [
    ...plain,
    ...(primary ? [{ ...primary, field: 'primary' as const }] : []),
    ...(six.gears === null ? [] : gearFaults(six.gears)),
    ...tyreFaults(six.tyre),
  ];
  const { power, powerAt, torque, torqueAt } = six;
  const apart = engineFaults({ brief: { engine: { peaks: { power, powerAt, torque, torqueAt } } } }).map(
    (fault): FieldFault => ({ ...fault, field: peakField(fault.address) }),
  );
  const same =
    faults.length === 0 &&
    apart.length === 0 &&
    typedNumber('angularSpeed', powerAt) <= typedNumber('angularSpeed', torqueAt);
  if (same)
    apart.push({
      code: 'begin.peaks',
      address: ADDRESS.powerAt,
      problem: 'Peak power comes at a higher engine speed than peak torque.',
      read: powerAt,
      accepted: `More than ${torqueAt}.`,
      field: 'powerAt',
    });
  return [...faults, ...apart];
}

const peakField = (address: string): SixKey =>
  (['powerAt', 'torqueAt', 'power', 'torque'] as const).find((key) => address === ADDRESS[key]) ?? 'power';

/** The six fields with blanks at their ends taken off. */
function trimmed(six: SixFields): SixFields {
  const { power, powerAt, torque, torqueAt, gears, primary, tyre, mass, speed } = six;
  return {
    power: power.trim(),
    powerAt: powerAt.trim(),
    torque: torque.trim(),
    torqueAt: torqueAt.trim(),
    gears: gears === null ? null : gears.trim(),
    primary: primary.trim(),
    tyre: tyre.trim(),
    mass: mass.trim(),
    speed: speed.trim(),
  };
}

/** Gears and primary drive as typed, or what stands in for them. */
function boxOf({ gears, primary }: SixFields): Pick<ReadSix, 'gears' | 'primary'> {
  const list = gears === null ? UNKNOWN_GEARS : gearList(gears);
  const engine = { gears: list, ...(primary === '' ? {} : { primary }) };
  return {
    gears: list.map((_, k) => value(reader, `${ADDRESS.gears}/${k}`, list, String(k), `Gear ${k + 1}`)),
    primary: value(reader, ADDRESS.primary, engine, 'primary', 'Engine'),
  };
}

/** Reduction of primary drive and top gear. */
export const topGear = ({ gears, primary }: Pick<ReadSix, 'gears' | 'primary'>): number =>
  primary.si * (gears.at(-1)?.si ?? 1);

/** The driven wheel of a tyre field without faults. */
function wheelOf(tyre: string): Pick<ReadSix, 'rollOut' | 'tyreRadius' | 'tyreWidth'> {
  const { rollOut, diameter: known, width } = resolveWheel(reader, isLength(tyre) ? { rollOut: tyre } : { tyre });
  if (rollOut === null) throw new Error(`The tyre ${tyre} was read, and has no roll-out.`);
  // A loaded tyre rolls about three of its diameters.
  const diameter = known ?? rollOut.hi / 2.99;
  return { rollOut: rollOut.si, tyreRadius: diameter / 2, tyreWidth: width ?? diameter * UNKNOWN_WIDTH };
}

/** Engine speed over wheel speed where peak power comes at the wanted road speed. */
export const wantedOverall = ({ powerAt, rollOut, speed }: Pick<ReadSix, 'powerAt' | 'rollOut' | 'speed'>): number =>
  (powerAt * rollOut) / (2 * Math.PI * speed);

/** What the fields typed so far come to, and what is wrong with them; a blank field is not asked about yet. */
export function soFar(typed: SixFields): SoFar {
  const six = trimmed(typed);
  const faults = sixFaults(six).filter(({ field }) => six[field] !== '');
  const good = (...keys: readonly SixKey[]): boolean =>
    keys.every((key) => six[key] !== '' && !faults.some(({ field }) => field === key));
  if (!good('powerAt', 'tyre', 'speed')) return { faults, overall: null, path: null };
  const overall = wantedOverall({
    powerAt: typedNumber('angularSpeed', six.powerAt),
    rollOut: wheelOf(six.tyre).rollOut,
    speed: typedNumber('speed', six.speed),
  });
  const boxKnown = good('gears') && (six.primary === '' || good('primary'));
  return { faults, overall, path: boxKnown ? overall / topGear(boxOf(six)) : null };
}

/** Reads the six fields; all faults at once, each with its field. */
export function readSix(
  typed: SixFields,
):
  | { readonly ok: true; readonly six: SixFields; readonly read: ReadSix }
  | { readonly ok: false; readonly faults: readonly FieldFault[] } {
  const six = trimmed(typed);
  const faults = sixFaults(six);
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    six,
    read: {
      peakTorque: typedNumber('torque', six.torque),
      powerAt: typedNumber('angularSpeed', six.powerAt),
      ...boxOf(six),
      boxEfficiency: blankRow('stage-efficiencies/gearbox').hi,
      rollOutTyped: isLength(six.tyre),
      ...wheelOf(six.tyre),
      speed: typedNumber('speed', six.speed),
    },
  };
}
