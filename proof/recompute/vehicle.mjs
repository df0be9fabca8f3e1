// The vehicle on its wheels, the slack of a chain on a swinging arm, and the chain's line of centres.
import * as g from './geometry.mjs';
import { radii } from './loads.mjs';
import { CHAINS, EFFICIENCY } from './tables.mjs';
import { middle, ratio } from './units.mjs';

const GRAVITY = 9.80665;
/** Bosch Automotive Handbook: soft motorcycle rubber on dry asphalt. */
const MOST_GRIP = 1.2;

/** @param {object} build */
function stance(build) {
  const v = build.brief.vehicle;
  const mass = middle(v.mass) + middle(v.payload);
  const base = middle(v.wheelbase);
  const driven = middle(v.drivenLoad);
  return { v, mass, base, driven, ahead: (base * (mass - driven)) / mass, height: middle(v.centreHeight) };
}

/** Three wheels, the single one behind: sideways acceleration that lifts a wheel, over the friction (SAE 820139). @param {object} build */
export function tipping(build) {
  const { v, base, ahead, height } = stance(build);
  return (middle(v.track) * ahead) / (2 * base) / height / middle(v.friction);
}

/**
 * Pull that lifts the front over the pull that there is: until the tyre slips, or what first gear gives (vehicle.md, section 7).
 * @param {object} build @param {number} torque on the driven wheel
 */
export function lifting(build, torque) {
  const { v, mass, base, driven, ahead, height } = stance(build);
  const friction = middle(v.friction);
  const slips = (friction * driven * GRAVITY) / (1 - (friction * height) / base);
  const pull = (torque * 2 * Math.PI) / middle(build.brief.wheel.rollOut);
  return (mass * GRAVITY * ahead) / height / Math.min(slips, pull);
}

/** Greatest torque on a rear wheel that drives: its tyre slips, or the front lifts (vehicle.md, section 7). @param {object} build */
export function gripping(build) {
  const { mass, base, driven, ahead, height } = stance(build);
  const slips = (MOST_GRIP * driven * GRAVITY) / (1 - (MOST_GRIP * height) / base);
  const lifts = (mass * GRAVITY * ahead) / height;
  return (Math.min(slips, lifts) * middle(build.brief.wheel.rollOut)) / (2 * Math.PI);
}

/**
 * Torques when the driven wheels lock: braked by their own grip, which takes load off them, and carried back to the engine with
 * the loss of each stage. Below zero, since they hold back.
 * @param {object} build
 * @returns {Map<string, number>}
 */
export function locked(build) {
  const { base, driven, height } = stance(build);
  const load = (driven * GRAVITY) / (1 + (MOST_GRIP * height) / base);
  const order = g.train(build);
  let torque = (-MOST_GRIP * load * middle(build.brief.wheel.rollOut)) / (2 * Math.PI);
  const out = new Map();
  for (let i = order.length - 1; i >= 0; i -= 1) {
    out.set(order[i].id, torque);
    const stage = order[i].stage;
    if (stage === undefined) continue;
    const efficiency = stage.efficiency === undefined ? EFFICIENCY[stage.kind] : middle(stage.efficiency);
    torque *= (stage.teeth.driver / stage.teeth.driven) * efficiency;
  }
  return out;
}

/** 60° over the steepness of a chain's line of centres (chain.limits.json). @param {object} build @param {object} stage */
export function steepness(build, stage) {
  const [from, to] = [stage.from, stage.to].map((text) => {
    const [shaft, seat] = text.split('/');
    return g.seatAt(g.shaftOf(build, shaft), seat);
  });
  const line = g.minus(to, from);
  return Math.PI / 3 / Math.atan2(Math.abs(line[2]), Math.hypot(line[0], line[1]));
}

/**
 * Slack of a chain on a swinging arm: the axle is set so that 2 % of the span is left by hand where the chain is tightest; 4 % over
 * the greatest movement in the stroke. Counted in pitches along spans and arcs (chain.md, section 3).
 * @param {object} build @param {object} stage
 */
export function armSlack(build, stage) {
  const pitch = CHAINS[stage.chain].pitch;
  const [r1, r2] = radii(stage);
  const { driver, driven } = stage.teeth;
  const pivot = g.point(build.brief.suspension.pivot);
  const fixed = g.point(g.shaftOf(build, stage.from.split('/')[0]).origin);
  const axle = g.point(g.shaftOf(build, stage.to.split('/')[0]).origin);
  const arm = Math.hypot(axle[0] - pivot[0], axle[2] - pivot[2]);
  const drawn = Math.atan2(axle[2] - pivot[2], pivot[0] - axle[0]);
  /** Share of the span that the hand moves it, and by how much. @param {number} length of the arm @param {number} angle up from as drawn */
  const movement = (length, angle) => {
    const x = pivot[0] - length * Math.cos(drawn + angle);
    const z = pivot[2] + length * Math.sin(drawn + angle);
    const c = Math.hypot(x - fixed[0], z - fixed[2]);
    const lean = Math.asin((r2 - r1) / c);
    const span = c * Math.cos(lean);
    const needed =
      (2 * span) / pitch +
      (driver * (Math.PI - 2 * lean)) / (2 * Math.PI) +
      (driven * (Math.PI + 2 * lean)) / (2 * Math.PI);
    const spare = (stage.links - needed) * pitch;
    return spare <= 0 ? -1 : Math.sqrt((span + spare) ** 2 - span ** 2) / span;
  };
  const angles = Array.from({ length: 2001 }, (_, i) => {
    const { bump, rebound } = build.brief.suspension;
    return -middle(rebound) + ((middle(bump) + middle(rebound)) * i) / 2000;
  });
  const over = (/** @type {number} */ length) => angles.map((angle) => movement(length, angle));
  let [short, long] = [arm - 0.02, arm + 0.02];
  for (let i = 0; i < 60; i += 1) {
    const mid = (short + long) / 2;
    if (Math.min(...over(mid)) > 0.02) short = mid;
    else long = mid;
  }
  return 0.04 / Math.max(...over((short + long) / 2));
}

/** Road speed at the redline in the tallest gear with the longest roll-out, m/s. @param {object} build @param {number} rollOut */
export function redlineSpeed(build, rollOut) {
  const { gears, primary, redline } = build.brief.engine;
  const stages = g.train(build).slice(1);
  const overall = stages.reduce(
    (sum, { stage }) => (sum * stage.teeth.driven) / stage.teeth.driver,
    ratio(primary) * ratio(gears[gears.length - 1]),
  );
  return ((middle(redline) / overall) * rollOut) / (2 * Math.PI);
}
