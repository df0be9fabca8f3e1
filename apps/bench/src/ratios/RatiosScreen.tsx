import type { JSX } from 'react';
import { PartList, ReferenceTable } from '../findings/Lists.tsx';
import type { ScreenProps } from '../steps/screen.ts';

/** The reduction against the reference vehicle, and the parts it needs against the shelf. */
export function RatiosScreen({ state }: ScreenProps): JSX.Element | null {
  const { assessment } = state;
  if (!assessment) return null;
  return (
    <>
      <ReferenceTable rows={assessment.reference} units={assessment.units} />
      <PartList parts={assessment.parts} />
    </>
  );
}
