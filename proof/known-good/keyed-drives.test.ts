import type { Json } from '@oddwheel/build/document/json';
import { printFile } from '@oddwheel/build/document/print';
import { openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';
import { allKnownGood, centreInUse, type Given } from './build-of.ts';

/**
 * The two recalled layouts on keyed shafts: a go-cart with a centrifugal clutch, and a conveyor behind a geared motor. Keys are those of the standard for
 * their shaft (`memory`), in mild or medium carbon steel as they are sold. Their shafts stand in no bearings here: chain, sprockets and keys are judged.
 */
interface Shafts {
  readonly driver: { readonly shaft: number; readonly length: number };
  readonly driven: { readonly shaft: number; readonly length: number };
}

interface Keyed extends Shafts {
  readonly id: string;
  readonly sizes: 'metric standard' | 'inch standard';
  /** Key on the driver by the standard: width, height, depth of its slot, mm. */
  readonly key: readonly [width: number, height: number, depth: number];
  /** Two sizes down: the chain next but one below, and shafts two steps down their row with keys shorter in proportion. */
  readonly down: Shafts & { readonly chain: string; readonly keys: 'fails' | 'no call' };
}

const CART: Keyed = {
  id: 'kg-gocart-6p5hp',
  sizes: 'inch standard',
  driver: { shaft: 19.05, length: 45 },
  driven: { shaft: 25.4, length: 40 },
  key: [4.7625, 4.7625, 2.38125],
  // By hand 56 and 195 MPa on hubs that yield at some 340 MPa.
  down: { driver: { shaft: 12.7, length: 30 }, driven: { shaft: 17, length: 27 }, chain: '25', keys: 'no call' },
};
const CONVEYOR: Keyed = {
  id: 'kg-conveyor-1to3',
  sizes: 'metric standard',
  driver: { shaft: 35, length: 56 },
  driven: { shaft: 60, length: 80 },
  key: [10, 8, 5],
  // By hand 385 MPa on the driver: 2 · 597.5 N·m / 28 mm on (7 − 4) mm of (45 − 8) mm.
  down: { driver: { shaft: 28, length: 45 }, driven: { shaft: 50, length: 67 }, chain: '50', keys: 'fails' },
};

function layoutOf(id: string): Given {
  const found = allKnownGood().find((layout) => layout.id === id);
  if (!found) throw new Error(`There is no layout ${id}.`);
  return found.given;
}

/** Torque that the driver brings once: what the clutch passes, or the motor before it stalls. */
const startOf = ({ engine }: Given): number => (engine.breakdown_factor ?? 1.4) * engine.torque_Nm;

function keyedBuild({ id, sizes }: Keyed, { driver, driven }: Shafts, chain?: string): Json {
  const given = layoutOf(id);
  const { engine, train, mass, tyre } = given;
  const redline = engine.redline_rpm;
  const motor = engine.breakdown_factor !== undefined;
  const seat = (name: string, { shaft, length }: Shafts['driver']) => ({
    kind: 'sprocket',
    name,
    station: '50 mm',
    diameter: `${shaft} mm`,
    width: `${length} mm`,
    hub: { torqueBy: 'key', metal: 'medium carbon steel', key: { length: `${length} mm`, fit: 'tight', sizes } },
  });
  const file = {
    format: 4,
    name: id,
    about: 'recalled figures of its class, no single machine',
    brief: {
      engine: {
        name: id,
        // A motor is typed with its breakdown torque, and what that comes to near its speed.
        peaks: motor
          ? {
              torque: `${startOf(given)} N.m`,
              torqueAt: `${redline * 0.9} rpm`,
              power: `${startOf(given) * redline * 0.1} W`,
              powerAt: `${redline} rpm`,
            }
          : {
              torque: `${engine.torque_Nm} N.m`,
              torqueAt: `${engine.torque_rpm} rpm`,
              power: `${engine.power_kW} kW`,
              powerAt: `${engine.power_rpm} rpm`,
            },
        idle: `${redline * 0.4} rpm`,
        redline: `${motor ? redline * 1.1 : redline} rpm`,
        gears: ['1'],
        primary: '1',
        boxEfficiency: '100 %',
        clutchTorque: `${startOf(given)} N.m`,
        output: {
          name: 'Output',
          origin: { x: `${centreInUse(given)} mm`, y: '0 mm', z: '0 mm' },
          direction: [0, 1, 0],
          sense: 'positive',
          madeFor: 'side pull',
          material: 'C45E-tempered-to-40',
          seats: { sprocket: seat(`sprocket ${train.front}`, driver) },
        },
      },
      // A conveyor never slips: as a vehicle it is one too heavy to spin its wheel.
      vehicle: mass
        ? {
            mass: `${mass.kerb_kg} kg`,
            payload: `${mass.payload_kg} kg`,
            contact: 'four, rears driven',
            wheelbase: `${mass.wheelbase_mm} mm`,
          }
        : { mass: '60000 kg' },
      wheel: { rollOut: tyre ? `${tyre.od_mm * tyre.roll_out_per_od} mm` : '1 m' },
      loads: motor ? { shock: '1' } : { grip: String(given.grip_mu) },
    },
    path: {
      shafts: {
        axle: {
          name: 'Axle',
          origin: { x: '0 mm', y: '0 mm', z: '0 mm' },
          direction: [0, 1, 0],
          material: 'C45E-tempered-to-40',
          seats: {
            wheel: { kind: 'wheel', name: 'wheel', station: '300 mm' },
            sprocket: seat(`sprocket ${train.rear}`, driven),
          },
        },
      },
      stages: {
        chain: {
          kind: 'chain',
          name: 'Chain',
          from: 'output/sprocket',
          to: 'axle/sprocket',
          chain: chain ?? given.chain.size,
          teeth: { driver: train.front, driven: train.rear },
          links: given.chain.links,
          tensioner: 'none',
          joint: 'joining link',
          efficiency: `${given.efficiency_chain * 100} %`,
        },
      },
    },
  };
  return JSON.parse(JSON.stringify(file));
}

function judged(build: Json) {
  const opened = openSession(printFile(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { findings } = opened.session.assessment;
  const at = (check: string, address: RegExp) =>
    findings.find((one) => one.check === check && address.test(one.address));
  return {
    failing: findings
      .filter(({ check, severity }) => severity === 'fails' && /^(chain|hub)\b/.test(check))
      .map(({ id, says }) => `${id}: ${says}`),
    pull: at('chain.pull', /chain$/),
    key: (shaft: RegExp) => at('hub.torque', shaft),
  };
}

const DRIVER = /output.*sprocket$/;
const DRIVEN = /axle.*sprocket$/;

describe.each([CART, CONVEYOR])('$id', (drive) => {
  const whole = judged(keyedBuild(drive, drive));

  test('chain, sprockets and keys draw no failing finding, and chain and both keys are judged', () => {
    expect(whole.failing).toEqual([]);
    for (const one of [whole.pull, whole.key(DRIVER), whole.key(DRIVEN)])
      expect(one?.reserve?.value).toBeGreaterThan(1);
  });

  test('the pressure on the driver’s key is the one worked by hand', () => {
    const [width, height, depth] = drive.key;
    const { shaft, length } = drive.driver;
    const push = (2 * 1000 * startOf(layoutOf(drive.id))) / shaft;
    // Both ends are round: half a width at each does not carry.
    const byHand = push / ((height - depth) * (length - width));
    expect((whole.key(DRIVER)?.demand?.value ?? Number.NaN) / 1e6).toBeCloseTo(byHand, 6);
  });

  test('a chain two sizes down fails', () => {
    expect(judged(keyedBuild(drive, drive, drive.down.chain)).pull?.severity).toBe('fails');
  });

  test('keys two sizes down are far worse, and fail where they do by hand', () => {
    const less = judged(keyedBuild(drive, drive.down));
    for (const shaft of [DRIVER, DRIVEN])
      expect(less.key(shaft)?.reserve?.value).toBeLessThan((whole.key(shaft)?.reserve?.value ?? 0) * 0.7);
    if (drive.down.keys === 'fails') expect(less.key(DRIVER)?.severity).toBe('fails');
  });
});
