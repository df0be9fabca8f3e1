// Chains over the duty of the brief: pull in service, and what the plates bear by the ratings.

import * as g from './geometry.mjs';
import { radii, torques } from './loads.mjs';
import { CHAINS } from './tables.mjs';
import { middle, ratio } from './units.mjs';

/** Least tensile strength and mass of one strand (chain.sizes.json), and of the B series the least dynamic strength, N and kg/m. */
const STRENGTH = {
  60: { least: 31300, mass: 1.5 },
  '10B': { least: 22200, mass: 0.95, dynamic: 3330 },
  '12B': { least: 28900, mass: 1.25, dynamic: 3720 },
  '16B': { least: 60000, mass: 2.7, dynamic: 9530 },
};
/** Tribology Handbook: engines of fewer than six cylinders. */
const ENGINE = 1.3;
const RATED = 15000 * 3600;

/** Torque of the engine between two rows of its curve. */
function curve(build, turns) {
  const { rows } = build.brief.engine.curve;
  if (turns <= rows[0][0]) return rows[0][1];
  const k = rows.findIndex((row) => row[0] >= turns);
  const [[n0, t0], [n1, t1]] = [rows[k - 1], rows[k]];
  return t0 + ((t1 - t0) * (turns - n0)) / (n1 - n0);
}

/** Power that plates and rollers of a size bear for 15 000 h: the American formulas in inches and horsepower, ISO 10823 by dynamic strength. */
function rated(size, teeth, turns) {
  const { pitch } = CHAINS[size];
  const inches = pitch / 0.0254;
  const rollers = (745.7 * 17000 * teeth ** 1.5 * inches ** 0.8) / turns ** 1.5;
  const { dynamic } = STRENGTH[size];
  const plates = dynamic
    ? 1000 * 1.23e-8 * dynamic * pitch * 1000 * teeth ** 1.08 * turns ** 0.9
    : 745.7 * 0.004 * teeth ** 1.08 * turns ** 0.9 * inches ** (3 - 0.07 * inches);
  return { plates, rollers };
}

/** Reserves of the chains of a build by the ids of their findings. @param {object} build */
export function chainReserves(build) {
  const out = {};
  const { primary, gears } = build.brief.engine;
  const rows = build.brief.duty.rows;
  const distance = middle(build.brief.duty.distance);
  const rollOut = middle(build.brief.wheel.rollOut);
  const order = g.train(build).slice(1);
  const path = order.reduce((all, { stage }) => all * (stage.teeth.driven / stage.teeth.driver), 1);
  order.forEach(({ stage }, k) => {
    if (stage.kind !== 'chain') return;
    const key = Object.keys(build.path.stages).find((id) => build.path.stages[id] === stage);
    const driver = k === 0 ? 'output' : order[k - 1].id;
    const after = order.slice(k).reduce((all, one) => all * (one.stage.teeth.driven / one.stage.teeth.driver), 1);
    const [radius] = radii(stage);
    let [weakest, worn, service] = [Infinity, 0, Infinity];
    for (const row of rows) {
      const wheel = (middle(row.speed) / rollOut) * 60;
      const crank = wheel * path * ratio(primary) * ratio(gears[row.gear - 1]);
      const torque = torques(build, middle(row.throttle) * curve(build, crank), row.gear).get(driver);
      const turns = wheel * after;
      const power = (torque * turns * Math.PI) / 30;
      const smaller = Math.min(stage.teeth.driver, stage.teeth.driven);
      const { plates, rollers } = rated(stage.chain, smaller, (turns * stage.teeth.driver) / smaller);
      weakest = Math.min(weakest, plates / (ENGINE * power));
      worn += ((middle(row.share) * distance) / middle(row.speed) / RATED) * ((ENGINE * power) / rollers) ** 2.5;
      const { least, mass } = STRENGTH[stage.chain];
      const strength = stage.strength ? middle(stage.strength) : least;
      const pull = torque / radius + mass * ((turns * Math.PI * radius) / 30) ** 2;
      service = Math.min(service, strength / (stage.joint === 'joining link' ? 9 : 6) / pull);
    }
    out[`chain.rating:/path/stages/${key}`] = Math.min(weakest, worn ** -0.4);
    out[`chain.service:/path/stages/${key}`] = service;
  });
  return out;
}
