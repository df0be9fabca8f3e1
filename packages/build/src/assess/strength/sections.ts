/** Forces inside a shaft just before or behind a station. */
export interface SectionForces {
  readonly station: number;
  /** Resultant of both planes. */
  readonly bending: number;
  readonly shear: number;
  readonly torque: number;
  readonly axial: number;
}

/**
 * Forces inside a shaft at each end of each stretch between its nodes, in order; `sectionAt` reads them. Numbers in one row, since a build with
 * all its corners and cases has a hundred thousand sections.
 */
export interface Sections {
  /** From `first` on, of each section its station, bending, shear, torque and axial force. */
  readonly numbers: Float64Array;
  readonly first: number;
  /** How many times as large the forces are. */
  readonly by: number;
}

/** Numbers of one section. */
export const OF_SECTION = 5;

/** The forces at a section by its place in the order; undefined where there is none. */
export function sectionAt({ numbers, first, by }: Sections, section: number): SectionForces | undefined {
  const at = first + section * OF_SECTION;
  if (!(at >= first && at < numbers.length)) return undefined;
  return {
    station: numbers[at] as number,
    bending: by * (numbers[at + 1] as number),
    shear: by * (numbers[at + 2] as number),
    torque: by * (numbers[at + 3] as number),
    axial: by * (numbers[at + 4] as number),
  };
}
