import { parseInput } from '@oddwheel/quantity/range';
import type { JsonObject } from '../document/json.ts';
import { printFile } from '../document/print.ts';
import { FORMAT } from '../schema/build-file.ts';
import { type Laid, OUTPUT_SPROCKET } from './place.ts';
import { gearList, type ReadSix } from './read-six.ts';
import type { Split } from './split.ts';
import { type BearingSize, SHAFT_STEEL, UNKNOWN_GEARS } from './stock.ts';
import type { SixFields } from './types.ts';

const MM = 0.001;

/** A length in mm as the file holds it, to a ten-thousandth of a micrometre. */
function mm(length: number): string {
  const text = (length / MM).toFixed(7).replace(/\.?0+$/, '');
  return `${text === '-0' ? '0' : text} mm`;
}

const point = (x: number, y: number, z: number): JsonObject => ({ x: mm(x), y: mm(y), z: mm(z) });
const round3 = (x: number): number => Math.round(x * 1000) / 1000;

const bearing = (name: string, station: number, { bore, outside, width }: BearingSize, body: string): JsonObject => ({
  kind: 'bearing',
  name,
  station: mm(station),
  diameter: mm(bore),
  width: mm(width),
  body,
  ...(body === 'subframe' ? { outside: mm(outside), opening: mm(outside) } : {}),
});

const part = (kind: string, name: string, station: number, diameter: number, width: number): JsonObject => ({
  kind,
  name,
  station: mm(station),
  diameter: mm(diameter),
  width: mm(width),
});

/** Units other than the usual ones that the builder typed are the ones shown. */
function shownUnits(six: SixFields): JsonObject {
  const typedIn = (text: string, kind: 'power' | 'torque' | 'speed' | 'mass', unit: string): boolean => {
    const parsed = parseInput(text, kind);
    return parsed.ok && parsed.unit === unit;
  };
  return {
    ...(typedIn(six.power, 'power', 'hp') ? { power: 'hp' } : {}),
    ...(typedIn(six.torque, 'torque', 'lbf·ft') ? { torque: 'lbf·ft' } : {}),
    ...(typedIn(six.speed, 'speed', 'mph') ? { speed: 'mph' } : {}),
    ...(typedIn(six.mass, 'mass', 'lb') ? { mass: 'lb' } : {}),
  };
}

/** What the layout takes without having been told, by address: the same sentences stand in the file as notes. */
function notesOf(six: SixFields, split: Split): Readonly<Record<string, string>> {
  return {
    ...(six.gears === null
      ? {
          '/brief/engine/gears':
            'Assumed: common practice of five-speed motorcycle boxes; count the turns in each gear.',
        }
      : {}),
    '/brief/engine/output/sense':
      'Assumed: seen from the engine towards the wheel the output turns clockwise. If it turns the other way, put the gear on the other side of Shaft A.',
    '/brief/engine/output/origin':
      'Assumed: output along the vehicle, ahead of the wheel and beside its centre line. Measure where yours can stand.',
    '/path/stages/bevel/module': `Assumed: smallest usual module for the torque, tooth load by common practice; strength is not checked yet. Take the pair you can get, near ${split.bevel.driver}:${split.bevel.driven}.`,
    '/path/shafts/shaft-a/seats':
      'Assumed: a bar sold ready hardened, diameters by the torque with room for bending, by common practice, and bearings of series 62 to suit.',
    '/path/shafts/shaft-b/seats':
      'Assumed: a bar sold ready hardened, diameters by the torque with room for bending, by common practice, and bearings of series 62 to suit.',
    '/path/shafts/axle-c/seats':
      'Assumed: the wheel runs in the vehicle’s frame, without springs. Type your wheel’s own bearings and hub.',
  };
}

