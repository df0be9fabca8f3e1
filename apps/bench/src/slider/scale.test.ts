import type { GearSpan } from '@oddwheel/build/assess/types';
import { describe, expect, it } from 'vitest';
import { cursorSpeed, keyMove, speedAtPlace, speedPlace, speedScale } from './scale.ts';

const certain = (value: number) => ({ value, lo: value, hi: value });
const kmh = { name: 'km/h', si: 1 / 3.6 };
const span = (id: string, idle: number, redline: number): GearSpan => ({
  id,
  name: id,
  overall: certain(10),
  speedAtIdle: certain(idle * kmh.si),
  speedAtRedline: certain(redline * kmh.si),
});
const gears = [span('1', 3.4, 23.1), span('2', 5.3, 35.5), span('3', 9.8, 66.2)];
const at = (gear: string, speed: number) => ({ gear, roadSpeed: speed * kmh.si });

describe('the ruled scale of road speed', () => {
  const scale = speedScale(gears, kmh);

  it('ends at the next labelled tick above the fastest redline', () => {
    expect(scale.top).toBe(70);
    expect(scale.ticks).toHaveLength(36);
    expect(scale.ticks.filter((tick) => tick.labelled).map((tick) => tick.at)).toEqual([0, 10, 20, 30, 40, 50, 60, 70]);
  });

  it('is ruled in the unit asked for: 66.2 km/h is 41.1 mph', () => {
    expect(speedScale(gears, { name: 'mph', si: 0.44704 }).top).toBe(50);
  });

  it('puts a speed at its part of the length, and gives it back on the nearest half', () => {
    expect(speedPlace(scale, 35 * kmh.si)).toBeCloseTo(0.5, 12);
    expect(speedAtPlace(scale, 18.2 / 70) / kmh.si).toBeCloseTo(18, 12);
    expect(speedPlace(scale, 700)).toBe(1);
    expect(speedAtPlace(scale, -1)).toBe(0);
  });

  it('stops the cursor at idle and at redline of the gear', () => {
    expect(cursorSpeed(gears[0], 40 * kmh.si)).toBe(gears[0]?.speedAtRedline.value);
    expect(cursorSpeed(gears[2], 1)).toBe(gears[2]?.speedAtIdle.value);
    expect(cursorSpeed(gears[1], 18 * kmh.si)).toBe(18 * kmh.si);
  });
});

describe('keys of the slider', () => {
  const move = (key: string, speed: number) => {
    const to = keyMove(key, at('2', speed), gears, kmh);
    return to && { gear: to.gear, speed: Number((to.roadSpeed / kmh.si).toFixed(9)) };
  };

  it('arrows go by half a km/h, onto the half', () => {
    expect(move('ArrowRight', 18)).toEqual({ gear: '2', speed: 18.5 });
    expect(move('ArrowLeft', 18)).toEqual({ gear: '2', speed: 17.5 });
    expect(move('ArrowUp', 18.2)).toEqual({ gear: '2', speed: 18.5 });
    expect(move('ArrowDown', 18.2)).toEqual({ gear: '2', speed: 18 });
  });

  it('page keys go by five, and never below standing still', () => {
    expect(move('PageUp', 18)?.speed).toBe(23);
    expect(move('PageDown', 3)?.speed).toBe(0);
  });

  it('Home and End go to idle and redline of the gear', () => {
    expect(move('Home', 18)?.speed).toBe(5.3);
    expect(move('End', 18)?.speed).toBe(35.5);
  });

  it('a digit takes a gear and keeps the road speed; one that the box has not is left alone', () => {
    expect(move('3', 18)).toEqual({ gear: '3', speed: 18 });
    expect(move('7', 18)).toBeNull();
    expect(move('x', 18)).toBeNull();
  });
});
