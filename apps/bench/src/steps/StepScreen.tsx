import type { JSX } from 'react';
import type { ScreenProps } from './screen.ts';
import { SCREENS } from './screens.ts';
import { STEPS } from './steps.ts';

/** The screen of the step in view. */
export function StepScreen(props: ScreenProps): JSX.Element {
  const id = props.state.look.step;
  const Screen = SCREENS[id];
  if (Screen) return <Screen {...props} />;
  return (
    <section aria-labelledby="step-heading">
      <h2 id="step-heading">{STEPS.find((step) => step.id === id)?.name}</h2>
      <p className="lead">This step is not part of this version yet.</p>
    </section>
  );
}
