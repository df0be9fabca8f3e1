import type { JSX } from 'react';
import { StepFindings } from '../findings/StepFindings.tsx';
import type { ScreenProps } from '../steps/screen.ts';
import { BodiesPanel, SenseFixes } from './Bodies.tsx';
import './layout-panels.css';
import { MovesPanel } from './Moves.tsx';
import { SettingPanel } from './Setting.tsx';
import { StrokePanel } from './StrokePanel.tsx';
import { TogetherPanel } from './Together.tsx';

interface Props extends Pick<ScreenProps, 'state' | 'actions'> {
  /** Arm from where the wheel is drawn, rad. */
  readonly armAngle: number;
}

/** What follows from the layout: its checks, what has to be set and in which order, and how it goes together and apart. */
export function LayoutPanels(props: Props): JSX.Element | null {
  const { state, actions, armAngle } = props;
  const { assessment } = state;
  if (!assessment) return null;
  const { adjustment, assembly, layout, stroke, units } = assessment;
  return (
    <div className="layout-panels">
      <SenseFixes fixes={layout.senseFixes} onReveal={actions.reveal} />
      <StepFindings state={state} actions={actions} step="layout" heading="Checks of the layout" />
      {stroke && (
        <StrokePanel
          stroke={stroke}
          findings={assessment.findings}
          armAngle={armAngle}
          units={units}
          shop={state.mode === 'shop'}
          onReveal={actions.reveal}
          onOpen={actions.openFinding}
        />
      )}
      <SettingPanel adjustment={adjustment} onReveal={actions.reveal} />
      <MovesPanel moves={adjustment.moves} units={units} onReveal={actions.reveal} />
      <BodiesPanel layout={layout} onReveal={actions.reveal} />
      <TogetherPanel assembly={assembly} onReveal={actions.reveal} />
    </div>
  );
}
