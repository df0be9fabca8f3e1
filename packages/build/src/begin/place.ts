import { bevelGeometry } from '@oddwheel/mechanics/bevel/geometry';
import { chainCentreDistance } from '@oddwheel/mechanics/chain/centre-distance';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { chainWearSpread } from '@oddwheel/mechanics/chain/wear-spread';
import type { ChainSize } from '../model/model.ts';
import type { ReadSix } from './read-six.ts';
import type { Chains, Pair, Split } from './split.ts';
import { BEARINGS, type BearingSize, MODULES, SHAFT_SHEAR, TOOTH_LOAD, TYRE_ROOM } from './stock.ts';

/** One chain as laid out, m. */
export interface LaidChain {
  readonly size: ChainSize;
  readonly teeth: Pair;
  readonly links: number;
  /** Exact for these links. */
  readonly centres: number;
  /** Travel each way that takes two pitches up. */
  readonly travel: number;
  /** Of the seats. */
  readonly width: number;
  readonly tipDriver: number;
  readonly tipDriven: number;
}

/** Where everything sits, m. Stations run along each shaft's direction. */
export interface Laid {
  readonly chain1: LaidChain;
  readonly chain2: LaidChain;
  readonly bevel: {
    readonly module: number;
    readonly faceWidth: number;
    readonly widthDriver: number;
    readonly widthDriven: number;
  };
  readonly output: { readonly x: number; readonly y: number; readonly z: number };
  readonly shaftA: {
    readonly x: number;
    readonly z: number;
    readonly bearing: BearingSize;
    readonly sprocket: number;
    readonly front: number;
    readonly rear: number;
    readonly pinion: number;
  };
  readonly shaftB: {
    readonly x: number;
    readonly y: number;
    readonly bearing: BearingSize;
    readonly right: number;
    readonly gear: number;
    readonly left: number;
    readonly sprocket: number;
  };
  readonly axle: {
    readonly y: number;
    readonly bearing: BearingSize;
    readonly hub: number;
    readonly right: number;
    readonly wheel: number;
    readonly left: number;
    readonly sprocket: number;
  };
}

export type Placed =
  | { readonly ok: true; readonly laid: Laid }
  | { readonly ok: false; readonly why: 'wheel' | 'shaft' | 'bevel' | 'room' };

const MM = 0.001;
const HALF_MM = 0.0005;
/** Stations and offsets are whole half millimetres. */
const up = (length: number, step = HALF_MM): number => Math.ceil(length / step - 1e-9) * step;
const near = (length: number, step: number): number => Math.round(length / step) * step;
/** Places as the file holds them: a ten-thousandth of a micrometre short of the exact centres, so that the chain reaches round. */
const PLACE = 1e-10;
const down = (length: number): number => Math.floor(length / PLACE - 0.01) * PLACE;

/** Room between parts next to each other on a shaft. */
const GAP = 10 * MM;
/** Between a sprocket and the bearing beside it: the chain's pins stand out beyond the sprocket, and its other end moves. */
const CHAIN_GAP = 20 * MM;
/** Least part of the wheel's radius that stays free below the sprocket beside it. */
const FREE_OF_WHEEL = 0.25;
/** Centres of a drive that pulses: at least so many pitches (chain-limits/centres-pulsating). */
const LEAST_PITCHES = 20;
/** Angles of the line from wheel to Shaft B against the level, and of Chain 1: below 60°, so that the slack needs no tensioner. */
const RISES = [45, 50, 40, 55, 35, 30].map((deg) => (deg * Math.PI) / 180);
const SLOPE = (50 * Math.PI) / 180;

/** The chain with the fewest even links whose centres are at least as long; of the next three lengths the one that spreads wear best. */
function layChain(size: ChainSize, teeth: Pair, least: number): LaidChain {
  const { pitch, roller } = size;
  const drive = { pitch, teethDriver: teeth.driver, teethDriven: teeth.driven };
  const tip = (n: number): number =>
    sprocketDiameters.run({ pitch, rollerDiameter: roller, teeth: n }).outsideDiameter / 2;
  const needed = chainLength.run({ ...drive, centreDistance: least }).links;
  const first = 2 * Math.ceil(needed / 2);
  const shared = (links: number): number =>
    [teeth.driver, teeth.driven].reduce((sum, n) => sum + chainWearSpread.run({ links, teeth: n }).commonFactor, 0);
  const links = [first, first + 2, first + 4].reduce((best, one) => (shared(one) < shared(best) ? one : best));
  const { centreDistance, tangentAngle } = chainCentreDistance.run({ ...drive, links });
  return {
    size,
    teeth,
    links,
    centres: centreDistance,
    travel: up((1.05 * pitch) / Math.cos(tangentAngle), MM),
    width: up(2 * size.innerWidth + 8 * MM, MM),
    tipDriver: tip(teeth.driver),
    tipDriven: tip(teeth.driven),
  };
}

