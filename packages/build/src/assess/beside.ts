import type { Assessment, Finding } from './types.ts';

/** One check of two builds: where each is lowest. */
export interface BesideRow {
  readonly check: string;
  readonly title: string;
  readonly here: { readonly element: string; readonly id: string; readonly reserve: number };
  readonly there: { readonly element: string; readonly id: string; readonly reserve: number };
  /** "pull against strength: yours 1.4 at Chain 2, the donor's 1.6 at Chain". */
  readonly text: string;
}

/** Lowest reserve of each check that gives one. */
function lowestOf({
  findings,
}: Assessment): Map<string, Finding & { readonly reserve: NonNullable<Finding['reserve']> }> {
  const found = new Map<string, Finding & { readonly reserve: NonNullable<Finding['reserve']> }>();
  for (const finding of findings) {
    const { reserve } = finding;
    if (!reserve || Number.isNaN(reserve.value)) continue;
    const before = found.get(finding.check);
    if (!before || reserve.value < before.reserve.value) found.set(finding.check, { ...finding, reserve });
  }
  return found;
}

/**
 * A build beside another one, such as the donor vehicle typed as a build of its own: for each check that both have, the lowest
 * reserve of each. What holds in a vehicle that has proved itself is a measure for what the builder dares.
 * @returns rows with the lowest reserve here first
 */
export function besideRows(here: Assessment, there: Assessment): BesideRow[] {
  const others = lowestOf(there);
  const rows = [...lowestOf(here)].flatMap(([check, mine]): BesideRow[] => {
    const other = others.get(check);
    if (!other) return [];
    const two = (x: number): string => x.toFixed(2);
    return [
      {
        check,
        title: mine.title,
        here: { element: mine.element, id: mine.id, reserve: mine.reserve.value },
        there: { element: other.element, id: other.id, reserve: other.reserve.value },
        text: `${mine.title}: yours ${two(mine.reserve.value)} at ${mine.element}, ${there.name} ${two(other.reserve.value)} at ${other.element}`,
      },
    ];
  });
  return rows.sort((a, b) => a.here.reserve - b.here.reserve || (a.check < b.check ? -1 : 1));
}
