import type { StepId } from './steps.ts';

/**
 * Which step a finding belongs to, by the beginning of its check's id. The longest beginning that fits decides, so one
 * check can stand apart from its family.
 */
const STEP_OF_CHECK: Readonly<Record<string, StepId>> = {
  'path.': 'layout',
  'output.': 'strength',
  'target.': 'ratios',
  'road.': 'ratios',
  'shop.': 'make',
  'unit.': 'strength',
  'chain.': 'layout',
  'chain.pull': 'strength',
  'chain.service': 'strength',
  'chain.rating': 'strength',
  'chain.wear': 'strength',
  'chain.speed': 'strength',
  'chain.oil': 'strength',
  'chain.bore': 'strength',
  'chain.broken': 'strength',
  'chain.jam': 'strength',
  'belt.': 'layout',
  'belt.teeth': 'strength',
  'gear.': 'strength',
  'bevel.': 'layout',
  'spur.': 'layout',
  'idler.': 'layout',
  'idler.overrun': 'strength',
  'coupling.': 'layout',
  'bodies.': 'layout',
  'mount.': 'strength',
  'arm.': 'layout',
  'torsion.': 'strength',
  'shaft.': 'strength',
  'join.': 'strength',
  'hub.': 'strength',
  'bearing.': 'strength',
  'plate.': 'strength',
  'plate.cut': 'make',
  'seat.': 'strength',
  'bevel.moves': 'strength',
  'clear.': 'layout',
  'adjust.': 'layout',
  'assembly.': 'layout',
  'brake.': 'strength',
  'guard.': 'strength',
};

/** The step that a check belongs to; null for one that no step claims. */
export function stepOfCheck(check: string): StepId | null {
  const fits = Object.keys(STEP_OF_CHECK).filter((start) => check.startsWith(start));
  const longest = fits.reduce((best, start) => (start.length > best.length ? start : best), '');
  return STEP_OF_CHECK[longest] ?? null;
}
