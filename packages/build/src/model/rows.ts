import { tableNamed } from '@oddwheel/tables/catalogue';
import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { COUPLING_LIMITS } from '@oddwheel/tables/coupling-limits';
import { nearestKeys, rowInSi, sourceOf, type Table } from '@oddwheel/tables/table';
import type { ChainSize } from './model.ts';

const table = (id: string): Table => {
  const found = tableNamed(id);
  if (!found) throw new Error(`There is no table ${id}.`);
  return found;
};

export const tableHas = (id: string, key: string): boolean => Object.hasOwn(table(id).rows, key);
export const tableKeys = (id: string): readonly string[] => Object.keys(table(id).rows);
export const nearestRows = (id: string, key: string): readonly string[] => nearestKeys(table(id), key);

/**
 * A chain size with what the assessment needs of it, SI.
 * @param typed strength that the build gives in place of the table's, and its address
 */
export function chainSize(
  key: string,
  typed: { readonly strength: number; readonly at: string } | null = null,
): ChainSize {
  const row = rowInSi(CHAIN_SIZES, key);
  const { pitch, rollerDiameter, innerWidth, minTensile } = row;
  if (pitch === undefined || rollerDiameter === undefined || innerWidth === undefined || minTensile === undefined)
    throw new Error(`Chain size ${key} lacks a dimension.`);
  return {
    key,
    pitch,
    roller: rollerDiameter,
    innerWidth,
    minTensile: typed?.strength ?? minTensile,
    source: sourceOf(CHAIN_SIZES, key),
    strengthFrom: typed?.at ?? `chain-sizes/${key}`,
  };
}

export interface BlankValue {
  readonly si: number;
  readonly lo: number;
  readonly hi: number;
  /** In the units of the table. */
  readonly text: string;
  readonly source: string;
}

/** The ends that a blank field stands on: the first two columns of its row, or the first alone. */
export function blankRow(name: string): BlankValue {
  const [id = '', key = ''] = name.split('/');
  const found = table(id);
  const row = rowInSi(found, key);
  const columns = Object.keys(row);
  const [first = '', second = first] = columns;
  const lo = row[first] ?? Number.NaN;
  const hi = row[second] ?? lo;
  const { unit = '' } = found.columns[first] ?? {};
  const printed = columns.map((column) => String(found.rows[key]?.values[column])).join('..');
  return { si: (lo + hi) / 2, lo, hi, text: `${printed} ${unit}`.trim(), source: sourceOf(found, key) };
}

const limit = (key: string, column: 'angle' | 'fraction' | 'slope' | 'length' | 'teeth') => {
  const value = rowInSi(CHAIN_LIMITS_TABLE, key)[column];
  if (value === undefined) throw new Error(`Chain limit ${key} has no ${column}.`);
  return { value, row: `chain-limits/${key}`, source: sourceOf(CHAIN_LIMITS_TABLE, key) };
};

const couplingLimit = (key: string) => {
  const { angle = Number.NaN, offset = Number.NaN, axial = Number.NaN } = rowInSi(COUPLING_LIMITS, key);
  return { angle, offset, axial, row: `coupling-limits/${key}`, source: sourceOf(COUPLING_LIMITS, key) };
};

/** What couplings and universal joints bear, SI, with their rows and sources. */
export const JOINT_LIMITS = {
  rigid: couplingLimit('rigid'),
  good: couplingLimit('joint-good'),
  most: couplingLimit('joint-most'),
  residual: couplingLimit('residual-angle'),
} as const;

/** Layout limits of chain drives, SI, with their rows and sources. */
export const CHAIN_LIMITS = {
  leastWrap: limit('least-wrap', 'angle'),
  mostSlope: limit('most-slope', 'angle'),
  slackUsual: limit('slack-usual', 'fraction'),
  slackSpecial: limit('slack-special', 'fraction'),
  parallel: limit('parallel', 'slope'),
  faceOffset: limit('face-offset', 'length'),
  idlerMesh: limit('idler-mesh', 'teeth'),
  beltAngle: limit('belt-angle', 'angle'),
} as const;
