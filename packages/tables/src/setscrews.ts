import { defineTable } from './table.ts';

/** Holding force of cup point setscrews, seated with their torque. */
export const SETSCREWS = defineTable({
  id: 'setscrews',
  title: 'Setscrews with a cup point',
  range: '1/4 in to 1 in; metric ones by the next smaller inch size',
  how: 'memory',
  source: 'Shigley’s Mechanical Engineering Design, 9th, table 7-4',
  columns: {
    hold: { kind: 'force', unit: 'lbf', meaning: 'holding force at the surface of the shaft' },
    seating: { kind: 'torque', unit: 'lbf.in', meaning: 'seating torque' },
  },
  rows: {
    M5: { values: { hold: 385, seating: 20 }, how: 'memory', note: 'The next smaller inch size.' },
    M6: { values: { hold: 540, seating: 36 }, how: 'memory', note: 'The next smaller inch size.' },
    M8: { values: { hold: 1500, seating: 165 }, how: 'memory', note: 'The next smaller inch size.' },
    M10: { values: { hold: 2000, seating: 290 }, how: 'memory', note: 'The next smaller inch size.' },
    M12: { values: { hold: 2500, seating: 430 }, how: 'memory', note: 'The next smaller inch size.' },
    '1-4-in': { values: { hold: 1000, seating: 87 }, how: 'memory' },
    '5-16-in': { values: { hold: 1500, seating: 165 }, how: 'memory' },
    '3-8-in': { values: { hold: 2000, seating: 290 }, how: 'memory' },
    '7-16-in': { values: { hold: 2500, seating: 430 }, how: 'memory' },
    '1-2-in': { values: { hold: 3000, seating: 620 }, how: 'memory' },
    '5-8-in': { values: { hold: 4000, seating: 1325 }, how: 'memory' },
    '3-4-in': { values: { hold: 5000, seating: 2400 }, how: 'memory' },
  },
});
