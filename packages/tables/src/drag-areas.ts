import { defineTable } from './table.ts';

const COSSALTER = 'Cossalter: Motorcycle Dynamics';

/** Drag area: drag coefficient times frontal area. No published value was found for an open three-wheeler; coast it down. */
export const DRAG_AREAS = defineTable({
  id: 'drag-areas',
  title: 'Drag areas of small vehicles with a rider',
  range: 'motorcycles and small cars',
  how: 'memory',
  source: 'Several books, named at each row',
  columns: {
    low: { kind: 'area', unit: 'm²', meaning: 'drag area, from' },
    high: { kind: 'area', unit: 'm²', meaning: 'drag area, to' },
  },
  rows: {
    motorcycle: { values: { low: 0.18, high: 0.7 }, how: 'memory', source: COSSALTER },
    'motorcycle-streamlined': { values: { low: 0.18, high: 0.18 }, how: 'memory', source: COSSALTER },
    'motorcycle-faired': { values: { low: 0.3, high: 0.35 }, how: 'memory', source: COSSALTER },
    'motorcycle-naked': { values: { low: 0.4, high: 0.5 }, how: 'memory', source: COSSALTER },
    'motorcycle-upright-bags': { values: { low: 0.7, high: 0.7 }, how: 'memory', source: COSSALTER },
    'motorcycle-regulation': {
      values: { low: 0.484, high: 0.626 },
      how: 'derived',
      source: '40 CFR 86.529-98, square parts for 100 to 340 kg, at an air density of 1.2 kg/m³',
    },
    'motorcycle-commuter': {
      values: { low: 0.53, high: 0.53 },
      how: 'read',
      source: 'Open vehicle data of a U.S. national laboratory: 100 cm³ commuter motorcycle with rider, 0.78 × 0.68 m²',
    },
    'small-car': {
      values: { low: 0.51, high: 0.84 },
      how: 'memory',
      source: 'Bosch Automotive Handbook; Gillespie: drag coefficient 0.30 to 0.42, frontal area 1.7 to 2.0 m²',
    },
  },
});
