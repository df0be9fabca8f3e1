import type { JSX } from 'react';
import { StepFindings } from '../findings/StepFindings.tsx';
import type { ScreenProps } from '../steps/screen.ts';
import { BodiesPanel, SenseFixes } from './Bodies.tsx';
import './layout-panels.css';
import { MovesPanel } from './Moves.tsx';
import { SettingPanel } from './Setting.tsx';
import { TogetherPanel } from './Together.tsx';

/** What follows from the layout: its checks, what has to be set and in which order, and how it goes together and apart. */
export function LayoutPanels({ state, actions }: Pick<ScreenProps, 'state' | 'actions'>): JSX.Element | null {
  const { assessment } = state;
  if (!assessment) return null;
  const { adjustment, assembly, layout } = assessment;
  return (
    <div className="layout-panels">
      <SenseFixes fixes={layout.senseFixes} onReveal={actions.reveal} />
      <StepFindings state={state} actions={actions} step="layout" heading="Checks of the layout" />
      <SettingPanel adjustment={adjustment} onReveal={actions.reveal} />
      <MovesPanel moves={adjustment.moves} units={assessment.units} onReveal={actions.reveal} />
      <BodiesPanel layout={layout} onReveal={actions.reveal} />
      <TogetherPanel assembly={assembly} onReveal={actions.reveal} />
    </div>
  );
}
