// Gear pairs: contact of a spur pair over the duty by the American formulas, and the duty that a used pair lived through.

import { curve } from './chains.mjs';
import * as g from './geometry.mjs';
import { peakTorque, torques } from './loads.mjs';
import { middle, ratio } from './units.mjs';
import { gripping } from './vehicle.mjs';

const PSI = 6894.757;
/** Shigley, table 14-10 by its groups: a single-cylinder engine is a heavy shock, its work uniform. */
const OVERLOAD = 1.5;
/** A start with a shock asks for 1.25 to 2 times the engine's torque (ISO 6336-6, annex K, from memory). */
const SHOCK = (1.25 + 2) / 2;

/**
 * What all loads of the duty could grow by until the flanks of the softer, larger gear are used up (Shigley, chapter 14, grade 1, 99 %).
 * @param {object} build @param {object} stage
 */
function flanks(build, stage) {
  const { driver, driven } = stage.teeth;
  const wide = middle(stage.faceWidth) / 0.0254;
  const pitch = (middle(stage.module) * driver) / 0.0254;
  const one = (Math.cos(Math.PI / 9) * Math.sin(Math.PI / 9)) / 2;
  const geometry = (one * driven) / (driven + driver);
  const b = 0.25 * (12 - stage.quality) ** (2 / 3);
  const a = 50 + 56 * (1 - b);
  // An inch of face or more: the second form of the face's part; a commercial gear in a closed case.
  const part = wide / (10 * pitch) - 0.0375 + 0.0125 * wide;
  const spread = 1 + part + 0.127 + 0.0158 * wide - 0.93e-4 * wide ** 2;
  const bears = (322 * Number(stage.made.driven.hardness) + 29100) * PSI;
  const steps = build.brief.duty.rows.map((row) => {
    const rollOut = middle(build.brief.wheel.rollOut);
    const order = g.train(build).slice(1);
    const path = order.reduce((all, each) => all * (each.stage.teeth.driven / each.stage.teeth.driver), 1);
    const after = path / (driven / driver);
    const wheel = (middle(row.speed) / rollOut) * 60;
    const { primary, gears } = build.brief.engine;
    const crank = wheel * path * ratio(primary) * ratio(gears[row.gear - 1]);
    const torque = torques(build, middle(row.throttle) * curve(build, crank), row.gear).get('output') ?? 0;
    const turns = wheel * path;
    const load = ((2 * torque) / (pitch * 0.0254)) * 0.2248089;
    const kv = ((a + Math.sqrt((Math.PI * pitch * turns) / 12)) / a) ** b;
    // Lewis form of 18 teeth, 20 degrees: 0.309, for the part that size takes.
    const size = Math.max(1, 1.192 * (((wide * middle(stage.module)) / 0.0254) * Math.sqrt(0.309)) ** 0.0535);
    const stress = 2300 * Math.sqrt((load * OVERLOAD * kv * size * spread) / (pitch * wide * geometry)) * PSI;
    const lives = ((middle(row.share) * middle(build.brief.duty.distance)) / rollOut) * after;
    return { stress, lives };
  });
  const used = (/** @type {number} */ grown) =>
    steps.reduce((sum, { stress, lives }) => {
      const z = (stress * Math.sqrt(grown)) / bears;
      // Turns that this stress allows: 2.466 N^-0.056 up to ten million, 1.4488 N^-0.023 beyond.
      const short = (2.466 / z) ** (1 / 0.056);
      return sum + lives / (short < 1e7 ? short : (1.4488 / z) ** (1 / 0.023));
    }, 0);
  let [low, high] = [0.01, 100];
  for (let k = 0; k < 200; k += 1) {
    const half = Math.sqrt(low * high);
    if (used(half) > 1) high = half;
    else low = half;
  }
  return low;
}

/** Reserves of the gear pairs by the ids of their findings. @param {object} build */
export function gearReserves(build) {
  /** @type {Record<string, number>} */
  const out = {};
  for (const [key, stage] of Object.entries(build.path.stages)) {
    if (stage.kind === 'spur' && stage.made?.driven.hardness !== undefined)
      out[`gear.contact:/path/stages/${key}`] = flanks(build, stage);
    if (stage.donor === undefined) continue;
    const id = stage.from.split('/')[0];
    const started = (/** @type {number} */ engine) => torques(build, engine, 1).get(id) ?? 0;
    // The start slips in the clutch or at the tyre before it asks for more; the tyre is felt back along the train.
    const whole = torques(build, 1, 1);
    const ground = gripping(build) * (started(1) / ([...whole.values()].at(-1) ?? 1));
    const start = Math.min(
      started(SHOCK * peakTorque(build)),
      started(middle(build.brief.engine.clutchTorque)),
      ground,
    );
    out[`gear.donor:/path/stages/${key}`] = middle(stage.donor.torque) / start;
  }
  return out;
}
