import { CHAIN_COLUMNS } from './chain-columns.ts';
import { ANSI_CHAINS } from './chain-sizes-ansi.ts';
import { ISO_CHAINS } from './chain-sizes-iso.ts';
import { MOTORCYCLE_CHAINS } from './chain-sizes-motorcycle.ts';
import { defineTable } from './table.ts';

/** Sizes of roller chain. Keys are the numbers stamped on the plates: ANSI (60), ISO 606 (12A, 12B), motorcycle (520). */
export const CHAIN_SIZES = defineTable({
  id: 'chain-sizes',
  title: 'Roller chain sizes',
  range: 'ANSI 25 to 120, ISO 606 05B to 24B and 04C to 24A, motorcycle 415 to 630',
  how: 'read',
  source: 'ASME B29.1; ISO 606:2004; ISO 10190:2008',
  columns: CHAIN_COLUMNS,
  rows: { ...ANSI_CHAINS, ...ISO_CHAINS, ...MOTORCYCLE_CHAINS },
});
