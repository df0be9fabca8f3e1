import { openSession } from '@oddwheel/build/session';
import { SMALL_BUILD } from '@oddwheel/build/testing/small-build';
import { describe, expect, test } from 'vitest';
import { type Frame, layoutToFit, shownBounds } from './fit.ts';

function fitted(frame: Frame) {
  const opened = openSession(JSON.stringify(SMALL_BUILD));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { evaluation, assessment } = opened.session;
  return layoutToFit(evaluation.middle.scene, assessment, { armAngle: 0, projection: 'third angle' }, frame);
}

describe('lettering of the wanted height on the screen', () => {
  test.each([
    { view: null, width: 700, height: null, textHeight: 13 },
    { view: null, width: 1400, height: null, textHeight: 13 },
    { view: 'from the left', width: 350, height: 600, textHeight: 15 },
    { view: 'from the left', width: 320, height: 600, textHeight: 13 },
    { view: 'from behind', width: 350, height: 600, textHeight: 15 },
    { view: 'from above', width: 350, height: 600, textHeight: 15 },
    { view: 'along /path/stages/chain-1', width: 350, height: 600, textHeight: 15 },
  ] as const satisfies readonly Frame[])('%o', (frame) => {
    const drawing = fitted(frame);
    const { left, right, bottom, top } = shownBounds(drawing, frame.view);
    const scale = Math.max((right - left) / frame.width, frame.height === null ? 0 : (top - bottom) / frame.height);
    const onScreen = drawing.textHeight / scale;
    expect(onScreen).toBeGreaterThan(frame.textHeight * 0.93);
    expect(onScreen).toBeLessThan(frame.textHeight * 1.07);
  });

  test('on a phone the view is still mostly the vehicle: the wheel is at least a quarter as wide as the screen', () => {
    const drawing = fitted({ view: 'from the left', width: 350, height: 600, textHeight: 15 });
    const { left, right } = shownBounds(drawing, 'from the left');
    // Roll-out 2 m: 2/π m across.
    expect(2000 / Math.PI / (right - left)).toBeGreaterThan(0.25);
  });
});
