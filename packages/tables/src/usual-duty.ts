import { defineTable } from './table.ts';

/** How a small vehicle is driven where the build does not say: parts of the distance in each gear, and parts of the full torque there. */
export const USUAL_DUTY = defineTable({
  id: 'usual-duty',
  title: 'How a small vehicle is usually driven',
  range: 'small vehicles with one engine and a rider who uses them for work and pleasure',
  how: 'common practice',
  source: 'stated default of this project: no published spectrum fits a one-off vehicle',
  columns: {
    throttle: { kind: 'fraction', unit: '%', meaning: 'part of the full torque at the speed of peak torque' },
    share: { kind: 'fraction', unit: '%', meaning: 'part of the distance' },
  },
  rows: {
    'full torque': { values: { throttle: 100, share: 10 }, how: 'common practice' },
    'pulling well': { values: { throttle: 60, share: 30 }, how: 'common practice' },
    'rolling along': { values: { throttle: 30, share: 60 }, how: 'common practice' },
    'in first gear': {
      values: { share: 5 },
      how: 'common practice',
      source: 'stated default of this project: first gear a twentieth of the distance, the other gears alike',
    },
  },
});
