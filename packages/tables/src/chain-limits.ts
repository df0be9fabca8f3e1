import { defineTable } from './table.ts';

const INSTALLATION = 'A chain maker’s installation data';
const ANSWERS = 'A chain maker’s answers to frequent questions';
const GUIDE = 'The Complete Guide to Chain, section 7.1.2.2';

/** Layout, slack, alignment and wear limits of roller-chain drives. */
export const CHAIN_LIMITS_TABLE = defineTable({
  id: 'chain-limits',
  title: 'Layout, slack, alignment and wear limits of roller-chain drives',
  range: 'open drives with two sprockets',
  how: 'read',
  source: 'Chain makers’ installation data and The Complete Guide to Chain',
  columns: {
    angle: { kind: 'angle', unit: 'deg', meaning: 'angle' },
    fraction: { kind: 'fraction', unit: '%', meaning: 'part' },
    slope: { kind: 'number', unit: '', meaning: 'rise over run' },
    pitchesLow: { kind: 'count', unit: '', meaning: 'pitches, from' },
    pitchesHigh: { kind: 'count', unit: '', meaning: 'pitches, to' },
    teeth: { kind: 'count', unit: '', meaning: 'teeth' },
    length: { kind: 'length', unit: 'mm', meaning: 'length' },
    speedLow: { kind: 'speed', unit: 'm/s', meaning: 'chain speed, from' },
    speedHigh: { kind: 'speed', unit: 'm/s', meaning: 'chain speed, to' },
  },
  rows: {
    'least-wrap': { values: { angle: 120 }, how: 'read', source: ANSWERS, note: 'Least wrap on the small sprocket.' },
    'least-wrap-adjusted': {
      values: { angle: 90 },
      how: 'read',
      source: ANSWERS,
      note: 'Least wrap where the slack is kept closely adjusted.',
    },
    'most-slope': {
      values: { angle: 60 },
      how: 'read',
      source: INSTALLATION,
      note: 'Greatest slope of the line of centres against the level.',
    },
    'slack-usual': {
      values: { fraction: 4 },
      how: 'read',
      source: INSTALLATION,
      note: 'Total hand movement at mid-span, part of the span.',
    },
    'slack-special': {
      values: { fraction: 2 },
      how: 'read',
      source: INSTALLATION,
      note: 'The same for steep lines of centres, heavy frequent starts, centres over 0.9 m, reversing or braking.',
    },
    parallel: {
      values: { slope: 1 / 300 },
      how: 'read',
      source: GUIDE,
      note: 'Greatest departure of the shafts from parallel, published as 1/300.',
    },
    level: {
      values: { slope: 1 / 300 },
      how: 'read',
      source: GUIDE,
      note: 'Greatest departure of a shaft from level, published as 1/300.',
    },
    'face-offset': {
      values: { length: 1 },
      how: 'read',
      source: GUIDE,
      note: 'Greatest offset of the sprocket faces at centres up to 1 m.',
    },
    'belt-angle': {
      values: { angle: 0.25 },
      how: 'memory',
      source: 'Makers’ design manuals for toothed belts',
      note: 'Toothed belts: greatest misalignment, angle of the shafts and of the offset together.',
    },
    'idler-mesh': {
      values: { teeth: 3 },
      how: 'memory',
      source: 'Chain makers’ design manuals',
      note: 'Fewest teeth of an idler in mesh.',
    },
    'centres-usual': { values: { pitchesLow: 30, pitchesHigh: 50 }, how: 'read', source: INSTALLATION },
    'centres-pulsating': {
      values: { pitchesLow: 20 },
      how: 'read',
      source: INSTALLATION,
      note: 'Centre distance for pulsating drives.',
    },
    'centres-longest': {
      values: { pitchesHigh: 80 },
      how: 'memory',
      source: "Shigley's Mechanical Engineering Design (Budynas, Nisbett), chapter 17",
    },
    'take-up': {
      values: { pitchesLow: 2 },
      how: 'read',
      source: ANSWERS,
      note: 'The adjustment must allow for taking out this many pitches.',
    },
    'elongation-adjustable': {
      values: { fraction: 3 },
      how: 'read',
      source: ANSWERS,
      note: 'Worn out at the latest; with more than 66 teeth at 200 % over the teeth of the large sprocket.',
    },
    'elongation-fixed': { values: { fraction: 1.5 }, how: 'read', source: ANSWERS, note: 'Worn out on fixed centres.' },
    'fewest-teeth': {
      values: { teeth: 15 },
      how: 'read',
      source: 'A chain maker’s catalogue page',
      note: 'Small sprocket, in general.',
    },
    'fewest-teeth-absolute': {
      values: { teeth: 13 },
      how: 'read',
      source: 'A chain maker’s catalogue page',
      note: 'Small sprocket, at the least; motorcycles go lower at a price in surge and wear.',
    },
    'most-teeth': {
      values: { teeth: 120 },
      how: 'read',
      source: 'A chain maker’s catalogue page',
      note: 'Large sprocket.',
    },
    'offset-link-strength': {
      values: { fraction: 80 },
      how: 'memory',
      source: 'ISO 606, 3.6',
      note: 'Tensile strength of a cranked (offset) link, part of the chain’s.',
    },
    'speed-ordinary': {
      values: { speedLow: 12, speedHigh: 15 },
      how: 'memory',
      source: 'Handbooks on roller chain',
      note: 'Greatest speed with good lubrication; speed tables of the size decide.',
    },
  },
});
