import type { DrawnNote } from '@oddwheel/sheets/drawing';
import { describe, expect, test } from 'vitest';
import { belongsTo, choiceOf, goesAlong, within } from './parts.ts';

const SHAFT = '/path/shafts/shaft-b';
const gear = { of: `${SHAFT}/seats/gear`, moves: SHAFT };
const note = (more: Partial<DrawnNote>): DrawnNote => ({ of: SHAFT, finding: null, elements: [], ...more });

describe('what a press chooses, and what goes along with it', () => {
  test('first the shaft, then the part on it; another shaft again first', () => {
    expect(choiceOf(gear, null)).toBe(SHAFT);
    expect(choiceOf(gear, SHAFT)).toBe(gear.of);
    expect(choiceOf(gear, `${SHAFT}/seats/sprocket`)).toBe(gear.of);
    expect(choiceOf(gear, '/path/shafts/shaft-a')).toBe(SHAFT);
    expect(choiceOf({ of: SHAFT, moves: SHAFT }, SHAFT)).toBe(SHAFT);
  });

  test('the wheel stands for its axle, and what no shaft carries for itself', () => {
    const axle = '/path/shafts/axle-c';
    expect(choiceOf({ of: '/brief/wheel', moves: axle }, axle)).toBe(axle);
    expect(choiceOf({ of: '/path/stages/chain-2', moves: null }, SHAFT)).toBe('/path/stages/chain-2');
  });

  test('a shaft takes all that it carries, a part only itself; no address is taken for a longer one', () => {
    expect(belongsTo(gear, SHAFT)).toBe(true);
    expect(belongsTo(gear, gear.of)).toBe(true);
    expect(belongsTo({ of: SHAFT, moves: SHAFT }, gear.of)).toBe(false);
    expect(within('/path/shafts/shaft-b2', SHAFT)).toBe(false);
  });

  test('names and centre lines go along; dimensions and findings stay, since they measure', () => {
    expect(goesAlong(note({}), SHAFT)).toBe(true);
    expect(goesAlong(note({ finding: 'clearance.gap:x' }), SHAFT)).toBe(false);
    const dimension = {
      kind: 'dimension',
      measured: [
        [0, 0],
        [1, 0],
      ],
      ends: [
        [0, 0],
        [1, 0],
      ],
      text: '1',
      textAt: [0, 0],
      angle: 0,
      severity: null,
    } as const;
    expect(goesAlong(note({ elements: [dimension] }), SHAFT)).toBe(false);
  });
});
