import type { JSX } from 'react';
import { StepFindings } from '../findings/StepFindings.tsx';
import { stepOfCheck } from './belongs.ts';
import type { ScreenProps } from './screen.ts';
import { SCREENS } from './screens.ts';
import { STEPS } from './steps.ts';

/** The screen of the step in view. A step without one says so, and shows what is already checked of it. */
export function StepScreen(props: ScreenProps): JSX.Element {
  const { state, actions } = props;
  const id = state.look.step;
  const Screen = SCREENS[id];
  if (Screen) return <Screen {...props} />;
  const checked = state.assessment?.findings.some((finding) => stepOfCheck(finding.check) === id) ?? false;
  return (
    <>
      <section className="no-screen" aria-labelledby="step-heading">
        <h2 id="step-heading">{STEPS.find((step) => step.id === id)?.name}</h2>
        <p className="lead">
          This step is not part of this version yet{checked ? '; what is already checked of it stands below.' : '.'}
        </p>
      </section>
      {checked && <StepFindings state={state} actions={actions} step={id} heading="Checks" />}
    </>
  );
}
