import type { ProofCase } from './case.ts';

type Source = ProofCase['source'];
type Point = readonly [number, number];

const GGS: Source = {
  title: 'W. Gander, G. H. Golub, R. Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558',
  at: 'first example',
  how: 'memory',
};
const COOKBOOK = (at: string): Source => ({ title: 'SciPy Cookbook, least squares circle', at, how: 'memory' });
const V_BLOCK: Source = {
  title: 'Journal of the Japan Society of Precision Engineering 43 (1977) 1167; ISO 4292',
  at: 'three-point method, indicator opposite the V',
  how: 'read',
  address: 'www.jstage.jst.go.jp/article/jjspe1933/43/514/43_514_1167/_article/-char/en',
};
const numpy = (at: string): Source => ({ title: `NumPy, ${at}`, edition: '2.4.6', at, how: 'read' });
const scipy = (at: string): Source => ({ title: `SciPy, ${at}`, edition: '1.17.1', at, how: 'read' });

const mm = (list: readonly number[]): string[] => list.map((value) => `${value} mm`);
const deg = (list: readonly number[]): string[] => list.map((value) => `${value} deg`);
const evenly = (count: number): string[] => deg(Array.from({ length: count }, (_, k) => (360 / count) * k));

const circle = (
  id: string,
  points: readonly Point[],
  [x, y, radius]: readonly [number, number, number],
  source: Source,
  kind: ProofCase['kind'],
): ProofCase => ({
  method: 'runout.circle',
  id,
  given: { xs: mm(points.map(([px]) => px)), ys: mm(points.map(([, py]) => py)) },
  expect: {
    x: { value: `${x} mm`, within: { abs: '0.0001 mm' } },
    y: { value: `${y} mm`, within: { abs: '0.0001 mm' } },
    radius: { value: `${radius} mm`, within: { abs: '0.0001 mm' } },
  },
  source,
  kind,
});

const vBlock = (angle: number, lobes: number, factor: number): ProofCase => ({
  method: 'runout.vblockFactor',
  id: `vblock-${angle}-${lobes}-lobes`,
  given: { angle: `${angle} deg`, lobes },
  expect: { factor: { value: factor, within: { abs: 0.002 } } },
  source: V_BLOCK,
  kind: 'table-spot',
});

const order = (
  id: string,
  angles: readonly string[],
  readings: readonly number[],
  orders: number,
  wanted: readonly [number, number, number],
  source: Source,
): ProofCase => ({
  method: 'runout.harmonic',
  id,
  given: { angles: [...angles], readings: mm(readings), orders, order: wanted[0] },
  expect: {
    amplitude: { value: `${wanted[1]} mm`, within: { abs: '0.000001 mm' } },
    high: { value: `${wanted[2]} deg`, within: { abs: '0.0001 deg' } },
  },
  source,
  kind: 'reference-library',
});

const line = (
  id: string,
  stations: readonly number[],
  offsets: readonly number[],
  at: number,
  [tilt, offset, left]: readonly [number, number, number],
): ProofCase => ({
  method: 'runout.lineFit',
  id,
  given: { stations: mm(stations), offsets: mm(offsets), at: `${at} mm` },
  expect: {
    tilt: { value: `${tilt} rad`, within: { rel: 1e-6 } },
    offset: { value: `${offset} mm`, within: { abs: '0.000001 mm' } },
    left: { value: `${left} mm`, within: { abs: '0.000001 mm' } },
  },
  source: numpy('polyfit of degree 1'),
  kind: 'reference-library',
});

const READ_12 = [0.102, 0.141, 0.113, 0.064, 0.013, -0.022, -0.064, -0.086, -0.103, -0.106, -0.074, 0.011];
const MARKS_11 = deg([0, 17, 48, 95, 121, 160, 199, 230, 262, 301, 333]);
const READ_11 = [-0.208, -0.203, -0.157, -0.05, -0.007, 0.084, 0.183, 0.225, 0.17, -0.013, -0.164];
const READ_72 = [
  0.167, 0.146, 0.121, 0.093, 0.063, 0.019, 0.001, -0.045, -0.082, -0.098, -0.113, -0.141, -0.146, -0.159, -0.184,
  -0.206, -0.216, -0.222, -0.251, -0.274, -0.292, -0.301, -0.313, -0.314, -0.314, -0.318, -0.303, -0.294, -0.272,
  -0.261, -0.246, -0.216, -0.214, -0.2, -0.18, -0.177, -0.166, -0.146, -0.126, -0.089, -0.064, -0.019, 0.005, 0.039,
  0.069, 0.101, 0.121, 0.145, 0.151, 0.168, 0.19, 0.193, 0.212, 0.235, 0.25, 0.264, 0.275, 0.313, 0.315, 0.325, 0.316,
  0.322, 0.305, 0.288, 0.267, 0.257, 0.238, 0.225, 0.206, 0.201, 0.194, 0.174,
];

