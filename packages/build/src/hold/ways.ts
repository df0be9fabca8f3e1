/** Which changes may make which check hold. A new check gets its line here, and new changes a file in `ways/`. */
import type { CheckId } from '../assess/check-ids.ts';
import type { Way } from './ladder.ts';
import { moreTravel, setOtherwise } from './ways/adjusters.ts';
import { lighterBearing, oneHeld, otherSeal, strongerBearing } from './ways/bearings.ts';
import { betterBelt, eitherLarger, guarded, oiledBetter, riveted } from './ways/chain-care.ts';
import {
  idlerIntoPlane,
  intoPlane,
  nearerLoads,
  otherLinks,
  setParallel,
  strongerChain,
  tensioned,
} from './ways/chains.ts';
import { movedApart } from './ways/clearance.ts';
import { coarserTeeth, harderGears, housed, newPair, truerTeeth, widerFace } from './ways/gears.ts';
import { closedIn, finerOpenings, furtherOff, heldIn, toeFin } from './ways/guards.ts';
import { cutFiner, longerPlate, moreSheets, smallerHole, widerPlate } from './ways/holes.ts';
import {
  largerScrews,
  largerWeld,
  locked,
  moreAround,
  moreBolts,
  moreThread,
  rougherFaces,
  strongerBolts,
  tightened,
} from './ways/hub-bolts.ts';
import {
  betterHub,
  betterKey,
  betterPress,
  heldSpline,
  keywayEntered,
  longerInHub,
  notScrewsAlone,
  standardSize,
  thickerUnder,
  widerHub,
  withinHub,
} from './ways/hub-shape.ts';
import { centred, heldAlong, largerJoint, largerSpigot } from './ways/joins.ts';
import { stifferMounts } from './ways/mounts.ts';
import { stifferPlates, strongerPlate } from './ways/plates.ts';
import { loadBack, loadForward, longerBase, lower, otherPivot, wider } from './ways/road.ts';
import { bored, clamped, inSteel, keptFromTurning, moreFloat, otherClass, roomier } from './ways/seats.ts';
import { turnedRound } from './ways/sense.ts';
import { nearerBearings, strongerShaft, thickerShaft } from './ways/shafts.ts';
import { longerBar, thickerBar } from './ways/stock.ts';
import { geared, largerSprockets, lessPull, smallerSprockets } from './ways/train.ts';
import { fasterIdle, softer } from './ways/turning.ts';

const strength: readonly Way[] = [strongerShaft, thickerShaft, nearerBearings, nearerLoads, lessPull];
const stiffness: readonly Way[] = [stifferPlates, thickerShaft, nearerBearings, nearerLoads, lessPull];
const slack: readonly Way[] = [setOtherwise, otherLinks, tensioned];
const takeUp: readonly Way[] = [setOtherwise, moreTravel, otherLinks, tensioned, smallerSprockets];
const throughHub: readonly Way[] = [
  longerInHub,
  widerHub,
  betterKey,
  heldSpline,
  betterHub,
  thickerUnder,
  betterPress,
  moreBolts,
  strongerBolts,
  moreAround,
  largerWeld,
  largerScrews,
  rougherFaces,
  strongerShaft,
];
const teeth: readonly Way[] = [harderGears, truerTeeth, widerFace, coarserTeeth, newPair];

