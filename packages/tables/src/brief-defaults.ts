import { defineTable } from './table.ts';

const PRACTICE = 'stated default of this project';

/** What a blank input of the brief or path stands on. The first two columns of a row are its ends. */
export const BRIEF_DEFAULTS = defineTable({
  id: 'brief-defaults',
  title: 'Bounds taken where a brief leaves a field blank',
  range: 'small vehicles with one engine, up to about 1000 cm³',
  how: 'common practice',
  source: PRACTICE,
  columns: {
    idleLow: { kind: 'angularSpeed', unit: 'rpm', meaning: 'idle speed, from' },
    idleHigh: { kind: 'angularSpeed', unit: 'rpm', meaning: 'idle speed, to' },
    ratioLow: { kind: 'ratio', unit: '', meaning: 'primary ratio, from' },
    ratioHigh: { kind: 'ratio', unit: '', meaning: 'primary ratio, to' },
    strands: { kind: 'count', unit: '', meaning: 'strands of a chain' },
    massLow: { kind: 'mass', unit: 'kg', meaning: 'rider and load, from' },
    massHigh: { kind: 'mass', unit: 'kg', meaning: 'rider and load, to' },
    areaLow: { kind: 'area', unit: 'm2', meaning: 'drag area, from' },
    areaHigh: { kind: 'area', unit: 'm2', meaning: 'drag area, to' },
    numberLow: { kind: 'number', unit: '', meaning: 'coefficient, from' },
    numberHigh: { kind: 'number', unit: '', meaning: 'coefficient, to' },
    inertiaLow: { kind: 'inertia', unit: 'kg.m2', meaning: 'moment of inertia, from' },
    inertiaHigh: { kind: 'inertia', unit: 'kg.m2', meaning: 'moment of inertia, to' },
    distance: { kind: 'length', unit: 'km', meaning: 'distance' },
    stiffnessLow: { kind: 'stiffness', unit: 'N/mm', meaning: 'stiffness, from' },
    stiffnessHigh: { kind: 'stiffness', unit: 'N/mm', meaning: 'stiffness, to' },
    stretchLow: { kind: 'fraction', unit: '%', meaning: 'stretch of a chain under a tenth of its breaking load, from' },
    stretchHigh: { kind: 'fraction', unit: '%', meaning: 'stretch of a chain under a tenth of its breaking load, to' },
    clearance: { kind: 'length', unit: 'mm', meaning: 'clearance wanted' },
    temperature: { kind: 'temperature', unit: 'degC', meaning: 'temperature' },
    roadSpeed: { kind: 'speed', unit: 'km/h', meaning: 'road speed to compare at' },
    viscosityLow: { kind: 'viscosity', unit: 'mm2/s', meaning: 'viscosity at work, from' },
    viscosityHigh: { kind: 'viscosity', unit: 'mm2/s', meaning: 'viscosity at work, to' },
  },
  rows: {
    'idle-speed': {
      values: { idleLow: 900, idleHigh: 1500 },
      how: 'common practice',
      source: `${PRACTICE}: idle of four-stroke motorcycle engines`,
    },
    'primary-ratio': {
      values: { ratioLow: 1.5, ratioHigh: 3.5 },
      how: 'common practice',
      source: `${PRACTICE}: primary ratios of motorcycle engines`,
    },
    strands: {
      values: { strands: 1 },
      how: 'common practice',
      source: `${PRACTICE}: a single chain unless said otherwise`,
    },
    payload: {
      values: { massLow: 75, massHigh: 200 },
      how: 'common practice',
      source: `${PRACTICE}: from one rider alone to a rider with a load`,
    },
    'drag-area': {
      values: { areaLow: 0.5, areaHigh: 1.2 },
      how: 'memory',
      source:
        'Cossalter, Motorcycle Dynamics: 0.35 to 0.7 m² for motorcycles with rider; with a load behind up to 1.2 m²',
    },
    rolling: {
      values: { numberLow: 0.015, numberHigh: 0.05 },
      how: 'read',
      source:
        'Carvill, Mechanical Engineer’s Data Handbook (1993): worn asphalt 0.02, unpaved earth 0.05; Moyer in Marks’: packed gravel 0.012',
    },
    friction: {
      values: { numberLow: 0.6, numberHigh: 1.2 },
      how: 'memory',
      source: 'Bosch Automotive Handbook: gravel 0.6, dry asphalt 0.8 to 1.0; soft motorcycle rubber to 1.2',
    },
    'wheel-inertia': {
      values: { inertiaLow: 0.5, inertiaHigh: 6 },
      how: 'common practice',
      source: `${PRACTICE}: from a motorcycle wheel to a spoked wheel of 1.1 m with its tyre`,
    },
    'engine-inertia': {
      values: { inertiaLow: 0.01, inertiaHigh: 0.04 },
      how: 'common practice',
      source: `${PRACTICE}: crank, flywheel and clutch of engines of 125 to 1000 cm³`,
    },
    'other-inertia': {
      values: { inertiaLow: 0, inertiaHigh: 2 },
      how: 'common practice',
      source: `${PRACTICE}: from none to two motorcycle wheels beside a wheel of 1.1 m`,
    },
    clearance: {
      values: { clearance: 10 },
      how: 'common practice',
      source: `${PRACTICE}: room for flex, mud and a swinging chain`,
    },
    'life-distance': { values: { distance: 20000 }, how: 'common practice', source: PRACTICE },
    'highest-friction': {
      values: { numberLow: 1.2 },
      how: 'memory',
      source: 'Bosch Automotive Handbook: dry asphalt 0.8 to 1.0, soft motorcycle rubber to 1.2',
    },
    'start-shock': {
      values: { numberLow: 1.25, numberHigh: 2 },
      how: 'memory',
      source: 'ISO 6336-6, annex K: engines of several cylinders, uniform load 1.25 to heavy shocks 2.0',
    },
    'bearing-stiffness': {
      values: { stiffnessLow: 30000, stiffnessHigh: 200000 },
      how: 'common practice',
      source: `${PRACTICE}: a deep groove bearing of 25 to 45 mm bore in a thin plate, no published figure`,
    },
    'chain-stretch': {
      values: { stretchLow: 0.07, stretchHigh: 0.33 },
      how: 'common practice',
      source: `${PRACTICE}: elastic stretch of roller chains, no published figure was found`,
    },
    'bearing-oil': {
      values: { viscosityLow: 20, viscosityHigh: 90 },
      how: 'common practice',
      source: `${PRACTICE}: the oil in usual bearing greases, from ISO VG 100 at 80 °C to ISO VG 150 at 50 °C`,
    },
    cold: { values: { temperature: -10 }, how: 'common practice', source: `${PRACTICE}: a frosty start` },
    hot: {
      values: { temperature: 80 },
      how: 'common practice',
      source: `${PRACTICE}: a plate near a warm engine, or a bearing that works hard`,
    },
    'compare-speed': { values: { roadSpeed: 50 }, how: 'common practice', source: PRACTICE },
  },
});
