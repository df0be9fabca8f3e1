import type { Assessment } from '@oddwheel/build/assess/types';
import { formatFor, formatQuantity } from '@oddwheel/quantity/format';
import { WIDTH } from '../table.ts';
import { wrap } from '../text-width.ts';

/** How the drive swings and how far it turns free, as lines of the report. */
export function turningLines({ turning, units }: Assessment): string[] {
  const { gears, parts, total, missing } = turning;
  const swings = gears.map(
    ({ gear, modes }) =>
      `gear ${gear} ${modes.map((f) => formatQuantity(f, 'frequency', 'Hz', { digits: 3 })).join(', ')}`,
  );
  const angle = (x: number): string => formatFor(units, 'angle', x);
  return [
    '',
    'Turning',
    '',
    ...(swings.length > 0 ? wrap(`Swings of engine against vehicle, slowest first: ${swings.join('; ')}.`, WIDTH) : []),
    ...wrap(
      parts.length > 0
        ? `Free play at the wheel with the crank held: ${angle(total)}, of it ${parts.map((part) => `${part.name} ${angle(part.angle)}`).join(', ')}.`
        : 'No free play is known.',
      WIDTH,
    ),
    ...(missing.length > 0 ? wrap(`Not counted: ${missing.map(({ says }) => says).join('; ')}.`, WIDTH) : []),
  ];
}
