import { describe, expect, it } from 'vitest';
import { type Labelled, type Point, placeLabels } from './labels.ts';
import { axisOver, placeOn } from './ticks.ts';

const speed = { name: 'road speed', unit: 'km/h', size: 1 / 3.6 };

describe('axes', () => {
  it('end at round ticks in the unit shown', () => {
    const axis = axisOver(speed, 0, 18.3, 8);
    expect(axis.ticks).toEqual([0, 10, 20, 30, 40, 50, 60, 70]);
    expect([axis.high, axis.decimals]).toEqual([70, 0]);
  });

  it('keep the decimals that tell ticks apart', () => {
    expect(axisOver({ name: 'pull', unit: 'kN', size: 1000 }, 0, 1900, 8)).toMatchObject({
      ticks: [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2],
      decimals: 2,
    });
    expect(axisOver({ name: 'angle', unit: '°', size: 1 }, -5, 8, 8).ticks).toEqual([-6, -4, -2, 0, 2, 4, 6, 8]);
  });

  it('stand up where all values are alike', () => {
    expect(axisOver(speed, 0, 0, 5).ticks.length).toBeGreaterThan(1);
  });

  it('place a value at its part of the length', () => {
    expect(placeOn(axisOver(speed, 0, 18.3, 8), 35 / 3.6)).toBeCloseTo(0.5, 12);
  });
});

describe('words at curves', () => {
  const frame = { left: 0, top: 0, right: 600, bottom: 300 };
  const line = (key: string, from: Point, to: Point): Labelled => ({
    key,
    text: `curve ${key}`,
    points: [from, to],
    wish: 0.5,
  });

  it('never stand on each other, however near the curves lie', () => {
    const curves = Array.from({ length: 8 }, (_, k) => line(String(k), [0, 140 + k * 3], [600, 140 + k * 3]));
    const boxes = placeLabels(curves, frame, [], 13).map(({ box }) => box);
    expect(boxes.length).toBeGreaterThan(4);
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(apart).toBe(true);
      }
    });
  });

  it('keep within the drawing and off what is taken', () => {
    const [label] = placeLabels(
      [line('a', [0, 2], [600, 2])],
      frame,
      [{ left: 0, top: 0, right: 400, bottom: 40 }],
      13,
    );
    expect(label?.box.left).toBeGreaterThanOrEqual(400);
    expect(label?.box.top).toBeGreaterThanOrEqual(0);
  });

  it('keep off another curve where there is room', () => {
    const curves = [line('flat', [0, 150], [600, 150]), line('steep', [290, 0], [310, 300])];
    const [flat] = placeLabels(curves, frame, [], 13);
    // The steep line passes x = 300 at the height of the words, a pixel more or less.
    expect(flat && (flat.box.right < 301 || flat.box.left > 299)).toBe(true);
  });

  it('are left out where there is no room at all', () => {
    expect(placeLabels([line('a', [0, 150], [600, 150])], frame, [frame], 13)).toEqual([]);
  });
});