const WAYS: Partial<Readonly<Record<CheckId, readonly Way[]>>> = {
  'path.forward': [turnedRound],
  'chain.pull': [largerSprockets, strongerChain],
  'chain.service': [riveted, largerSprockets, strongerChain],
  'chain.rating': [largerSprockets, strongerChain],
  'chain.wear': [oiledBetter, largerSprockets, strongerChain],
  'chain.speed': [smallerSprockets],
  'chain.oil': [oiledBetter, smallerSprockets],
  'chain.bore': [largerSprockets, eitherLarger],
  'guard.reach': [furtherOff, finerOpenings, closedIn],
  'guard.toe': [toeFin, closedIn],
  'guard.hold': [heldIn],
  'chain.broken': [guarded],
  'chain.jam': [guarded],
  'belt.angle': [setOtherwise, intoPlane],
  'belt.teeth': [betterBelt],
  'gear.bending': teeth,
  'gear.contact': teeth,
  'gear.peak': teeth,
  'gear.make': [newPair],
  'gear.donor': [newPair],
  'gear.flank': [newPair],
  'gear.card': [newPair],
  'gear.pattern': [newPair],
  'gear.oil': [housed],
  'chain.fit': [setOtherwise, otherLinks],
  'chain.slack': slack,
  'chain.wrap': [largerSprockets],
  'chain.clear': [smallerSprockets, setOtherwise],
  'chain.slope': [tensioned],
  'chain.links': [otherLinks],
  'chain.parallel': [setParallel],
  'chain.plane': [setOtherwise, intoPlane],
  'idler.plane': [idlerIntoPlane],
  'mount.moves': [stifferMounts],
  'mount.line': [stifferMounts],
  'mount.slack': [stifferMounts],
  'chain.stroke': takeUp,
  'adjust.slack': takeUp,
  'adjust.fitting': takeUp,
  'adjust.wear': takeUp,
  'arm.slack': [...slack, otherPivot],
  'arm.slot': takeUp,
  'bodies.slack': slack,
  'clear.parts': [movedApart],
  'clear.touch': [movedApart],
  'clear.wheel': [movedApart],
  'shop.swing': [smallerSprockets],
  'shop.bar': [longerBar],
  'shop.bar-size': [thickerBar],
  'shaft.yield': strength,
  'shaft.fatigue': strength,
  'shaft.life': strength,
  'shaft.slope': stiffness,
  'shaft.critical': stiffness,
  'shaft.twist': [thickerShaft],
  'bevel.moves': stiffness,
  'bearing.tilt': stiffness,
  'bearing.static': [strongerBearing, nearerBearings, nearerLoads, lessPull],
  'bearing.life': [strongerBearing, nearerBearings, nearerLoads, lessPull],
  'bearing.least': [lighterBearing],
  'bearing.speed': [otherSeal, lighterBearing],
  'bearing.location': [oneHeld],
  'bearing.thrust': [oneHeld],
  'join.centre': [centred],
  'join.draw': [centred],
  'join.axial': [heldAlong],
  'join.torque': [largerJoint, strongerShaft],
  'join.bending': [largerSpigot, strongerShaft],
  'hub.possible': [withinHub, longerInHub, standardSize, betterKey, moreBolts, betterPress],
  'hub.torque': throughHub,
  'hub.running': [longerInHub, widerHub, betterKey, heldSpline, thickerUnder],
  'hub.keyway': [keywayEntered],
  'hub.size': [standardSize, withinHub, thickerUnder],
  'hub.fit': [betterKey],
  'hub.alone': [notScrewsAlone],
  'hub.slip': [tightened(1), moreBolts, rougherFaces],
  'hub.preload': [tightened(-1), strongerBolts],
  'hub.thread': [moreThread],
  'hub.locked': [locked],
  'plate.cut': [widerPlate, smallerHole, moreSheets, cutFiner],
  'plate.hold': [widerPlate, longerPlate, strongerPlate, smallerHole],
  'seat.made': [bored, clamped],
  'seat.made-turning': [bored, clamped],
  'seat.shaft': [otherClass('shaft'), roomier],
  'seat.plate': [otherClass('plate'), roomier, clamped],
  'seat.hot': [otherClass('plate'), keptFromTurning, inSteel, clamped],
  'seat.hot-turning': [otherClass('plate'), keptFromTurning, inSteel, clamped],
  'seat.cold': [otherClass('plate'), inSteel],
  'seat.float': [moreFloat],
  'road.tip': [wider, lower],
  'road.lift': [loadForward, lower, longerBase],
  'road.grip': [loadBack, geared(1)],
  'road.clutch': [geared(-1)],
  'target.top-speed': [geared(1)],
  'target.reach': [geared(1, -1)],
  'target.cruise': [geared(1, -1)],
  'target.pull': [geared(-1)],
  'target.climb': [geared(-1)],
  'target.climb-grip': [loadBack],
  'target.sprint': [geared(1, -1)],
  'torsion.firing': [fasterIdle, softer],
  'torsion.cush': [softer],
};

/** Ways for a check; none where only the builder can tell. */
export const waysFor = (check: string): readonly Way[] => WAYS[check as CheckId] ?? [];
