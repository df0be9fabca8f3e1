import type { JSX } from 'react';
import { PartList, ReferenceTable } from '../findings/Lists.tsx';
import { StepFindings } from '../findings/StepFindings.tsx';
import type { ScreenProps } from '../steps/screen.ts';

/** The reduction against the reference vehicle, and the parts it needs against the shelf. */
export function RatiosScreen({ state, actions }: ScreenProps): JSX.Element | null {
  const { assessment } = state;
  if (!assessment) return null;
  return (
    <>
      <StepFindings state={state} actions={actions} step="ratios" heading="Targets" />
      <ReferenceTable rows={assessment.reference} units={assessment.units} />
      <PartList parts={assessment.parts} />
    </>
  );
}
