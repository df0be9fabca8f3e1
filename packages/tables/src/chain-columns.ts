import type { Column } from './table.ts';

/** Columns of the table of chain sizes, in the units of the standards. */
export const CHAIN_COLUMNS = {
  pitch: { kind: 'length', unit: 'mm', meaning: 'pitch' },
  rollerDiameter: { kind: 'length', unit: 'mm', meaning: 'roller diameter' },
  innerWidth: { kind: 'length', unit: 'mm', meaning: 'width between inner plates' },
  minTensile: { kind: 'force', unit: 'N', meaning: 'minimum tensile strength of one strand' },
  pinDiameter: { kind: 'length', unit: 'mm', meaning: 'pin diameter' },
  plateThickness: { kind: 'length', unit: 'mm', meaning: 'plate thickness' },
  innerPlateHeight: { kind: 'length', unit: 'mm', meaning: 'height of the inner plates' },
  outerPlateHeight: { kind: 'length', unit: 'mm', meaning: 'height of the outer plates' },
  innerLinkWidth: { kind: 'length', unit: 'mm', meaning: 'width over the inner link' },
  transversePitch: { kind: 'length', unit: 'mm', meaning: 'spacing of strands' },
  bearingArea: { kind: 'area', unit: 'mm2', meaning: 'bearing area of a joint, one strand' },
  mass: { kind: 'linearDensity', unit: 'kg/m', meaning: 'mass per length of one strand' },
  dynamicStrength: { kind: 'force', unit: 'N', meaning: 'minimum dynamic strength of one strand' },
} as const satisfies Readonly<Record<string, Column>>;

export type ChainColumn = keyof typeof CHAIN_COLUMNS;
