import { gearAdjuster, lineAdjuster, settingOrder, slackAdjuster, takeUpFitting, takeUpWear } from './adjusters.ts';
import { beltAngle, plane, seat } from './alignment.ts';
import { armRub, armRubSlack, armSlack, armSlot, armWrap } from './arm.ts';
import { close, enter, slide } from './assembly.ts';
import { meshOnBodies, sidePull, slackOnBodies, supports, wheelSupports } from './bodies.ts';
import { brakeNoted, brakePath, brakePlace } from './brake.ts';
import { cruise, forward, pull as pullTarget, topSpeed } from './brief.ts';
import { clear, fit, links, parallel, pull, slack, slope, wrap } from './chain.ts';
import type { Check } from './check.ts';
import { access, room, touch, touchWheel } from './clearance.ts';
import { even, jointAngle, takes } from './coupling.ts';
import { beltFit, centres, face, meet, undercut } from './gears.ts';
import { guardHold, guardReach, guardToe } from './guard.ts';
import { hubPreload, hubSlip, hubThread } from './hub/flange.ts';
import { hubKeyway } from './hub/keyway.ts';
import { hubLocked } from './hub/locked.ts';
import { hubAlone, hubFit, hubNamed } from './hub/named.ts';
import { hubPossible } from './hub/possible.ts';
import { hubRunning } from './hub/running.ts';
import { hubSize } from './hub/sizes.ts';
import { hubStandard } from './hub/standard.ts';
import { hubTorque } from './hub/torque.ts';
import { idlerPlane, mesh, overrun, place, slackSide } from './idler.ts';
import { mountLine, mountMoves, mountSlack } from './mounts.ts';
import { clutch, grip, lift, speedometer, tip } from './road.ts';
import { climb, climbGrip, cycle, reach, sprint } from './road-targets.ts';
import { seatInPlate, seatOnShaft } from './seating/fits.ts';
import { plateHolds } from './seating/hold.ts';
import { seatLocates, seatLocatesTurning } from './seating/made.ts';
import { seatFloats, seatWhenCold, seatWhenHot, seatWhenHotTurning } from './seating/warm.ts';
import { plateCuts } from './seating/web.ts';
import { bar, barSize, swing } from './shop.ts';
import { hand } from './spiral.ts';
import { bearingLocates, thrustPasses } from './strength/bearing-hold.ts';
import { bearingLasts } from './strength/bearing-life.ts';
import { bearingRolls, bearingStands, bearingTilts, bearingTurns } from './strength/bearing-limits.ts';
import { beltTeeth } from './strength/belts.ts';
import { chainBreaks, chainJams } from './strength/chain-broken.ts';
import { chainLasts, chainWears } from './strength/chain-life.ts';
import { chainBores, chainOiled, chainRuns, chainServes } from './strength/chain-limits.ts';
import { gearDonor, gearFlank } from './strength/gear-donor.ts';
import { gearCard, gearOiled, gearPattern } from './strength/gear-state.ts';
import { gearBends, gearMake, gearPeaks, gearPits } from './strength/gears.ts';
import { joinBends, joinCentres, joinDraws, joinHolds, joinPasses } from './strength/joins.ts';
import { shaftLasts } from './strength/shaft-life.ts';
import { shaftSlopes, shaftTwists } from './strength/shaft-moves.ts';
import { shaftWhirls } from './strength/shaft-speed.ts';
import { shaftEndures, shaftYields } from './strength/shaft-strength.ts';
import { meshMoves } from './strength-mesh.ts';
import { cushion, firing } from './strength-torsion.ts';
import { stroke } from './stroke.ts';
import { unitSpeed, unitTorque } from './unit.ts';

/** Every check, in the order in which rows stand in the table of reserves. */
export const CHECKS: readonly Check[] = [
  forward,
  sidePull,
  pull,
  fit,
  slack,
  wrap,
  clear,
  slope,
  links,
  parallel,
  stroke,
  meet,
  face,
  undercut,
  centres,
  beltFit,
  unitTorque,
  unitSpeed,
  topSpeed,
  cruise,
  pullTarget,
  reach,
  climb,
  climbGrip,
  sprint,
  grip,
  lift,
  tip,
  clutch,
  cycle,
  speedometer,
  swing,
  bar,
  barSize,
  slackAdjuster,
  gearAdjuster,
  lineAdjuster,
  takeUpFitting,
  takeUpWear,
  settingOrder,
  slide,
  enter,
  close,
  plane,
  beltAngle,
  seat,
  hand,
  mesh,
  place,
  slackSide,
  overrun,
  idlerPlane,
  jointAngle,
  even,
  takes,
  supports,
  wheelSupports,
  meshOnBodies,
  slackOnBodies,
  mountMoves,
  mountLine,
  mountSlack,
  room,
  touch,
  touchWheel,
  access,
  armSlack,
  armWrap,
  armRub,
  armRubSlack,
  armSlot,
  shaftYields,
  shaftEndures,
  shaftLasts,
  shaftSlopes,
  shaftWhirls,
  shaftTwists,
  joinCentres,
  joinDraws,
  joinHolds,
  joinPasses,
  joinBends,
  hubNamed,
  hubPossible,
  hubTorque,
  hubRunning,
  hubKeyway,
  hubSize,
  hubFit,
  hubAlone,
  hubStandard,
  hubSlip,
  hubPreload,
  hubThread,
  hubLocked,
  bearingLasts,
  bearingStands,
  bearingRolls,
  bearingTurns,
  bearingTilts,
  bearingLocates,
  thrustPasses,
  chainServes,
  chainLasts,
  chainWears,
  chainRuns,
  chainOiled,
  chainBores,
  chainBreaks,
  chainJams,
  beltTeeth,
  gearBends,
  gearPits,
  gearPeaks,
  gearMake,
  gearDonor,
  gearFlank,
  gearCard,
  gearPattern,
  gearOiled,
  plateCuts,
  plateHolds,
  seatLocates,
  seatLocatesTurning,
  seatOnShaft,
  seatInPlate,
  seatWhenHot,
  seatWhenHotTurning,
  seatWhenCold,
  seatFloats,
  meshMoves,
  firing,
  cushion,
  brakePlace,
  brakeNoted,
  brakePath,
  guardReach,
  guardToe,
  guardHold,
];
