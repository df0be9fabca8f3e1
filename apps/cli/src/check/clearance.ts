import type { Assessment } from '@oddwheel/build/assess/types';
import { WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';

/** Pairs that are printed; `--json` has them all. */
const MOST = 12;

/** Room between what moves and what is near it, smallest first, and room for tools. */
export function clearanceLines({ clearance }: Assessment): string[] {
  const { rows, access, unknown } = clearance;
  if (rows.length === 0 && access.length === 0 && unknown.length === 0) return [];
  const lines = (text: string): string[] => wrap(plainLine(text), WIDTH);
  return [
    '',
    'Clearances, smallest first',
    '',
    ...rows.slice(0, MOST).flatMap(({ text, place }) => lines(`${text}; ${place}.`)),
    ...(rows.length > MOST ? lines(`and ${rows.length - MOST} wider ones.`) : []),
    ...access.flatMap(({ text }) => lines(`Room for a tool: ${text}.`)),
    ...unknown.flatMap(({ name, says }) => lines(`Not known for ${name}: ${says}.`)),
  ];
}
