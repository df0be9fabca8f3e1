import type { Json } from '@oddwheel/build/document/json';
import type { TrueBearings, TruePart } from '@oddwheel/build/true/types';

/** A part as its form has it, all as typed. */
export interface PartForm {
  readonly name: string;
  /** Id of the shaft of the build that it is; blank for none. */
  readonly shaft: string;
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
  readonly bearings: '' | TrueBearings;
  readonly sprocketRoot: string;
  readonly sprocketMade: string;
  readonly stiffness: string;
  readonly gearKind: '' | 'bevel' | 'straight';
  readonly gearDiameter: string;
  readonly gearModule: string;
  readonly gearGrade: string;
  readonly balanceMass: string;
  readonly balanceSpeed: string;
  readonly balanceGrade: string;
  /** One a line: name, TIR, and the angle of its high spot where it is known. */
  readonly others: string;
}

const EMPTY: PartForm = {
  ...{ name: '', shaft: '', seatA: '', seatB: '', station: '', tir: '3 thou', use: 'drive', joints: '' },
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
  ...{ pressDiameter: '', pressYield: '', bearings: '', sprocketRoot: '' },
  ...{ sprocketMade: 'turned', stiffness: '' },
  ...{ gearKind: '', gearDiameter: '', gearModule: '', gearGrade: '8' },
  ...{ balanceMass: '', balanceSpeed: '', balanceGrade: '16 mm/s', others: '' },
};

/** The form of a part; an empty one for a new part. */
export function formOf(part: Partial<TruePart> | undefined): PartForm {
  if (!part) return EMPTY;
  const { seats, goal, joints = [], weld, press, serves } = part;
  return {
    ...EMPTY,
    name: part.name ?? part.part ?? '',
    shaft: part.shaft ?? '',
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
    bearings: serves?.bearings ?? '',
    sprocketRoot: serves?.sprocket?.rootDiameter ?? '',
    sprocketMade: serves?.sprocket?.made ?? 'turned',
    stiffness: serves?.stiffness ?? '',
    ...(serves?.gear
      ? {
          gearKind: serves.gear.bevel ? 'bevel' : 'straight',
          gearDiameter: serves.gear.diameter,
          gearModule: serves.gear.module,
          gearGrade: String(serves.gear.grade),
        }
      : {}),
    ...(serves?.balance
      ? {
          balanceMass: serves.balance.mass,
          balanceSpeed: serves.balance.topSpeed,
          balanceGrade: serves.balance.grade,
        }
      : {}),
    others: (serves?.contributors ?? [])
      .map(({ name, tir, high }) => [name, tir, ...(high === undefined ? [] : [high])].join(', '))
      .join('\n'),
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

/** What sits at the station that matters; each of it only where its first field is filled in. */
function servesBody(form: PartForm): { readonly [key: string]: Json } {
  const [root, stiffness, diameter, mass] = [
    form.sprocketRoot.trim(),
    form.stiffness.trim(),
    form.gearDiameter.trim(),
    form.balanceMass.trim(),
  ];
  const contributors = rows(form.others).map(([name = '', tir = '', high]) => ({
    name,
    tir,
    ...(high === undefined || high === '' ? {} : { high }),
  }));
  return {
    ...(form.bearings === '' ? {} : { bearings: form.bearings }),
    ...(root === '' ? {} : { sprocket: { rootDiameter: root, made: form.sprocketMade } }),
    ...(form.gearKind === ''
      ? {}
      : {
          gear: {
            bevel: form.gearKind === 'bevel',
            diameter,
            module: form.gearModule.trim(),
            grade: Number(form.gearGrade),
          },
        }),
    ...(mass === '' && form.balanceSpeed.trim() === ''
      ? {}
      : { balance: { mass, topSpeed: form.balanceSpeed.trim(), grade: form.balanceGrade.trim() } }),
    ...(stiffness === '' ? {} : { stiffness }),
    ...(contributors.length === 0 ? {} : { contributors }),
  };
}

/** The body of the part. Whether all of it is right is checked later. */
export function partBody(id: string, form: PartForm): { readonly [key: string]: Json } {
  const { name, shaft, seatA, seatB, station, tir, use } = form;
  const joints = rows(form.joints).map(([joint = '', at = '', positions = '']) => ({
    joint,
    station: at,
    positions: Number(positions),
  }));
  const owed = rows(form.owed).map(([clock = '', length = '']) => ({ clock, length }));
  const press = form.pressDiameter.trim() !== '' || form.pressYield.trim() !== '';
  const serves = servesBody(form);
  return {
    part: id,
    ...(name.trim() === '' ? {} : { name: name.trim() }),
    ...(shaft === '' ? {} : { shaft }),
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
    '/shaft': 'shaft',
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
    '/serves/bearings': 'bearings',
    '/serves/sprocket/rootDiameter': 'sprocketRoot',
    '/serves/stiffness': 'stiffness',
    '/serves/gear/diameter': 'gearDiameter',
    '/serves/gear/module': 'gearModule',
    '/serves/gear/grade': 'gearGrade',
    '/serves/balance/mass': 'balanceMass',
    '/serves/balance/topSpeed': 'balanceSpeed',
    '/serves/balance/grade': 'balanceGrade',
  };
  if (address.startsWith('/joints')) return 'joints';
  if (address.startsWith('/weld/owed')) return 'owed';
  if (address.startsWith('/serves/contributors')) return 'others';
  return known[address];
}
