import type { Vec3 } from '@oddwheel/quantity/quantity';
import { describe, expect, it } from 'vitest';
import type { Seat, Shaft, Value } from '../../model/model.ts';
import { resolveSteel } from '../../model/resolve-strength.ts';
import type { SeatLoad } from './seat-loads.ts';
import { OF_SECTION, type SectionForces, sectionAt } from './sections.ts';
import { scaledSolution, timesAsLarge } from './shaft-scaled.ts';
import { solveShaft } from './shaft-solve.ts';
import { type ShaftSolution, shaftStructure } from './shaft-structure.ts';

const stiffness = (si: number): Value => ({
  address: '',
  name: '',
  kind: 'stiffness',
  si,
  lo: si,
  hi: si,
  text: '',
  origin: 'typed',
  together: null,
  source: null,
  recipe: null,
});

const allSections = ({ sections }: ShaftSolution): readonly SectionForces[] =>
  Array.from({ length: sections.numbers.length / OF_SECTION }, (_, k) => sectionAt(sections, k)).filter(
    (section) => section !== undefined,
  );

interface Given {
  readonly pieces: readonly (readonly [from: number, to: number, diameter: number])[];
  readonly bearings: readonly (readonly [station: number, stiffness: number])[];
  readonly direction?: Vec3;
}

const seatAt = (id: string, station: number, direction: Vec3, k: number | null): Seat => ({
  id,
  address: `/path/shafts/s/seats/${id}`,
  name: id,
  kind: k === null ? 'sprocket' : 'bearing',
  station,
  at: [direction[0] * station, direction[1] * station, direction[2] * station],
  body: k === null ? null : 'subframe',
  diameter: null,
  width: null,
  outside: null,
  opening: null,
  bearing:
    k === null
      ? null
      : { facts: null, clearance: null, seal: null, stiffness: stiffness(k), plate: null, ring: null, seating: null },
  held: null,
  hub: null,
});

function shaftOf({ pieces, bearings, direction = [1, 0, 0] }: Given): Shaft {
  return {
    id: 's',
    address: '/path/shafts/s',
    name: 'S',
    origin: [0, 0, 0],
    direction,
    seats: bearings.map(([station, k], n) => seatAt(`bearing-${n}`, station, direction, k)),
    stock: null,
    steel: resolveSteel('/path/shafts/s', 'S', '1045-hot-rolled'),
    surface: 'machined or cold drawn',
    pieces: pieces.map(([from, to, diameter], k) => ({ address: `/p/${k}`, from, to, diameter, bore: 0 })),
    notches: [],
    joins: [],
  };
}

const push = (station: number, force: Vec3, moment: Vec3 = [0, 0, 0], offset: Vec3 = [0, 0, 0]): SeatLoad => ({
  seat: '',
  at: [station + offset[0], offset[1], offset[2]],
  force,
  moment,
  turns: false,
});

function solve(given: Given, loads: readonly SeatLoad[], extra: readonly number[] = []): ShaftSolution {
  const shaft = shaftOf(given);
  const structure = shaftStructure(
    { ...shaft, seats: [...shaft.seats, ...extra.map((at, k) => seatAt(`load-${k}`, at, shaft.direction, null))] },
    (value) => value.si,
  );
  expect(structure.missing).toEqual([]);
  const solution = solveShaft(structure, loads);
  if (!solution) throw new Error('not solved');
  return solution;
}

const RIGID = 1e13;

describe('a shaft in two planes: bevel pinion overhung, sprocket between the bearings (statics, Shigley sections 3-2 and 13-15)', () => {
  // Bearings at 0 (takes the thrust) and 150 mm; sprocket at 75 mm pulled (0, 1558.846, 900) N; pinion at 200 mm, contact 25 mm off the axis.
  const sprocket = push(0.075, [0, 1558.846, 900], [25, 0, 0]);
  const pinion = push(0.2, [-150, -300, 1000], [0, 0, 0], [0, 0.025, 0]);
  const solution = solve(
    {
      pieces: [[0, 0.2, 0.025]],
      bearings: [
        [0, RIGID],
        [0.15, RIGID],
      ],
    },
    [{ ...sprocket, moment: [-25, 0, 0] }, pinion],
    [0.075, 0.2],
  );
  it('reactions, as worked by hand with moments about each bearing', () => {
    const [a, b] = [solution.reactionAt(0), solution.reactionAt(1)];
    expect(a?.force[0]).toBeCloseTo(150, 3);
    expect(a?.force[1]).toBeCloseTo(-854.42, 1);
    expect(a?.force[2]).toBeCloseTo(-116.67, 1);
    expect(b?.force[1]).toBeCloseTo(-404.42, 1);
    expect(b?.force[2]).toBeCloseTo(-1783.33, 1);
  });
  it('bending moments at the sprocket and at the second bearing, and 25 N·m between sprocket and pinion', () => {
    const at = (station: number) => allSections(solution).filter((s) => Math.abs(s.station - station) < 1e-9);
    expect(at(0.075)[0]?.bending).toBeCloseTo(64.676, 2);
    expect(at(0.15)[0]?.bending).toBeCloseTo(51.25, 2);
    expect(Math.abs(at(0.15)[0]?.torque ?? 0)).toBeCloseTo(25, 6);
  });
  it('closes: forces of loads and bearings sum to nothing', () => expect(solution.residual).toBeLessThan(1e-9));
});

