import type { ClearanceRow } from '@oddwheel/build/assess/clearance/types';

/** The line of a clearance without the names that stand before it. */
export function clearanceWords({ first, second, text }: ClearanceRow): string {
  const names = `${first.name} to ${second.name}: `;
  return text.startsWith(names) ? text.slice(names.length) : text;
}
