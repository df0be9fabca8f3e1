// Numbers copied from catalogues and handbooks, each with where it comes from.

export const PRESSURE_ANGLE = (20 * Math.PI) / 180;
/** Taborek by way of Wong: 95 to 97 % for each of two pairs of gears. */
export const BOX_EFFICIENCY = (0.9 + 0.97) / 2;
/** Middles of published ranges: vehicle.efficiency.json. @type {Record<string, number>} */
export const EFFICIENCY = { chain: (0.96 + 0.99) / 2, spur: (0.96 + 0.99) / 2, belt: (0.96 + 0.98) / 2 };

/**
 * ISO 606 and ASME B29.1 (chain.sizes.json): pitch and height of the inner plates. Width over the riveted pin and what the fastener of a joining link adds on
 * one side: ISO 606, b4 and b7, from memory.
 * @type {Record<string, { pitch: number, plate: number, pin: number, fastener: number }>}
 */
export const CHAINS = {
  60: { pitch: 0.01905, plate: 0.0181, pin: 0.0259, fastener: 0.0046 },
  '10B': { pitch: 0.015875, plate: 0.01473, pin: 0.0196, fastener: 0.0041 },
  '12B': { pitch: 0.01905, plate: 0.01613, pin: 0.0227, fastener: 0.0046 },
  '16B': { pitch: 0.0254, plate: 0.02108, pin: 0.0361, fastener: 0.0054 },
};

/** EN 10083-2 and -3 by thickness (shaft.materials.json): tensile strength, Pa. @type {Record<string, number>} */
export const TENSILE = {
  'C45E-normalized-to-100': 580e6,
  'C45E-tempered-to-40': 650e6,
  '42CrMo4-tempered-to-40': 1000e6,
  '42CrMo4-tempered-to-100': 900e6,
};

/** DIN 471, diameter of the groove by the diameter of the shaft, from memory. @type {Record<string, number>} */
export const GROOVES = { 20: 0.019, 25: 0.0239, 30: 0.0286, 35: 0.033, 40: 0.0375, 45: 0.0425, 50: 0.047 };

/** Lowest static rating that makers print (bearing.deep-groove.json, C0 and textbook C0), N. @type {Record<string, number>} */
export const STATIC_RATING = { 6206: 10000 };

/** Deep groove ball bearings keep their life up to so much slope; gears and sprockets (1 in 300) mesh well up to so much. */
export const SLOPES = { bearing: 0.001, gear: 0.0005, sprocket: 1 / 300 };

/** Stiffness of a bearing across its shaft where nothing is said: 30 000 to 200 000 N/mm, stated default. */
export const BEARING_STIFFNESS = (30e6 + 200e6) / 2;

/** Play of one body against another, stated defaults of the project: across and along, m. @type {Record<string, number>} */
export const MOVES = {
  'engine swinging arm': Math.hypot(0.005, 0.004),
  'engine subframe': Math.hypot(0.003, 0.003),
  'subframe swinging arm': Math.hypot(0.003, 0.003),
};
