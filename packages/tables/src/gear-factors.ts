import { defineTable } from './table.ts';

const SHIGLEY = "Shigley's Mechanical Engineering Design, chapters 14 and 15";

/** Form factors of full-depth teeth at 20°, by the number of teeth, load at the tip. */
export const LEWIS_FORM = defineTable({
  id: 'lewis-form',
  title: 'Lewis form factor of full-depth teeth at 20°',
  range: '12 to 400 teeth',
  how: 'memory',
  source: `${SHIGLEY}, Table 14-2`,
  columns: { form: { kind: 'number', unit: '', meaning: 'form factor' } },
  rows: Object.fromEntries(
    (
      [
        [12, 0.245],
        [13, 0.261],
        [14, 0.277],
        [15, 0.29],
        [16, 0.296],
        [17, 0.303],
        [18, 0.309],
        [19, 0.314],
        [20, 0.322],
        [21, 0.328],
        [22, 0.331],
        [24, 0.337],
        [26, 0.346],
        [28, 0.353],
        [30, 0.359],
        [34, 0.371],
        [38, 0.384],
        [43, 0.397],
        [50, 0.409],
        [60, 0.422],
        [75, 0.435],
        [100, 0.447],
        [150, 0.46],
        [300, 0.472],
        [400, 0.48],
      ] as const
    ).map(([teeth, form]) => [String(teeth), { values: { form }, how: 'memory' as const }]),
  ),
});

/** Factors of gear ratings that go by words. */
export const GEAR_SERVICE = defineTable({
  id: 'gear-service',
  title: 'Factors of gear ratings',
  range: 'gears behind combustion engines',
  how: 'memory',
  source: SHIGLEY,
  columns: {
    factor: { kind: 'number', unit: '', meaning: 'factor' },
    perInch: { kind: 'number', unit: '', meaning: 'more for each inch of face' },
    speed: { kind: 'speed', unit: 'm/s', meaning: 'pitch-line speed, up to' },
  },
  rows: {
    'engine-of-one': { values: { factor: 1.5 }, how: 'memory', note: 'One cylinder, or not said: heavy shock.' },
    'engine-of-more': { values: { factor: 1.25 }, how: 'memory', note: 'Several cylinders: medium shock.' },
    'both between bearings': { values: { factor: 1 }, how: 'memory' },
    'one between bearings': { values: { factor: 1.1 }, how: 'memory' },
    'both overhung': { values: { factor: 1.25 }, how: 'memory' },
    'mesh-open': { values: { factor: 0.247, perInch: 0.0167 }, how: 'memory' },
    'mesh-housed': { values: { factor: 0.127, perInch: 0.0158 }, how: 'memory' },
    'bending-of-form': {
      values: { factor: 0.95 },
      how: 'derived',
      source:
        'Part of the Lewis form factor that lies on or under every bending factor of the AGMA 908 tables from 21 teeth on',
    },
    'reliability-90': { values: { factor: 0.85 }, how: 'memory' },
    'reliability-95': { values: { factor: 0.895 }, how: 'memory' },
    'reliability-99': { values: { factor: 1 }, how: 'memory' },
    'reliability-99.9': { values: { factor: 1.25 }, how: 'memory' },
    'oil-grease': {
      values: { speed: 6 },
      how: 'memory',
      source: 'Gear makers’ technical data: grease up to 6 m/s of pitch-line speed',
    },
    'oil-bath': {
      values: { speed: 15 },
      how: 'memory',
      source: 'Gear makers’ technical data: splash up to 15 m/s of pitch-line speed, a pump above',
    },
  },
});
