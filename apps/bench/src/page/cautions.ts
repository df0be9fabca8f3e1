import type { StepId } from '../steps/steps.ts';

const CAUTIONS: Readonly<Record<StepId, string>> = {
  brief: 'Measuring a vehicle: engine off, key out, wheels blocked; never get under what only a jack holds up.',
  ratios:
    'A shorter or longer drive changes how fast every part turns: keep each one below the speed its maker allows.',
  layout:
    'Chains and gears take fingers and clothes: engine off and wheel blocked before reaching in, guards on before running.',
  strength:
    'A reserve holds for sound parts in the state that was typed in: a crack, a poor weld or a worn part has none.',
  subframe: 'Welding: shade the eyes, clear the air, keep fire-fighting gear at hand, take the battery lead off.',
  make: 'Before pressing or heating a seat: guard, gloves, and nobody in line with the ram.',
  true: 'Let a bead cool before reading. Never bump or weld hardened or plated steel, steering or brake parts.',
  'fit-up':
    'Turn the drive by hand before anything else does. Lift and block the vehicle so that no wheel can drive it.',
  book: 'This record does not replace an inspection: show it to those who have to approve the vehicle.',
};

/** The hazard of the work on a step, in one sentence (common practice). */
export function cautionOf(step: StepId): string {
  return CAUTIONS[step];
}
