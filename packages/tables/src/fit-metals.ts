import { defineTable, type Row } from './table.ts';

type MetalColumn = 'youngs' | 'poisson' | 'growth' | 'density';

const metal = (
  youngs: number,
  poisson: number,
  growth: number,
  density: number,
  more: Pick<Row, 'how'> & { readonly source?: string } = { how: 'memory' },
): Row<MetalColumn> => ({ values: { youngs, poisson, growth, density }, ...more });

/** What metals of joints and seats give and grow. */
export const FIT_METALS = defineTable<MetalColumn>({
  id: 'fit-metals',
  title: 'Stiffness and growth of metals in joints and seats',
  range: 'metals of shafts, hubs, plates and bearing rings, near room temperature',
  how: 'memory',
  source: 'Handbooks of machine design; makers differ in the last figure',
  columns: {
    youngs: { kind: 'pressure', unit: 'GPa', meaning: 'modulus of elasticity' },
    poisson: { kind: 'number', unit: '', meaning: 'Poisson’s ratio' },
    growth: { kind: 'number', unit: '', meaning: 'growth per degree' },
    density: { kind: 'density', unit: 'kg/m3', meaning: 'density' },
  },
  rows: {
    steel: metal(206, 0.3, 11.5e-6, 7850),
    'stainless 18-8': metal(196, 0.3, 16.5e-6, 7900),
    'grey cast iron': metal(110, 0.25, 10e-6, 7200),
    'ductile iron': metal(170, 0.28, 12e-6, 7100),
    aluminium: metal(70, 0.33, 23.5e-6, 2700),
    bronze: metal(110, 0.34, 18e-6, 8700),
    brass: metal(102, 0.35, 19e-6, 8500),
    'bearing steel': metal(208, 0.3, 12.5e-6, 7800, {
      how: 'read',
      source: 'Ball and Roller Bearings, catalogue 2203/E, fits: modulus 208 GPa; growth from memory',
    }),
  },
});
