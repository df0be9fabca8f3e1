/** When a rider shifts. */
export interface ShiftRule {
  /** m/s, one for each gear but the last. */
  readonly upSpeeds: readonly number[];
  /** m/s: second gear declutched, then third and each higher gear left downwards. */
  readonly downSpeeds: readonly number[];
  /** Steps that a gear is held at least. */
  readonly holdSteps: number;
}

/** Gear of one step, counted from 1; 0 while standing or declutched. */
export interface GearUse {
  readonly gear: number;
  readonly held: number;
}

/** The lowest gear that is not left upwards at a speed. */
function gearFor(rule: ShiftRule, speed: number): number {
  const found = rule.upSpeeds.findIndex((up) => speed <= up);
  return (found < 0 ? rule.upSpeeds.length : found) + 1;
}

/**
 * Gear of the next step.
 * @param before Gear of the step before.
 * @param speed Mean speed of the step, m/s.
 * @param slows Whether the vehicle slows down in it.
 * @param pushes Whether the vehicle pushes the drive in it, so that the clutch may be opened.
 */
export function nextGear(rule: ShiftRule, before: GearUse, speed: number, slows: boolean, pushes: boolean): GearUse {
  const open: GearUse = { gear: 0, held: rule.holdSteps };
  if (speed === 0) return open;
  const [declutch = 0] = rule.downSpeeds;
  if (before.gear === 0) {
    if (slows && pushes) return open;
    return { gear: gearFor(rule, speed), held: 1 };
  }
  const held: GearUse = { gear: before.gear, held: before.held + 1 };
  if (slows && pushes && before.gear <= 2 && speed < declutch) return open;
  if (before.held < rule.holdSteps) return held;
  if (!slows && speed > (rule.upSpeeds[before.gear - 1] ?? Number.POSITIVE_INFINITY))
    return { gear: before.gear + 1, held: 1 };
  if (slows && before.gear >= 3 && speed < (rule.downSpeeds[before.gear - 2] ?? 0))
    return { gear: before.gear - 1, held: 1 };
  return held;
}
