import { BEARING_FACTORS } from './bearing-factors.ts';
import { BEARING_LIMITS } from './bearing-limits.ts';
import { BEARING_RINGS } from './bearing-rings.ts';
import { BEARINGS } from './bearings.ts';
import { BELT_PROFILES } from './belt-profiles.ts';
import { BEVEL_TEETH } from './bevel-teeth.ts';
import { BODY_MOVEMENTS } from './body-movements.ts';
import { BOLT_CLASSES } from './bolt-classes.ts';
import { BRIEF_DEFAULTS } from './brief-defaults.ts';
import { CHAIN_LIMITS_TABLE } from './chain-limits.ts';
import { CHAIN_OILING, CHAIN_WEAR } from './chain-oil.ts';
import { CHAIN_SERVICE } from './chain-service.ts';
import { CHAIN_SIZES } from './chain-sizes.ts';
import { COUPLING_LIMITS } from './coupling-limits.ts';
import { CUTTING_RULES } from './cutting-rules.ts';
import { CYCLE_HWFET } from './cycle-hwfet.ts';
import { CYCLE_NEDC, CYCLE_UDC } from './cycle-nedc.ts';
import { CYCLE_R47 } from './cycle-r47.ts';
import { CYCLE_UDDS } from './cycle-udds.ts';
import { CYCLE_WMTC_PART1 } from './cycle-wmtc-part1.ts';
import { CYCLE_WMTC_PART2 } from './cycle-wmtc-part2.ts';
import { CYCLE_WMTC_PART3 } from './cycle-wmtc-part3.ts';
import { DRAG_AREAS } from './drag-areas.ts';
import { FIT_FRICTION } from './fit-friction.ts';
import { FIT_METALS } from './fit-metals.ts';
import { GEAR_SERVICE, LEWIS_FORM } from './gear-factors.ts';
import { GEAR_STEELS } from './gear-steels.ts';
import { HUB_LIMITS } from './hub-limits.ts';
import { HUB_METALS } from './hub-metals.ts';
import { INCH_FITS } from './inch-fits.ts';
import { ISO_DEVIATIONS } from './iso-deviations.ts';
import { ISO_GRADES } from './iso-grades.ts';
import { JOINT_LIMITS } from './joint-limits.ts';
import { KEY_SIZES } from './key-sizes.ts';
import { MESH_LIMITS } from './mesh-limits.ts';
import { MOTORCYCLE_ROAD_LOAD } from './motorcycle-road-load.ts';
import { PLATE_METALS } from './plate-metals.ts';
import { RING_GROOVES } from './ring-grooves.ts';
import { ROLLING_RESISTANCE } from './rolling-resistance.ts';
import { SETSCREWS } from './setscrews.ts';
import { SHAFT_LIMITS } from './shaft-limits.ts';
import { SHAFT_NOTCHES } from './shaft-notches.ts';
import { SHAFT_RELIABILITY } from './shaft-reliability.ts';
import { SHAFT_STEELS } from './shaft-steels.ts';
import { SPROCKET_PRACTICE } from './sprocket-practice.ts';
import { STAGE_EFFICIENCIES } from './stage-efficiencies.ts';
import { rowInSi, type Table } from './table.ts';
import { THREAD_SIZES } from './thread-sizes.ts';
import { TYRE_ALPHA_WIDTHS } from './tyre-alpha-widths.ts';
import { TYRE_FRICTION } from './tyre-friction.ts';
import { TYRE_GROWTH } from './tyre-growth.ts';
import { TYRE_LOAD_INDICES } from './tyre-load-indices.ts';
import { TYRE_SPEED_SYMBOLS } from './tyre-speed-symbols.ts';
import { USUAL_DUTY } from './usual-duty.ts';

const TABLES: readonly Table[] = [
  BEARING_FACTORS,
  BEARING_LIMITS,
  BEARINGS,
  BEVEL_TEETH,
  BODY_MOVEMENTS,
  BOLT_CLASSES,
  BRIEF_DEFAULTS,
  CHAIN_LIMITS_TABLE,
  BELT_PROFILES,
  CHAIN_OILING,
  CHAIN_SERVICE,
  CHAIN_SIZES,
  CHAIN_WEAR,
  GEAR_SERVICE,
  GEAR_STEELS,
  LEWIS_FORM,
  COUPLING_LIMITS,
  HUB_LIMITS,
  HUB_METALS,
  JOINT_LIMITS,
  KEY_SIZES,
  ISO_GRADES,
  ISO_DEVIATIONS,
  INCH_FITS,
  FIT_METALS,
  FIT_FRICTION,
  CUTTING_RULES,
  BEARING_RINGS,
  MESH_LIMITS,
  CYCLE_HWFET,
  CYCLE_NEDC,
  CYCLE_R47,
  CYCLE_UDC,
  CYCLE_UDDS,
  CYCLE_WMTC_PART1,
  CYCLE_WMTC_PART2,
  CYCLE_WMTC_PART3,
  DRAG_AREAS,
  MOTORCYCLE_ROAD_LOAD,
  PLATE_METALS,
  RING_GROOVES,
  ROLLING_RESISTANCE,
  SETSCREWS,
  SHAFT_LIMITS,
  SHAFT_NOTCHES,
  SHAFT_RELIABILITY,
  SHAFT_STEELS,
  SPROCKET_PRACTICE,
  STAGE_EFFICIENCIES,
  THREAD_SIZES,
  TYRE_ALPHA_WIDTHS,
  TYRE_FRICTION,
  TYRE_GROWTH,
  TYRE_LOAD_INDICES,
  TYRE_SPEED_SYMBOLS,
  USUAL_DUTY,
];

const BY_ID: ReadonlyMap<string, Table> = new Map(TABLES.map((table) => [table.id, table]));

/** All tables, by name. */
export function listTables(): readonly Table[] {
  return TABLES;
}

/** The table of this name, or undefined. */
export function tableNamed(id: string): Table | undefined {
  return BY_ID.get(id);
}

/**
 * A row in SI units, by column.
 * @param address "<table>/<key>", such as "chain-sizes/12B"
 * @throws RangeError when there is no such table, naming those there are; OffTableError when it has no such row, naming the nearest.
 */
export function tableRow(address: string): Readonly<Record<string, number>> {
  const slash = address.indexOf('/');
  const id = slash < 0 ? address : address.slice(0, slash);
  const table = BY_ID.get(id);
  if (table === undefined || slash < 0)
    throw new RangeError(
      `"${address}" is not a row of a table; it is written <table>/<key>, and the tables are ${[...BY_ID.keys()].join(', ')}.`,
    );
  return rowInSi(table, address.slice(slash + 1)) as Readonly<Record<string, number>>;
}
