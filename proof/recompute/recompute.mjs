// Ten first findings of each demo, worked out again from build.json by hand formulas; `node proof/recompute/recompute.mjs` prints them.
import { readFileSync } from 'node:fs';
import { chainReserves } from './chains.mjs';
import { rooms } from './clearance.mjs';
import { weakest } from './fatigue.mjs';
import * as g from './geometry.mjs';
import { keyed } from './joints.mjs';
import { peakTorque, seatForces, torques } from './loads.mjs';
import { seats } from './seats.mjs';
import { bend } from './shaft.mjs';
import { BEARING_STIFFNESS, SLOPES, STATIC_RATING } from './tables.mjs';
import { middle } from './units.mjs';
import { armSlack, lifting, locked, steepness, tipping } from './vehicle.mjs';

export const DEMOS = ['hill-trike', 'marsh-hauler', 'rail-cart'];
const GRAVITY = 9.80665;
/** Usual limit of the movement of a bevel gear under load (Gleason, AGMA 2005). */
const BEVEL_MOVES = 0.076e-3;
/** Clearance wanted where the brief is silent. */
const WANTED = 0.01;

/** Text of a demo's build.json. @param {string} demo */
export const textOf = (demo) => readFileSync(new URL(`../../examples/${demo}/build.json`, import.meta.url), 'utf8');

/** Wheels that share the load of the driven axle. @param {object} build */
const drivenWheels = (build) => (build.brief.vehicle.contact.includes('single') ? 1 : 2);

/** What the ground does to the driven wheel: it carries its share of the axle, and pushes with all of the pull. @param {object} build @param {Map<string, number>} torque */
function ground(build, torque) {
  const order = g.train(build);
  const id = order[order.length - 1].id;
  const shaft = g.shaftOf(build, id);
  const [seat] = Object.entries(shaft.seats).find(([, s]) => s.kind === 'wheel') ?? [''];
  const radius = middle(build.brief.wheel.rollOut) / (2 * Math.PI);
  const sense = Math.sign(g.turning(build).get(id)?.[1] ?? 1);
  const load = (middle(build.brief.vehicle.drivenLoad) * GRAVITY) / drivenWheels(build);
  return { id, seat, at: g.seatAt(shaft, seat), force: [(sense * (torque.get(id) ?? 0)) / radius, 0, load] };
}

/** Forces on all shafts in first gear at the engine's greatest torque. @param {object} build */
function pulling(build) {
  const torque = torques(build, peakTorque(build), 1);
  const forces = seatForces(build, torque);
  const wheel = ground(build, torque);
  forces.get(wheel.id)?.push(wheel);
  return { torque, forces };
}

/** @param {object} build @param {string} end of a stage, `shaft/seat` */
const stageKind = (build, end) => Object.values(build.path.stages).find((s) => s.from === end || s.to === end)?.kind;

/** Stations between which a shaft carries its torque; a gearbox may put it in anywhere. @param {string} id @param {object} shaft @returns {[number, number]} */
function carries(id, shaft) {
  const stations = Object.values(shaft.seats)
    .filter((s) => s.kind !== 'bearing' || id === 'output')
    .map((s) => middle(s.station));
  return [Math.min(...stations), Math.max(...stations)];
}

/**
 * Reserves of a demo by the ids of its findings.
 * @param {string} demo
 * @returns {Record<string, number>}
 */
