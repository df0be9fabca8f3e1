import { memberForces } from '@oddwheel/mechanics/frame/solve';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { looksAt } from '../checks/check.ts';
import { shaftEndures, shaftYields } from '../checks/strength/shaft-strength.ts';
import { type Evaluation, lowest } from '../evaluation.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';
import { thinnestAt } from './diameters.ts';
import { sectionAt } from './sections.ts';
import { fatigueUse, type Place, placesOf, yieldUse } from './shaft-places.ts';
import { across, type ShaftSolution, type ShaftStructure } from './shaft-structure.ts';
import { smallestBearing } from './smallest-bearing.ts';

/** What goes on in a shaft at one station; where something jumps, two points stand at one station. */
export interface ShaftPoint {
  readonly station: number;
  readonly diameter: number;
  readonly bore: number;
  /** Bending moment in the planes of the two cross directions of the line, and both together. */
  readonly bending: readonly [number, number];
  readonly bendingBoth: number;
  /** Force across along the two cross directions, and along the shaft. */
  readonly shear: readonly [number, number];
  readonly axial: number;
  readonly torque: number;
  /** Movement along the two cross directions, slope of the shaft, twist. */
  readonly across: readonly [number, number];
  readonly slope: number;
  readonly twist: number;
}

/** What the shaft bears over all cases at a place that is looked at: an end of a stretch, a step, a notch. */
export interface ShaftPlaceLine {
  readonly name: string;
  readonly station: number;
  readonly diameter: number;
  readonly yieldReserve: number | null;
  readonly fatigueReserve: number | null;
  /** Diameter at which the lesser of both would be just the design reserve; null where nothing loads it. */
  readonly least: number | null;
}

export type ShaftLine = {
  readonly address: string;
  readonly name: string;
} & (
  | {
      readonly ok: true;
      readonly caseId: string;
      readonly caseName: string;
      /** The two directions square to the shaft in which planes are told, vehicle axes. */
      readonly directions: readonly [Vec3, Vec3];
      readonly bearings: readonly {
        readonly address: string;
        readonly name: string;
        readonly station: number;
        /** What the bearing does to the shaft, along the two directions and along the shaft. */
        readonly force: readonly [number, number, number];
        /** Its number, and that of the smallest deep groove bearing on the same seat that would do; null where it is not known or none does. */
        readonly row: string | null;
        readonly smallest: string | null;
      }[];
      readonly points: readonly ShaftPoint[];
      readonly places: readonly ShaftPlaceLine[];
    }
  | { readonly ok: false; readonly missing: readonly Missing[] }
);

/** Pieces in which a stretch between two nodes is drawn: moments run straight, movements bend. */
const PIECES = 4;

function linePoints(structure: ShaftStructure, { moves }: ShaftSolution): ShaftPoint[] {
  const { factors, shaft, stations, stretches } = structure;
  if (!factors) return [];
  const [first, second] = across(shaft.direction);
  const at = (node: number, from: 0 | 3): Vec3 => [
    moves[node * 6 + from] as number,
    moves[node * 6 + from + 1] as number,
    moves[node * 6 + from + 2] as number,
  ];
  return stations.slice(1).flatMap((after, k): ShaftPoint[] => {
    const before = stations[k] as number;
    const length = after - before;
    const stretch = thinnestAt(stretches, (before + after) / 2);
    const f = memberForces(factors, k, moves);
    const inside = (n: number): number => -(f[n] as number);
    const [turnA, turnB] = [at(k, 3), at(k + 1, 3)];
    const [moveA, moveB] = [at(k, 0), at(k + 1, 0)];
    // A slope in the first plane turns the shaft about the second direction, and the other way round.
    const slopes = (turn: Vec3): readonly [number, number] => [dot(turn, second), -dot(turn, first)];
    const [slopeA, slopeB] = [slopes(turnA), slopes(turnB)];
    return Array.from({ length: PIECES + 1 }, (_, n): ShaftPoint => {
      const s = n / PIECES;
      const x = s * length;
      // Forces run through; moments change by force times way.
      const [shearFirst, shearSecond] = [inside(1), inside(2)];
      const aboutFirst = inside(4) + shearSecond * x;
      const aboutSecond = inside(5) - shearFirst * x;
      const bend = (plane: 0 | 1, direction: Vec3): number =>
        (1 - 3 * s * s + 2 * s ** 3) * dot(moveA, direction) +
        (s - 2 * s * s + s ** 3) * length * slopeA[plane] +
        (3 * s * s - 2 * s ** 3) * dot(moveB, direction) +
        (s ** 3 - s * s) * length * slopeB[plane];
      const blend = (a: number, b: number): number => a + s * (b - a);
      return {
        station: before + x,
        diameter: stretch?.diameter ?? 0,
        bore: stretch?.bore ?? 0,
        bending: [aboutSecond, aboutFirst],
        bendingBoth: Math.hypot(aboutFirst, aboutSecond),
        shear: [shearFirst, shearSecond],
        axial: inside(0),
        torque: inside(3),
        across: [bend(0, first), bend(1, second)],
        slope: Math.hypot(blend(slopeA[0], slopeB[0]), blend(slopeA[1], slopeB[1])),
        twist: blend(dot(turnA, shaft.direction), dot(turnB, shaft.direction)),
      };
    });
  });
}

