import { readFileSync } from 'node:fs';
import type { BuildFile } from '@oddwheel/build/schema/build-file';

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

interface Given {
  readonly engine: {
    readonly cycle: string;
    readonly cylinders?: number;
    readonly power_kW: number;
    readonly power_rpm: number;
    readonly torque_Nm: number;
    readonly torque_rpm: number;
    readonly redline_rpm: number;
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

/** The layouts that are vehicles with a gearbox output on two bearings. */
export function knownGood(): readonly KnownGood[] {
  const { layouts } = JSON.parse(readFileSync(new URL('layouts.json', import.meta.url), 'utf8')) as {
    readonly layouts: readonly KnownGood[];
  };
  return layouts.filter(({ given }) => given.mass && given.output.bearing_near !== null);
}

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

/** The layout typed as a build: output on two bearings, one chain, a hub on its bearings. */
export function buildOf({ id, title, given, computed }: KnownGood): BuildFile {
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
          origin: { x: mm(Number(computed.centre_mm)), y: '0 mm', z: '0 mm' },
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
            sprocket: { kind: 'sprocket', name: `sprocket ${train.rear}`, station: mm(sprocketStation) },
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
      ...(given.cush.present ? { cush: { at: 'axle/sprocket' } } : {}),
    },
  } as BuildFile;
}
