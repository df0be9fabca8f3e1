// Webs and seats of bearings in their plates, by hand from build.json.
import { middle } from './units.mjs';

/** Metal beside a hole, in thicknesses: rules that cutting shops publish; water leaves 2 mm at least. @type {Record<string, number>} */
const WEB = { 'plasma cut': 1.5, 'laser cut': 1, 'waterjet cut': 1 };
/** How far a cut size may be off each way, m. @type {Record<string, number>} */
const OFF = { 'plasma cut': 0.5e-3, 'laser cut': 0.1e-3, 'waterjet cut': 0.05e-3 };
/** Width of grade 7, and upper limits of holes by class, microns, over 50 to 80 mm; ring limit over 50 to 80 mm (printed tables). */
const WIDTH_7 = 30;
const UPPER = { G7: 40, H7: 30, J7: 18 };
const RING_BELOW = 13;
/** Growth of aluminium less that of bearing steel, per degree; from the shop's 20 °C to 80 °C. */
const GROWS = (23.5e-6 - 12.5e-6) * (80 - 20);

/**
 * Reserves of webs, cut seats and seats in hot aluminium, by the ids of their findings.
 * @param {object} build with the sizes of its bearings filled in
 * @returns {Record<string, number>}
 */
export function seats(build) {
  /** @type {Record<string, number>} */
  const out = {};
  for (const [id, shaft] of Object.entries(build.path.shafts))
    for (const [key, seat] of Object.entries(shaft.seats)) {
      const plate = build.path.plates?.[seat.plate];
      if (seat.kind !== 'bearing' || !plate) continue;
      const address = `/path/shafts/${id}/seats/${key}`;
      const size = middle(seat.outside);
      const sheet = middle(plate.thickness) / (plate.sheets ?? 1);
      const web = (middle(plate.width) - middle(seat.opening ?? seat.outside)) / 2;
      out[`plate.cut:${address}`] = web / (sheet * (WEB[plate.cut] ?? WEB['laser cut']));
      const off = OFF[seat.seating?.made];
      const inTable = size > 0.05 && size <= 0.08;
      if (off !== undefined && inTable) out[`seat.made:${address}`] = (WIDTH_7 * 1e-6) / (2 * off);
      const upper = UPPER[seat.seating?.plate];
      if (plate.material === 'aluminium' && upper !== undefined && inTable)
        out[`seat.hot:${address}`] = (UPPER.G7 + RING_BELOW) / (upper + RING_BELOW + size * GROWS * 1e6);
    }
  return out;
}