/** Least centres that clear the tips, wrap the driver and suit a pulsing drive. */
function leastCentres(size: ChainSize, teeth: Pair): number {
  const radius = (n: number): number => size.pitch / (2 * Math.sin(Math.PI / n));
  return Math.max(
    1.15 * (radius(teeth.driver) + radius(teeth.driven) + size.pitch),
    2.05 * Math.abs(radius(teeth.driven) - radius(teeth.driver)),
    LEAST_PITCHES * size.pitch,
  );
}

function bearingFor(torque: number): BearingSize | null {
  const diameter = Math.cbrt((16 * torque) / (Math.PI * SHAFT_SHEAR));
  return BEARINGS.find(({ bore }) => bore >= diameter + 5 * MM) ?? null;
}

interface Cones {
  readonly module: number;
  readonly faceWidth: number;
  /** From the apex along each shaft to the middle of the teeth, and half of what the gear takes there. */
  readonly pinionAt: number;
  readonly pinionHalf: number;
  readonly pinionTip: number;
  readonly gearAt: number;
  readonly gearHalf: number;
  readonly gearTip: number;
}

/** The smallest module that bears the tooth load, leaves metal round the pinion's bore, and lets Shaft B pass the pinion. */
function conesFor({ driver, driven }: Pair, torque: number, boreA: number, boreB: number): Cones | null {
  for (const module of MODULES) {
    const base = { teethDriver: driver, teethDriven: driven, shaftAngle: Math.PI / 2, module };
    const guide = bevelGeometry.run({ ...base, faceWidth: module }).faceWidthGuide;
    const faceWidth = Math.floor(guide / HALF_MM) * HALF_MM;
    const cone = bevelGeometry.run({ ...base, faceWidth });
    const load = (2 * torque) / cone.meanDiameterDriver / (faceWidth * module);
    const inner = 1 - faceWidth / cone.outerConeDistance;
    const [cos1, cos2] = [Math.cos(cone.pitchAngleDriver), Math.cos(cone.pitchAngleDriven)];
    const root = inner * module * (driver - 2.5 * cos1);
    const passes = inner * (cone.outerConeDistance * cos1 - module * Math.sin(cone.pitchAngleDriver));
    const pinionAt = near(cone.meanConeDistance * cos1, HALF_MM);
    const pinionHalf = up((faceWidth * cos1) / 2 + 2 * module);
    const free = Math.min(passes, pinionAt - pinionHalf);
    if (load > TOOTH_LOAD || root < 1.3 * boreA || free < boreB / 2 + 3 * MM) continue;
    return {
      module,
      faceWidth,
      pinionAt,
      pinionHalf,
      pinionTip: (module * (driver + 2 * cos1)) / 2,
      gearAt: near(cone.meanConeDistance * cos2, HALF_MM),
      gearHalf: up((faceWidth * cos2) / 2 + 2 * module),
      gearTip: (module * (driven + 2 * cos2)) / 2,
    };
  }
  return null;
}

/**
 * Lays the drive out: output along the vehicle ahead of the wheel, Chain 1 up to Shaft A, the bevel pair across, Chain 2
 * down to the wheel on the left. Centres fit whole even links, the axes of the pair meet, parts stay off the tyre.
 */
