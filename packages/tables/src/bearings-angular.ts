import type { BearingColumn } from './bearing-columns.ts';
import type { Row } from './table.ts';

const SOURCE = 'Rolling bearings, catalogue 17000/1 EN, 2018, product tables of angular contact bearings, 40°';

/** Bore, outside diameter, width (mm); C, C0, Cu (kN); reference and limiting speed (rpm). */
type Figures = readonly [number, number, number, number, number, number, number, number];

const row = ([bore, outside, width, dynamic, fixed, fatigue, reference, limiting]: Figures): Row<BearingColumn> => ({
  values: {
    bore,
    outside,
    width,
    dynamic,
    static: fixed,
    dynamicLow: dynamic,
    staticLow: fixed,
    fatigue,
    referenceSpeed: reference,
    limitingSpeed: limiting,
    e: 1.14,
    x: 0.35,
    y: 0.57,
    y0: 0.26,
  },
  how: 'read',
  source: SOURCE,
});

/** Single-row angular contact ball bearings of series 72 B and 73 B, contact angle 40°; factors from memory (ISO 281, ISO 76). */
export const ANGULAR_CONTACT: Readonly<Record<string, Row<BearingColumn>>> = {
  '7200B': row([10, 30, 9, 7.02, 3.35, 0.14, 30000, 30000]),
  '7201B': row([12, 32, 10, 7.61, 3.8, 0.16, 28000, 26000]),
  '7202B': row([15, 35, 11, 8.8, 4.65, 0.196, 24000, 26000]),
  '7302B': row([15, 42, 13, 13, 6.7, 0.28, 22000, 20000]),
  '7203B': row([17, 40, 12, 11, 5.85, 0.25, 22000, 22000]),
  '7303B': row([17, 47, 14, 15.9, 8.3, 0.355, 20000, 19000]),
  '7204B': row([20, 47, 14, 14.3, 8.15, 0.345, 19000, 19000]),
  '7304B': row([20, 52, 15, 19, 10, 0.425, 17000, 18000]),
  '7205B': row([25, 52, 15, 15.6, 10, 0.43, 16000, 17000]),
  '7305B': row([25, 62, 17, 26.5, 15.3, 0.655, 14000, 15000]),
  '7206B': row([30, 62, 16, 24, 15.6, 0.655, 13000, 14000]),
  '7306B': row([30, 72, 19, 35.5, 21.2, 0.9, 12000, 13000]),
  '7207B': row([35, 72, 17, 31, 20.8, 0.88, 11000, 12000]),
  '7307B': row([35, 80, 21, 41.5, 26.5, 1.14, 11000, 11000]),
  '7208B': row([40, 80, 18, 36.5, 26, 1.1, 10000, 11000]),
  '7308B': row([40, 90, 23, 50, 32.5, 1.37, 9500, 10000]),
  '7209B': row([45, 85, 19, 38, 28.5, 1.22, 9500, 10000]),
  '7309B': row([45, 100, 25, 61, 40.5, 1.73, 8500, 9000]),
  '7210B': row([50, 90, 20, 40, 31, 1.32, 9000, 9000]),
  '7310B': row([50, 110, 27, 75, 51, 2.16, 7500, 8000]),
  '7211B': row([55, 100, 21, 49, 40, 1.66, 8000, 8000]),
  '7311B': row([55, 120, 29, 85, 60, 2.55, 7000, 7000]),
  '7212B': row([60, 110, 22, 61, 50, 2.12, 7000, 7500]),
  '7312B': row([60, 130, 31, 104, 76.5, 3.2, 6300, 6700]),
};
