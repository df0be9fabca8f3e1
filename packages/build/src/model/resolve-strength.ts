import { BEARINGS } from '@oddwheel/tables/bearings';
import { SHAFT_STEELS } from '@oddwheel/tables/shaft-steels';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import { USUAL_DUTY } from '@oddwheel/tables/usual-duty';
import type { BuildFile } from '../schema/build-file.ts';
import { pointerKey } from '../schema/describe.ts';
import type { SeatFile, ShaftFile } from '../schema/path.ts';
import type { Locking } from './hub.ts';
import type { Shaft, Value } from './model.ts';
import { resolveBrake } from './resolve-guard.ts';
import type {
  BearingFacts,
  BearingSeat,
  Cush,
  Duty,
  Held,
  Join,
  Loads,
  Notch,
  Piece,
  Plate,
  Seating,
  Steel,
  StopInPlate,
  StopOnShaft,
} from './strength.ts';
import { type Reader, sharedBlank, typedNumber, value, valueOrNull } from './value.ts';

const lengthOrNull = (text: string | undefined): number | null =>
  text === undefined ? null : typedNumber('length', text);

/** A bar of unknown steel lies between the weakest and the strongest that are commonly sold; all such bars are one unknown. */
const UNKNOWN_STEEL = ['1018-hot-rolled', '42CrMo4-tempered-to-40'] as const;

export function resolveSteel(address: string, owner: string, key: string | undefined): Steel {
  const [weak, strong] = key === undefined ? UNKNOWN_STEEL : [key, key];
  const [row, best] = [rowInSi(SHAFT_STEELS, weak), rowInSi(SHAFT_STEELS, strong)];
  const strength = (name: string, column: 'tensile' | 'yield'): Value => {
    const [lo, hi] = [row[column] ?? Number.NaN, best[column] ?? Number.NaN];
    return {
      address: `${address}/material`,
      name: `${owner}, ${name} of its steel`,
      kind: 'pressure',
      si: (lo + hi) / 2,
      lo,
      hi,
      text: key ?? `${weak}..${strong}`,
      origin: key === undefined ? 'assumed' : 'typed',
      together: key === undefined ? 'blank steel' : null,
      source:
        key === undefined
          ? `common practice: a bar of unknown steel may be anything from ${weak} to ${strong}`
          : sourceOf(SHAFT_STEELS, key),
      recipe:
        'Read the mark on the bar’s end or the delivery note; failing both, a hardness test gives the tensile strength.',
    };
  };
  return {
    key: key ?? null,
    tensile: strength('tensile strength', 'tensile'),
    yield: strength('yield strength', 'yield'),
    youngs: row.youngs ?? Number.NaN,
    shear: row.shear ?? Number.NaN,
    density: row.density ?? Number.NaN,
  };
}

export function resolvePieces(address: string, file: ShaftFile['pieces']): readonly Piece[] | null {
  if (!file) return null;
  return file.map((piece, k): Piece => {
    const [from, to] = [typedNumber('length', piece.from), typedNumber('length', piece.to)];
    return {
      address: `${address}/pieces/${k}`,
      from: Math.min(from, to),
      to: Math.max(from, to),
      diameter: typedNumber('length', piece.diameter),
      bore: piece.bore === undefined ? 0 : typedNumber('length', piece.bore),
    };
  });
}

export function resolveNotches(reader: Reader, address: string, file: ShaftFile['notches']): readonly Notch[] {
  return Object.entries(file ?? {}).map(([id, notch]): Notch => {
    const at = `${address}/notches/${pointerKey(id)}`;
    return {
      address: at,
      name: notch.name,
      kind: notch.kind,
      station: typedNumber('length', notch.station),
      radius: valueOrNull(reader, `${at}/radius`, notch, 'radius', notch.name),
    };
  });
}

