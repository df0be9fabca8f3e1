import { BEARING_CASES } from './bearing.ts';
import { BELT_CASES } from './belt.ts';
import { BELT_STRENGTH_CASES } from './belt-strength.ts';
import { BEVEL_CASES } from './bevel.ts';
import type { ProofCase } from './case.ts';
import { CHAIN_CASES } from './chain.ts';
import { CHAIN_CONSTRUCTED } from './chain-constructed.ts';
import { CHAIN_STRENGTH_CASES } from './chain-strength.ts';
import { CLEARANCE_CASES } from './clearance.ts';
import { COUPLING_CASES } from './coupling.ts';
import { COUPLING_CONSTRUCTED } from './coupling-constructed.ts';
import { FIT_CASES } from './fit.ts';
import { GEAR_STRENGTH_CASES } from './gear-strength.ts';
import { JOINT_CASES } from './joint.ts';
import { JOINT_BOLT_CASES } from './joint-bolts.ts';
import { JOINT_WELD_CASES } from './joint-welds.ts';
import { LAYOUT_CASES } from './layout.ts';
import { LAYOUT_LIBRARY } from './layout-library.ts';
import { LAYOUT_READ } from './layout-read.ts';
import { LINE_CASES } from './lines.ts';
import { MEASURE_CASES } from './measure.ts';
import { PLATE_CASES } from './plate.ts';
import { RATIO_CASES } from './ratio.ts';

import { ROAD_CASES } from './road.ts';

import { RUNOUT_CASES } from './runout.ts';
import { RUNOUT_LIMIT_CASES } from './runout-limits.ts';
import { SHAFT_CASES } from './shaft.ts';
import { SHAFT_MORE_CASES } from './shaft-more.ts';

import { SPUR_CASES } from './spur.ts';
import { TORSION_CASES } from './torsion.ts';
import { TRAIN_CASES } from './trains.ts';
import { VEHICLE_CASES } from './vehicle.ts';

/** Cases by topic, in the order of the page. */
export const TOPICS: readonly { readonly topic: string; readonly cases: readonly ProofCase[] }[] = [
  { topic: 'Chain drives', cases: [...CHAIN_CASES, ...CHAIN_CONSTRUCTED, ...CHAIN_STRENGTH_CASES] },
  { topic: 'Toothed belts', cases: [...BELT_CASES, ...BELT_STRENGTH_CASES] },
  { topic: 'Bevel gears', cases: BEVEL_CASES },
  { topic: 'Spur gears', cases: SPUR_CASES },
  { topic: 'Strength of gears', cases: GEAR_STRENGTH_CASES },
  { topic: 'Shafts', cases: [...SHAFT_CASES, ...SHAFT_MORE_CASES] },
  { topic: 'Bearings', cases: BEARING_CASES },
  { topic: 'Fits, press fits, plates and seats', cases: [...FIT_CASES, ...PLATE_CASES] },
  { topic: 'Turning against itself', cases: TORSION_CASES },
  { topic: 'Keys, splines, bolts and welds', cases: [...JOINT_CASES, ...JOINT_BOLT_CASES, ...JOINT_WELD_CASES] },
  { topic: 'Joints and couplings', cases: [...COUPLING_CASES, ...COUPLING_CONSTRUCTED] },
  {
    topic: 'Layout: alignment, wear, idlers, arms, spiral bevels, clearance',
    cases: [...LINE_CASES, ...CLEARANCE_CASES, ...LAYOUT_CASES],
  },
  { topic: 'Layout, more examples and library results', cases: [...LAYOUT_READ, ...LAYOUT_LIBRARY] },
  { topic: 'Ratios and power', cases: RATIO_CASES },
  { topic: 'Gear trains, change gears and wear cycles', cases: TRAIN_CASES },
  { topic: 'Tyres, engine curves and pull', cases: VEHICLE_CASES },
  { topic: 'The vehicle on the road', cases: ROAD_CASES },
  { topic: 'Run-out', cases: [...RUNOUT_CASES, ...RUNOUT_LIMIT_CASES] },
  { topic: 'Measured in the workshop', cases: MEASURE_CASES },
];

export const ALL_CASES: readonly ProofCase[] = TOPICS.flatMap(({ cases }) => cases);
