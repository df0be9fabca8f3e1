import { DEFAULT_UNITS, type UnitChoice } from '@oddwheel/quantity/format';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { OUTPUT } from '../read/path-references.ts';
import type { BuildFile } from '../schema/build-file.ts';
import { nodeAt, pointerKey } from '../schema/describe.ts';
import type { SeatFile, ShaftFile, StageFile } from '../schema/path.ts';
import { allValues } from './all-values.ts';
import { type Cache, reuse } from './cache.ts';
import { resolveGears } from './gears.ts';
import { resolveHub } from './hub.ts';
import type { Model, ReferenceVehicle, Seat, SeatRef, Shaft, Speedometer, Stage, Targets } from './model.ts';
import { resolveEngine } from './resolve-engine.ts';
import { resolveGuard } from './resolve-guard.ts';
import {
  lengthOrNull,
  point,
  resolveAdjusters,
  resolveMounts,
  resolvePictures,
  resolveSpace,
  resolveSuspension,
  resolveVehicle,
  unitVector,
} from './resolve-layout.ts';
import {
  resolveBearing,
  resolveCush,
  resolveDuty,
  resolveHeld,
  resolveJoins,
  resolveLoads,
  resolveNotches,
  resolvePieces,
  resolvePlate,
  resolveSteel,
} from './resolve-strength.ts';
import { chainSize } from './rows.ts';
import type { Lathe, ShelfItem, Shop } from './shop.ts';
import type { Plate } from './strength.ts';
import { type Reader, sharedBlank, typedNumber, value, valueOrNull } from './value.ts';
import { resolveWheel } from './wheel.ts';

/** Position along the shaft, added to its origin. */
const along = (origin: Vec3, direction: Vec3, station: number): Vec3 => [
  origin[0] + direction[0] * station,
  origin[1] + direction[1] * station,
  origin[2] + direction[2] * station,
];

type ShaftLike = Pick<
  ShaftFile,
  'name' | 'origin' | 'direction' | 'seats' | 'material' | 'surface' | 'pieces' | 'notches' | 'joins'
>;

function resolveShaft(
  reader: Reader,
  id: string,
  address: string,
  file: ShaftLike,
  stock: Shaft['stock'],
  plates: ReadonlyMap<string, Plate>,
): Shaft {
  const origin = point(file.origin);
  const direction = unitVector(file.direction);
  const seat = ([seatId, s]: [string, SeatFile]): Seat => {
    const station = typedNumber('length', s.station);
    const at = `${address}/seats/${pointerKey(seatId)}`;
    const bearing = resolveBearing(reader, at, s, plates);
    return {
      id: seatId,
      address: at,
      name: s.name,
      kind: s.kind,
      station,
      at: along(origin, direction, station),
      body: s.kind === 'bearing' ? s.body : null,
      // The table of bearings fills in what is not typed.
      diameter: lengthOrNull(s.diameter) ?? bearing?.facts?.bore ?? null,
      width: lengthOrNull(s.width) ?? bearing?.facts?.width ?? null,
      outside: s.kind === 'bearing' ? (lengthOrNull(s.outside) ?? bearing?.facts?.outside ?? null) : null,
      opening: s.kind === 'bearing' ? lengthOrNull(s.opening) : null,
      bearing,
      held: 'held' in s ? resolveHeld(`${at}/held`, s.held) : null,
      hub: s.kind === 'bearing' ? null : resolveHub(at, s.name, s.hub),
    };
  };
  return {
    id,
    address,
    name: file.name,
    origin,
    direction,
    seats: Object.entries(file.seats).map(seat),
    stock,
    steel: resolveSteel(address, file.name, file.material),
    surface: file.surface ?? 'machined or cold drawn',
    pieces: resolvePieces(address, file.pieces),
    notches: resolveNotches(reader, address, file.notches),
    joins: resolveJoins(reader, address, file.joins),
  };
}

