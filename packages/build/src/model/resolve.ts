import { DEFAULT_UNITS, type UnitChoice } from '@oddwheel/quantity/format';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { OUTPUT } from '../read/path-references.ts';
import type { BuildFile } from '../schema/build-file.ts';
import { nodeAt, pointerKey } from '../schema/describe.ts';
import type { SeatFile, ShaftFile, StageFile } from '../schema/path.ts';
import { allValues } from './all-values.ts';
import { type Cache, reuse } from './cache.ts';
import type {
  Engine,
  Lathe,
  Model,
  ReferenceVehicle,
  Seat,
  SeatRef,
  Shaft,
  Shop,
  Stage,
  Targets,
  Value,
} from './model.ts';
import {
  lengthOrNull,
  point,
  resolveAdjusters,
  resolveSuspension,
  resolveVehicle,
  unitVector,
} from './resolve-layout.ts';
import { chainSize } from './rows.ts';
import { type Reader, typedNumber, value, valueOrNull } from './value.ts';
import { resolveWheel } from './wheel.ts';

/** Position along the shaft, added to its origin. */
const along = (origin: Vec3, direction: Vec3, station: number): Vec3 => [
  origin[0] + direction[0] * station,
  origin[1] + direction[1] * station,
  origin[2] + direction[2] * station,
];

type ShaftLike = Pick<ShaftFile, 'name' | 'origin' | 'direction' | 'seats'>;

