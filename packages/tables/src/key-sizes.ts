import { defineTable } from './table.ts';

const DIN = 'DIN 6885-1:1968, high form, as ISO 773';
const B17 = 'ANSI B17.1, as in Shigley’s Mechanical Engineering Design, 9th, table 7-6';

/** Parallel keys by shaft diameter: over the first diameter, up to and including the second. */
export const KEY_SIZES = defineTable({
  id: 'key-sizes',
  title: 'Parallel keys and their slots',
  range: 'metric keys for shafts over 6 up to 130 mm, square inch keys for shafts over 5/16 up to 3 1/4 in',
  how: 'read',
  source: 'DIN 6885-1, ISO 773, ANSI B17.1',
  columns: {
    over: { kind: 'length', unit: 'mm', meaning: 'shaft over' },
    upTo: { kind: 'length', unit: 'mm', meaning: 'shaft up to and including' },
    width: { kind: 'length', unit: 'mm', meaning: 'width' },
    height: { kind: 'length', unit: 'mm', meaning: 'height' },
    depth: { kind: 'length', unit: 'mm', meaning: 'depth of the slot in the shaft' },
    hub: { kind: 'length', unit: 'mm', meaning: 'depth of the slot in the hub' },
    shortest: { kind: 'length', unit: 'mm', meaning: 'shortest' },
    longest: { kind: 'length', unit: 'mm', meaning: 'longest' },
  },
  rows: {
    '2x2': {
      values: { over: 6, upTo: 8, width: 2, height: 2, depth: 1.2, hub: 1, shortest: 6, longest: 20 },
      how: 'read',
      source: DIN,
    },
    '3x3': {
      values: { over: 8, upTo: 10, width: 3, height: 3, depth: 1.8, hub: 1.4, shortest: 6, longest: 36 },
      how: 'read',
      source: DIN,
    },
    '4x4': {
      values: { over: 10, upTo: 12, width: 4, height: 4, depth: 2.5, hub: 1.8, shortest: 8, longest: 45 },
      how: 'read',
      source: DIN,
    },
    '5x5': {
      values: { over: 12, upTo: 17, width: 5, height: 5, depth: 3, hub: 2.3, shortest: 10, longest: 56 },
      how: 'read',
      source: DIN,
    },
    '6x6': {
      values: { over: 17, upTo: 22, width: 6, height: 6, depth: 3.5, hub: 2.8, shortest: 14, longest: 70 },
      how: 'read',
      source: DIN,
    },
    '8x7': {
      values: { over: 22, upTo: 30, width: 8, height: 7, depth: 4, hub: 3.3, shortest: 18, longest: 90 },
      how: 'read',
      source: DIN,
    },
    '10x8': {
      values: { over: 30, upTo: 38, width: 10, height: 8, depth: 5, hub: 3.3, shortest: 22, longest: 110 },
      how: 'read',
      source: DIN,
    },
    '12x8': {
      values: { over: 38, upTo: 44, width: 12, height: 8, depth: 5, hub: 3.3, shortest: 28, longest: 140 },
      how: 'read',
      source: DIN,
    },
    '14x9': {
      values: { over: 44, upTo: 50, width: 14, height: 9, depth: 5.5, hub: 3.8, shortest: 36, longest: 160 },
      how: 'read',
      source: DIN,
    },
    '16x10': {
      values: { over: 50, upTo: 58, width: 16, height: 10, depth: 6, hub: 4.3, shortest: 45, longest: 180 },
      how: 'read',
      source: DIN,
    },
    '18x11': {
      values: { over: 58, upTo: 65, width: 18, height: 11, depth: 7, hub: 4.4, shortest: 50, longest: 200 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    '20x12': {
      values: { over: 65, upTo: 75, width: 20, height: 12, depth: 7.5, hub: 4.9, shortest: 56, longest: 220 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    '22x14': {
      values: { over: 75, upTo: 85, width: 22, height: 14, depth: 9, hub: 5.4, shortest: 63, longest: 250 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    '25x14': {
      values: { over: 85, upTo: 95, width: 25, height: 14, depth: 9, hub: 5.4, shortest: 70, longest: 280 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    '28x16': {
      values: { over: 95, upTo: 110, width: 28, height: 16, depth: 10, hub: 6.4, shortest: 80, longest: 320 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    '32x18': {
      values: { over: 110, upTo: 130, width: 32, height: 18, depth: 11, hub: 7.4, shortest: 90, longest: 360 },
      how: 'read',
      source: DIN,
      note: 'Lengths from memory.',
    },
    'inch-3-32': {
      values: { over: 7.9375, upTo: 11.1125, width: 2.38125, height: 2.38125, depth: 1.19062, hub: 1.19062 },
      how: 'read',
      source: B17,
    },
    'inch-1-8': {
      values: { over: 11.1125, upTo: 14.2875, width: 3.175, height: 3.175, depth: 1.5875, hub: 1.5875 },
      how: 'read',
      source: B17,
    },
    'inch-3-16': {
      values: { over: 14.2875, upTo: 22.225, width: 4.7625, height: 4.7625, depth: 2.38125, hub: 2.38125 },
      how: 'read',
      source: B17,
    },
    'inch-1-4': {
      values: { over: 22.225, upTo: 31.75, width: 6.35, height: 6.35, depth: 3.175, hub: 3.175 },
      how: 'read',
      source: B17,
    },
    'inch-5-16': {
      values: { over: 31.75, upTo: 34.925, width: 7.9375, height: 7.9375, depth: 3.96875, hub: 3.96875 },
      how: 'read',
      source: B17,
    },
    'inch-3-8': {
      values: { over: 34.925, upTo: 44.45, width: 9.525, height: 9.525, depth: 4.7625, hub: 4.7625 },
      how: 'read',
      source: B17,
    },
    'inch-1-2': {
      values: { over: 44.45, upTo: 57.15, width: 12.7, height: 12.7, depth: 6.35, hub: 6.35 },
      how: 'read',
      source: B17,
    },
    'inch-5-8': {
      values: { over: 57.15, upTo: 69.85, width: 15.875, height: 15.875, depth: 7.9375, hub: 7.9375 },
      how: 'read',
      source: B17,
    },
    'inch-3-4': {
      values: { over: 69.85, upTo: 82.55, width: 19.05, height: 19.05, depth: 9.525, hub: 9.525 },
      how: 'read',
      source: B17,
    },
  },
});