export function place(read: ReadSix, split: Split, chains: Chains, clearance: number): Placed {
  const radius = read.tyreRadius * TYRE_ROOM.radius;
  const halfTyre = (read.tyreWidth / 2) * TYRE_ROOM.width;
  const tipC = sprocketDiameters.run({
    pitch: chains.second.pitch,
    rollerDiameter: chains.second.roller,
    teeth: split.chain2.driven,
  }).outsideDiameter;
  if (tipC / 2 + chains.second.pitch / 2 > (1 - FREE_OF_WHEEL) * read.tyreRadius) return { ok: false, why: 'wheel' };
  const [bearingA, bearingB] = [bearingFor(chains.torqueA), bearingFor(chains.torqueB)];
  if (!bearingA || !bearingB) return { ok: false, why: 'shaft' };
  const cones = conesFor(split.bevel, chains.torqueA, bearingA.bore - 5 * MM, bearingB.bore + 2 * MM);
  if (!cones) return { ok: false, why: 'bevel' };

  const first = layChain(chains.first, split.chain1, leastCentres(chains.first, split.chain1));
  // Shaft B, across: its parts that stand before the tyre keep off it.
  const widest = Math.max(cones.gearTip, bearingB.outside / 2 + 12 * MM, cones.pinionTip);
  const shortest = Math.max(leastCentres(chains.second, split.chain2), radius + clearance + widest);
  // The axle may go toward Shaft B by all of its slot. Longer centres ask for no more travel, so the first guess is enough.
  const slot = layChain(chains.second, split.chain2, shortest).travel;
  const second = layChain(chains.second, split.chain2, shortest + slot);

  const beside = up(halfTyre + clearance);
  const axleBearing = beside + up(BEARING_C.width / 2);
  const rightB = up(cones.pinionTip + GAP + bearingB.width / 2);
  const besideGear = up(cones.gearAt + cones.gearHalf + GAP + bearingB.width / 2);
  const line = up(
    Math.max(
      besideGear + bearingB.width / 2 + CHAIN_GAP + second.width / 2,
      axleBearing + BEARING_C.width / 2 + CHAIN_GAP + second.width / 2,
    ),
  );
  // A wide tyre pushes the sprocket out; the bearing goes with it, so that the shaft bends little.
  const leftB = Math.max(besideGear, down(line - second.width / 2 - CHAIN_GAP - bearingB.width / 2));
  const beyond = 20 * MM;
  // Shaft A, along: from its sprocket in front back to the pinion; distances from the apex.
  const rearA = up(
    Math.max(cones.pinionAt + cones.pinionHalf, cones.gearTip, second.tipDriver, bearingB.outside / 2 + 12 * MM) +
      GAP +
      bearingA.width / 2,
  );
  const frontA = rearA + up(Math.max(100 * MM, 3 * bearingA.bore), 5 * MM);
  const sprocketA = frontA + up(bearingA.width / 2 + CHAIN_GAP + first.width / 2);
  const endA = sprocketA + up(first.width / 2 + beyond);

  const across = near(first.centres * Math.cos(SLOPE), 5 * MM);
  const fall = down(Math.sqrt(first.centres ** 2 - across ** 2));
  for (const rise of RISES) {
    const x = near(second.centres * Math.cos(rise), 5 * MM);
    const z = down(Math.sqrt(second.centres ** 2 - x ** 2));
    for (const side of [-1, 1] as const) {
      const out = z + side * fall;
      const rounds = [
        { x: x + cones.pinionAt - cones.pinionHalf, z, tip: cones.pinionTip },
        { x: x + rearA - bearingA.width / 2, z, tip: bearingA.outside / 2 + 12 * MM },
        { x: x + sprocketA - first.width / 2, z, tip: first.tipDriven + first.size.pitch / 2 },
        { x: x + sprocketA - first.width / 2, z: out, tip: first.tipDriver + first.size.pitch / 2 },
      ];
      const clear = rounds.every(
        (part) => Math.hypot(part.x, Math.max(0, Math.abs(part.z) - part.tip)) > radius + clearance + slot,
      );
      const aboveGround = out - first.tipDriver > -0.6 * read.tyreRadius;
      if (!clear || !aboveGround) continue;
      return {
        ok: true,
        laid: {
          chain1: first,
          chain2: second,
          bevel: {
            module: cones.module,
            faceWidth: cones.faceWidth,
            widthDriver: 2 * cones.pinionHalf,
            widthDriven: 2 * cones.gearHalf,
          },
          output: { x: x + sprocketA + OUTPUT_SPROCKET, y: -across, z: out },
          shaftA: {
            x: x + endA,
            z,
            bearing: bearingA,
            sprocket: endA - sprocketA,
            front: endA - frontA,
            rear: endA - rearA,
            pinion: endA - cones.pinionAt,
          },
          shaftB: {
            x,
            y: -(rightB + beyond),
            bearing: bearingB,
            right: beyond,
            gear: rightB + beyond + cones.gearAt,
            left: rightB + beyond + leftB,
            sprocket: rightB + beyond + line,
          },
          axle: {
            y: -(axleBearing + beyond),
            bearing: BEARING_C,
            hub: 2 * (axleBearing - up(BEARING_C.width / 2)),
            right: beyond,
            wheel: axleBearing + beyond,
            left: 2 * axleBearing + beyond,
            sprocket: axleBearing + beyond + line,
          },
        },
      };
    }
  }
  return { ok: false, why: 'room' };
}

/** Station of the sprocket on the gearbox output. */
export const OUTPUT_SPROCKET = 50 * MM;
/** The wheel's own bearings, which come with the wheel: a common size. */
const BEARING_C: BearingSize = { bore: 30 * MM, outside: 62 * MM, width: 16 * MM };
