import type { Assessment } from '@oddwheel/build/assess/types';
import { type JSX, memo, useEffect, useRef, useState } from 'react';
import { SeverityShape } from '../face/Severity.tsx';
import { type StepState, stepState } from './step-state.ts';
import { STEPS, type StepId } from './steps.ts';

interface Props {
  readonly current: StepId;
  readonly assessment: Assessment;
  /** Sets of dial readings on the record of run-out. */
  readonly sets: number;
  readonly onGo: (step: StepId) => void;
}

/** The nine steps, one ruled cell each, with how far each one is. On a small screen one row, the current step, opens the list. */
export const StepsBar = memo(function StepsBar({ current, assessment, sets, onGo }: Props): JSX.Element {
  const [open, setOpen] = useState(false);
  const nav = useRef<HTMLElement>(null);
  const first = useRef(true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step begins at its top, however far down the last one was left
  useEffect(() => {
    if (first.current) first.current = false;
    else if (nav.current && nav.current.getBoundingClientRect().top < 0) nav.current.scrollIntoView();
  }, [current]);
  const step = STEPS.find((one) => one.id === current) ?? STEPS[0];
  return (
    <nav ref={nav} className="steps" aria-label="Steps">
      <button
        type="button"
        className="step step-opener"
        aria-expanded={open}
        aria-controls="steps-list"
        onClick={() => setOpen(!open)}
      >
        <StepWords number={step.number} name={step.name} state={stepState(step.id, assessment, sets)} />
        <span className="step-all">{open ? 'close the list' : 'all nine steps'}</span>
      </button>
      <ol id="steps-list" className={open ? 'open' : ''}>
        {STEPS.map(({ id, number, name }) => (
          <li key={id}>
            <button
              type="button"
              className="step moves"
              aria-current={id === current ? 'step' : undefined}
              aria-keyshortcuts={`Alt+${number}`}
              onClick={() => {
                setOpen(false);
                onGo(id);
              }}
            >
              <StepWords number={number} name={name} state={stepState(id, assessment, sets)} />
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
});

function StepWords(props: { number: number; name: string; state: StepState }): JSX.Element {
  const { number, name, state } = props;
  return (
    <>
      <span className="step-name">
        <span className="step-number">{number}</span> {name}
      </span>{' '}
      <span className="step-state">
        <span className={state.severity === null ? '' : `severity ${state.severity}`}>
          {state.severity !== null && <SeverityShape severity={state.severity} said={false} />}
          {state.words}
        </span>{' '}
        {state.more !== '' && <span className="lead">{state.more}</span>}
      </span>
    </>
  );
}
