// Keys of the seats under the hardest pull: the tyre grips with the highest friction, or the clutch slips first.
import * as g from './geometry.mjs';
import { torques } from './loads.mjs';
import { ends, middle } from './units.mjs';

const GRAVITY = 9.80665;
/** Highest friction that a tyre may find where the brief is silent, stated default of the project. */
const GRIP = 1.2;
/** DIN 6885-1: shaft up to, width, height, depth in the shaft, mm. */
const KEYS = [
  [10, 3, 3, 1.8],
  [12, 4, 4, 2.5],
  [17, 5, 5, 3],
  [22, 6, 6, 3.5],
  [30, 8, 7, 4],
  [38, 10, 8, 5],
  [44, 12, 8, 5],
  [50, 14, 9, 5.5],
  [58, 16, 10, 6],
];
/** Yield strengths, Pa: hubs by EN 10025 and EN 10083; shafts by EN 10083-2 and -3 by thickness. @type {Record<string, number>} */
const YIELD = {
  'mild steel': 235e6,
  'medium carbon steel': 340e6,
  'hardened steel': 800e6,
  'C45E-normalized-to-100': 305e6,
  'C45E-tempered-to-40': 430e6,
  '42CrMo4-tempered-to-40': 750e6,
  '42CrMo4-tempered-to-100': 650e6,
};
/** Bright bar 1018, and its shear strength by distortion energy. */
const KEY_SHEAR = 370e6 / Math.sqrt(3);
const TWO_KEYS = 1.5;

/** Torque on every shaft when the drive is pulled hardest in first gear. @param {object} build */
function hardest(build) {
  const { vehicle, engine, wheel } = build.brief;
  const one = torques(build, 1, 1);
  const axle = [...one.values()].at(-1) ?? 0;
  const lift = 1 - (GRIP * middle(vehicle.centreHeight)) / middle(vehicle.wheelbase);
  const rear = (middle(vehicle.drivenLoad) * GRAVITY) / lift;
  const all = (middle(vehicle.mass) + ends(vehicle.payload)[1]) * GRAVITY;
  const grip = GRIP * Math.min(rear, all) * (middle(wheel.rollOut) / (2 * Math.PI));
  const crank = Math.min(middle(engine.clutchTorque), grip / axle);
  return torques(build, crank, 1);
}

/**
 * Reserves of keyed seats by the ids of their findings.
 * @param {object} build
 * @returns {Record<string, number>}
 */
export function keyed(build) {
  /** @type {Record<string, number>} */
  const out = {};
  if (build.brief.engine.clutchTorque === undefined || build.brief.vehicle.centreHeight === undefined) return out;
  const torque = hardest(build);
  for (const { id } of g.train(build)) {
    const shaft = g.shaftOf(build, id);
    const address = id === 'output' ? '/brief/engine/output' : `/path/shafts/${id}`;
    for (const [name, seat] of Object.entries(shaft.seats)) {
      if (seat.hub?.torqueBy !== 'key') continue;
      const { key, metal } = seat.hub;
      const d = middle(seat.diameter) * 1000;
      const [, b, h, t] = (KEYS.find(([most]) => d <= most) ?? []).map((x) => x / 1000);
      const length = middle(key.length) - (key.ends === 'square' ? 0 : b);
      const force = (torque.get(id) ?? 0) / (d / 2000) / (key.keys === 2 ? TWO_KEYS : 1);
      out[`hub.torque:${address}/seats/${name}`] = Math.min(
        (YIELD[metal] * (h - t) * length) / force,
        (YIELD[shaft.material] * t * length) / force,
        (KEY_SHEAR * b * length) / force,
      );
    }
  }
  return out;
}
