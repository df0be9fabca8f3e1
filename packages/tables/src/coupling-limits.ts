import { defineTable } from './table.ts';

/** What couplings and universal joints bear where nothing is known of the part itself. */
export const COUPLING_LIMITS = defineTable({
  id: 'coupling-limits',
  title: 'Angles and misalignment of couplings and universal joints',
  range: 'rigid couplings and plain universal joints',
  how: 'memory',
  source: 'Handbooks on vehicle drivelines',
  columns: {
    angle: { kind: 'angle', unit: 'deg', meaning: 'angle' },
    offset: { kind: 'length', unit: 'mm', meaning: 'parallel offset' },
    axial: { kind: 'length', unit: 'mm', meaning: 'movement along the shaft' },
  },
  rows: {
    rigid: {
      values: { angle: 0.02, offset: 0.1, axial: 0.1 },
      how: 'common practice',
      source:
        'stated default of this project: a rigid coupling takes nothing up; a tenth of a millimetre is a slip of the pencil',
    },
    'joint-good': {
      values: { angle: 25 },
      how: 'read',
      source: 'Makers’ data on universal joints, restated',
      note: 'Below this a plain universal joint runs well in continuous service.',
    },
    'joint-most': {
      values: { angle: 37.5 },
      how: 'read',
      source: 'Makers’ data on universal joints, restated',
      note: 'Here the forks of a plain cross touch.',
    },
    'residual-angle': {
      values: { angle: 3 },
      how: 'memory',
      source: 'Handbooks on vehicle drivelines',
      note: 'Greatest angle of the one joint that would turn the output as unevenly.',
    },
  },
});
