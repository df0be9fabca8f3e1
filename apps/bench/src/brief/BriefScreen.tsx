import type { JSX } from 'react';
import { AssumedList, FindOutList } from '../findings/Lists.tsx';
import { BriefBand } from '../page/BriefBand.tsx';
import { elementInView } from '../state/bench.ts';
import type { ScreenProps } from '../steps/screen.ts';

/** What is given, what is assumed, and what to find out next. */
export function BriefScreen({ state, actions }: ScreenProps): JSX.Element | null {
  const { assessment, parts } = state;
  if (!assessment) return null;
  return (
    <>
      <BriefBand parts={parts} assumed={assessment.assumed} selected={elementInView(state)} onSelect={actions.select} />
      <FindOutList items={assessment.findOut} onReveal={actions.reveal} />
      <AssumedList items={assessment.assumed} onReveal={actions.reveal} />
    </>
  );
}
