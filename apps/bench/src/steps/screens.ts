import type { ComponentType } from 'react';
import { BriefScreen } from '../brief/BriefScreen.tsx';
import { LayoutScreen } from '../layout/LayoutScreen.tsx';
import { RatiosScreen } from '../ratios/RatiosScreen.tsx';
import { StrengthScreen } from '../strength/StrengthScreen.tsx';
import { TrueScreen } from '../true/TrueScreen.tsx';
import type { ScreenProps } from './screen.ts';
import type { StepId } from './steps.ts';

/** The screen of each step; a step without one is not part of this version yet. */
export const SCREENS: Readonly<Partial<Record<StepId, ComponentType<ScreenProps>>>> = {
  brief: BriefScreen,
  ratios: RatiosScreen,
  layout: LayoutScreen,
  strength: StrengthScreen,
  true: TrueScreen,
};