function resolveShaft(id: string, address: string, file: ShaftLike, stock: Shaft['stock']): Shaft {
  const origin = point(file.origin);
  const direction = unitVector(file.direction);
  const seat = ([seatId, s]: [string, SeatFile]): Seat => {
    const station = typedNumber('length', s.station);
    return {
      id: seatId,
      address: `${address}/seats/${pointerKey(seatId)}`,
      name: s.name,
      kind: s.kind,
      station,
      at: along(origin, direction, station),
      body: s.kind === 'bearing' ? s.body : null,
      diameter: lengthOrNull(s.diameter),
      width: lengthOrNull(s.width),
      outside: s.kind === 'bearing' ? lengthOrNull(s.outside) : null,
      opening: s.kind === 'bearing' ? lengthOrNull(s.opening) : null,
    };
  };
  return { id, address, name: file.name, origin, direction, seats: Object.entries(file.seats).map(seat), stock };
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
  };
  switch (file.kind) {
    case 'chain':
      return {
        ...base,
        kind: 'chain',
        size: chainSize(file.chain),
        strands: read('strands'),
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
      };
    case 'belt':
      return {
        ...base,
        kind: 'belt',
        pitch: typedNumber('length', file.pitch),
        teeth: file.teeth,
        beltTeeth: file.length ?? null,
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

function resolveEngine(reader: Reader, file: BuildFile['brief']['engine']): Engine {
  const address = '/brief/engine';
  const read = (key: string) => value(reader, `${address}/${key}`, file, key, 'Engine');
  const scale = (word: string, kind: 'angularSpeed' | 'torque') => typedNumber(kind, `1 ${word}`);
  const { curve, peaks } = file;
  return {
    address,
    name: file.name,
    curve: curve
      ? {
          speeds: curve.rows.map(([n]) => n * scale(curve.units.speed, 'angularSpeed')),
          torques: curve.rows.map(([, t]) => t * scale(curve.units.torque, 'torque')),
        }
      : null,
    peaks: peaks
      ? {
          torque: typedNumber('torque', peaks.torque),
          torqueAt: typedNumber('angularSpeed', peaks.torqueAt),
          power: typedNumber('power', peaks.power),
          powerAt: typedNumber('angularSpeed', peaks.powerAt),
        }
      : null,
    idle: read('idle'),
    redline: valueOrNull(reader, `${address}/redline`, file, 'redline', 'Engine') ?? blankRedline(address, file),
    torqueBand: curve || !peaks ? null : torqueBand(address),
    primary: read('primary'),
    gears: file.gears.map((_, k) => value(reader, `${address}/gears/${k}`, file.gears, String(k), `Gear ${k + 1}`)),
    boxEfficiency: read('boxEfficiency'),
    outputSense: file.output.sense === 'positive' ? 1 : -1,
    madeFor: file.output.madeFor ?? null,
  };
}

/** Without a redline, the last speed that the engine is known to reach at full throttle. */
function blankRedline(address: string, file: BuildFile['brief']['engine']): Value | null {
  const row = file.curve?.rows.at(-1);
  const si =
    row && file.curve
      ? typedNumber('angularSpeed', `${row[0]} ${file.curve.units.speed}`)
      : file.peaks
        ? typedNumber('angularSpeed', file.peaks.powerAt)
        : null;
  if (si === null) return null;
  const text = row && file.curve ? `${row[0]} ${file.curve.units.speed}` : (file.peaks?.powerAt ?? '');
  return {
    address: `${address}/redline`,
    name: 'Engine, redline',
    kind: 'angularSpeed',
    si,
    lo: si,
    hi: si,
    text,
    origin: 'assumed',
    source: 'common practice: without a redline, stop at the last speed of the curve, or at peak power',
    recipe: null,
  };
}

/** A curve known by two points only lies between bounds; where between them is not known. */
function torqueBand(address: string): Value {
  return {
    address: `${address}/curve`,
    name: 'Engine, torque between the known points',
    kind: 'fraction',
    si: 0.5,
    lo: 0,
    hi: 1,
    text: 'between its bounds',
    origin: 'assumed',
    source: 'derived: torque never above its peak, power never above its peak',
    recipe: 'A rolling road gives the curve; failing that, time the same pull in one gear between marked speeds.',
  };
}

function resolveTargets(reader: Reader, file: BuildFile['brief']['targets']): Targets {
  const maybe = (key: string) => (file ? valueOrNull(reader, `/brief/targets/${key}`, file, key, 'Target') : null);
  return {
    topSpeed: maybe('topSpeed'),
    cruiseSpeed: maybe('cruiseSpeed'),
    cruiseEngine: maybe('cruiseEngine'),
    pull: maybe('pull'),
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
    at: value(reader, `${address}/at`, file, 'at', file.name),
  };
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
    shelf: Object.values(file?.shelf ?? {}),
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
  const shafts = new Map<string, Shaft>();
  const output = brief.engine.output;
  shafts.set(
    OUTPUT,
    reuse(cache, 'resolve:output', [output], () => resolveShaft(OUTPUT, '/brief/engine/output', output, null)),
  );
  for (const [id, file] of Object.entries(path.shafts)) {
    const stock = stockOf(file);
    shafts.set(
      id,
      reuse(cache, `resolve:shaft:${id}`, [file, stock], () =>
        resolveShaft(id, `/path/shafts/${pointerKey(id)}`, file, stock),
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
  const adjusters = reuse(cache, 'resolve:adjusters', [path.adjusters], () => resolveAdjusters(path.adjusters));
  const targets = reuse(cache, 'resolve:targets', [brief.targets], () => resolveTargets(reader, brief.targets));
  const reference = reuse(cache, 'resolve:reference', [brief.reference], () =>
    resolveReference(reader, brief.reference),
  );
  const shop = reuse(cache, 'resolve:shop', [brief.shop], () => resolveShop(reader, brief.shop));
  return {
    name: build.name,
    about: build.about,
    engine,
    vehicle,
    wheel,
    suspension,
    adjusters,
    targets,
    reference,
    shop,
    shafts: order.shafts,
    stages: order.stages,
    units: unitChoice(build.units),
    notes: build.notes ?? {},
    overrides: reuse(cache, 'resolve:overrides', [build.overrides], () =>
      Object.fromEntries(
        Object.entries(build.overrides ?? {}).map(([id, o]) => [
          id,
          { ...o, reserve: typedNumber('number', o.reserve) },
        ]),
      ),
    ),
    values: allValues(engine, vehicle, wheel.rollOut, order.stages, targets, reference),
  };
}

function unitChoice(chosen: BuildFile['units']): UnitChoice {
  const typed = Object.entries(chosen ?? {}).flatMap(([use, unit]) => (unit === undefined ? [] : [[use, unit]]));
  return { ...DEFAULT_UNITS, ...Object.fromEntries(typed) };
}
