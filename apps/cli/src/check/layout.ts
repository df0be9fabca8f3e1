import type { Assessment } from '@oddwheel/build/assess/types';
import { table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';

/** Which body carries which shaft, and what has to follow between bodies; nothing where no bearing is named. */
export function bodyLines({ layout }: Assessment): string[] {
  const { lines, crossings } = layout;
  if (lines.every(({ bearings }) => bearings.length === 0)) return [];
  return [
    '',
    ...table(
      [{ title: 'Shaft line' }, { title: 'Carried by' }, { title: 'In its bearings', wraps: true }],
      lines.map(({ name, bodies, bearings }) => [
        name,
        bodies.join(', ') || 'not said',
        bearings.map((bearing) => bearing.name).join(', '),
      ]),
    ),
    ...(crossings.length === 0 ? [] : ['', ...crossings.flatMap(({ text }) => wrap(plainLine(text), WIDTH))]),
  ];
}
