import { readFileSync } from 'node:fs';
import type { BuildFile } from '@oddwheel/build/schema/build-file';
import { tableRow } from '@oddwheel/tables/catalogue';

/** One ordinary production layout in generic terms; every number is recalled (`memory`). */
export interface KnownGood {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly given: Given;
  readonly computed: Readonly<Record<string, number | string>>;
  readonly two_sizes_down: readonly {
    readonly part: string;
    readonly change: { readonly from: string | number; readonly to: string | number };
    readonly expect: string;
  }[];
}

export interface Given {
  readonly engine: {
    readonly cycle: string;
    readonly cylinders?: number;
    readonly power_kW: number;
    readonly power_rpm: number;
    readonly torque_Nm: number;
    readonly torque_rpm: number;
    readonly redline_rpm: number;
    /** Greatest torque of a motor over its rated one. */
    readonly breakdown_factor?: number;
  };
  readonly train: {
    readonly primary: number;
    readonly gears: readonly number[];
    readonly front: number;
    readonly rear: number;
  };
  readonly chain: { readonly size: string; readonly links: number };
  readonly tyre?: { readonly od_mm: number; readonly roll_out_per_od: number };
  readonly mass?: {
    readonly kerb_kg: number;
    readonly payload_kg: number;
    readonly wheelbase_mm: number;
    readonly rear_share_laden: number;
    readonly cg_height_laden_mm: number;
  };
  readonly wheel: {
    readonly axle: 'dead' | 'live';
    readonly axle_mm: number;
    readonly hub_bearings: readonly string[];
    readonly hub_spacing_mm: number;
    readonly carrier_bearing: string | null;
    readonly sprocket_offset_mm: number;
  };
  readonly output: {
    readonly spline_major_mm?: number;
    readonly spline_minor_mm?: number;
    readonly spline_teeth?: number;
    readonly sprocket_width_mm?: number;
    readonly bearing_near: string | null;
    readonly bearing_far: string | null;
    readonly spacing_mm: number | null;
    readonly overhang_mm: number;
  };
  readonly cush: { readonly present: boolean };
  readonly efficiency_engine_to_front_sprocket: number;
  readonly efficiency_chain: number;
  readonly grip_mu?: number;
}

/** Every layout. */
export function allKnownGood(): readonly KnownGood[] {
  const { layouts } = JSON.parse(readFileSync(new URL('layouts.json', import.meta.url), 'utf8')) as {
    readonly layouts: readonly KnownGood[];
  };
  return layouts;
}

/** The layouts that are vehicles with a gearbox output on two bearings. */
export const knownGood = (): readonly KnownGood[] =>
  allKnownGood().filter(({ given }) => given.mass && given.output.bearing_near !== null);

const mm = (x: number): string => `${Number(x.toFixed(4))} mm`;
const held = (a: string, b: string) => ({ towardStart: a, towardEnd: b });

/** A bearing of the gearbox or hub, held so that one of a shaft is fixed and the others are free. */
function bearing(row: string, station: number, body: 'engine' | 'swinging arm', fixed: boolean) {
  return {
    kind: 'bearing' as const,
    name: `bearing ${row}`,
    station: mm(station),
    body,
    row,
    seal: 'open' as const,
    // A collar between bearing and sprocket, as usual in production; a ring groove there would be where the shaft bends most.
    held: held('shoulder', 'sleeve'),
    ring: fixed ? held('shoulder', 'retaining ring') : held('nothing', 'nothing'),
  };
}

/** The spline of the front sprocket: teeth as recalled, case hardened like all such sprockets, held by its plate or nut. */
function splined({ spline_major_mm, spline_minor_mm, spline_teeth, sprocket_width_mm }: Given['output']) {
  if (!spline_major_mm || !spline_minor_mm || !spline_teeth) return {};
  return {
    hub: {
      torqueBy: 'spline' as const,
      metal: 'hardened steel',
      spline: {
        form: 'straight' as const,
        teeth: spline_teeth,
        length: mm(sprocket_width_mm ?? 7),
        outside: mm(spline_major_mm),
        inside: mm(spline_minor_mm),
        sits: 'loose' as const,
      },
    },
  };
}

