import type { GearSpan, Here } from '@oddwheel/build/assess/types';

/** The unit in which the scale is ruled. */
export interface ScaleUnit {
  readonly name: string;
  /** Metres per second in one unit. */
  readonly si: number;
}

/** A ruled scale of road speed, from zero. Places are parts of its length, 0 to 1. */
export interface SpeedScale {
  readonly unit: ScaleUnit;
  /** End of the scale, in its unit. */
  readonly top: number;
  /** Units from one label to the next. */
  readonly label: number;
  readonly ticks: readonly { readonly at: number; readonly place: number; readonly labelled: boolean }[];
}

const ARROW_STEP = 0.5;
const PAGE_STEP = 5;

/** The scale that takes in every gear up to its redline, ended at the next labelled tick. */
export function speedScale(gears: readonly GearSpan[], unit: ScaleUnit): SpeedScale {
  const fastest = Math.max(0, ...gears.map((gear) => gear.speedAtRedline.value)) / unit.si;
  const label = fastest > 150 ? 20 : 10;
  const top = Math.max(label, Math.ceil(fastest / label) * label);
  const tick = label / 5;
  const ticks = Array.from({ length: Math.round(top / tick) + 1 }, (_, index) => {
    const at = index * tick;
    return { at, place: at / top, labelled: index % 5 === 0 };
  });
  return { unit, top, label, ticks };
}

/** Place of a road speed (m/s) on the scale, held to its ends. */
export function speedPlace(scale: SpeedScale, roadSpeed: number): number {
  return Math.min(1, Math.max(0, roadSpeed / scale.unit.si / scale.top));
}

/** Road speed (m/s) at a place of the scale, on the nearest arrow step. */
export function speedAtPlace(scale: SpeedScale, place: number): number {
  const asked = Math.min(1, Math.max(0, place)) * scale.top;
  return Math.round(asked / ARROW_STEP) * ARROW_STEP * scale.unit.si;
}

/** Where the cursor stands: the asked speed (m/s), held to what the gear can do between idle and redline. */
export function cursorSpeed(gear: GearSpan | undefined, roadSpeed: number): number {
  if (!gear) return roadSpeed;
  return Math.min(gear.speedAtRedline.value, Math.max(gear.speedAtIdle.value, roadSpeed));
}

/**
 * What a key on the slider asks for; null when the key means nothing there.
 *
 * @param key name of the key
 * @param here where the slider stands now
 */
export function keyMove(key: string, here: Here, gears: readonly GearSpan[], unit: ScaleUnit): Here | null {
  const gear = gears.find((span) => span.id === here.gear);
  const at = here.roadSpeed / unit.si;
  const to = (speed: number): Here => ({ gear: here.gear, roadSpeed: Math.max(0, speed) * unit.si });
  const stepped = (step: number, way: 1 | -1): Here => {
    const steps = at / step;
    const next = way > 0 ? Math.floor(steps + 1e-9) + 1 : Math.ceil(steps - 1e-9) - 1;
    return to(next * step);
  };
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return stepped(ARROW_STEP, 1);
    case 'ArrowLeft':
    case 'ArrowDown':
      return stepped(ARROW_STEP, -1);
    case 'PageUp':
      return to(at + PAGE_STEP);
    case 'PageDown':
      return to(at - PAGE_STEP);
    case 'Home':
      return gear ? { gear: gear.id, roadSpeed: gear.speedAtIdle.value } : null;
    case 'End':
      return gear ? { gear: gear.id, roadSpeed: gear.speedAtRedline.value } : null;
    default: {
      const taken = /^[1-9]$/.test(key) ? gears[Number(key) - 1] : undefined;
      return taken ? { gear: taken.id, roadSpeed: here.roadSpeed } : null;
    }
  }
}
