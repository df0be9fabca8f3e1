import { defineTable } from './table.ts';

const PRACTICE = 'stated default of this project';

/**
 * How far two bodies of a vehicle move against each other, each way from where they are drawn: the upper end of what the trade allows for.
 * A row names both bodies in the order engine, subframe, vehicle frame, swinging arm; of a swinging arm it holds the play in its pivot alone.
 */
export const BODY_MOVEMENTS = defineTable({
  id: 'body-movements',
  title: 'Movement to take up between two bodies of a vehicle',
  range: 'small vehicles with one engine; bodies on rubber bushes or solid mounts',
  how: 'common practice',
  source: PRACTICE,
  columns: {
    offset: { kind: 'length', unit: 'mm', meaning: 'parallel offset, each way' },
    angle: { kind: 'angle', unit: 'deg', meaning: 'angle, each way' },
    axial: { kind: 'length', unit: 'mm', meaning: 'movement along the shaft, each way' },
  },
  rows: {
    'one body': {
      values: { offset: 0.2, angle: 0.1, axial: 0.3 },
      how: 'common practice',
      source: `${PRACTICE}: what welding and shimming leave between two shafts carried by one body`,
    },
    'engine to subframe': {
      values: { offset: 3, angle: 1, axial: 3 },
      how: 'common practice',
      source: `${PRACTICE}: an engine on rubber bushes under full torque; solid mounts leave a tenth of it`,
    },
    'engine to vehicle frame': {
      values: { offset: 5, angle: 1.5, axial: 4 },
      how: 'common practice',
      source: `${PRACTICE}: an engine on rubber bushes in a frame that twists on rough ground`,
    },
    'subframe to vehicle frame': {
      values: { offset: 3, angle: 1, axial: 3 },
      how: 'common practice',
      source: `${PRACTICE}: a subframe on rubber bushes; solid mounts leave the twist of the frame`,
    },
    'engine to swinging arm': {
      values: { offset: 5, angle: 1.5, axial: 4 },
      how: 'common practice',
      source: `${PRACTICE}: an engine on rubber bushes; the arm's swing comes on top`,
    },
    'subframe to swinging arm': {
      values: { offset: 3, angle: 1, axial: 3 },
      how: 'common practice',
      source: `${PRACTICE}: a subframe on rubber bushes; the arm's swing comes on top`,
    },
    'vehicle frame to swinging arm': {
      values: { offset: 0.5, angle: 0.3, axial: 0.5 },
      how: 'common practice',
      source: `${PRACTICE}: play and give of the pivot's bushes; the arm's swing comes on top`,
    },
  },
});
