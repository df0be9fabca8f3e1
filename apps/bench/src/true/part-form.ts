import type { Json } from '@oddwheel/build/document/json';
import type { TruePart } from '@oddwheel/build/true/types';

/** A part as its form has it, all as typed. */
export interface PartForm {
  readonly name: string;
  readonly seatA: string;
  readonly seatB: string;
  readonly station: string;
  readonly tir: string;
  readonly use: string;
  /** One a line: name, station, positions. */
  readonly joints: string;
  readonly weldMode: '' | 'correct' | 'weld-up';
  readonly weldStation: string;
  readonly steel: string;
  readonly hardness: string;
  readonly coating: string;
  readonly smallest: string;
  readonly largest: string;
  /** One a line: clock and length. */
  readonly owed: string;
  readonly pressDiameter: string;
  readonly pressYield: string;
  readonly sprocketRoot: string;
  readonly sprocketMade: string;
  readonly stiffness: string;
}

const EMPTY: PartForm = {
  ...{ name: '', seatA: '', seatB: '', station: '', tir: '3 thou', use: 'drive', joints: '' },
  ...{
    weldMode: '',
    weldStation: '',
    steel: '',
    hardness: '',
    coating: '',
    smallest: '3 mm',
    largest: '25 mm',
    owed: '',
  },
  ...{ pressDiameter: '', pressYield: '', sprocketRoot: '', sprocketMade: 'turned', stiffness: '' },
};

/** The form of a part; an empty one for a new part. */
export function formOf(part: Partial<TruePart> | undefined): PartForm {
  if (!part) return EMPTY;
  const { seats, goal, joints = [], weld, press, serves } = part;
  return {
    ...EMPTY,
    name: part.name ?? part.part ?? '',
    seatA: seats?.a ?? '',
    seatB: seats?.b ?? '',
    station: goal?.station ?? '',
    tir: goal?.tir ?? EMPTY.tir,
    use: part.use ?? 'drive',
    joints: joints.map(({ joint, station, positions }) => `${joint}, ${station}, ${positions}`).join('\n'),
    ...(weld
      ? {
          weldMode: weld.mode,
          weldStation: weld.station,
          steel: weld.steel,
          hardness: weld.hardness,
          coating: weld.coating,
          smallest: weld.smallest,
          largest: weld.largest,
          owed: (weld.owed ?? []).map(({ clock, length }) => `${clock}, ${length}`).join('\n'),
        }
      : {}),
    pressDiameter: press?.diameter ?? '',
    pressYield: press?.yield ?? '',
    sprocketRoot: serves?.sprocket?.rootDiameter ?? '',
    sprocketMade: serves?.sprocket?.made ?? 'turned',
    stiffness: serves?.stiffness ?? '',
  };
}

/** Id of a new part, from its name; with a number when another part has it. */
export function idFor(name: string, taken: readonly string[]): string {
  const stem =
    name
      .trim()
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-|-$/g, '') || 'part';
  for (let number = 1; ; number += 1) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.includes(id)) return id;
  }
}

const rows = (text: string): string[][] =>
  text
    .split('\n')
    .map((line) => line.split(',').map((cell) => cell.trim()))
    .filter((cells) => cells.some((cell) => cell !== ''));

/** The body of the part. What the form does not ask for stays as it was. Whether all of it is right is checked later. */
export function partBody(id: string, form: PartForm, before: TruePart | undefined): { readonly [key: string]: Json } {
  const { name, seatA, seatB, station, tir, use } = form;
  const joints = rows(form.joints).map(([joint = '', at = '', positions = '']) => ({
    joint,
    station: at,
    positions: Number(positions),
  }));
  const owed = rows(form.owed).map(([clock = '', length = '']) => ({ clock, length }));
  const press = form.pressDiameter.trim() !== '' || form.pressYield.trim() !== '';
  const { sprocket: _, stiffness: __, ...otherServes } = (before?.serves ?? {}) as { [key: string]: Json };
  const serves: { readonly [key: string]: Json } = {
    ...otherServes,
    ...(form.sprocketRoot.trim() === ''
      ? {}
      : { sprocket: { rootDiameter: form.sprocketRoot.trim(), made: form.sprocketMade } }),
    ...(form.stiffness.trim() === '' ? {} : { stiffness: form.stiffness.trim() }),
  };
  return {
    part: id,
    ...(name.trim() === '' ? {} : { name: name.trim() }),
    seats: { a: seatA.trim(), b: seatB.trim() },
    goal: { station: station.trim(), tir: tir.trim() },
    ...(use === 'drive' ? {} : { use }),
    ...(joints.length === 0 ? {} : { joints }),
    ...(form.weldMode === ''
      ? {}
      : {
          weld: {
            mode: form.weldMode,
            station: form.weldStation.trim(),
            steel: form.steel.trim(),
            hardness: form.hardness.trim(),
            coating: form.coating.trim(),
            smallest: form.smallest.trim(),
            largest: form.largest.trim(),
            ...(form.weldMode === 'weld-up' ? { owed } : {}),
          },
        }),
    ...(press ? { press: { diameter: form.pressDiameter.trim(), yield: form.pressYield.trim() } } : {}),
    ...(Object.keys(serves).length === 0 ? {} : { serves }),
  };
}

/** The field that a fault of the body belongs to. */
export function fieldOf(address: string): keyof PartForm | undefined {
  const known: Readonly<Record<string, keyof PartForm>> = {
    '/name': 'name',
    '/seats/a': 'seatA',
    '/seats/b': 'seatB',
    '/goal/station': 'station',
    '/goal/tir': 'tir',
    '/use': 'use',
    '/weld/station': 'weldStation',
    '/weld/steel': 'steel',
    '/weld/hardness': 'hardness',
    '/weld/coating': 'coating',
    '/weld/smallest': 'smallest',
    '/weld/largest': 'largest',
    '/press/diameter': 'pressDiameter',
    '/press/yield': 'pressYield',
    '/serves/sprocket/rootDiameter': 'sprocketRoot',
    '/serves/stiffness': 'stiffness',
  };
  if (address.startsWith('/joints')) return 'joints';
  if (address.startsWith('/weld/owed')) return 'owed';
  return known[address];
}