/** The text of the build file, in our own layout. */
export function writeBuild(six: SixFields, read: ReadSix, split: Split, laid: Laid): string {
  const { chain1, chain2, bevel, output, shaftA, shaftB, axle } = laid;
  const units = shownUnits(six);
  const primary: JsonObject = six.primary === '' ? {} : { primary: six.primary };
  const shown: JsonObject = Object.keys(units).length > 0 ? { units } : {};
  const [a, b] = [shaftA.bearing, shaftB.bearing];
  const away = Math.hypot(output.y, output.z - shaftA.z);
  return printFile({
    format: FORMAT,
    name: 'new-build',
    about: 'first layout from six fields',
    brief: {
      engine: {
        name: 'engine and gearbox',
        peaks: { torque: six.torque, torqueAt: six.torqueAt, power: six.power, powerAt: six.powerAt },
        ...primary,
        gears: six.gears === null ? [...UNKNOWN_GEARS] : gearList(six.gears),
        output: {
          name: 'Output',
          origin: point(output.x, output.y, output.z),
          direction: [-1, 0, 0],
          sense: 'positive',
          seats: {
            bearing: { kind: 'bearing', name: 'gearbox bearing', station: '12 mm', body: 'engine' },
            sprocket: { kind: 'sprocket', name: `sprocket ${split.chain1.driver}`, station: mm(OUTPUT_SPROCKET) },
          },
        },
      },
      vehicle: { mass: six.mass },
      wheel: read.rollOutTyped ? { rollOut: six.tyre } : { tyre: six.tyre },
      targets: { topSpeed: six.speed },
    },
    path: {
      shafts: {
        'shaft-a': {
          name: 'Shaft A',
          origin: point(shaftA.x, 0, shaftA.z),
          direction: [-1, 0, 0],
          material: SHAFT_STEEL,
          seats: {
            sprocket: part(
              'sprocket',
              `sprocket ${split.chain1.driven}`,
              shaftA.sprocket,
              a.bore - 5 * MM,
              chain1.width,
            ),
            'bearing-front': bearing('front bearing', shaftA.front, a, 'subframe'),
            'bearing-rear': bearing('rear bearing', shaftA.rear, a, 'subframe'),
            pinion: part('gear', `pinion ${split.bevel.driver}`, shaftA.pinion, a.bore - 5 * MM, bevel.widthDriver),
          },
        },
        'shaft-b': {
          name: 'Shaft B',
          origin: point(shaftB.x, shaftB.y, shaftA.z),
          direction: [0, 1, 0],
          material: SHAFT_STEEL,
          seats: {
            'bearing-right': bearing('bearing R', shaftB.right, b, 'subframe'),
            gear: part('gear', `gear ${split.bevel.driven}`, shaftB.gear, b.bore + 2 * MM, bevel.widthDriven),
            'bearing-left': bearing('bearing L', shaftB.left, b, 'subframe'),
            sprocket: part(
              'sprocket',
              `sprocket ${split.chain2.driver}`,
              shaftB.sprocket,
              b.bore - 5 * MM,
              chain2.width,
            ),
          },
        },
        'axle-c': {
          name: 'Axle C',
          origin: point(0, axle.y, 0),
          direction: [0, 1, 0],
          seats: {
            'bearing-right': bearing('bearing R', axle.right, axle.bearing, 'vehicle frame'),
            wheel: part('wheel', 'driven wheel', axle.wheel, axle.bearing.bore + 2 * MM, axle.hub),
            'bearing-left': bearing('bearing L', axle.left, axle.bearing, 'vehicle frame'),
            sprocket: part(
              'sprocket',
              `sprocket ${split.chain2.driven}`,
              axle.sprocket,
              axle.bearing.bore - 2 * MM,
              chain2.width,
            ),
          },
        },
      },
      stages: {
        'chain-1': {
          kind: 'chain',
          name: 'Chain 1',
          from: 'output/sprocket',
          to: 'shaft-a/sprocket',
          chain: chain1.size.key,
          teeth: { ...split.chain1 },
          links: chain1.links,
          tensioner: 'none',
          joint: 'joining link',
        },
        bevel: {
          kind: 'bevel',
          name: 'Bevel pair',
          from: 'shaft-a/pinion',
          to: 'shaft-b/gear',
          teeth: { ...split.bevel },
          module: mm(bevel.module),
          faceWidth: mm(bevel.faceWidth),
        },
        'chain-2': {
          kind: 'chain',
          name: 'Chain 2',
          from: 'shaft-b/sprocket',
          to: 'axle-c/sprocket',
          chain: chain2.size.key,
          teeth: { ...split.chain2 },
          links: chain2.links,
          tensioner: 'none',
          joint: 'riveted link',
        },
      },
      adjusters: {
        'engine-slots': {
          name: 'engine slots',
          sets: 'slack',
          of: 'chain-1',
          moves: 'output',
          along: [0, round3(output.y / away), round3((output.z - shaftA.z) / away)],
          travel: mm(chain1.travel),
        },
        'output-rings': rings('output/sprocket', split.chain1.driver, [-1, 0, 0]),
        'pinion-shims': {
          name: 'shims behind the pinion',
          sets: 'gear position',
          of: 'shaft-a/pinion',
          moves: 'shaft-a/pinion',
          along: [-1, 0, 0],
          travel: '0.6 mm',
        },
        'gear-shims': {
          name: 'shims at Shaft B’s bearings',
          sets: 'gear position',
          of: 'shaft-b/gear',
          moves: 'shaft-b',
          along: [0, 1, 0],
          travel: '0.6 mm',
        },
        'sprocket-rings': rings('shaft-b/sprocket', split.chain2.driver, [0, 1, 0]),
        'axle-slots': {
          name: 'axle slots',
          sets: 'slack',
          of: 'chain-2',
          moves: 'axle-c',
          along: [round3(-shaftB.x / chain2.centres), 0, round3(-shaftA.z / chain2.centres)],
          travel: mm(chain2.travel),
        },
      },
    },
    ...shown,
    notes: { ...notesOf(six, split) },
  });
}

const rings = (seat: string, teeth: number, along: readonly number[]): JsonObject => ({
  name: `rings behind sprocket ${teeth}`,
  sets: 'sprocket line',
  of: seat,
  moves: seat,
  along: [...along],
  travel: '2 mm',
});
