import { cross, dot, minus, norm, plus, times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { toSi } from '@oddwheel/quantity/units';
import { describe, expect, test } from 'vitest';
import type { GearFacts } from '../../model/gears.ts';
import type { Seat, Shaft, Stage, Value } from '../../model/model.ts';
import { resolveSteel } from '../../model/resolve-strength.ts';
import { atCorner, MIDDLE } from '../uncertainty.ts';
import { stageGeometry } from './stage.ts';
import { parallelPlace, tangentActions } from './tangent.ts';

const value = (kind: Value['kind'], si: number): Value => ({
  address: '',
  name: '',
  kind,
  si,
  lo: si,
  hi: si,
  text: '',
  origin: 'typed',
  together: null,
  source: null,
  recipe: null,
});

const shaft = (id: string, origin: Vec3, direction: Vec3, kind: Seat['kind'], station: number): Shaft => ({
  id,
  address: `/path/shafts/${id}`,
  name: id,
  origin,
  direction,
  seats: [
    {
      id: 'seat',
      address: `/path/shafts/${id}/seats/seat`,
      name: 'seat',
      kind,
      station,
      at: plus(origin, times(station, direction)),
      body: null,
      diameter: null,
      width: null,
      outside: null,
      opening: null,
      bearing: null,
      held: null,
      hub: null,
    },
  ],
  stock: null,
  steel: resolveSteel(`/path/shafts/${id}`, id, undefined),
  surface: 'machined or cold drawn',
  pieces: null,
  notches: [],
  joins: [],
});

const inch = (x: number): number => toSi('length', 'in', x);
const lbf = (x: number): number => toSi('force', 'lbf', x);

const NOTHING_KNOWN: GearFacts = {
  driver: { address: '/made/driver', steel: null, hardness: null, file: null },
  driven: { address: '/made/driven', steel: null, hardness: null, file: null },
  quality: null,
  mounting: null,
  lubrication: null,
  card: null,
  donor: null,
};

describe('straight bevel pair in space', () => {
  // Shigley's Mechanical Engineering Design, 8th ed., Example 13-7: 15 and 45 teeth, diametral pitch 5, 20°, mean radii 1.293 and
  // 3.88 in; gear shaft along y, contact at (3.88, 3.793, 0) in from D; W on the gear (-46.6, -140, 406) lbf. From memory, recomputed.
  const outer = inch(1.5) / Math.sin(Math.atan2(15, 45));
  const faceWidth = 2 * (outer - (outer * 1.293) / 1.5);
  const apex: Vec3 = [0, inch(3.793 + 1.293), 0];
  const pinion = shaft('pinion', apex, [1, 0, 0], 'gear', inch(3.88));
  const gear = shaft('gear', [0, 0, 0], [0, 1, 0], 'gear', inch(3.793));
  const stage: Stage = {
    kind: 'bevel',
    id: 'pair',
    address: '/path/stages/pair',
    name: 'pair',
    from: { shaft: 'pinion', seat: 'seat' },
    to: { shaft: 'gear', seat: 'seat' },
    efficiency: value('fraction', 1),
    teeth: { driver: 15, driven: 45 },
    module: value('length', inch(1 / 5)),
    faceWidth: value('length', faceWidth),
    spiral: null,
    hand: null,
    backlash: null,
    gears: NOTHING_KNOWN,
  };
  const geometry = stageGeometry(stage, pinion, gear, atCorner(MIDDLE));
  const torque = lbf(406) * inch(3.88);
  // The book's gear turns negative about +y; the sense of the pinion that drives it so follows from the places.
  const sense = geometry.relation === 1 ? -1 : 1;
  const { from, to, forcesKnown } = geometry.actions(sense);

  test('forces on the gear are the published ones', () => {
    expect(forcesKnown).toBe(true);
    const force = times(torque, to.force);
    const published = [-46.6, -140, 406];
    published.forEach((expected, k) => {
      expect(Math.abs((force[k] ?? 0) - lbf(expected))).toBeLessThan(lbf(406) * 0.003);
    });
  });

  test('pinion and gear press on each other with equal and opposite forces', () => {
    const sum = plus(times(torque / 3, from.force), times(torque, to.force));
    expect(norm(sum)).toBeLessThan(1e-9 * norm(times(torque, to.force)));
  });

  test('about its shaft each action is the torque, against the driver and with the driven gear', () => {
    expect(dot(from.moment, pinion.direction)).toBeCloseTo(-sense, 12);
    expect(dot(to.moment, gear.direction)).toBeCloseTo(sense * (geometry.relation ?? 0), 12);
  });
});

describe('spur pair and belt', () => {
  const parallel = {
    kind: 'spur',
    id: 'pair',
    address: '/path/stages/pair',
    name: 'pair',
    efficiency: value('fraction', 1),
  } as const;
  const ends = { from: { shaft: 'pinion', seat: 'seat' }, to: { shaft: 'gear', seat: 'seat' } };

  test('Shigley, 8th ed., Problem 13-31 in its way of reckoning: W_t = 2 T / d, W_r = W_t tan 20°, gears pressed apart', () => {
    const pinion = shaft('pinion', [0, 0, 0], [0, 1, 0], 'gear', 0);
    const gear = shaft('gear', [0.12, 0, 0], [0, 1, 0], 'gear', 0);
    const stage: Stage = {
      ...parallel,
      ...ends,
      teeth: { driver: 18, driven: 42 },
      module: value('length', 0.004),
      faceWidth: value('length', 0.03),
      spiral: null,
      hand: null,
      backlash: null,
      gears: NOTHING_KNOWN,
    };
    const geometry = stageGeometry(stage, pinion, gear, atCorner(MIDDLE));
    const { from, to, forcesKnown } = geometry.actions(1);
    expect(forcesKnown).toBe(true);
    // Per newton metre at the pinion of 72 mm: 27.78 N around, 10.11 N apart.
    expect(from.force[0]).toBeCloseTo(-Math.tan(Math.PI / 9) / 0.036, 9);
    expect(Math.abs(from.force[2])).toBeCloseTo(1 / 0.036, 9);
    expect(norm(plus(from.force, times(42 / 18, to.force)))).toBeLessThan(1e-9);
    expect(from.moment[1]).toBeCloseTo(-1, 12);
    expect(to.moment[1]).toBeCloseTo(geometry.relation ?? 0, 12);
  });

  test('a belt pulls its shafts together with one and a half times the pull of its torque, spans alike', () => {
    const driver = shaft('pinion', [0.4, 0, 0], [0, 1, 0], 'pulley', 0);
    const driven = shaft('gear', [0, 0, 0], [0, 1, 0], 'pulley', 0);
    const stage: Stage = {
      ...parallel,
      ...ends,
      kind: 'belt',
      pitch: 0.008,
      teeth: { driver: 40, driven: 40 },
      beltTeeth: null,
      profile: null,
      width: null,
    };
    const { from, to } = stageGeometry(stage, driver, driven, atCorner(MIDDLE)).actions(1);
    const radius = (0.008 * 40) / (2 * Math.PI);
    expect(norm(from.force)).toBeCloseTo(1.5 / radius, 9);
    expect(norm(plus(from.force, to.force))).toBeLessThan(1e-9);
    expect(from.moment[1]).toBeCloseTo(-1, 12);
    expect(to.moment[1]).toBeCloseTo(1, 12);
  });
});

describe('chain pull along the true tangent', () => {
  // Two axes along y; driver ahead of the driven wheel, turning so that the wheel rolls forward: the upper span is tight.
  const place = parallelPlace([0.45, 0, 0.06], [0, 0, 0], [0, 1, 0]);
  const radius = (teeth: number): number => 0.015875 / (2 * Math.sin(Math.PI / teeth));
  const [r1, r2] = [radius(15), radius(45)];
  const u = place.u ?? [0, 0, 0];
  const { from, to } = tangentActions(u, [0, 1, 0], place.centreDistance, r1, r2);

  test('the pulls on both shafts cancel, and each turns its shaft by one newton metre', () => {
    expect(norm(plus(times(1, from.force), times(r2 / r1, to.force)))).toBeLessThan(1e-12);
    expect(from.moment[1]).toBeCloseTo(-1, 12);
    expect(to.moment[1]).toBeCloseTo(1, 12);
  });

  test('angle of the pull to the line of centres: reference case chain-shaftload-520, 9.58738° (constructed there)', () => {
    const along = Math.abs(dot(from.force, u)) / norm(from.force);
    expect((Math.acos(along) * 180) / Math.PI).toBeCloseTo(9.58738, 4);
  });

  test('the pull is tangent to both pitch circles and lies in the tight span', () => {
    const direction = times(1 / norm(from.force), from.force);
    const square = cross(direction, [0, 1, 0]);
    const up = square[2] > 0 ? square : times(-1, square);
    const onDriver = plus([0.45, 0, 0.06], times(r1, up));
    const toDriven = minus([0, 0, 0], onDriver);
    expect(norm(minus(toDriven, times(dot(toDriven, direction), direction)))).toBeCloseTo(r2, 12);
    // The top of the driver moves forward, so the top span runs onto it and is pulled from the wheel.
    expect(from.force[0]).toBeLessThan(0);
  });
});
