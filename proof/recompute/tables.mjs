// Numbers copied from catalogues and handbooks, each with where it comes from.

export const PRESSURE_ANGLE = (20 * Math.PI) / 180;
/** Taborek by way of Wong: 95 to 97 % for each of two pairs of gears. */
export const BOX_EFFICIENCY = (0.9 + 0.97) / 2;
/** Middles of published ranges: vehicle.efficiency.json. @type {Record<string, number>} */
export const EFFICIENCY = { chain: (0.96 + 0.99) / 2, spur: (0.96 + 0.99) / 2, belt: (0.96 + 0.98) / 2 };

/**
 * ISO 606 and ASME B29.1 (chain.sizes.json): pitch. Width over the riveted pin and what the fastener of a joining link adds on
 * one side: ISO 606, b4 and b7, from memory.
 * @type {Record<string, { pitch: number, pin: number, fastener: number }>}
 */
export const CHAINS = {
  '60': { pitch: 0.01905, pin: 0.0259, fastener: 0.0046 },
  '10B': { pitch: 0.015875, pin: 0.0196, fastener: 0.0041 },
  '12B': { pitch: 0.01905, pin: 0.0227, fastener: 0.0046 },
  '16B': { pitch: 0.0254, pin: 0.0361, fastener: 0.0054 },
};