/** Bolts of the rear sprocket on its carrier: thread, count and circle of the class, tightened as usual for their thread (`memory`, low). */
const REAR_BOLTS: Readonly<Record<string, readonly [thread: 'M8' | 'M10', count: number, circle: number]>> = {
  'kg-50-moped': ['M8', 4, 80],
  'kg-125-commuter': ['M8', 4, 80],
  'kg-250-single': ['M8', 6, 105],
  'kg-trials-300': ['M8', 6, 105],
  'kg-650-twin': ['M10', 5, 110],
  'kg-1000-four-sport': ['M10', 5, 110],
};

/** Usual tightening of a class 8.8 bolt or nut in a cycle part, N·m (`memory`). */
export const TIGHTENED = { M5: 6, M6: 10, M8: 25, M10: 50 } as const;

function bolted(id: string) {
  const found = REAR_BOLTS[id];
  if (!found) throw new Error(`${id} has no bolts of its rear sprocket.`);
  const [thread, count, circle] = found;
  return {
    torqueBy: 'bolted flange' as const,
    metal: 'medium carbon steel',
    bolts: {
      thread,
      count,
      circle: mm(circle),
      grade: 'class-8.8',
      tightening: `${TIGHTENED[thread]} N.m`,
      surface: 'as delivered' as const,
      faces: 'clean or painted' as const,
      thickness: '7 mm',
      edge: '12 mm',
      into: 'nuts' as const,
    },
    locking: 'clamping nut' as const,
  };
}

/** Distance of the axles at which a taut chain of these links reaches round, mm: halved until it does. */
function tautCentre(pitch: number, links: number, front: number, rear: number): number {
  const radius = (teeth: number): number => pitch / (2 * Math.sin(Math.PI / teeth));
  const lengthAt = (centre: number): number => {
    const lean = Math.asin((radius(rear) - radius(front)) / centre);
    const [onFront, onRear] = [0.5 - lean / Math.PI, 0.5 + lean / Math.PI];
    return 2 * centre * Math.cos(lean) + pitch * (front * onFront + rear * onRear);
  };
  let [low, high] = [radius(rear) + radius(front), links * pitch];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (lengthAt(middle) > links * pitch) high = middle;
    else low = middle;
  }
  return low;
}

/** The axles as set in use: nearer than taut by what 20 mm of movement by hand take up (`memory`: owner’s books say 15 to 35 mm). */
export const centreInUse = ({ chain, train }: Given): number => {
  const pitch = 1000 * (tableRow(`chain-sizes/${chain.size}`).pitch ?? Number.NaN);
  const taut = tautCentre(pitch, chain.links, train.front, train.rear);
  return taut - 10 ** 2 / taut;
};

