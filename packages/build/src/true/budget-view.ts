import type { RunoutAt } from '@oddwheel/mechanics/runout/axis';
import { type Budget, runoutBudget, type Served } from '@oddwheel/mechanics/runout/budget';
import type { Kind } from '@oddwheel/quantity/kinds';
import { parseQuantity } from '@oddwheel/quantity/parse';
import type { TruePart, TrueServes } from './types.ts';

/**
 * Budget at the station that matters: the measured run-out of the part, and the contributors that are known besides.
 * Undefined when the part says nothing of what sits there.
 */
export function budgetView(part: TruePart, atGoal: RunoutAt | undefined): Budget | undefined {
  if (!part.serves) return undefined;
  const measured = atGoal ? [{ name: 'this part, measured', tir: atGoal.tir, high: atGoal.high }] : [];
  const others = (part.serves.contributors ?? []).map(({ name, tir, high }) => ({
    name,
    tir: si(tir, 'length'),
    ...(high === undefined ? {} : { high: si(high, 'angle') }),
  }));
  const all = [...measured, ...others];
  return all.length === 0 ? undefined : runoutBudget(all, servedOf(part.serves));
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

/** A text with its unit, checked when it came into the record. */
function si(text: string, kind: Kind): number {
  const parsed = parseQuantity(text, kind);
  if (!parsed.ok) throw new RangeError(`${text}: ${parsed.problem}`);
  return parsed.si;
}
