import { type JSX, memo } from 'react';
import { STEPS, type StepId } from './steps.ts';

/** The nine steps, one ruled cell each. */
export const StepsBar = memo(function StepsBar(props: { current: StepId; onGo: (step: StepId) => void }): JSX.Element {
  return (
    <nav className="steps" aria-label="Steps">
      <ol>
        {STEPS.map((step) => (
          <li key={step.id}>
            <button
              type="button"
              className="step moves"
              aria-current={step.id === props.current ? 'step' : undefined}
              onClick={() => props.onGo(step.id)}
            >
              <span className="step-name">
                <span className="step-number">{step.number}</span> {step.name}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
});
