import type { Assessment } from '@oddwheel/build/assess/types';
import type { Field } from '@oddwheel/build/session-types';
import { STEPS, type StepId } from '../steps/steps.ts';
import type { Part } from '../worker/model-api.ts';

/** Something that can be found by name, and where it leads. */
export interface Place {
  readonly name: string;
  /** What it is: "field of Chain 1". */
  readonly kind: string;
  readonly to:
    | { readonly step: StepId }
    | { readonly element: string }
    | { readonly field: string }
    | { readonly finding: string };
}

const MOST_FOUND = 40;

/**
 * Everything on the page that has a name: steps, elements and parts, fields, findings.
 *
 * @param fieldsOf fields by the address of their element
 */
export function allPlaces(
  assessment: Assessment,
  parts: readonly Part[],
  fieldsOf: ReadonlyMap<string, readonly Field[]>,
): readonly Place[] {
  const elements = [...new Map([...assessment.path, ...parts].map((one) => [one.address, one])).values()];
  return [
    ...elements.map((one): Place => ({ name: one.name, kind: 'part of the build', to: { element: one.address } })),
    ...STEPS.map((step): Place => ({ name: step.name, kind: `step ${step.number}`, to: { step: step.id } })),
    ...elements.flatMap((one) =>
      (fieldsOf.get(one.address) ?? []).map(
        (field): Place => ({ name: field.name, kind: `field of ${one.name}`, to: { field: field.address } }),
      ),
    ),
    ...assessment.findings.map(
      (finding): Place => ({
        name: `${finding.element}, ${finding.title}`,
        kind: `check, ${finding.severity}`,
        to: { finding: finding.id },
      }),
    ),
  ];
}

/** Places whose name, with what it is, has every word that was typed; those whose name begins with the first word come first. */
export function findPlaces(places: readonly Place[], typed: string): readonly Place[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const [first] = words;
  if (first === undefined) return [];
  const rank = (place: Place): number => {
    const name = place.name.toLowerCase();
    if (!words.every((word) => `${name} ${place.kind.toLowerCase()}`.includes(word))) return 0;
    if (!words.every((word) => name.includes(word))) return 1;
    return name.startsWith(first) ? 3 : 2;
  };
  return places
    .map((place) => ({ place, rank: rank(place) }))
    .filter((one) => one.rank > 0)
    .sort((a, b) => b.rank - a.rank)
    .slice(0, MOST_FOUND)
    .map((one) => one.place);
}
