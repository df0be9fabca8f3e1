import type { Finding } from '@oddwheel/build/assess/types';
import { reserveText } from '../numbers/shown.ts';

const MOST_SAID = 3;

/**
 * What an edit did to the findings, in words for a screen reader: first those whose severity changed, worst first; with
 * none, the one whose reserve moved most.
 *
 * @param before findings before the edit
 * @param after findings after it, in their ranked order
 */
export function sayChange(before: readonly Finding[], after: readonly Finding[]): string {
  const old = new Map(before.map((finding) => [finding.id, finding]));
  const gone = before.filter((finding) => !after.some((other) => other.id === finding.id));
  const turned = after.filter((finding) => old.get(finding.id)?.severity !== finding.severity);
  const said = turned.slice(0, MOST_SAID).map((finding) => `${nameOf(finding)} now ${stateOf(finding)}`);
  const more = turned.length - said.length;
  if (more > 0) said.push(`${more} more changed`);
  if (gone.length > 0) said.push(`${gone.length} no longer checked`);
  if (said.length > 0) return `${said.join('; ')}.`;
  const moved = after
    .map((finding) => ({ finding, by: shift(old.get(finding.id), finding) }))
    .reduce((most, one) => (one.by > most.by ? one : most), { finding: null as Finding | null, by: 0 });
  return moved.finding ? `${nameOf(moved.finding)} ${stateOf(moved.finding)}.` : 'No check changed.';
}

const nameOf = (finding: Finding): string => `${finding.element} ${finding.title}`;

const stateOf = (finding: Finding): string =>
  finding.reserve === null ? finding.severity : `${finding.severity}, ${reserveText(finding.reserve.value)}`;

function shift(before: Finding | undefined, after: Finding): number {
  if (!before?.reserve || !after.reserve) return 0;
  return Math.abs(Math.log(after.reserve.value / before.reserve.value)) || 0;
}
