import type { JSX } from 'react';
import { FindingList } from '../findings/FindingList.tsx';
import type { ScreenProps } from '../steps/screen.ts';

/** What breaks first. */
export function StrengthScreen({ state, actions }: ScreenProps): JSX.Element | null {
  const { assessment, look } = state;
  if (!assessment) return null;
  return (
    <FindingList
      findings={assessment.findings}
      cases={assessment.cases}
      closure={assessment.closure}
      opened={look.finding}
      onOpen={actions.openFinding}
    />
  );
}
