import { rollingCircumference } from '@oddwheel/mechanics/vehicle/rolling-circumference';
import { tyreDiameter } from '@oddwheel/mechanics/vehicle/tyre-diameter';
import type { BuildFile } from '../schema/build-file.ts';
import type { Value, Wheel } from './model.ts';
import { readTyre } from './tyre.ts';
import { type Reader, valueOrNull } from './value.ts';

/** A new tyre's section may be so much lower or higher than its size says (UN Regulation No. 30; from memory). */
const HEIGHT = { low: 0.97, high: 1.04 } as const;

const ADDRESS = '/brief/wheel';

/** The driven wheel: a measured roll-out goes before one from the tyre size. */
export function resolveWheel(reader: Reader, file: BuildFile['brief']['wheel']): Wheel {
  const measured = valueOrNull(reader, `${ADDRESS}/rollOut`, file, 'rollOut', 'Driven wheel');
  const size = file.tyre === undefined ? null : readTyre(file.tyre);
  if (!size?.ok) return { address: ADDRESS, tyre: file.tyre ?? null, diameter: null, width: null, rollOut: measured };
  const { sectionWidth, aspect, rimDiameter } = size;
  const { outsideDiameter, sectionHeight } = tyreDiameter.run({ sectionWidth, aspect, rimDiameter });
  return {
    address: ADDRESS,
    tyre: file.tyre ?? null,
    diameter: outsideDiameter,
    width: sectionWidth,
    rollOut: measured ?? fromSize(file, size.construction, rimDiameter, sectionHeight, outsideDiameter),
  };
}

function fromSize(
  file: BuildFile['brief']['wheel'],
  moulded: 'radial' | 'cross-ply' | 'bias-belted',
  rim: number,
  height: number,
  diameter: number,
): Value {
  const construction = file.construction ?? (moulded === 'bias-belted' ? 'unknown' : moulded);
  const middle = rollingCircumference.run({ outsideDiameter: diameter, construction });
  const low = rollingCircumference.run({ outsideDiameter: rim + 2 * height * HEIGHT.low, construction });
  const high = rollingCircumference.run({ outsideDiameter: rim + 2 * height * HEIGHT.high, construction });
  return {
    address: `${ADDRESS}/rollOut`,
    name: 'Driven wheel, roll-out',
    kind: 'length',
    si: middle.rollOut,
    lo: low.rollOutLow,
    hi: high.rollOutHigh,
    text: `from the tyre size ${file.tyre ?? ''}`,
    origin: 'assumed',
    together: null,
    source: 'ETRTO rolling circumference of the size, with the height tolerance of UN Regulation No. 30; from memory',
    recipe: 'Load the wheel, chalk tyre and floor, roll ten turns straight ahead, measure, divide by ten.',
  };
}