function seatRef(text: string): SeatRef {
  const [shaft = '', seat = ''] = text.split('/');
  return { shaft, seat };
}

function resolveStage(reader: Reader, id: string, file: StageFile): Stage {
  const address = `/path/stages/${pointerKey(id)}`;
  const read = (key: string) => value(reader, `${address}/${key}`, file, key, file.name);
  const maybe = (key: string) => valueOrNull(reader, `${address}/${key}`, file, key, file.name);
  const base = {
    id,
    address,
    name: file.name,
    from: seatRef(file.from),
    to: seatRef(file.to),
    efficiency: read('efficiency'),
    guard: resolveGuard(file),
  };
  switch (file.kind) {
    case 'chain':
      return {
        ...base,
        kind: 'chain',
        size: chainSize(
          file.chain,
          file.strength === undefined
            ? null
            : { strength: typedNumber('force', file.strength), at: `${address}/strength` },
        ),
        strands: read('strands'),
        stretch: sharedBlank(read('stretch'), 'blank chain stretch'),
        teeth: file.teeth,
        links: file.links ?? null,
        tensioner: file.tensioner === undefined ? null : file.tensioner === 'slack side',
        joint: file.joint ?? null,
        idler: file.idler
          ? {
              address: `${address}/idler`,
              ...file.idler,
              at: point(file.idler.at),
              sprung: file.idler.hold === 'sprung',
            }
          : null,
        largest: { driver: file.largest?.driver ?? null, driven: file.largest?.driven ?? null },
        oiled: file.oiled ?? null,
        breaks: file.breaks ?? null,
      };
    case 'belt':
      return {
        ...base,
        kind: 'belt',
        pitch: typedNumber('length', file.pitch),
        teeth: file.teeth,
        beltTeeth: file.length ?? null,
        profile: file.profile ?? null,
        width: lengthOrNull(file.width),
      };
    case 'bevel':
    case 'spur':
      return {
        ...base,
        kind: file.kind,
        teeth: file.teeth,
        module: maybe('module'),
        faceWidth: maybe('faceWidth'),
        spiral: maybe('spiral'),
        hand: file.kind === 'bevel' ? (file.hand ?? null) : null,
        backlash: file.kind === 'bevel' ? maybe('backlash') : null,
        gears: resolveGears(address, file),
      };
    case 'coupling':
      return {
        ...base,
        kind: 'coupling',
        joint: file.joint,
        takes: {
          angle: file.takes?.angle === undefined ? null : typedNumber('angle', file.takes.angle),
          offset: lengthOrNull(file.takes?.offset),
          axial: lengthOrNull(file.takes?.axial),
        },
      };
    case 'unit': {
      const rating = (key: string) =>
        file.rating ? valueOrNull(reader, `${address}/rating/${key}`, file.rating, key, `${file.name}, rating`) : null;
      return {
        ...base,
        kind: 'unit',
        ratio: read('ratio'),
        sense: file.sense === 'positive' ? 1 : -1,
        ratedTorque: rating('torque'),
        ratedInputSpeed: rating('inputSpeed'),
      };
    }
  }
}

function resolveTargets(reader: Reader, file: BuildFile['brief']['targets']): Targets {
  const maybe = (key: string) => (file ? valueOrNull(reader, `/brief/targets/${key}`, file, key, 'Target') : null);
  return {
    topSpeed: maybe('topSpeed'),
    cruiseSpeed: maybe('cruiseSpeed'),
    cruiseEngine: maybe('cruiseEngine'),
    pull: maybe('pull'),
    climb: maybe('climb'),
    sprintTo: maybe('sprintTo'),
    sprintIn: maybe('sprintIn'),
    cycle: file?.cycle ?? null,
  };
}

