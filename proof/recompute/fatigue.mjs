// Weakest section of a shaft by the modified Goodman line of distortion energy (shaft.md, sections 3 and 4).
import * as g from './geometry.mjs';
import { bend, profile } from './shaft.mjs';
import { BEARING_STIFFNESS, GROOVES, TENSILE } from './tables.mjs';
import { middle } from './units.mjs';

/** Norton, appendix C: D/d, A, b of K_t = A (r/d)^b (shaft.notch.json). */
const SHOULDER = {
  bending: [
    [1.01, 0.91938, -0.17032],
    [1.02, 0.96048, -0.17711],
    [1.03, 0.98061, -0.18381],
    [1.05, 0.98137, -0.19653],
    [1.07, 0.97527, -0.20958],
    [1.1, 0.9512, -0.23757],
    [1.2, 0.97098, -0.21796],
    [1.5, 0.93836, -0.25759],
    [2, 0.90879, -0.28598],
  ],
  torsion: [
    [1.09, 0.90337, -0.12692],
    [1.2, 0.83425, -0.21649],
    [1.33, 0.84897, -0.23161],
    [2, 0.86331, -0.23865],
  ],
};

/** Stress concentration of a shoulder. @param {'bending' | 'torsion'} load @param {number} large @param {number} small @param {number} r */
function shoulder(load, large, small, r) {
  const rows = SHOULDER[load];
  const step = Math.min(Math.max(large / small, rows[0][0]), rows[rows.length - 1][0]);
  const above = rows.findIndex((row) => row[0] >= step);
  const b = rows[above];
  const a = rows[Math.max(0, above - 1)];
  const x = b[0] === a[0] ? 0 : (step - a[0]) / (b[0] - a[0]);
  return (a[1] + x * (b[1] - a[1])) * (r / small) ** (a[2] + x * (b[2] - a[2]));
}

/** Fatigue notch factor, Neuber's fit in kpsi and inches. @param {'bending' | 'torsion'} load @param {number} kt @param {number} r @param {number} sut */
function notch(load, kt, r, sut) {
  const s = Math.min(sut / 6.894757293168e6, 200);
  const c = load === 'bending' ? [0.246, -0.00308, 1.51e-5, -2.67e-8] : [0.19, -0.00251, 1.35e-5, -2.67e-8];
  const rootA = c[0] + c[1] * s + c[2] * s ** 2 + c[3] * s ** 3;
  return 1 + (Math.max(kt, 1) - 1) / (1 + rootA / Math.sqrt(r / 0.0254));
}

/** Factor of reliability by how many of a hundred shall last; 99 where nothing is said. @type {Record<string, number>} */
const RELIABILITY = { 50: 1, 90: 0.897, 95: 0.868, 99: 0.814, 99.9: 0.753 };

/** Endurance limit: machined, half the tensile strength up to 700 MPa. @param {number} sut @param {number} d @param {number} reliability */
function endurance(sut, d, reliability) {
  const mm = d * 1e3;
  const size = mm <= 51 ? 1.24 * mm ** -0.107 : 1.51 * mm ** -0.157;
  return Math.min(1, 4.51 * (sut / 1e6) ** -0.265) * size * reliability * Math.min(0.5 * sut, 700e6);
}

/**
 * Steps of a bar between each two of its seats. Where a seat is held by a shoulder the bar beside it is thicker than the seat: as thick as
 * the next seat, or a fifth over its own. Else the step may stand anywhere between the two, so at both ends of the gap.
 * @param {object} shaft @returns {{ at: number, d: number, large: number }[]}
 */
