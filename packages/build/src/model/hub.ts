import { parseInput } from '@oddwheel/quantity/range';
import { HUB_METALS } from '@oddwheel/tables/hub-metals';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { HubFile } from '../schema/hub.ts';
import type { Value } from './model.ts';
import { typedNumber } from './value.ts';

/** Metal of a hub; a blank one lies between mild and medium carbon steel. */
interface Metal {
  /** Row of the table of what metals give. */
  readonly elastic: 'steel' | 'grey cast iron' | 'aluminium';
  readonly tensile: Value;
  readonly yield: Value;
}

export type Locking = NonNullable<HubFile['locking']>;

/** How a fastener was tightened. */
export interface Tightened {
  readonly tightening: number | null;
  readonly surface: 'dry and black' | 'as delivered' | 'oiled' | 'with paste';
  readonly faces: 'oiled' | 'clean or painted' | 'blasted';
}

export interface HubKey {
  readonly length: number;
  readonly roundEnds: number;
  readonly keys: number;
  readonly fit: 'slides' | 'light press' | 'tight' | null;
  readonly inch: boolean;
  readonly width: number | null;
  readonly height: number | null;
  readonly depth: number | null;
}

export interface HubSpline {
  readonly form: 'straight' | 'involute' | 'of unknown standard';
  readonly teeth: number;
  readonly length: number;
  readonly outside: number | null;
  readonly inside: number | null;
  readonly module: number | null;
  readonly pin: number | null;
  readonly over: number | null;
  readonly sits: 'clamped along the shaft' | 'loose' | 'slides under load' | null;
}

export interface HubTaper extends Tightened {
  readonly ratio: number;
  readonly length: number;
  readonly thread: string | null;
}

export interface HubBolts extends Tightened {
  readonly thread: string;
  readonly count: number;
  readonly circle: number;
  readonly grade: string | null;
  readonly thickness: number | null;
  readonly edge: number | null;
  readonly into: 'nuts' | 'a thread in the part' | null;
  readonly engagement: number | null;
  /** Key of the table of hub metals. */
  readonly part: string | null;
}

export interface HubPress {
  /** Interference on the diameter, at least and at most. */
  readonly least: number;
  readonly most: number;
  readonly length: number;
  readonly outside: number;
  readonly bore: number;
  readonly roughness: number | null;
  /** Row of the table of friction. */
  readonly joined: NonNullable<NonNullable<HubFile['press']>['joined']>;
}

/** What passes the torque between a shaft and the part on a seat. SI. */
export interface Hub {
  readonly address: string;
  readonly torqueBy: HubFile['torqueBy'];
  readonly metal: Metal;
  readonly key: HubKey | null;
  readonly spline: HubSpline | null;
  readonly taper: HubTaper | null;
  readonly screws: { readonly size: string; readonly count: number } | null;
  readonly bolts: HubBolts | null;
  readonly weld: { readonly leg: number; readonly count: number } | null;
  readonly press: HubPress | null;
  readonly locking: Locking | null;
}

const length = (text: string | undefined): number | null => (text === undefined ? null : typedNumber('length', text));

const elasticOf = (key: string | undefined): Metal['elastic'] =>
  key === 'cast iron' ? 'grey cast iron' : key?.endsWith('aluminium') ? 'aluminium' : 'steel';

const UNKNOWN_METAL = ['mild steel', 'medium carbon steel'] as const;

function metalOf(address: string, owner: string, key: string | undefined): Metal {
  const [weak, strong] = key === undefined ? UNKNOWN_METAL : [key, key];
  const strength = (name: string, column: 'tensile' | 'yield'): Value => {
    const lo = rowInSi(HUB_METALS, weak)[column] ?? Number.NaN;
    const hi = rowInSi(HUB_METALS, strong)[column] ?? Number.NaN;
    return {
      address: `${address}/metal`,
      name: `${owner}, ${name} of its hub`,
      kind: 'pressure',
      si: (lo + hi) / 2,
      lo,
      hi,
      text: key ?? `${weak}..${strong}`,
      origin: key === undefined ? 'assumed' : 'typed',
      together: key === undefined ? 'blank hub metal' : null,
      source:
        key === undefined
          ? 'common practice: a bought sprocket or hub of steel is mild or medium carbon'
          : sourceOf(HUB_METALS, key),
      recipe: 'Ask the maker, or try its rim with a file: a file skates on hardened steel and bites into the others.',
    };
  };
  return {
    elastic: elasticOf(key),
    tensile: strength('tensile strength', 'tensile'),
    yield: strength('yield strength', 'yield'),
  };
}

