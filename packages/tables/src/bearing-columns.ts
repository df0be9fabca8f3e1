import type { Column } from './table.ts';

/** Columns of the bearing tables. */
export const BEARING_COLUMNS = {
  bore: { kind: 'length', unit: 'mm', meaning: 'bore' },
  outside: { kind: 'length', unit: 'mm', meaning: 'outside diameter' },
  width: { kind: 'length', unit: 'mm', meaning: 'width' },
  corner: { kind: 'length', unit: 'mm', meaning: 'smallest corner radius of the rings' },
  dynamic: { kind: 'force', unit: 'kN', meaning: 'dynamic load rating' },
  static: { kind: 'force', unit: 'kN', meaning: 'static load rating' },
  dynamicLow: { kind: 'force', unit: 'kN', meaning: 'lowest dynamic rating found, for a bearing of unknown make' },
  staticLow: { kind: 'force', unit: 'kN', meaning: 'lowest static rating found, for a bearing of unknown make' },
  fatigue: { kind: 'force', unit: 'kN', meaning: 'fatigue load limit' },
  f0: { kind: 'number', unit: '', meaning: 'factor of ISO 281 for the axial load of deep groove bearings' },
  kr: { kind: 'number', unit: '', meaning: 'minimum load factor' },
  referenceSpeed: { kind: 'angularSpeed', unit: 'rpm', meaning: 'reference speed, by heat' },
  limitingSpeed: { kind: 'angularSpeed', unit: 'rpm', meaning: 'limiting speed, open bearing' },
  shaftShoulder: { kind: 'length', unit: 'mm', meaning: 'smallest diameter of the shoulder on the shaft' },
  plateShoulder: { kind: 'length', unit: 'mm', meaning: 'largest diameter of the shoulder in the plate' },
  e: { kind: 'number', unit: '', meaning: 'limit of axial over radial load' },
  x: { kind: 'number', unit: '', meaning: 'radial factor beyond e' },
  y: { kind: 'number', unit: '', meaning: 'axial factor beyond e' },
  y0: { kind: 'number', unit: '', meaning: 'axial factor at rest' },
} as const satisfies Readonly<Record<string, Column>>;

export type BearingColumn = keyof typeof BEARING_COLUMNS;
