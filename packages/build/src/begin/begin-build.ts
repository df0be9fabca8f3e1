import { layOutBuild } from './lay-out.ts';
import type { BeginResult, SixFields } from './types.ts';

/**
 * A first build from six fields.
 *
 * @returns the text of a build file; or faults, each with its field and what is accepted
 */
export function beginBuild(six: SixFields): BeginResult {
  const laid = layOutBuild(six);
  if (!laid.ok) return laid;
  const { session: _, ...rest } = laid;
  return rest;
}
