// Quantities of build.json as plain numbers in metres, kilograms, seconds and radians. A range gives its middle.

/** @type {Record<string, number>} */
const UNITS = {
  '': 1,
  '%': 0.01,
  mm: 1e-3,
  cm: 1e-2,
  m: 1,
  km: 1e3,
  in: 0.0254,
  kg: 1,
  deg: Math.PI / 180,
  rad: 1,
  N: 1,
  kN: 1e3,
  'N/mm': 1e3,
  'N.m': 1,
  'lbf.ft': 1.3558179483,
  'N.m/rad': 1,
  'kg.m2': 1,
  m2: 1,
  rpm: Math.PI / 30,
  'rad/s': 1,
  'km/h': 1 / 3.6,
  s: 1,
};

/** @param {string} word a number, a fraction or both, as `10 1/4` */
function plain(word) {
  return word
    .trim()
    .split(/\s+/)
    .reduce((sum, part) => {
      const [top, under] = part.split('/');
      return sum + Number(top) / Number(under ?? 1);
    }, 0);
}

/**
 * The two ends of a quantity as written in build.json.
 * @param {string} text
 * @returns {[number, number]}
 */
export function ends(text) {
  const found = /^([-\d./ ]+?)\s*([a-zA-Z%][\w./%]*)?$/.exec(text.trim());
  if (found === null) throw new Error(`Not a quantity: ${text}`);
  const scale = UNITS[found[2] ?? ''];
  if (scale === undefined) throw new Error(`Unknown unit in ${text}`);
  const [low = '', high = low] = (found[1] ?? '').split('..');
  return [plain(low) * scale, plain(high) * scale];
}

/**
 * Middle of a quantity, in base units.
 * @param {string} text
 */
export function middle(text) {
  const [low, high] = ends(text);
  return (low + high) / 2;
}

/** Teeth ratio or plain ratio: `61:20` or `2.64`. @param {string} text */
export function ratio(text) {
  const [over, under] = text.split(':');
  return Number(over) / Number(under ?? 1);
}