/** The layout typed as a build: output on two bearings, one chain, a hub on its bearings. */
export function buildOf({ id, title, given }: KnownGood): BuildFile {
  const { engine, train, chain, tyre, mass, wheel, output, grip_mu } = given;
  if (!tyre || !mass || output.spacing_mm === null || !output.bearing_near || !output.bearing_far)
    throw new Error(`${id} is no vehicle with an output on two bearings.`);
  const sprocketY = output.spacing_mm + output.overhang_mm;
  const hub = wheel.hub_spacing_mm;
  // Hub bearings on both sides of the wheel, the sprocket outside of the left one, its carrier's own bearing in its plane.
  const sprocketStation = hub + wheel.sprocket_offset_mm;
  const inner = output.spline_minor_mm ?? 0;
  const laden = mass.kerb_kg + mass.payload_kg;
  const axleDiameter = wheel.axle === 'live' ? wheel.axle_mm : 45;
  const [right = '', left = right] = wheel.hub_bearings;
  return {
    format: 4,
    name: id,
    about: `${title} (recalled figures of its class, no single vehicle)`,
    brief: {
      engine: {
        name: title,
        peaks: {
          torque: `${engine.torque_Nm} N.m`,
          torqueAt: `${engine.torque_rpm} rpm`,
          power: `${engine.power_kW} kW`,
          powerAt: `${engine.power_rpm} rpm`,
        },
        redline: `${engine.redline_rpm} rpm`,
        cylinders: engine.cylinders ?? 1,
        strokes: engine.cycle === '2-stroke' ? 'two' : 'four',
        clutchTorque: `${Number((1.4 * engine.torque_Nm).toFixed(4))} N.m`,
        primary: String(train.primary),
        gears: train.gears.map(String),
        boxEfficiency: `${given.efficiency_engine_to_front_sprocket * 100} %`,
        output: {
          name: 'Output',
          origin: { x: mm(centreInUse(given)), y: '0 mm', z: '0 mm' },
          direction: [0, 1, 0],
          sense: 'positive',
          madeFor: 'side pull',
          material: '42CrMo4-tempered-to-40',
          surface: 'ground',
          seats: {
            far: bearing(output.bearing_far, 0, 'engine', false),
            near: bearing(output.bearing_near, output.spacing_mm, 'engine', true),
            sprocket: {
              kind: 'sprocket',
              name: `sprocket ${train.front}`,
              station: mm(sprocketY),
              diameter: mm(inner),
              width: mm(output.sprocket_width_mm ?? 7),
              ...splined(output),
            },
          },
        },
      },
      vehicle: {
        mass: `${mass.kerb_kg} kg`,
        payload: `${mass.payload_kg} kg`,
        contact: 'two, rear driven',
        wheelbase: mm(mass.wheelbase_mm),
        drivenLoad: `${Number((laden * mass.rear_share_laden).toFixed(3))} kg`,
        centreHeight: mm(mass.cg_height_laden_mm),
      },
      wheel: { rollOut: mm(tyre.od_mm * tyre.roll_out_per_od) },
      loads: { grip: String(grip_mu ?? 1.2) },
    },
    path: {
      shafts: {
        axle: {
          name: 'Hub',
          origin: { x: '0 mm', y: mm(sprocketY - sprocketStation), z: '0 mm' },
          direction: [0, 1, 0],
          material: '42CrMo4-tempered-to-100',
          surface: 'ground',
          pieces: [{ from: mm(-10), to: mm(sprocketStation + 15), diameter: mm(axleDiameter) }],
          seats: {
            right: bearing(right, 0, 'swinging arm', true),
            wheel: { kind: 'wheel', name: 'driven wheel', station: mm(hub / 2), width: mm(hub * 0.5) },
            left: bearing(left, hub, 'swinging arm', false),
            ...(wheel.carrier_bearing
              ? { carrier: bearing(wheel.carrier_bearing, sprocketStation, 'swinging arm', false) }
              : {}),
            sprocket: {
              kind: 'sprocket',
              name: `sprocket ${train.rear}`,
              station: mm(sprocketStation),
              width: '7 mm',
              hub: bolted(id),
            },
          },
        },
      },
      stages: {
        chain: {
          kind: 'chain',
          name: 'Chain',
          from: 'output/sprocket',
          to: 'axle/sprocket',
          chain: chain.size,
          teeth: { driver: train.front, driven: train.rear },
          links: chain.links,
          tensioner: 'none',
          joint: 'riveted link',
          efficiency: `${given.efficiency_chain * 100} %`,
        },
      },
      // The wheel moves in slots or on cams, as on every vehicle of these classes; so much each way is recalled.
      adjusters: {
        slots: {
          name: 'axle slots',
          sets: 'slack',
          of: 'chain',
          moves: 'axle',
          along: [-1, 0, 0],
          travel: '15 mm',
        },
      },
      ...(given.cush.present ? { cush: { at: 'axle/sprocket' } } : {}),
    },
  } as BuildFile;
}