export function reserves(demo) {
  const build = sized(JSON.parse(textOf(demo)));
  const { torque, forces } = pulling(build);
  /** @type {Record<string, number>} */
  const out = { 'road.lift:/brief/vehicle': lifting(build, [...torque.values()].at(-1) ?? 0) };
  Object.assign(out, chainReserves(build));
  Object.assign(out, keyed(build));
  if (build.brief.vehicle.contact.startsWith('three')) out['road.tip:/brief/vehicle/track'] = tipping(build);
  Object.assign(out, seats(build));
  for (const [address, room] of Object.entries(rooms(build, true))) out[`clear.parts:${address}`] = room / WANTED;
  for (const [key, stage] of Object.entries(build.path.stages)) {
    if (stage.kind === 'chain') out[`chain.slope:/path/stages/${key}`] = steepness(build, stage);
    if (stage.kind === 'chain' && demo === 'hill-trike') out[`arm.slack:/path/stages/${key}`] = armSlack(build, stage);
    if (stage.kind !== 'bevel') continue;
    const moves = [stage.from, stage.to].map((text) => {
      const [id, seat] = text.split('/');
      const shaft = g.shaftOf(build, id);
      return bend(shaft, forces.get(id) ?? [], BEARING_STIFFNESS).move(middle(shaft.seats[seat].station));
    });
    out[`bevel.moves:/path/stages/${key}`] = BEVEL_MOVES / Math.max(...moves);
  }
  const stopped = seatForces(build, locked(build));
  for (const { id } of g.train(build)) {
    const shaft = g.shaftOf(build, id);
    const address = id === 'output' ? '/brief/engine/output' : `/path/shafts/${id}`;
    const line = bend(shaft, forces.get(id) ?? [], BEARING_STIFFNESS);
    const still = bend(shaft, stopped.get(id) ?? [], BEARING_STIFFNESS);
    // Bevel gears have their own limit: how far they move.
    const slopes = Object.entries(shaft.seats)
      .filter(([key, s]) => s.kind === 'sprocket' || (s.kind === 'gear' && stageKind(build, `${id}/${key}`) === 'spur'))
      .map(([, s]) => s)
      .map((s) => SLOPES[/** @type {'gear' | 'sprocket'} */ (s.kind)] / line.slope(middle(s.station)));
    if (slopes.length > 0) out[`shaft.slope:${address}`] = Math.min(...slopes);
    for (const [key, seat] of Object.entries(shaft.seats)) {
      if (seat.kind !== 'bearing') continue;
      const at = middle(seat.station);
      out[`bearing.tilt:${address}/seats/${key}`] = SLOPES.bearing / line.slope(at);
      const rating = STATIC_RATING[seat.row];
      // Least where a bearing moves now and then and dents are accepted: 0.4 times the load (maker's catalogue, table 7).
      if (rating !== undefined && demo === 'rail-cart') {
        out[`bearing.static:${address}/seats/${key}`] = rating / 0.4 / still.reaction(at);
      }
    }
    out[`shaft.fatigue:${address}`] = weakest(
      shaft,
      forces.get(id) ?? [],
      torque.get(id) ?? 0,
      carries(id, shaft),
      build.brief.loads?.reliability,
    ).reserve;
  }
  return out;
}

/** Bore, width and outside diameter of deep groove bearings, mm (ISO 15, as every catalogue prints them). */
const SIZES = {
  6204: [20, 14, 47],
  6207: [35, 17, 72],
  6208: [40, 18, 80],
  6209: [45, 19, 85],
  6305: [25, 17, 62],
  6309: [45, 25, 100],
  6310: [50, 27, 110],
};

/** The build with the sizes of bearings that are named by their number alone. */
function sized(build) {
  for (const shaft of [build.brief.engine.output, ...Object.values(build.path.shafts)])
    for (const seat of Object.values(shaft.seats)) {
      const size = SIZES[seat.row];
      if (!size) continue;
      seat.diameter ??= `${size[0]} mm`;
      seat.width ??= `${size[1]} mm`;
      seat.outside ??= `${size[2]} mm`;
    }
  // A shoulder without a radius is no worse here than a step that is drawn; the script reckons typed radii alone.
  for (const shaft of Object.values(build.path.shafts))
    for (const [id, notch] of Object.entries(shaft.notches ?? {}))
      if (notch.kind === 'shoulder' && notch.radius === undefined) delete shaft.notches[id];
  return build;
}

/** Room of a demo's chains where the ring that the plates sweep counts, not the filled disc: for comparison. @param {string} demo */
export const sweptRooms = (demo) => rooms(sized(JSON.parse(textOf(demo))), false);

if (process.argv[1]?.endsWith('recompute.mjs')) {
  for (const demo of DEMOS) {
    console.log(demo);
    for (const [id, value] of Object.entries(reserves(demo))) console.log(`  ${id}  ${value.toPrecision(5)}`);
    for (const [address, room] of Object.entries(sweptRooms(demo))) {
      console.log(`  room beside the swept ring, ${address}  ${(room * 1e3).toPrecision(4)} mm`);
    }
  }
}
