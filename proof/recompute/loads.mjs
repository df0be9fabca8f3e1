// Torques and the forces they put on each shaft's seats.
import * as g from './geometry.mjs';
import { BOX_EFFICIENCY, CHAINS, EFFICIENCY, PRESSURE_ANGLE } from './tables.mjs';
import { middle, ratio } from './units.mjs';

/** @param {object} build */
export const peakTorque = (build) =>
  Math.max(...build.brief.engine.curve.rows.map((/** @type {number[]} */ row) => row[1]));

/** Torque on every shaft when the engine gives so much in a gear. @param {object} build @param {number} engine @param {number} gear */
export function torques(build, engine, gear) {
  const { primary, gears } = build.brief.engine;
  let torque = engine * ratio(primary) * ratio(gears[gear - 1]) * BOX_EFFICIENCY;
  const out = new Map([['output', torque]]);
  for (const { id, stage } of g.train(build).slice(1)) {
    const efficiency = stage.efficiency === undefined ? EFFICIENCY[stage.kind] : middle(stage.efficiency);
    torque *= (stage.teeth.driven / stage.teeth.driver) * efficiency;
    out.set(id, torque);
  }
  return out;
}

/** Pitch radii of a stage's two wheels. @param {object} stage */
export function radii(stage) {
  const one = (/** @type {number} */ teeth) => {
    if (stage.kind === 'chain') return CHAINS[stage.chain].pitch / (2 * Math.sin(Math.PI / teeth));
    if (stage.kind === 'belt') return (middle(stage.pitch) * teeth) / (2 * Math.PI);
    return (middle(stage.module) * teeth) / 2;
  };
  return [one(stage.teeth.driver), one(stage.teeth.driven)];
}

/**
 * Forces on the seats of all shafts at given torques. Each shaft's own torque gives the force on it, so that the statics of each
 * shaft closes; what a stage loses is the difference between the forces at its two ends, and the true pull lies between them.
 * Torques below zero hold the vehicle back: the other span, or the other flank, carries.
 * @param {object} build @param {Map<string, number>} torque
 * @returns {Map<string, { seat: string, at: g.Vec, force: g.Vec }[]>}
 */
export function seatForces(build, torque) {
  const out = new Map(g.train(build).map(({ id }) => [id, /** @type {object[]} */ ([])]));
  const turns = g.turning(build);
  for (const { stage } of g.train(build).slice(1)) {
    const [fromId, fromSeat] = stage.from.split('/');
    const [toId, toSeat] = stage.to.split('/');
    const from = g.seatAt(g.shaftOf(build, fromId), fromSeat);
    const to = g.seatAt(g.shaftOf(build, toId), toSeat);
    const omega = turns.get(fromId) ?? [0, 0, 0];
    const [r1, r2] = radii(stage);
    const bevel = stage.kind === 'bevel' ? g.bevelContact(build, stage) : undefined;
    const perTorque = forcePerPull(stage, from, to, omega, bevel, Math.sign(torque.get('output') ?? 1));
    const at = bevel === undefined ? [from, to] : [bevel.contact, bevel.contact];
    const arm =
      bevel === undefined
        ? [r1, r2]
        : [bevel.mean * Math.sin(bevel.pitchDriver), bevel.mean * Math.cos(bevel.pitchDriver)];
    const pull = [Math.abs(torque.get(fromId) ?? 0) / arm[0], Math.abs(torque.get(toId) ?? 0) / arm[1]];
    const back = stage.idler !== undefined && (torque.get('output') ?? 0) < 0;
    const ends = back ? roundIdler(stage, from, to, omega) : [perTorque, g.times(perTorque, -1)];
    out.get(fromId)?.push({ seat: fromSeat, at: at[0], force: g.times(ends[0], pull[0]) });
    out.get(toId)?.push({ seat: toSeat, at: at[1], force: g.times(ends[1], pull[1]) });
  }
  return out;
}

/**
 * Directions in which a chain draws its two sprockets when the span over a fixed idler is the tight one. The idler runs outside the
 * loop, so each piece crosses over from the sprocket's side to the idler's.
 * @param {object} stage @param {g.Vec} from @param {g.Vec} to @param {g.Vec} omega
 * @returns {g.Vec[]}
 */
function roundIdler(stage, from, to, omega) {
  const own = CHAINS[stage.chain].pitch / (2 * Math.sin(Math.PI / stage.idler.teeth));
  const centre = g.point(stage.idler.at);
  const [r1, r2] = radii(stage);
  // An idler that turns the other way counts with a radius below zero; holding back, the span that is slack in drive pulls.
  return [g.spans(from, centre, r1, -own, omega).slack, g.spans(to, centre, r2, -own, g.times(omega, -1)).slack];
}

/**
 * Force on the driver of a stage for one newton of useful pull.
 * @param {object} stage @param {g.Vec} from @param {g.Vec} to @param {g.Vec} omega @param {ReturnType<typeof g.bevelContact> | undefined} bevel
 * @param {number} sense 1 when the driver drives, -1 when it holds back
 * @returns {g.Vec}
 */
function forcePerPull(stage, from, to, omega, bevel, sense) {
  const [r1, r2] = radii(stage);
  if (stage.kind === 'chain' || stage.kind === 'belt') {
    const { tight, slack } = g.spans(from, to, r1, r2, g.times(omega, sense));
    // A toothed belt runs with 1.25 and 0.25 of its useful pull in its spans (chain.belt.json, tension.spans).
    return stage.kind === 'chain' ? tight : g.add(g.times(tight, 1.25), g.times(slack, 0.25));
  }
  const wedge = Math.tan(PRESSURE_ANGLE);
  if (bevel === undefined) {
    const u = g.unit(g.minus(to, from));
    return g.add(g.times(g.cross(g.unit(omega), u), -sense), g.times(u, -wedge));
  }
  const { pitchDriver, towardPinion, towardGear } = bevel;
  const apart = g.add(g.times(towardPinion, Math.sin(pitchDriver)), g.times(towardGear, -Math.cos(pitchDriver)));
  return g.add(g.times(g.cross(g.unit(omega), towardGear), -sense), g.times(apart, wedge));
}