export function resolveJoins(reader: Reader, address: string, file: ShaftFile['joins']): readonly Join[] {
  return Object.entries(file ?? {}).map(([id, join]): Join => {
    const at = `${address}/joins/${pointerKey(id)}`;
    const { spigot } = join;
    return {
      id,
      address: at,
      name: join.name,
      station: typedNumber('length', join.station),
      torqueBy: join.torqueBy,
      centredBy: join.centredBy,
      axialBy: join.axialBy,
      positions: join.positions ?? null,
      diameter: lengthOrNull(join.diameter),
      length: lengthOrNull(join.length),
      teeth: join.teeth ?? null,
      height: lengthOrNull(join.height),
      spigot: spigot
        ? {
            diameter: typedNumber('length', spigot.diameter),
            length: typedNumber('length', spigot.length),
            play: valueOrNull(reader, `${at}/spigot/play`, spigot, 'play', `${join.name}, spigot`),
          }
        : null,
    };
  });
}

type HeldFile<S extends string> = {
  readonly towardStart?: S | undefined;
  readonly towardEnd?: S | undefined;
  readonly locking?: Locking | undefined;
};

export function resolveHeld<S extends StopOnShaft | StopInPlate>(
  address: string,
  file: HeldFile<S> | undefined,
): Held<S> | null {
  return file
    ? {
        address,
        towardStart: file.towardStart ?? null,
        towardEnd: file.towardEnd ?? null,
        locking: file.locking ?? null,
      }
    : null;
}

/** C0 over the fatigue load limit where no table gives it: ball and roller bearings up to 100 mm mean diameter (ISO 281, from memory). */
const FATIGUE_PART = { ball: 22, roller: 8.2 } as const;

/** A bearing by its number, or by the ratings typed for it; null where the build gives neither. */
export function factsOf(file: Pick<BearingFile, 'row' | 'ratings'>): BearingFacts | null {
  const { row, ratings } = file;
  if (row === undefined && ratings === undefined) return null;
  const si = row === undefined ? {} : rowInSi(BEARINGS, row);
  const kind = row === undefined || /^6/.test(row) ? 'deep groove' : /^7/.test(row) ? 'angular contact' : 'tapered';
  const typed = ratings && {
    dynamic: typedNumber('force', ratings.dynamic),
    static: typedNumber('force', ratings.static),
  };
  const fixed = typed?.static ?? si.staticLow ?? Number.NaN;
  return {
    row: row ?? null,
    kind,
    bore: si.bore ?? null,
    outside: si.outside ?? null,
    width: si.width ?? null,
    dynamic: typed?.dynamic ?? si.dynamicLow ?? Number.NaN,
    static: fixed,
    fatigue: si.fatigue ?? fixed / (kind === 'tapered' ? FATIGUE_PART.roller : FATIGUE_PART.ball),
    f0: si.f0 ?? null,
    kr: si.kr ?? null,
    referenceSpeed: si.referenceSpeed ?? null,
    limitingSpeed: si.limitingSpeed ?? null,
    e: si.e ?? null,
    x: si.x ?? null,
    y: si.y ?? null,
    y0: si.y0 ?? null,
    source: typed
      ? 'ratings of its maker, as typed'
      : row === undefined
        ? ''
        : `lowest of the makers, ${sourceOf(BEARINGS, row)}`,
  };
}

export function resolveBearing(
  reader: Reader,
  address: string,
  file: SeatFile,
  plates: ReadonlyMap<string, Plate>,
): BearingSeat | null {
  if (file.kind !== 'bearing') return null;
  return {
    facts: factsOf(file),
    clearance: file.clearance ?? null,
    seal: file.seal ?? null,
    stiffness: sharedBlank(
      value(reader, `${address}/stiffness`, file, 'stiffness', file.name),
      'blank bearing stiffness',
    ),
    plate: file.plate === undefined ? null : (plates.get(file.plate) ?? null),
    ring: resolveHeld(`${address}/ring`, file.ring),
    seating: resolveSeating(`${address}/seating`, file.seating),
  };
}

type BearingFile = Extract<SeatFile, { readonly kind: 'bearing' }>;

function resolveSeating(address: string, file: BearingFile['seating']): Seating | null {
  if (!file) return null;
  const { shaft, plate, made, sitsIn, keptBy, turns, float } = file;
  return {
    address,
    shaft: shaft ?? null,
    plate: plate ?? null,
    made: made ?? null,
    sitsIn: sitsIn ?? null,
    keptBy: keptBy ?? null,
    turns: turns ?? null,
    float: lengthOrNull(float),
  };
}

