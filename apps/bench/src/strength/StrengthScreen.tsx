import type { JSX } from 'react';
import { StepFindings } from '../findings/StepFindings.tsx';
import type { ScreenProps } from '../steps/screen.ts';

/** What breaks first. */
export function StrengthScreen({ state, actions }: ScreenProps): JSX.Element {
  return <StepFindings state={state} actions={actions} step="strength" heading="What breaks first" />;
}
