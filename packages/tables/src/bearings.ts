import { BEARING_COLUMNS } from './bearing-columns.ts';
import { ANGULAR_CONTACT } from './bearings-angular.ts';
import { DEEP_GROOVE } from './bearings-deep-groove.ts';
import { TAPERED } from './bearings-tapered.ts';
import { defineTable } from './table.ts';

/** Rolling bearings by their numbers. Makers’ ratings differ by up to 14 %; the low columns hold where the make is not known. */
export const BEARINGS = defineTable({
  id: 'bearings',
  title: 'Rolling bearings',
  range: 'deep groove 60, 62, 63, angular contact 72 B and 73 B, tapered 302, 303, 320 X; bores of 10 to 60 mm',
  how: 'read',
  source: 'Rolling bearings, catalogue 17000/1 EN, 2018; dimensions by ISO 15 and ISO 355',
  columns: BEARING_COLUMNS,
  rows: { ...DEEP_GROOVE, ...ANGULAR_CONTACT, ...TAPERED },
});
