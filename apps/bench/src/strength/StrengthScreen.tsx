import type { JSX } from 'react';
import { StepFindings } from '../findings/StepFindings.tsx';
import type { ScreenProps } from '../steps/screen.ts';
import { BesidePanel } from './BesidePanel.tsx';
import { LoadCases } from './LoadCases.tsx';
import { ShaftPanel } from './ShaftPanel.tsx';
import './strength.css';
import { TurningPanel } from './Turning.tsx';

/** What breaks first, under which loads, and how the drive turns against itself. */
export function StrengthScreen({ state, actions, model }: ScreenProps): JSX.Element {
  const { assessment } = state;
  return (
    <>
      <StepFindings state={state} actions={actions} step="strength" heading="What breaks first" />
      {assessment && (
        <>
          <ShaftPanel state={state} actions={actions} model={model} />
          <LoadCases
            cases={assessment.cases}
            shafts={assessment.shafts}
            units={assessment.units}
            onReveal={actions.reveal}
          />
          <TurningPanel turning={assessment.turning} units={assessment.units} onReveal={actions.reveal} />
          <BesidePanel model={model} onOpen={actions.openFinding} />
        </>
      )}
    </>
  );
}
