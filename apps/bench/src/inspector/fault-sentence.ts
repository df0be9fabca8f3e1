import type { Fault } from '@oddwheel/build/fault';

/** A fault as it stands under a field: what was read, what is wrong with it, and what is accepted. */
export function faultSentence(fault: Fault): string {
  const read = fault.read === '' || fault.problem.includes(fault.read) ? '' : `Read “${fault.read}”. `;
  return `${read}${fault.problem} ${fault.accepted}`.trim();
}