/** Diameter at which a use falls to what is wanted, other things as they are: stress goes with one over the cube of it. */
function leastDiameter(place: Place, use: number, wanted: number): number {
  if (!(use > 0)) return 0;
  const needed = place.modulus * use * wanted;
  // W = π (d⁴ − b⁴) / (32 d); a few steps of Newton from the solid bar.
  let d = Math.cbrt((32 * needed) / Math.PI);
  if (place.bore > 0) {
    d = Math.max(d, place.bore * 1.0001);
    for (let n = 0; n < 30; n++) {
      const off = d ** 4 - place.bore ** 4 - ((32 * needed) / Math.PI) * d;
      d -= off / (4 * d ** 3 - (32 * needed) / Math.PI);
    }
  }
  return d;
}

/** Uses below this are rounding, and say nothing of how thin a shaft could be. */
const NOTHING = 1e-6;

/** The places of one shaft over all cases: yield over every peak, fatigue over the steady ones. At one station the place that bears least is told. */
function placeLines(evaluation: Evaluation, k: number, places: readonly Place[], address: string): ShaftPlaceLine[] {
  const { model, middle } = evaluation;
  const { strength, cases } = middle.scene;
  const ofFatigue = fatigueUse(model.loads.criterion);
  const wanted = (check: typeof shaftYields): number =>
    model.overrides[`${check.id}:${address}`]?.reserve ?? check.wanted.reserve;
  const [wantedYield, wantedFatigue] = [wanted(shaftYields), wanted(shaftEndures)];
  const solved = cases.flatMap((load) => {
    const answer = strength.answer(k, load);
    return answer.ok ? [{ sections: answer.solution.sections, steady: looksAt(shaftEndures, load) }] : [];
  });
  const found = new Map<number, ShaftPlaceLine & { readonly used: number }>();
  for (const place of places) {
    let [yields, tires] = [0, 0];
    for (const { sections, steady } of solved)
      for (const entry of place.entries) {
        const forces = sectionAt(sections, entry);
        if (!forces) continue;
        yields = Math.max(yields, yieldUse(place, forces));
        if (steady) tires = Math.max(tires, ofFatigue(place, forces));
      }
    const used = Math.max(yields * wantedYield, tires * wantedFatigue);
    const before = found.get(place.station);
    if (before && before.used >= used) continue;
    const ends = [leastDiameter(place, yields, wantedYield), leastDiameter(place, tires, wantedFatigue)];
    found.set(place.station, {
      name: place.name,
      station: place.station,
      diameter: place.diameter,
      yieldReserve: yields > NOTHING ? 1 / yields : null,
      fatigueReserve: tires > NOTHING ? 1 / tires : null,
      least: used > NOTHING ? Math.max(...ends) : null,
      used,
    });
  }
  return [...found.values()].sort((a, b) => a.station - b.station).map(({ used: _, ...line }) => line);
}

/** Case in which a shaft is nearest to yield, rare peaks among them; null without cases. */
function governing(evaluation: Evaluation, address: string): CaseLoads | null {
  const { middle, reserves, rows, columns } = evaluation;
  const row = rows.findIndex(({ check, subject }) => check.id === shaftYields.id && subject.address === address);
  const { column } = row < 0 ? { column: -1 } : lowest(reserves, row, columns);
  return middle.scene.cases[column] ?? (column >= 0 ? middle.atSlider : null) ?? middle.scene.cases[0] ?? null;
}

/**
 * Diagrams of every shaft at the middle of the uncertain inputs: moments, forces, movements along it, and how thin it could be.
 * @param wantedCase case id, or 'here'; without it, for each shaft the case in which it is nearest to yield
 * @returns null when there is no such case
 */
export function shaftLines(evaluation: Evaluation, wantedCase?: string): readonly ShaftLine[] | null {
  const { scene, atSlider } = evaluation.middle;
  const asked = wantedCase === 'here' ? atSlider : (scene.cases.find(({ point }) => point.id === wantedCase) ?? null);
  if (wantedCase !== undefined && !asked) return null;
  return scene.strength.shafts.map((structure, k): ShaftLine => {
    const { address, name, direction } = structure.shaft;
    const load = asked ?? governing(evaluation, address);
    if (!load)
      return {
        address,
        name,
        ok: false,
        missing: [{ address: '/brief/engine/curve', says: 'the torque curve of the engine' }],
      };
    const answer = scene.strength.answer(k, load);
    if (!answer.ok) return { address, name, ok: false, missing: answer.missing };
    const { solution } = answer;
    const [first, second] = across(direction);
    return {
      address,
      name,
      ok: true,
      caseId: load.point.id,
      caseName: load.point.name,
      directions: [first, second],
      bearings: structure.bearings.map(({ seat }, b) => {
        const force = solution.reactionAt(b)?.force ?? [0, 0, 0];
        return {
          address: seat.address,
          name: seat.name,
          station: seat.station,
          force: [dot(force, first), dot(force, second), dot(force, direction)],
          row: seat.bearing?.facts?.row ?? null,
          smallest: smallestBearing(scene, seat.address),
        };
      }),
      points: linePoints(structure, solution),
      places: placeLines(evaluation, k, placesOf(structure, scene.at, scene.model.loads), address),
    };
  });
}
