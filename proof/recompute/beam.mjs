// Straight stepped shaft on springs: two-node beam elements with shear (Timoshenko, by Przemieniecki), one plane at a time.

/** Plain Gaussian elimination with pivoting. @param {number[][]} matrix @param {number[]} right */
function solve(matrix, right) {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]]);
  for (let c = 0; c < n; c += 1) {
    let best = c;
    for (let r = c + 1; r < n; r += 1) if (Math.abs(rows[r][c]) > Math.abs(rows[best][c])) best = r;
    [rows[c], rows[best]] = [rows[best], rows[c]];
    for (let r = c + 1; r < n; r += 1) {
      const part = rows[r][c] / rows[c][c];
      if (part === 0) continue;
      for (let k = c; k <= n; k += 1) rows[r][k] -= part * rows[c][k];
    }
  }
  const out = new Array(n).fill(0);
  for (let r = n - 1; r >= 0; r -= 1) {
    let sum = rows[r][n];
    for (let k = r + 1; k < n; k += 1) sum -= rows[r][k] * out[k];
    out[r] = sum / rows[r][r];
  }
  return out;
}

/**
 * One plane of a shaft: displacement, slope and bending moment at its nodes, and the forces of the springs.
 * @param {{ nodes: number[], diameter: (from: number, to: number) => number, youngs: number, shear: number,
 *   springs: { at: number, stiffness: number }[],
 *   loads: { at: number, force: number, couple: number }[] }} shaft stations in metres; a couple turns x toward the deflection
 */
export function bendPlane(shaft) {
  const { nodes } = shaft;
  const size = 2 * nodes.length;
  const matrix = Array.from({ length: size }, () => new Array(size).fill(0));
  const right = new Array(size).fill(0);
  const where = (/** @type {number} */ at) => {
    const found = nodes.findIndex((x) => Math.abs(x - at) < 1e-9);
    if (found < 0) throw new Error(`No node at ${at}`);
    return found;
  };
  const elements = nodes.slice(1).map((to, i) => {
    const from = nodes[i];
    const l = to - from;
    const d = shaft.diameter(from, to);
    const ei = (shaft.youngs * Math.PI * d ** 4) / 64;
    // Cowper 1966, round section, Poisson's ratio 0.3: 6 (1 + ν) / (7 + 6 ν).
    const ga = ((shaft.shear * Math.PI * d ** 2) / 4) * (7.8 / 8.8);
    const f = (12 * ei) / (ga * l * l);
    const s = ei / (l ** 3 * (1 + f));
    const k = [
      [12 * s, 6 * l * s, -12 * s, 6 * l * s],
      [6 * l * s, (4 + f) * l * l * s, -6 * l * s, (2 - f) * l * l * s],
      [-12 * s, -6 * l * s, 12 * s, -6 * l * s],
      [6 * l * s, (2 - f) * l * l * s, -6 * l * s, (4 + f) * l * l * s],
    ];
    for (let a = 0; a < 4; a += 1) for (let b = 0; b < 4; b += 1) matrix[2 * i + a][2 * i + b] += k[a][b];
    return k;
  });
  for (const spring of shaft.springs) matrix[2 * where(spring.at)][2 * where(spring.at)] += spring.stiffness;
  for (const load of shaft.loads) {
    right[2 * where(load.at)] += load.force;
    right[2 * where(load.at) + 1] += load.couple;
  }
  const moved = solve(matrix, right);
  const endMoments = elements.map((k, i) =>
    [1, 3].map((row) => k[row].reduce((sum, value, b) => sum + value * moved[2 * i + b], 0)),
  );
  return {
    move: (/** @type {number} */ at) => moved[2 * where(at)],
    slope: (/** @type {number} */ at) => moved[2 * where(at) + 1],
    reaction: (/** @type {{ at: number, stiffness: number }} */ s) => -s.stiffness * moved[2 * where(s.at)],
    /** Bending moment just beside a node, on the side of its element. */
    moment: (/** @type {number} */ at, /** @type {'before' | 'after'} */ side) => {
      const n = where(at);
      const after = side === 'after' ? endMoments[n] : undefined;
      if (after !== undefined) return -after[0];
      return n > 0 ? endMoments[n - 1][1] : 0;
    },
  };
}
