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
import { idlerPlane, mesh, overrun, place, slackSide } from './idler.ts';
import { clutch, grip, lift, speedometer, tip } from './road.ts';
import { climb, climbGrip, cycle, reach, sprint } from './road-targets.ts';
import { bar, swing } from './shop.ts';
import { hand } from './spiral.ts';
import { bearingLocates, thrustPasses } from './strength/bearing-hold.ts';
import { bearingLasts } from './strength/bearing-life.ts';
import { bearingRolls, bearingStands, bearingTilts, bearingTurns } from './strength/bearing-limits.ts';
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
  bearingLasts,
  bearingStands,
  bearingRolls,
  bearingTurns,
  bearingTilts,
  bearingLocates,
  thrustPasses,
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
