import { defineTable } from './table.ts';

/** What torque joints of hubs bear while they run, and what their friction comes to. */
export const HUB_LIMITS = defineTable({
  id: 'hub-limits',
  title: 'Torque joints of hubs',
  range: 'parallel keys, splines, friction, bolts, welds',
  how: 'memory',
  source: 'Texts of machine design',
  columns: {
    pressure: { kind: 'pressure', unit: 'MPa', meaning: 'pressure on the flanks while running' },
    strength: { kind: 'pressure', unit: 'MPa', meaning: 'yield strength' },
    tensile: { kind: 'pressure', unit: 'MPa', meaning: 'tensile strength' },
    friction: { kind: 'number', unit: '', meaning: 'friction' },
    factor: { kind: 'number', unit: '', meaning: 'torque factor of the bolt' },
  },
  rows: {
    'key-metal': {
      values: { strength: 370 },
      how: 'read',
      source: 'Shigley’s Mechanical Engineering Design, 9th, table A-20: bar 1018 cold drawn, as key stock is sold',
    },
    'key-running': {
      values: { pressure: 100 },
      how: 'memory',
      source: 'Roloff/Matek, Machine Elements: parallel key in a steel hub, light shock',
    },
    'key-tight': {
      values: { pressure: 150 },
      how: 'memory',
      source: 'Roloff/Matek, Machine Elements: parallel key in a steel hub, load in one direction',
    },
    'spline-fixed': {
      values: { pressure: 100 },
      how: 'memory',
      source: 'Texts of machine design: spline that does not slide, clamped and hardened; 35 to 70 MPa otherwise',
    },
    'spline-loose': {
      values: { pressure: 70 },
      how: 'memory',
      source: 'Texts of machine design: spline that does not slide and is not clamped',
    },
    'spline-slides': {
      values: { pressure: 20 },
      how: 'memory',
      source: 'Texts of machine design: spline that slides under load',
    },
    'friction-oiled': {
      values: { friction: 0.12 },
      how: 'memory',
      source: 'Texts of machine design: steel on steel, oiled',
    },
    'friction-dry': { values: { friction: 0.15 }, how: 'memory', source: 'Texts of machine design: clean or painted' },
    'friction-blasted': { values: { friction: 0.35 }, how: 'memory', source: 'Texts of machine design: blasted' },
    'bolts-dry': {
      values: { factor: 0.3 },
      how: 'memory',
      source: 'Shigley’s Mechanical Engineering Design, table 8-15: black',
    },
    'bolts-delivered': {
      values: { factor: 0.2 },
      how: 'memory',
      source: 'Shigley’s Mechanical Engineering Design, table 8-15: zinc plated',
    },
    'bolts-oiled': {
      values: { factor: 0.18 },
      how: 'memory',
      source: 'Shigley’s Mechanical Engineering Design, table 8-15: lubricated',
    },
    'bolts-paste': {
      values: { factor: 0.12 },
      how: 'memory',
      source: 'Shigley’s Mechanical Engineering Design, table 8-15: with paste',
    },
    'weld-metal': { values: { tensile: 427 }, how: 'read', source: 'AWS A5.1, E60 electrode: 62 kpsi' },
  },
});
