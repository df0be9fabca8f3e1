/** Parts that a first layout picks from. */

/** A deep-groove bearing, m: bore, outside, width. */
export interface BearingSize {
  readonly bore: number;
  readonly outside: number;
  readonly width: number;
}

/** Bearings of series 62, bores 25 to 60 mm, mm. ISO 15 boundary dimensions, read in SKF, Rolling bearings, 17000/1 EN (2018), table 1.1. */
const SERIES_62: readonly (readonly [number, number, number])[] = [
  [25, 52, 15],
  [30, 62, 16],
  [35, 72, 17],
  [40, 80, 18],
  [45, 85, 19],
  [50, 90, 20],
  [55, 100, 21],
  [60, 110, 22],
];

export const BEARINGS: readonly BearingSize[] = SERIES_62.map(([bore, outside, width]) => ({
  bore: bore / 1000,
  outside: outside / 1000,
  width: width / 1000,
}));

/** Straight bevel pairs about the ratios that are stocked or come out of scrapped gearboxes: common practice; 14:33 is the demo's. */
export const BEVEL_PAIRS: readonly (readonly [driver: number, driven: number])[] = [
  [20, 20],
  [16, 21],
  [16, 25],
  [15, 22],
  [15, 31],
  [14, 33],
  [15, 37],
  [15, 46],
];

/** Modules of ISO 54, series 1, that such pairs come in, m. */
export const MODULES: readonly number[] = [3, 4, 5, 6, 8, 10, 12].map((module) => module / 1000);

/** Chain sizes by rising pitch, of those that any dealer has. */
export const CHAINS = ['428', '520', '530', '12B', '16B', '20B', '24B'] as const;

/** Gear ratios taken for a box nobody has counted, first gear first. Common practice: five-speed motorcycle boxes. */
export const UNKNOWN_GEARS: readonly string[] = ['2.4..3.2', '1.6..2.1', '1.2..1.6', '1.0..1.3', '0.85..1.05'];

/** Shear stress by torque alone that a first shaft is sized for, Pa. Common practice: leaves room for bending, sharp steps, keys and shocks. */
export const SHAFT_SHEAR = 30e6;

/** Steel of the first shafts, a row of the table of steels: a bar that is sold ready hardened. */
export const SHAFT_STEEL = '42CrMo4-tempered-to-100';

/** Tangential force over face width and module that a first bevel pair is sized for, Pa. Common practice for hardened steel. */
export const TOOTH_LOAD = 70e6;

/**
 * Reserve of a chain over the pull of full throttle in first gear: what check `chain.pull` asks by default over a start with a shock,
 * at the worse end of the shock that a blank stands for.
 */
export const PULL_RESERVE = 2.5;

/** Width taken for a tyre known by its roll-out alone, as a part of its outside diameter. Common practice. */
export const UNKNOWN_WIDTH = 0.2;

/** Room taken round the tyre for speed and wear of its shape, as parts of its radius and width. Common practice. */
export const TYRE_ROOM = { radius: 1.03, width: 1.06 } as const;