/** Measuring run-out. */
export const RUNOUT_CASES: readonly ProofCase[] = [
  circle(
    'circle-six-hard-points',
    [
      [1, 7],
      [2, 6],
      [5, 8],
      [7, 7],
      [9, 5],
      [3, 7],
    ],
    [4.7398, 2.9835, 4.7142],
    GGS,
    'published-example',
  ),
  circle(
    'circle-full',
    [
      [9, 34],
      [35, 10],
      [-13, 6],
      [10, -14],
      [23, 27],
      [0, -10],
    ],
    [10.50009, 9.65995, 23.33353],
    COOKBOOK('first data set'),
    'published-example',
  ),
  circle(
    'circle-arc',
    [
      [36, 14],
      [36, 10],
      [19, 28],
      [18, 31],
      [33, 18],
      [26, 26],
    ],
    [9.88757, 3.6875, 27.35044],
    COOKBOOK('second data set, an arc'),
    'published-example',
  ),
  circle(
    'circle-eight-points',
    [
      [0.7, 4.0],
      [3.3, 4.7],
      [5.6, 4.0],
      [7.5, 1.3],
      [6.4, -1.1],
      [4.4, -3.0],
      [0.3, -2.5],
      [-1.1, 1.3],
    ],
    [3.04324, 0.74568, 4.10586],
    {
      title: 'D. Gruntz, Finding the best fit circle, The MathWorks Newsletter 1 (1990)',
      at: 'page 5, eight points',
      how: 'memory',
    },
    'published-example',
  ),
  circle(
    'circle-short-arc-library',
    [
      [51.85, -3.48],
      [49.07, 7.95],
      [42.16, 19.29],
      [25.6, 30.57],
      [8.49, 32.85],
      [-6.78, 28.26],
    ],
    [12.0230436, -6.9958803, 39.9704519],
    scipy('optimize.least_squares on the distances'),
    'reference-library',
  ),
  vBlock(60, 2, 0),
  vBlock(60, 3, 3),
  vBlock(90, 2, 1),
  vBlock(90, 3, 2),
  vBlock(90, 4, -0.414),
  vBlock(90, 7, 0),
  vBlock(90, 8, 2.414),
  vBlock(108, 5, 2.236),
  vBlock(120, 2, 1.577),
  vBlock(120, 6, -0.155),
  order('harmonic-12-offset', evenly(12), READ_12, 3, [1, 0.11641669, 49.280979], numpy('fft.rfft')),
  order('harmonic-12-oval', evenly(12), READ_12, 3, [2, 0.029027286, 21.469902], numpy('fft.rfft')),
  order('harmonic-12-three-lobes', evenly(12), READ_12, 3, [3, 0.007350359, 10.9898013], numpy('fft.rfft')),
  order('harmonic-11-uneven-offset', MARKS_11, READ_11, 3, [1, 0.199972222, -150.3278791], numpy('linalg.lstsq')),
  order('harmonic-11-uneven-oval', MARKS_11, READ_11, 3, [2, 0.04913589, 70.1432349], numpy('linalg.lstsq')),
  order('harmonic-72-offset', evenly(72), READ_72, 9, [1, 0.300781204, -60.3835909], numpy('fft.rfft, 72 marks')),
  order('harmonic-72-five-lobes', evenly(72), READ_72, 9, [5, 0.0199785635, 8.3600093], numpy('fft.rfft, 72 marks')),
  order(
    'harmonic-4-turned',
    deg([10, 100, 190, 280]),
    [0.05, -0.11, -0.02, 0.13],
    1,
    [1, 0.125, -63.7397953],
    numpy('linalg.lstsq, four marks'),
  ),
  line(
    'axis-line-5',
    [0, 50, 120, 200, 310],
    [0.02, 0.05, 0.03, 0.11, 0.16],
    400,
    [0.00045241243, 0.19343688, 0.01861692],
  ),
  line('axis-line-4', [12, 80, 95, 240], [-0.1, -0.02, 0.01, 0.2], 0, [0.00132463955, -0.118905272, 0.00416411]),
  line(
    'axis-line-7',
    [0, 100, 200, 300, 400, 500, 600],
    [0.3, 0.25, 0.28, 0.1, 0.05, -0.05, -0.02],
    250,
    [-0.000639285714, 0.161964286, 0.04402573],
  ),
  {
    method: 'runout.axisAtStation',
    id: 'axis-beyond-two-stations',
    given: {
      ...{ station1: '20 mm', tir1: '0.12 mm', high1: '30 deg', station2: '180 mm', tir2: '0.3 mm', high2: '110 deg' },
      ...{ at: '260 mm', faceDiameter: '120 mm' },
    },
    expect: {
      tir: { value: '0.44353466 mm', within: { rel: 1e-6 } },
      high: { value: '117.655805 deg', within: { abs: '0.0001 deg' } },
      tilt: { value: '0.00094733039 rad', within: { rel: 1e-6 } },
      faceTir: { value: '0.11367965 mm', within: { rel: 1e-6 } },
    },
    source: numpy('complex arithmetic, offsets as complex numbers'),
    kind: 'reference-library',
  },
  {
    method: 'runout.stackUp',
    id: 'stack-up-4',
    given: { tirs: mm([0.02, 0.05, 0.15, 0.08]), highs: deg([0, 140, 60, 200]) },
    expect: {
      worst: { value: '0.3 mm', within: { rel: 1e-9 } },
      rootSumSquare: { value: '0.17833 mm', within: { rel: 1e-4 } },
      tir: { value: '0.135943189 mm', within: { rel: 1e-6 } },
      high: { value: '97.811922 deg', within: { abs: '0.0001 deg' } },
    },
    source: numpy('complex sum'),
    kind: 'reference-library',
  },
  {
    method: 'runout.fourPoint',
    id: 'four-marks',
    given: { readings: mm([0.1, 0.34, 0.2, -0.04]) },
    expect: {
      offset: { value: '0.1965 mm', within: { abs: '0.0005 mm' } },
      high: { value: '104.7 deg', within: { abs: '0.5 deg' } },
      oval: { value: '0 mm', within: { abs: '0.000001 mm' } },
    },
    source: { title: 'BS 3730 / ISO 4291, least-squares mean line', at: 'four marks', how: 'memory' },
    kind: 'table-spot',
  },
];
