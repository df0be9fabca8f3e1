import { leanAt, type RunoutAt, type Section } from '@oddwheel/mechanics/runout/axis';
import { type Budget, runoutBudget, type Served } from '@oddwheel/mechanics/runout/budget';
import type { Kind } from '@oddwheel/quantity/kinds';
import { parseQuantity } from '@oddwheel/quantity/parse';
import { SHAFT_LIMITS } from '@oddwheel/tables/shaft-limits';
import { rowInSi } from '@oddwheel/tables/table';
import type { PartView } from './part-view.ts';
import type { TrueRecord } from './record.ts';
import { madeOut } from './section.ts';
import type { TrueBearings, TruePart, TrueServes } from './types.ts';

/**
 * Budget at the station that matters: the measured run-out of the part, and the contributors that are known besides.
 * @param sections as measured; empty while the seats are not
 * @param face swing of the face there, m; undefined when none was read
 * @returns undefined when the part says nothing of what sits there.
 */
export function budgetView(
  part: TruePart,
  atGoal: RunoutAt | undefined,
  sections: readonly Section[],
  face: number | undefined,
): Budget | undefined {
  if (!part.serves) return undefined;
  const measured = atGoal ? [{ name: 'this part, measured', tir: atGoal.tir, high: atGoal.high }] : [];
  const others = (part.serves.contributors ?? []).map(({ name, tir, high }) => ({
    name,
    tir: si(tir, 'length'),
    ...(high === undefined ? {} : { high: si(high, 'angle') }),
  }));
  const all = [...measured, ...others];
  return all.length === 0
    ? undefined
    : runoutBudget(all, {
        ...servedOf(part.serves),
        leans: leansOf(part, part.serves, sections),
        ...(face === undefined ? {} : { face }),
      });
}

/** Most lean of a kind of part, and where it is published. */
function mostLean(row: TrueBearings | 'spur-gear'): { readonly most: number; readonly source: string } {
  const { slopeLow } = rowInSi(SHAFT_LIMITS, row);
  if (slopeLow === undefined) throw new Error(`${SHAFT_LIMITS.title}: ${row} has no slope.`);
  const found = SHAFT_LIMITS.rows[row];
  const source = found?.source ?? SHAFT_LIMITS.source;
  return { most: slopeLow, source: found?.how === 'memory' ? `${source} (from memory)` : source };
}

/** How far the axis leans at its bearings and at its gear, against what they bear. */
function leansOf(
  part: TruePart,
  { bearings, gear }: TrueServes,
  sections: readonly Section[],
): NonNullable<Served['leans']> {
  const seats = { a: si(part.seats.a, 'length'), b: si(part.seats.b, 'length') };
  const lean = (stations: readonly number[]) => {
    const known = stations.flatMap((station) => leanAt(sections, seats, station) ?? []);
    return known.length === 0 ? undefined : Math.max(...known);
  };
  const atGoal = [si(part.goal.station, 'length')];
  return [
    ...(bearings
      ? [{ what: 'lean of the bearings' as const, angle: lean([seats.a, seats.b]), ...mostLean(bearings) }]
      : []),
    // A bevel gear has no published slope of its own; how far it moves is judged in strength.
    ...(gear && !gear.bevel
      ? [{ what: 'lean of the gear' as const, angle: lean(atGoal), ...mostLean('spur-gear') }]
      : []),
  ];
}

function servedOf({ sprocket, gear, balance, stiffness }: TrueServes): Served {
  return {
    ...(sprocket ? { sprocket: { rootDiameter: si(sprocket.rootDiameter, 'length'), made: sprocket.made } } : {}),
    ...(gear
      ? {
          gear: {
            bevel: gear.bevel ? 1 : 0,
            diameter: si(gear.diameter, 'length'),
            module: si(gear.module, 'length'),
            grade: gear.grade,
          },
        }
      : {}),
    ...(balance
      ? {
          balance: {
            mass: si(balance.mass, 'mass'),
            speed: si(balance.topSpeed, 'angularSpeed'),
            grade: si(balance.grade, 'speed'),
          },
        }
      : {}),
    ...(stiffness === undefined ? {} : { stiffness: si(stiffness, 'stiffness') }),
  };
}

/** Sections that a part's line and run-out stand on; none until both seats are measured. */
export const countedSections = ({ sets, runouts }: PartView): readonly Section[] =>
  runouts.length === 0 ? [] : sets.map(({ section }) => section);

/** Swing of the latest face that was read on a part, once a turn, m; waves of the face are no fault of how it sits. */
export function faceSwing(record: TrueRecord, part: string): number | undefined {
  const kept = record.sets.findLast(({ body }) => body.part === part && body.face !== undefined);
  const found = kept && madeOut(kept);
  if (!found?.ok) return undefined;
  const { x, y } = found.set.section.offset;
  return 2 * Math.hypot(x, y);
}

/** A text with its unit, checked when it came into the record. */
function si(text: string, kind: Kind): number {
  const parsed = parseQuantity(text, kind);
  if (!parsed.ok) throw new RangeError(`${text}: ${parsed.problem}`);
  return parsed.si;
}
