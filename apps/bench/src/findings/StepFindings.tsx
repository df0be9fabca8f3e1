import { type JSX, useState } from 'react';
import { stepOfCheck } from '../steps/belongs.ts';
import type { ScreenProps } from '../steps/screen.ts';
import type { StepId } from '../steps/steps.ts';
import { FindingList } from './FindingList.tsx';

interface Props extends Pick<ScreenProps, 'state' | 'actions'> {
  readonly step: StepId;
  readonly heading: string;
}

/** The findings that belong to a step, worst first; on request those of the whole build. */
export function StepFindings({ state, actions, step, heading }: Props): JSX.Element | null {
  const { assessment, look } = state;
  const [whole, setWhole] = useState(false);
  if (!assessment) return null;
  const own = assessment.findings.filter((finding) => stepOfCheck(finding.check) === step);
  return (
    <FindingList
      heading={heading}
      findings={whole ? assessment.findings : own}
      others={assessment.findings.length - own.length}
      whole={whole}
      cases={assessment.cases}
      closure={step === 'strength' ? assessment.closure : null}
      opened={look.finding}
      onOpen={actions.openFinding}
      onWhole={setWhole}
    />
  );
}
