import { defineTable, type Row } from './table.ts';

type CutColumn = 'hole' | 'web' | 'floor' | 'kerf' | 'tolerance' | 'thinnest' | 'thickest';

const rule = (
  values: Readonly<Partial<Record<CutColumn, number>>>,
  how: Row['how'],
  source: string,
): Row<CutColumn> => ({
  values,
  how,
  source,
});

/** What cutting shops ask for, in thicknesses of the sheet. They differ from shop to shop: a rule warns, it does not forbid. */
export const CUTTING_RULES = defineTable<CutColumn>({
  id: 'cutting-rules',
  title: 'Rules of cutting shops',
  range: 'steel sheet and plate',
  how: 'read',
  source: 'Design rules that cutting shops publish',
  columns: {
    hole: { kind: 'number', unit: '', meaning: 'smallest hole over the thickness' },
    web: { kind: 'number', unit: '', meaning: 'least metal beside a hole over the thickness' },
    floor: { kind: 'length', unit: 'mm', meaning: 'least metal beside a hole at all' },
    kerf: { kind: 'length', unit: 'mm', meaning: 'widest kerf' },
    tolerance: { kind: 'length', unit: 'mm', meaning: 'how far a size may be off, each way' },
    thinnest: { kind: 'length', unit: 'mm', meaning: 'thinnest sheet' },
    thickest: { kind: 'length', unit: 'mm', meaning: 'thickest sheet' },
  },
  rows: {
    'plasma cut': rule(
      { hole: 1.5, web: 1.5, floor: 2, kerf: 3.5, tolerance: 0.5, thinnest: 3, thickest: 40 },
      'read',
      'Design rules of a plasma cutting shop, newayprecision.com, services, plasma cutting',
    ),
    'laser cut': rule(
      { hole: 1, web: 1, floor: 0, kerf: 0.38, tolerance: 0.1, thinnest: 0.5, thickest: 25 },
      'read',
      'Design rules of a laser cutting shop, smslaserfab.com, laser cutting design rules; thickness and tolerance from memory',
    ),
    'waterjet cut': rule(
      { hole: 0, web: 1, floor: 2, kerf: 1.5, tolerance: 0.05, thickest: 150 },
      'memory',
      'Shop practice: a thickness beside a hole in thin sheet, 2 mm at least; tolerance read at waterjets.org',
    ),
    'oxy-fuel cut': rule(
      { hole: 2, web: 1.5, floor: 2, kerf: 3, tolerance: 1, thinnest: 6, thickest: 300 },
      'memory',
      'Shop practice, carbon steel only',
    ),
  },
});
