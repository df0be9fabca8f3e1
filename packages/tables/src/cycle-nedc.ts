import { defineCorners, repeated } from './cycle.ts';

const URBAN: readonly (readonly [number, number])[] = [
  [0, 0],
  [11, 0],
  [15, 15],
  [23, 15],
  [25, 10],
  [28, 0],
  [49, 0],
  [54, 15],
  [56, 15],
  [61, 32],
  [85, 32],
  [93, 10],
  [96, 0],
  [117, 0],
  [122, 15],
  [124, 15],
  [133, 35],
  [135, 35],
  [143, 50],
  [155, 50],
  [163, 35],
  [176, 35],
  [178, 32],
  [185, 10],
  [188, 0],
  [195, 0],
];

const EXTRA_URBAN: readonly (readonly [number, number])[] = [
  [0, 0],
  [20, 0],
  [25, 15],
  [27, 15],
  [36, 35],
  [38, 35],
  [46, 50],
  [48, 50],
  [61, 70],
  [111, 70],
  [119, 50],
  [188, 50],
  [201, 70],
  [251, 70],
  [286, 100],
  [316, 100],
  [336, 120],
  [346, 120],
  [362, 80],
  [370, 50],
  [380, 0],
  [400, 0],
];

/** Elementary urban cycle, also the unit of the motorcycle cycle of UN Regulation No. 40. */
export const CYCLE_UDC = defineCorners({
  id: 'cycle-udc',
  title: 'Elementary urban cycle',
  range: '0 to 195 s, straight between the corners',
  how: 'memory',
  source: 'UN Regulation No. 83, Annex 4, elementary urban cycle',
  corners: URBAN,
});

/** Four elementary urban cycles and the extra-urban cycle. */
export const CYCLE_NEDC = defineCorners({
  id: 'cycle-nedc',
  title: 'New European driving cycle',
  range: '0 to 1180 s, straight between the corners',
  how: 'memory',
  source: 'UN Regulation No. 83, Annex 4, elementary urban cycle four times, then the extra-urban cycle',
  corners: repeated([URBAN, URBAN, URBAN, URBAN, EXTRA_URBAN]),
});
