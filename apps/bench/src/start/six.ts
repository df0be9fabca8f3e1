import type { SixFields, SixKey } from '@oddwheel/build/begin/types';
import type { Kind } from '@oddwheel/quantity/kinds';

/** One box of the six fields; two of them ask a size and the engine speed that it comes at. */
export interface SixBox {
  readonly key: SixKey;
  readonly name: string;
  readonly kind: Kind | null;
  readonly example: string;
}

export interface SixRow {
  readonly title: string;
  readonly boxes: readonly SixBox[];
}

/** The six fields in the order that they are asked. */
export const SIX: readonly SixRow[] = [
  {
    title: '1 Peak power',
    boxes: [
      { key: 'power', name: 'Peak power', kind: 'power', example: '27 kW' },
      { key: 'powerAt', name: 'at engine speed', kind: 'angularSpeed', example: '7500 rpm' },
    ],
  },
  {
    title: '2 Peak torque',
    boxes: [
      { key: 'torque', name: 'Peak torque', kind: 'torque', example: '41 N.m' },
      { key: 'torqueAt', name: 'at engine speed', kind: 'angularSpeed', example: '5200 rpm' },
    ],
  },
  {
    title: '3 Gearbox',
    boxes: [
      { key: 'gears', name: 'Gearbox ratios, first gear first', kind: null, example: '2.75 1.78 1.36 1.12 0.96' },
      { key: 'primary', name: 'Primary ratio, blank if not known', kind: null, example: '65:31' },
    ],
  },
  {
    title: '4 Wheel',
    boxes: [{ key: 'tyre', name: 'Tyre size, or measured roll-out', kind: null, example: '110/85R36, or 3.35 m' }],
  },
  {
    title: '5 Mass',
    boxes: [{ key: 'mass', name: 'Mass, ready to drive, no load', kind: 'mass', example: '320 kg' }],
  },
  {
    title: '6 Road speed',
    boxes: [{ key: 'speed', name: 'Road speed wanted in top gear', kind: 'speed', example: '65 km/h' }],
  },
];

/** What is typed so far; null for gearbox ratios stands for "don't know". */
export type Typed = SixFields;

export const NOTHING_TYPED: Typed = {
  power: '',
  powerAt: '',
  torque: '',
  torqueAt: '',
  gears: '',
  primary: '',
  tyre: '',
  mass: '',
  speed: '',
};

const isBlank = (typed: Typed, { key }: SixBox): boolean => key !== 'primary' && typed[key]?.trim() === '';

/** Whether everything that must be typed is there, so that a layout can be tried. */
export function isWhole(typed: Typed): boolean {
  return stillToType(typed).length === 0;
}

/** What must still be typed, in words: "peak torque", "mass". */
export function stillToType(typed: Typed): readonly string[] {
  return SIX.filter(({ boxes }) => boxes.some((box) => isBlank(typed, box))).map(({ title }) =>
    title.replace(/^\d /, '').toLowerCase(),
  );
}
