import { times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Model, Shaft } from '../../model/model.ts';
import type { At } from '../geometry/types.ts';
import type { CaseLoads } from '../loads.ts';
import type { Missing } from '../types.ts';

/** Six numbers at a seat: action on the shaft, vehicle axes. `turns`: it turns with the shaft and does not stand still in space. */
export interface SeatLoad {
  readonly seat: string;
  readonly at: Vec3;
  readonly force: Vec3;
  readonly moment: Vec3;
  readonly turns: boolean;
}

const GRAVITY = 9.80665;
const NONE: Vec3 = [0, 0, 0];

/**
 * Loads on one shaft in one case: of the stage that drives it, of the one that it drives, of the ground at its wheel, of a brake.
 * @param sense how the shaft turns about its direction; where that is open it counts as rolling forward
 * @returns the loads, or what is missing to know them
 */
export function seatLoads(
  model: Model,
  at: At,
  rollOut: number | null,
  k: number,
  load: CaseLoads,
  sense: 1 | -1 | null,
): { readonly loads: readonly SeatLoad[]; readonly missing: readonly Missing[] } {
  const shaft = model.shafts[k] as Shaft;
  const loads: SeatLoad[] = [];
  const missing: Missing[] = [];
  const place = (id: string): Vec3 => shaft.seats.find((seat) => seat.id === id)?.at ?? shaft.origin;
  const [driven, driver] = [k > 0 ? load.stages[k - 1] : undefined, load.stages[k]];
  const [before, after] = [k > 0 ? model.stages[k - 1] : undefined, model.stages[k]];
  if (driven && before) {
    if (!driven.forcesKnown) missing.push({ address: before.address, says: `the forces of ${before.name}` });
    loads.push({ seat: before.to.seat, at: place(before.to.seat), ...driven.to, turns: false });
  }
  if (driver && after) {
    if (!driver.forcesKnown) missing.push({ address: after.address, says: `the forces of ${after.name}` });
    loads.push({ seat: after.from.seat, at: place(after.from.seat), ...driver.from, turns: false });
  }
  const torque = load.shafts[k]?.torque ?? 0;
  const turning = sense === null ? rollsForward(shaft) : times(sense, shaft.direction);
  if (k === model.shafts.length - 1) {
    const wheels = shaft.seats.filter((seat) => seat.kind === 'wheel');
    const { drivenLoad, contact } = model.vehicle;
    if (wheels.length === 0) missing.push({ address: `${shaft.address}/seats`, says: `the wheel on ${shaft.name}` });
    if (!drivenLoad) missing.push({ address: '/brief/vehicle/drivenLoad', says: 'the laden mass on the driven axle' });
    if (rollOut === null) missing.push({ address: '/brief/wheel/rollOut', says: 'the roll-out of the wheel' });
    if (drivenLoad && rollOut !== null)
      for (const wheel of wheels) {
        const part = 1 / wheels.length;
        // Of a pair of wheels the other one bears half of the axle's mass; all of the torque may find its grip at this one.
        const pair = contact === 'three, pair of rears driven' || contact === 'four, rears driven';
        const weight = 1 / Math.max(wheels.length, pair ? 2 : 1);
        const pull = (torque * part * 2 * Math.PI * (turning[1] < 0 ? -1 : 1)) / rollOut;
        // The ground pushes the wheel up and, when it drives, the way it rolls; what holds the wheel's torque is the ground as well.
        loads.push({
          seat: wheel.id,
          at: wheel.at,
          force: [pull, 0, at(drivenLoad) * GRAVITY * weight],
          moment: times(-torque * part, turning),
          turns: false,
        });
      }
  }
  const { brake } = load.point;
  if (brake && brake.shaft === k)
    loads.push({
      seat: brake.seat,
      at: place(brake.seat),
      force: NONE,
      moment: times(-brake.torque, turning),
      turns: false,
    });
  return { loads, missing };
}

/** Direction about which a wheel that rolls forward turns. */
function rollsForward(shaft: Shaft): Vec3 {
  return shaft.direction[1] >= 0 ? shaft.direction : times(-1, shaft.direction);
}