function steps(shaft) {
  const seats = Object.values(shaft.seats)
    .map((s) => ({ ...s, at: middle(s.station), d: middle(s.diameter), half: middle(s.width ?? '0 mm') / 2 }))
    .sort((a, b) => a.at - b.at);
  return seats.slice(1).flatMap((right, i) => {
    const left = seats[i];
    const [from, to] = [left.at + left.half, right.at - right.half];
    const shoulders = [
      { here: left.held?.towardEnd === 'shoulder', at: from, d: left.d, other: right.d },
      { here: right.held?.towardStart === 'shoulder', at: to, d: right.d, other: left.d },
    ].filter((s) => s.here);
    if (shoulders.length > 0) {
      return shoulders.map(({ at, d, other }) => ({ at, d, large: other > d ? other : 1.2 * d }));
    }
    const [d, large] = [Math.min(left.d, right.d), Math.max(left.d, right.d)];
    return large - d < 1e-9 ? [] : [from, to].map((at) => ({ at, d, large }));
  });
}

/** @param {object} shaft @returns {{ at: number, d: number, kt: number, kts: number, r: number, name: string }[]} */
function notches(shaft) {
  const bar = profile(shaft);
  /** @type {{ at: number, d: number, kt: number, kts: number, r: number, name: string }[]} */
  const out = [];
  for (const { at, d, large } of steps(shaft)) {
    const said = Object.values(shaft.notches ?? {}).find(
      (n) => n.kind === 'shoulder' && Math.abs(middle(n.station) - at) < 1e-3,
    );
    const r = said === undefined ? 0.02 * d : middle(said.radius);
    const kt = shoulder('bending', large, d, r);
    out.push({ at, d, kt, kts: shoulder('torsion', large, d, r), r, name: 'step' });
  }
  for (const seat of Object.values(shaft.seats)) {
    for (const [end, side] of [
      ['towardStart', -1],
      ['towardEnd', 1],
    ]) {
      if (seat.held?.[end] !== 'retaining ring') continue;
      const d = middle(seat.diameter);
      // Shigley, example 7-2: a flat-bottomed groove in a shaft; the ring sits in the bar of the seat that it holds.
      out.push({
        at: middle(seat.station) + (Number(side) * middle(seat.width)) / 2,
        d: GROOVES[Math.round(d * 1e3)],
        kt: 4.3,
        kts: 2.65,
        r: 0.006 * d,
        name: 'ring groove',
      });
    }
  }
  for (const n of Object.values(shaft.notches ?? {})) {
    if (!n.kind.startsWith('keyway')) continue;
    const at = middle(n.station);
    const d = bar.find((s) => s.from <= at && at <= s.to)?.d ?? 0;
    out.push({ at, d, kt: 2.14, kts: 3, r: 0.02 * d, name: 'keyway' });
  }
  return out;
}

/**
 * Least reserve of a shaft against fatigue under steady torque, turning.
 * @param {object} shaft @param {{ seat: string, at: g.Vec, force: g.Vec }[]} forces @param {number} torque
 * @param {[number, number]} loaded stations between which the torque runs @param {string} [lasting] of a hundred
 */
export function weakest(shaft, forces, torque, loaded, lasting = '99') {
  const sut = TENSILE[shaft.material];
  const marks = notches(shaft);
  const line = bend(
    shaft,
    forces,
    BEARING_STIFFNESS,
    marks.map((n) => n.at),
  );
  const rows = marks.map((n) => {
    const turning = n.at > loaded[0] - 1e-9 && n.at < loaded[1] + 1e-9 ? torque : 0;
    const swing = (notch('bending', n.kt, n.r, sut) * 32 * line.moment(n.at)) / (Math.PI * n.d ** 3);
    const mean = (Math.sqrt(3) * notch('torsion', n.kts, n.r, sut) * 16 * turning) / (Math.PI * n.d ** 3);
    return {
      name: n.name,
      at: n.at,
      d: n.d,
      swing,
      mean,
      reserve: 1 / (swing / endurance(sut, n.d, RELIABILITY[lasting]) + mean / sut),
    };
  });
  return rows.reduce((least, row) => (row.reserve < least.reserve ? row : least));
}
