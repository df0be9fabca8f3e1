// Room between parts as round discs on parallel shafts, less what brings them nearer.
import * as g from './geometry.mjs';
import { radii } from './loads.mjs';
import { CHAINS, MOVES } from './tables.mjs';
import { ends, middle } from './units.mjs';
import { redlineSpeed } from './vehicle.mjs';

/** @typedef {{ at: g.Vec, axis: g.Vec, radius: number, half: number, inner?: number }} Disc */

/** Room between two discs on parallel shafts; a ring has a bore in which the other may stand. @param {Disc} a @param {Disc} b */
function room(a, b) {
  const line = g.minus(b.at, a.at);
  const along = Math.abs(g.dot(line, a.axis));
  const across = Math.sqrt(Math.max(0, g.dot(line, line) - along ** 2));
  const axial = Math.max(0, along - a.half - b.half);
  const outside = across - a.radius - b.radius;
  const inside = (a.inner ?? 0) - across - b.radius;
  return Math.hypot(axial, Math.max(0, outside, inside));
}

/** @param {object} build @param {string} address `shaft/seat` @returns {Disc} */
function bearing(build, address) {
  const [shaft, seat] = address.split('/');
  const s = g.shaftOf(build, shaft);
  return {
    at: g.seatAt(s, seat),
    axis: g.axis(s),
    radius: middle(s.seats[seat].outside) / 2,
    half: middle(s.seats[seat].width) / 2,
  };
}

/** Spur gear to its tips. @param {object} build @param {object} stage @param {'from' | 'to'} end @returns {Disc} */
function spurGear(build, stage, end) {
  const [shaft, seat] = stage[end].split('/');
  const s = g.shaftOf(build, shaft);
  const radius = radii(stage)[end === 'from' ? 0 : 1] + middle(stage.module);
  return { at: g.seatAt(s, seat), axis: g.axis(s), radius, half: middle(stage.faceWidth) / 2 };
}

/**
 * A chain on one of its sprockets, filled to the middle as a bounding disc, or as the ring that its plates sweep. Half its width is
 * half the riveted pin (ISO 606, b4), and all of what a joining link's fastener adds (b7), since it may face either side.
 * @param {object} build @param {object} stage @param {'from' | 'to'} end @param {boolean} filled
 * @returns {Disc}
 */
function chainDisc(build, stage, end, filled) {
  const [shaft, seat] = stage[end].split('/');
  const s = g.shaftOf(build, shaft);
  const size = CHAINS[stage.chain];
  const pitchRadius = radii(stage)[end === 'from' ? 0 : 1];
  const half = size.pin / 2 + (stage.joint === 'joining link' ? size.fastener : 0);
  const plate = size.plate / 2;
  const disc = { at: g.seatAt(s, seat), axis: g.axis(s), radius: pitchRadius + plate, half };
  return filled ? disc : { ...disc, inner: pitchRadius - plate };
}

/** @param {object} build @param {object} stage @param {'from' | 'to'} end @param {Disc} other @param {string} bodies @param {boolean} filled */
function chainRoom(build, stage, end, other, bodies, filled) {
  return room(chainDisc(build, stage, end, filled), other) - MOVES[bodies];
}

/** Straight bevel gear: its tips at the large and at the small end, from the apex along its own axis. @param {object} build @param {object} stage */
function bevelTips(build, stage) {
  const { outer, face, pitchDriver, module } = g.bevelContact(build, stage);
  const pitch = Math.PI / 2 - pitchDriver;
  return [outer, outer - face].map((cone) => {
    const tip = (module * cone) / outer;
    return {
      along: cone * Math.cos(pitch) - tip * Math.sin(pitch),
      radius: cone * Math.sin(pitch) + tip * Math.cos(pitch),
    };
  });
}

/** Driver's bar to the small end of the gear that it drives. @param {object} build @param {object} stage */
function shaftToBevelGear(build, stage) {
  const [shaft, seat] = stage.from.split('/');
  return bevelTips(build, stage)[1].along - middle(g.shaftOf(build, shaft).seats[seat].diameter) / 2;
}

/**
 * Driven bevel gear on the pivot of the arm to the tyre: the arm's stroke changes nothing, the slot of the axle does, and the tyre
 * grows with speed: nothing to 60 km/h, a thousandth at 90 (Reimpell).
 * @param {object} build @param {object} stage
 */
function bevelGearToTyre(build, stage) {
  const [shaft] = stage.to.split('/');
  const centre = g.point(g.shaftOf(build, shaft).origin);
  const found = /^(\d+)\/(\d+)R(\d+)$/.exec(build.brief.wheel.tyre);
  if (found === null) throw new Error(`Not a tyre size: ${build.brief.wheel.tyre}`);
  const [width, aspect, rim] = found.slice(1).map(Number);
  const tyre = ((rim * 25.4) / 2 + (width * aspect) / 100) / 1e3;
  const slot = Object.values(build.path.adjusters).find(
    (a) => a.sets === 'slack' && a.along[2] !== 0 && a.along[0] !== 0,
  );
  const axle = g.shaftOf(build, slot.moves);
  const moved = g.minus(g.point(axle.origin), g.times(g.unit(slot.along), middle(slot.travel)));
  const between = Math.hypot(moved[0] - centre[0], moved[2] - centre[2]);
  const kmh = redlineSpeed(build, ends(build.brief.wheel.rollOut)[1]) * 3.6;
  const growth = (0.001 * Math.max(0, kmh - 60)) / 30;
  return between - bevelTips(build, stage)[0].radius - tyre * (1 + growth) - MOVES['subframe swinging arm'];
}

/**
 * Room of a few pairs of parts of a demo, metres, each with every part counted and moved.
 * @param {object} build @param {boolean} filled whether a chain fills its sprocket
 * @returns {Record<string, number>}
 */
export function rooms(build, filled) {
  const { stages } = build.path;
  if (build.name === 'hill-trike') {
    const arm = 'engine swinging arm';
    const gear = spurGear(build, stages.spur, 'to');
    return {
      '/path/stages/chain': chainRoom(build, stages.chain, 'to', bearing(build, 'axle/bearing-left'), arm, filled),
      '/path/shafts/jackshaft': chainRoom(
        build,
        stages.chain,
        'from',
        bearing(build, 'jackshaft/bearing-left'),
        arm,
        filled,
      ),
      '/brief/engine/output': room(bearing(build, 'output/bearing'), gear),
      '/path/stages/spur': chainRoom(build, stages.chain, 'from', gear, arm, filled),
    };
  }
  if (build.name !== 'marsh-hauler') return {};
  const arm = 'subframe swinging arm';
  const first = stages['chain-1'];
  const second = stages['chain-2'];
  return {
    '/path/stages/bevel': bevelGearToTyre(build, stages.bevel),
    '/path/shafts/shaft-a': shaftToBevelGear(build, stages.bevel),
    '/path/stages/chain-2': chainRoom(build, second, 'to', bearing(build, 'axle-c/bearing-left'), arm, filled),
    '/brief/engine/output': chainRoom(
      build,
      first,
      'from',
      bearing(build, 'output/bearing'),
      'engine subframe',
      filled,
    ),
    '/path/shafts/shaft-b': chainRoom(build, second, 'from', bearing(build, 'shaft-b/bearing-left'), arm, filled),
  };
}