type TightenedFile = Pick<NonNullable<HubFile['taper']>, 'tightening' | 'surface' | 'faces'>;

const tightened = (file: TightenedFile): Tightened => ({
  tightening: file.tightening === undefined ? null : typedNumber('torque', file.tightening),
  surface: file.surface ?? 'as delivered',
  faces: file.faces ?? 'oiled',
});

const ROUND = { 'both round': 2, 'one round': 1, square: 0 } as const;

const keyOf = (file: NonNullable<HubFile['key']>): HubKey => ({
  length: typedNumber('length', file.length),
  roundEnds: ROUND[file.ends ?? 'both round'],
  keys: file.keys ?? 1,
  fit: file.fit ?? null,
  inch: file.sizes === 'inch standard',
  width: length(file.width),
  height: length(file.height),
  depth: length(file.depth),
});

const splineOf = (file: NonNullable<HubFile['spline']>): HubSpline => ({
  form: file.form,
  teeth: file.teeth,
  length: typedNumber('length', file.length),
  outside: length(file.outside),
  inside: length(file.inside),
  module: length(file.module),
  pin: length(file.pin),
  over: length(file.over),
  sits: file.sits ?? null,
});

const taperOf = (file: NonNullable<HubFile['taper']>): HubTaper => ({
  ratio: typedNumber('ratio', file.ratio),
  length: typedNumber('length', file.length),
  thread: file.thread ?? null,
  ...tightened(file),
});

const boltsOf = (file: NonNullable<HubFile['bolts']>): HubBolts => ({
  thread: file.thread,
  count: file.count,
  circle: typedNumber('length', file.circle),
  grade: file.grade ?? null,
  thickness: length(file.thickness),
  edge: length(file.edge),
  into: file.into ?? null,
  engagement: length(file.engagement),
  part: file.part ?? null,
  ...tightened(file),
});

function pressOf(file: NonNullable<HubFile['press']>): HubPress {
  const tight = parseInput(file.interference, 'length');
  if (!tight.ok) throw new Error(`Not a length: ${JSON.stringify(file.interference)}. ${tight.problem}`);
  return {
    least: tight.lo,
    most: tight.hi,
    length: typedNumber('length', file.length),
    outside: typedNumber('length', file.outside),
    bore: length(file.bore) ?? 0,
    roughness: length(file.roughness),
    joined: file.joined ?? 'pressed, oiled, steel on steel',
  };
}

/** The torque joint of a seat; null where the build does not say. */
export function resolveHub(seat: string, owner: string, file: HubFile | undefined): Hub | null {
  if (!file) return null;
  const address = `${seat}/hub`;
  return {
    address,
    torqueBy: file.torqueBy,
    metal: metalOf(address, owner, file.metal),
    key: file.key ? keyOf(file.key) : null,
    spline: file.spline ? splineOf(file.spline) : null,
    taper: file.taper ? taperOf(file.taper) : null,
    screws: file.screws ?? null,
    bolts: file.bolts ? boltsOf(file.bolts) : null,
    weld: file.weld ? { leg: typedNumber('length', file.weld.leg), count: file.weld.count ?? 1 } : null,
    press: file.press ? pressOf(file.press) : null,
    locking: file.locking ?? null,
  };
}

/** Values of a torque joint that may be uncertain; where the part is of the shaft's own metal there are none. */
export const hubValues = (hub: Hub | null): readonly Value[] =>
  hub === null || hub.torqueBy === 'one piece with the shaft' ? [] : [hub.metal.tensile, hub.metal.yield];