function resolveReference(reader: Reader, file: BuildFile['brief']['reference']): ReferenceVehicle | null {
  if (!file) return null;
  const address = '/brief/reference';
  return {
    name: file.name,
    overall: file.overall.map((_, k) =>
      value(reader, `${address}/overall/${k}`, file.overall, String(k), `${file.name}, gear ${k + 1}`),
    ),
    rollOut: value(reader, `${address}/rollOut`, file, 'rollOut', file.name),
    mass: valueOrNull(reader, `${address}/mass`, file, 'mass', file.name),
    at: value(reader, `${address}/at`, file, 'at', file.name),
  };
}

function resolveSpeedometer(reader: Reader, file: BuildFile['brief']['speedometer']): Speedometer | null {
  if (!file) return null;
  const address = '/brief/speedometer';
  const read = (key: string) => value(reader, `${address}/${key}`, file, key, 'Speedometer');
  return { address, senses: file.senses, madeRatio: read('madeRatio'), madeRollOut: read('madeRollOut') };
}

function resolveShop(reader: Reader, file: BuildFile['brief']['shop']): Shop {
  const machines = Object.entries(file?.machines ?? {});
  const lathes = machines.flatMap(([id, machine]): Lathe[] => {
    if (machine.kind !== 'lathe') return [];
    const address = `/brief/shop/machines/${pointerKey(id)}`;
    const maybe = (key: string) => valueOrNull(reader, `${address}/${key}`, machine, key, machine.name);
    return [{ address, name: machine.name, swing: maybe('swing'), centres: maybe('centres') }];
  });
  return {
    machines: machines.map(([, machine]) => `${machine.name} (${machine.kind})`),
    lathes: file?.machines ? lathes : null,
    shelf: Object.values(file?.shelf ?? {}).map((item): ShelfItem => {
      if (item.kind === 'chain') return item;
      return { ...item, price: item.price === undefined ? null : typedNumber('number', item.price) };
    }),
  };
}

/**
 * Turns a faultless build file into the model: numbers in SI, defaults from sourced rows, the path in the order of power.
 * Parts whose input did not change come back as the same objects when a cache is given.
 */
