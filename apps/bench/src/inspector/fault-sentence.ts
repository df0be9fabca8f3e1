import type { Fault } from '@oddwheel/build/fault';

/**
 * A fault as it stands under a field: what was read, what is wrong with it, and what is accepted.
 *
 * @param field name of the field, which stands above and need not be said again
 */
export function faultSentence(fault: Fault, field: string): string {
  const problem = fault.problem.startsWith(`${field}: `) ? fault.problem.slice(field.length + 2) : fault.problem;
  const read = fault.read === '' || problem.includes(fault.read) ? '' : `Read “${fault.read}”. `;
  const accepted = /^[a-z]/.test(fault.accepted) ? `Accepted: ${fault.accepted}` : fault.accepted;
  return `${read}${problem} ${accepted}`.trim();
}