describe('stepped shaft, closed form of strength-of-materials texts (memory)', () => {
  // 30, 40, 30 mm over 100, 200, 100 mm, 4000 N in the middle; E 207 GPa: 0.2604 mm and 0.0023683 rad by bending alone.
  const solution = solve(
    {
      pieces: [
        [0, 0.1, 0.03],
        [0.1, 0.3, 0.04],
        [0.3, 0.4, 0.03],
      ],
      bearings: [
        [0, RIGID],
        [0.4, RIGID],
      ],
    },
    [push(0.2, [0, 0, -4000])],
    [0.2],
  );
  it('sags 0.2604 mm in the middle and stands 0.0023683 rad at its ends, with shear a little more', () => {
    const middle = Math.max(
      ...[...Array(solution.moves.length / 6).keys()].map((node) => solution.acrossAt(node) ?? 0),
    );
    // Shear of a round bar adds F L / (4 κ G A), about 3 % here.
    expect(middle).toBeGreaterThan(0.2604e-3);
    expect(middle).toBeLessThan(1.04 * 0.2604e-3);
    expect(solution.slopeAt(0)).toBeCloseTo(0.0023683, 5);
  });
});

describe('properties', () => {
  const three = (middle: number) =>
    solve(
      {
        pieces: [[0, 0.4, 0.03]],
        bearings: [
          [0, 5e7],
          [0.2, middle],
          [0.4, 5e7],
        ],
      },
      [push(0.12, [0, 0, -3000])],
      [0.12],
    );
  it('halving the stiffness of one of three bearings moves load to the others', () => {
    const [stiff, soft] = [three(5e7), three(2.5e7)];
    expect(soft.reactionAt(1)?.radial).toBeLessThan(stiff.reactionAt(1)?.radial ?? 0);
    expect(soft.reactionAt(0)?.radial).toBeGreaterThan(stiff.reactionAt(0)?.radial ?? 0);
  });
  it('reciprocity: a load here moves there as much as the same load there moves here', () => {
    const given: Given = {
      pieces: [
        [0, 0.15, 0.025],
        [0.15, 0.4, 0.035],
      ],
      bearings: [
        [0.05, 5e7],
        [0.3, 8e7],
      ],
    };
    const stations = [0.12, 0.38];
    const here = solve(given, [push(0.12, [0, 700, 0])], stations);
    const there = solve(given, [push(0.38, [0, 700, 0])], stations);
    const structure = [0, 0.05, 0.12, 0.15, 0.3, 0.38, 0.4];
    const y = (solution: ShaftSolution, station: number): number =>
      solution.moves[6 * structure.indexOf(station) + 1] as number;
    expect(y(here, 0.38)).toBeCloseTo(y(there, 0.12), 12);
  });
  it('a shaft with one bearing, or with no diameter, says what is missing', () => {
    const one = shaftStructure(shaftOf({ pieces: [[0, 0.2, 0.03]], bearings: [[0.05, 5e7]] }), (v) => v.si);
    expect(one.missing[0]?.says).toContain('two bearings');
    const none = shaftStructure(
      {
        ...shaftOf({
          pieces: [[0, 0.1, 0.03]],
          bearings: [
            [0.05, 5e7],
            [0.2, 5e7],
          ],
        }),
        pieces: null,
      },
      (v) => v.si,
    );
    expect(none.missing[0]?.says).toContain('diameters of S');
  });
});

describe('a shaft is linear: loads 3.7 times as large', () => {
  const given: Given = {
    pieces: [
      [0, 0.12, 0.025],
      [0.12, 0.24, 0.02],
    ],
    bearings: [
      [0, 4e7],
      [0.1, 6e7],
      [0.2, 5e7],
    ],
  };
  const loads = [push(0.05, [-40, 900, -300], [12, 3, -2]), push(0.24, [40, -200, 500], [-12, 1, 5], [0, 0.02, -0.01])];
  const by = 3.7;
  const one = solve(given, loads, [0.05, 0.24]);
  const larger = loads.map(({ force, moment, ...rest }) => ({
    ...rest,
    force: force.map((x) => by * x) as unknown as Vec3,
    moment: moment.map((x) => by * x) as unknown as Vec3,
  }));
  const alone = solve(given, larger, [0.05, 0.24]);
  const scaled = scaledSolution(one, by);

  it('give what the same loads solved by themselves give', () => {
    expect(timesAsLarge(larger, loads)).toBeCloseTo(by, 12);
    const near = (found: readonly number[], wanted: readonly number[]) => {
      const size = Math.max(...wanted.map(Math.abs));
      expect(found).toHaveLength(wanted.length);
      found.forEach((x, n) => {
        expect(Math.abs(x - (wanted[n] ?? Number.NaN))).toBeLessThanOrEqual(1e-11 * size);
      });
    };
    for (const key of ['bending', 'shear', 'torque', 'axial'] as const)
      near(
        allSections(scaled).map((section) => section[key]),
        allSections(alone).map((section) => section[key]),
      );
    const held = (solution: ShaftSolution): readonly number[] =>
      [0, 1, 2].flatMap((b) => {
        const { force, radial, axial } = solution.reactionAt(b) ?? { force: [], radial: Number.NaN, axial: Number.NaN };
        return [...force, radial, axial];
      });
    near(held(scaled), held(alone));
    const nodes = [...Array(alone.moves.length / 6).keys()];
    for (const key of ['acrossAt', 'slopeAt', 'alongAt'] as const)
      near(
        nodes.map((node) => scaled[key](node) ?? Number.NaN),
        nodes.map((node) => alone[key](node) ?? Number.NaN),
      );
    expect([scaled.reactionAt(3), scaled.slopeAt(nodes.length), alone.acrossAt(-1)]).toEqual(Array(3).fill(undefined));
    near([...scaled.moves], [...alone.moves]);
    expect(scaled.held).toBeCloseTo(alone.held, 9);
  });
});
