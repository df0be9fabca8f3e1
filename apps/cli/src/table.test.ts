import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { table, WIDTH } from './table.ts';
import { plainLine, textWidth, wrap } from './text-width.ts';

describe('table', () => {
  it('aligns words left and numbers right, and leaves an empty column out', () => {
    const lines = table(
      [{ title: 'Element' }, { title: 'Teeth' }, { title: 'Torque', align: 'right' }],
      [
        ['Engine', '', '38.6 N·m'],
        ['Shaft A', '', '239 N·m'],
      ],
    );
    expect(lines).toEqual(['Element    Torque', '───────  ────────', 'Engine   38.6 N·m', 'Shaft A   239 N·m']);
  });

  it('wraps the sentence and keeps the other columns in place', () => {
    const long = 'The pull of the chain in first gear is more than the plates of the chain can carry for long. '
      .repeat(2)
      .trim();
    const lines = table(
      [
        { title: 'Finding', wraps: true },
        { title: 'Reserve', align: 'right' },
      ],
      [[long, '0.82']],
    );
    expect(Math.max(...lines.map(textWidth))).toBe(WIDTH);
    expect(lines[2]).toMatch(/ {2}0\.82$/);
    expect(
      lines
        .slice(2)
        .map((line) => line.replace(/ +0\.82$/, '').trim())
        .join(' '),
    ).toBe(long);
  });

  it('counts accents that are marks of their own, and wide letters', () => {
    expect(textWidth('ä')).toBe(1);
    expect(textWidth('軸')).toBe(2);
    const [, , one, two] = table(
      [{ title: 'a' }, { title: 'b' }],
      [
        ['軸', 'x'],
        ['ab', 'x'],
      ],
    );
    expect(textWidth(one ?? '')).toBe(textWidth(two ?? ''));
  });

  it('shows control characters of a file instead of sending them to the terminal', () =>
    expect(plainLine('a\u001b[2Jb\nc')).toBe('a\ufffd[2Jb c'));

  it('never loses a word in wrapping, nor goes over the width (property)', () =>
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1 }).map((x) => x.replace(/\s/g, 'x'))),
        fc.integer({ min: 2, max: 40 }),
        (words, width) => {
          const lines = wrap(words.join(' '), width);
          expect(lines.join('').replace(/ /g, '')).toBe(words.join(''));
          for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
        },
      ),
      { seed: 4717, numRuns: 300 },
    ));
});