export function resolvePlate(id: string, plate: NonNullable<BuildFile['path']['plates']>[string]): Plate {
  const address = `/path/plates/${pointerKey(id)}`;
  return {
    id,
    address,
    name: plate.name,
    thickness: typedNumber('length', plate.thickness),
    material: plate.material,
    width: typedNumber('length', plate.width),
    span: typedNumber('length', plate.span),
    sheets: plate.sheets ?? 1,
    cut: plate.cut ?? null,
    runs: plate.runs ?? null,
    inches: /in|"|″/i.test(plate.width),
    ends: plateEnds(`${address}/ends`, plate.name, plate.ends),
  };
}

const HINGED = 48;
const BUILT_IN = 192;

/** How the ends of a plate hold it; a blank lies between the two bounds. */
function plateEnds(address: string, name: string, ends: 'as if hinged' | 'as if built in' | undefined): Value {
  const base = { address, name: `${name}, how it is tied to its tubes`, kind: 'number', recipe: null } as const;
  if (ends === undefined)
    return {
      ...base,
      si: (HINGED + BUILT_IN) / 2,
      lo: HINGED,
      hi: BUILT_IN,
      text: 'hinged..built in',
      origin: 'assumed',
      together: 'blank plate ends',
      source: 'Beam with a load at its middle: hinged ends 48 E I / l³, ends built in 192 E I / l³',
    };
  const si = ends === 'as if hinged' ? HINGED : BUILT_IN;
  return { ...base, si, lo: si, hi: si, text: ends, origin: 'typed', together: null, source: null };
}

export function resolveCush(reader: Reader, file: BuildFile['path']['cush']): Cush | null {
  if (!file) return null;
  const address = '/path/cush';
  return {
    address,
    at: file.at,
    stiffness: valueOrNull(reader, `${address}/stiffness`, file, 'stiffness', 'Cush'),
    lash: file.lash === undefined ? null : typedNumber('angle', file.lash),
  };
}

/** How it is driven, where neither rows nor a cycle say it. */
const USUAL: Value = {
  address: '/brief/duty/rows',
  name: 'Duty, how it is driven',
  kind: 'number',
  si: 1,
  lo: 1,
  hi: 1,
  text: 'a usual spectrum',
  origin: 'assumed',
  together: null,
  source: sourceOf(USUAL_DUTY, 'full torque'),
  recipe: null,
};

export function resolveDuty(reader: Reader, file: BuildFile['brief']['duty'], cycle: string | undefined): Duty {
  const address = '/brief/duty';
  return {
    address,
    distance: value(reader, `${address}/distance`, file ?? {}, 'distance', 'Duty'),
    rows:
      file?.rows?.map((row, k) => ({
        address: `${address}/rows/${k}`,
        name: row.name,
        gear: row.gear - 1,
        speed: typedNumber('speed', row.speed),
        throttle: typedNumber('fraction', row.throttle),
        share: typedNumber('fraction', row.share),
      })) ?? null,
    usual: file?.rows === undefined && cycle === undefined ? USUAL : null,
  };
}

export function resolveLoads(reader: Reader, file: BuildFile['brief']['loads']): Loads {
  const address = '/brief/loads';
  const read = (key: string) => value(reader, `${address}/${key}`, file ?? {}, key, 'Loads');
  return {
    grip: read('grip'),
    shock: read('shock'),
    brake: resolveBrake(`${address}/brake`, file?.brake),
    criterion: file?.criterion ?? 'Goodman',
    reliability: file?.reliability ?? '99',
    oil: read('oil'),
    cold: read('cold'),
    hot: read('hot'),
    dirt: file?.dirt ?? 'dirt from outside',
  };
}

/** Values of a shaft that may be uncertain. */
export function shaftValues(shaft: Shaft): readonly (Value | null)[] {
  return [
    shaft.steel.tensile,
    shaft.steel.yield,
    ...shaft.notches.map((notch) => notch.radius),
    ...shaft.joins.map((join) => join.spigot?.play ?? null),
    ...shaft.seats.map((seat) => seat.bearing?.stiffness ?? null),
    ...shaft.seats.map((seat) => seat.bearing?.plate?.ends ?? null),
  ];
}