export function resolve(build: BuildFile, cache: Cache | null): Model {
  const { brief, path } = build;
  const reader: Reader = { facts: (address) => nodeAt(build, address)?.['x-field'] };
  const engine = reuse(cache, 'resolve:engine', [brief.engine], () => resolveEngine(reader, brief.engine));
  const stockOf = (file: ShaftFile): Shaft['stock'] => {
    const bar = file.stock === undefined ? undefined : brief.shop?.stock?.[file.stock];
    if (!bar || file.stock === undefined) return null;
    return reuse(cache, `resolve:stock:${file.stock}`, [bar], () => ({
      address: `/brief/shop/stock/${pointerKey(file.stock ?? '')}`,
      name: bar.name,
      length: typedNumber('length', bar.length),
      diameter: typedNumber('length', bar.diameter),
    }));
  };
  const plates = new Map(
    Object.entries(path.plates ?? {}).map(([id, file]): [string, Plate] => [
      id,
      reuse(cache, `resolve:plate:${id}`, [file], () => resolvePlate(id, file)),
    ]),
  );
  // Another plate leaves a shaft as it is.
  const under = (file: ShaftLike): readonly (Plate | undefined)[] =>
    Object.values(file.seats).map((seat) => ('plate' in seat && seat.plate ? plates.get(seat.plate) : undefined));
  const shafts = new Map<string, Shaft>();
  const output = brief.engine.output;
  shafts.set(
    OUTPUT,
    reuse(cache, 'resolve:output', [output, ...under(output)], () =>
      resolveShaft(reader, OUTPUT, '/brief/engine/output', output, null, plates),
    ),
  );
  for (const [id, file] of Object.entries(path.shafts)) {
    const stock = stockOf(file);
    shafts.set(
      id,
      reuse(cache, `resolve:shaft:${id}`, [file, stock, ...under(file)], () =>
        resolveShaft(reader, id, `/path/shafts/${pointerKey(id)}`, file, stock, plates),
      ),
    );
  }
  const stages = new Map<string, Stage>();
  for (const [id, file] of Object.entries(path.stages)) {
    const stage = reuse(cache, `resolve:stage:${id}`, [file], () => resolveStage(reader, id, file));
    stages.set(stage.from.shaft, stage);
  }
  const order = { shafts: [] as Shaft[], stages: [] as Stage[] };
  for (let at = OUTPUT; ; ) {
    const shaft = shafts.get(at);
    const stage = stages.get(at);
    if (shaft) order.shafts.push(shaft);
    if (!stage || order.stages.length >= stages.size) break;
    order.stages.push(stage);
    at = stage.to.shaft;
  }
  const wheel = reuse(cache, 'resolve:wheel', [brief.wheel], () => resolveWheel(reader, brief.wheel));
  const vehicle = reuse(cache, 'resolve:vehicle', [brief.vehicle], () => resolveVehicle(reader, brief.vehicle));
  const suspension = reuse(cache, 'resolve:suspension', [brief.suspension], () => resolveSuspension(brief.suspension));
  const mounts = reuse(cache, 'resolve:mounts', [brief.mounts], () => resolveMounts(reader, brief.mounts));
  const space = reuse(cache, 'resolve:space', [brief.space], () => resolveSpace(reader, brief.space));
  const adjusters = reuse(cache, 'resolve:adjusters', [path.adjusters], () => resolveAdjusters(path.adjusters));
  const cush = reuse(cache, 'resolve:cush', [path.cush], () => resolveCush(reader, path.cush));
  const duty = reuse(cache, 'resolve:duty', [brief.duty, brief.targets?.cycle], () =>
    resolveDuty(reader, brief.duty, brief.targets?.cycle),
  );
  const loads = reuse(cache, 'resolve:loads', [brief.loads], () => resolveLoads(reader, brief.loads));
  const targets = reuse(cache, 'resolve:targets', [brief.targets], () => resolveTargets(reader, brief.targets));
  const reference = reuse(cache, 'resolve:reference', [brief.reference], () =>
    resolveReference(reader, brief.reference),
  );
  const speedometer = reuse(cache, 'resolve:speedometer', [brief.speedometer], () =>
    resolveSpeedometer(reader, brief.speedometer),
  );
  const shop = reuse(cache, 'resolve:shop', [brief.shop], () => resolveShop(reader, brief.shop));
  return {
    name: build.name,
    about: build.about,
    engine,
    vehicle,
    wheel,
    suspension,
    mounts,
    space,
    adjusters,
    plates: reuse(cache, 'resolve:plate-list', [...plates.values()], () => [...plates.values()]),
    cush,
    duty,
    loads,
    targets,
    reference,
    speedometer,
    shop,
    shafts: order.shafts,
    stages: order.stages,
    units: reuse(cache, 'resolve:units', [build.units], () => unitChoice(build.units)),
    notes: build.notes ?? {},
    pictures: reuse(cache, 'resolve:pictures', [build.pictures], () => resolvePictures(build.pictures)),
    overrides: reuse(cache, 'resolve:overrides', [build.overrides], () =>
      Object.fromEntries(
        Object.entries(build.overrides ?? {}).map(([id, o]) => [
          id,
          { ...o, reserve: typedNumber('number', o.reserve) },
        ]),
      ),
    ),
    values: allValues({
      engine,
      vehicle,
      mounts,
      space,
      rollOut: wheel.rollOut,
      ...order,
      targets,
      reference,
      speedometer,
      cush,
      duty,
      loads,
    }),
  };
}

function unitChoice(chosen: BuildFile['units']): UnitChoice {
  const typed = Object.entries(chosen ?? {}).flatMap(([use, unit]) => (unit === undefined ? [] : [[use, unit]]));
  return { ...DEFAULT_UNITS, ...Object.fromEntries(typed) };
}
