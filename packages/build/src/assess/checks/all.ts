import { gearAdjuster, lineAdjuster, settingOrder, slackAdjuster, takeUpFitting, takeUpWear } from './adjusters.ts';
import { close, enter, slide } from './assembly.ts';
import { cruise, forward, pull as pullTarget, sidePull, topSpeed } from './brief.ts';
import { clear, fit, links, parallel, pull, slack, slope, wrap } from './chain.ts';
import type { Check } from './check.ts';
import { beltFit, centres, face, meet, undercut } from './gears.ts';
import { bar, swing } from './shop.ts';
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
];
