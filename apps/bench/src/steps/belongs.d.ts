import type { StepId } from './steps.ts';
/** The step that a check belongs to; null for one that no step claims. */
export declare function stepOfCheck(check: string): StepId | null;
