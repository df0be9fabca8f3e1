import { parseJsonText } from '../document/json-text.ts';
import type { Fault } from '../fault.ts';
import { type BuildFile, FORMAT } from '../schema/build-file.ts';
import { isRecord } from '../schema/describe.ts';
import { migrate } from './migrate.ts';
import { quantityFaults } from './quantities.ts';
import { referenceFaults } from './references.ts';
import { shapeFaults } from './shape.ts';

export type ReadBuild =
  | { readonly ok: true; readonly build: BuildFile /** format of the text, before migration */; readonly from: number }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads the text of a build file: JSON, format, then three joined passes (shape, quantities, references and geometry).
 * All faults are given at once, in the order of the file, with line and column; a place is named once, by the first pass that objects to it.
 */
export function readBuild(text: string): ReadBuild {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const placed = (faults: readonly Fault[]): Fault[] => {
    const located = faults.map((fault) => ({ ...fault, ...nearest(json.locate, fault.address) }));
    return located.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  };
  const migrated = migrate(json.value);
  if (!migrated.ok) return { ok: false, faults: placed(migrated.faults) };
  const value = migrated.value;
  const faults = faultsIn(value);
  if (faults.length > 0) return { ok: false, faults: placed(faults) };
  // The three passes found nothing, so the value has the shape of the schema.
  return { ok: true, build: value as unknown as BuildFile, from: migrated.from };
}

/**
 * A value of the present format as a build; null where it has faults. Quicker than reading its text.
 * @param before a build that it was made from: parts that are the very same objects are not looked at again
 */
export function soundBuild(value: unknown, before?: BuildFile): BuildFile | null {
  // As above: without a fault it has the shape of the schema.
  return isRecord(value) && value.format === FORMAT && faultsIn(value, before).length === 0
    ? (value as unknown as BuildFile)
    : null;
}

function faultsIn(value: Record<string, unknown>, before?: BuildFile): readonly Fault[] {
  const seen = new Set<string>();
  const faults: Fault[] = [];
  for (const pass of [shapeFaults, quantityFaults, referenceFaults]) {
    const found = pass(value, before).filter((fault) => !seen.has(fault.address));
    for (const fault of found) seen.add(fault.address);
    faults.push(...found);
  }
  return faults;
}

type Locate = (pointer: string) => { readonly line: number; readonly column: number } | undefined;

/** Place of an address; of the closest thing that holds it when the address itself is missing. */
function nearest(locate: Locate, address: string): { line: number; column: number } | Record<string, never> {
  for (let at = address; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const place = locate(at);
    if (place) return { line: place.line, column: place.column };
    if (at === '') return {};
  }
}

/** Faults of a build text; empty when it can be assessed. */
export function validateText(text: string): readonly Fault[] {
  const result = readBuild(text);
  return result.ok ? [] : result.faults;
}
