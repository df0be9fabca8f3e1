// Where shafts, seats and spans stand; x forward, y left, z up of the wheel's centre.
import { middle } from './units.mjs';

/** @typedef {number[]} Vec */
/** @param {Vec} a @param {Vec} b @returns {Vec} */
export const add = (a, b) => a.map((x, i) => x + b[i]);
/** @param {Vec} a @param {number} k @returns {Vec} */
export const times = (a, k) => a.map((x) => x * k);
/** @param {Vec} a @param {Vec} b @returns {Vec} */
export const minus = (a, b) => add(a, times(b, -1));
/** @param {Vec} a @param {Vec} b */
export const dot = (a, b) => a.reduce((sum, x, i) => sum + x * b[i], 0);
/** @param {Vec} a @param {Vec} b @returns {Vec} */
export const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
/** @param {Vec} a */
export const norm = (a) => Math.sqrt(dot(a, a));
/** @param {Vec} a @returns {Vec} */
export const unit = (a) => times(a, 1 / norm(a));

/** Shaft of the build by its id; the gearbox output has its own place. @param {object} build @param {string} id */
export const shaftOf = (build, id) => (id === 'output' ? build.brief.engine.output : build.path.shafts[id]);
/** @param {object} point @returns {Vec} */
export const point = (point) => [middle(point.x), middle(point.y), middle(point.z)];
/** @param {object} shaft @returns {Vec} */
export const axis = (shaft) => unit(shaft.direction);
/** @param {object} shaft @param {string} seat @returns {Vec} */
export const seatAt = (shaft, seat) => add(point(shaft.origin), times(axis(shaft), middle(shaft.seats[seat].station)));

/** Ids of the shafts in the order of the path, with the stage that leads into each. @param {object} build */
export function train(build) {
  const stages = Object.values(build.path.stages);
  /** @type {{ id: string, stage: object | undefined }[]} */
  const order = [{ id: 'output', stage: undefined }];
  for (;;) {
    const last = order[order.length - 1].id;
    const stage = stages.find((s) => s.from.split('/')[0] === last);
    if (stage === undefined) return order;
    order.push({ id: stage.to.split('/')[0], stage });
  }
}

/**
 * Which way each shaft turns, as a vector along its axis: parallel shafts keep their sense by chain and belt and change it by a
 * spur pair; a bevel pair rolls without sliding where its pitch cones meet.
 * @param {object} build
 * @returns {Map<string, Vec>}
 */
export function turning(build) {
  const out = new Map();
  const first = build.brief.engine.output;
  out.set('output', times(axis(first), first.sense === 'negative' ? -1 : 1));
  for (const { id, stage } of train(build).slice(1)) {
    const before = out.get(stage.from.split('/')[0]);
    if (stage.kind !== 'bevel') out.set(id, stage.kind === 'spur' ? times(before, -1) : before);
    else {
      const { contact, apex } = bevelContact(build, stage);
      const speed = cross(before, minus(contact, apex));
      const own = axis(shaftOf(build, id));
      const mine = cross(own, minus(contact, apex));
      out.set(id, times(own, Math.sign(dot(speed, mine))));
    }
  }
  return out;
}

/** Mean point of contact of a straight bevel pair with its axes square to each other. @param {object} build @param {object} stage */
export function bevelContact(build, stage) {
  const [fromId, fromSeat] = stage.from.split('/');
  const [toId, toSeat] = stage.to.split('/');
  const a = shaftOf(build, fromId);
  const b = shaftOf(build, toId);
  const ua = axis(a);
  // The axes cross where a meets the plane through b square to a.
  const apex = add(point(a.origin), times(ua, dot(minus(point(b.origin), point(a.origin)), ua)));
  const { driver, driven } = stage.teeth;
  const m = middle(stage.module);
  const face = middle(stage.faceWidth);
  const outer = (m / 2) * Math.hypot(driver, driven);
  const mean = outer - face / 2;
  const pitchDriver = Math.atan2(driver, driven);
  const towardPinion = unit(minus(seatAt(a, fromSeat), apex));
  const towardGear = unit(minus(seatAt(b, toSeat), apex));
  const contact = add(
    apex,
    add(times(towardPinion, mean * Math.cos(pitchDriver)), times(towardGear, mean * Math.sin(pitchDriver))),
  );
  return { apex, contact, outer, face, mean, pitchDriver, towardPinion, towardGear, module: m };
}

/**
 * Unit vectors along the tight and the slack span, both from the driver toward the driven, and the lean of the spans.
 * @param {Vec} from @param {Vec} to @param {number} r1 @param {number} r2 @param {Vec} omega sense of the driver
 */
export function spans(from, to, r1, r2, omega) {
  const w = unit(omega);
  const between = minus(to, from);
  const flat = minus(between, times(w, dot(between, w)));
  const c = norm(flat);
  const u = times(flat, 1 / c);
  // Square to the line of centres, on the side where the driver's rim runs toward the driven: there the chain is slack.
  const slackSide = cross(u, w);
  const a = Math.asin((r2 - r1) / c);
  const lean = (/** @type {Vec} */ side) => add(times(u, Math.cos(a)), times(side, Math.sin(a)));
  return { tight: lean(times(slackSide, -1)), slack: lean(slackSide), c, a, u };
}
