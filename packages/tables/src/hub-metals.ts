import { defineTable } from './table.ts';

/** Metals of hubs, flanges and parts with threads; least values. */
export const HUB_METALS = defineTable({
  id: 'hub-metals',
  title: 'Metals of hubs and flanges',
  range: 'usual metals of sprockets, gears and hubs',
  how: 'memory',
  source: 'EN 10025, EN 10083, EN 1561, EN 755, EN 1706: least values',
  columns: {
    tensile: { kind: 'pressure', unit: 'MPa', meaning: 'tensile strength' },
    yield: { kind: 'pressure', unit: 'MPa', meaning: 'yield strength, of cast iron the pressure that it bears' },
  },
  rows: {
    'mild steel': { values: { tensile: 360, yield: 235 }, how: 'memory', source: 'EN 10025, S235' },
    'medium carbon steel': { values: { tensile: 620, yield: 340 }, how: 'memory', source: 'EN 10083, C45 normalised' },
    'hardened steel': {
      values: { tensile: 1000, yield: 800 },
      how: 'memory',
      source: 'EN 10083, 42CrMo4 quenched and tempered',
    },
    'cast iron': {
      values: { tensile: 250, yield: 250 },
      how: 'memory',
      source: 'EN 1561, EN-GJL-250: it breaks before it yields',
    },
    'wrought aluminium': { values: { tensile: 290, yield: 240 }, how: 'memory', source: 'EN 755, EN AW-6082 T6' },
    'cast aluminium': { values: { tensile: 230, yield: 190 }, how: 'memory', source: 'EN 1706, EN AC-42100 T6' },
  },
});
