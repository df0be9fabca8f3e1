import { describe, expect, it } from 'vitest';
import { methodPage } from './doc-page.ts';
import { cone, lever, pulleys } from './testing/samples.ts';

describe('the page of a method', () => {
  it('shows inputs, formulas, results, assumptions and sources', () => {
    expect(methodPage(pulleys)).toBe(`# sample.pulleys

Speed of the driven pulley and of the belt.

## Takes

| symbol | key | meaning | unit | range | default |
|---|---|---|---|---|---|
| ω₁ | \`speed\` | speed of the driver | rad/s |  |  |
| d₁ | \`driver\` | diameter of the driver | m | more than 0 m |  |
| d₂ | \`driven\` | diameter of the driven pulley | m | more than 0 m |  |
| s | \`slip\` | slip | plain number | at least 0 and at most 0.1 | 0.02 |

## Gives

| symbol | key | meaning | unit | role |
|---|---|---|---|---|
| ω₂ | \`drivenSpeed\` | speed of the driven pulley | rad/s | result |
| v | \`beltSpeed\` | speed of the belt | m/s | on the way |

## Steps

1. The belt runs with the rim of the driver.

       v = ω₁·d₁ / 2

2. The driven rim stays behind by the slip.

       ω₂ = (1 − s)·(2·v / d₂)

## Takes for granted

- The belt is thin.

## Sources

- Definition of the ratio of a belt drive (worked out here)
`);
  });
  it('says which value a step is solved for', () => {
    expect(methodPage(cone)).toContain('r² + h² = s²   (solved for h)');
  });
  it('describes vectors, lists, whole numbers and words', () => {
    const page = methodPage(lever);
    expect(page).toContain('| r (vector) | `arm` | from the point to the force | vector, m |  |  |');
    expect(page).toContain(
      '| i | `ratios` | stage ratios | list, plain number | at least 1 entries, each more than 0 |  |',
    );
    expect(page).toContain('| z | `trains` | equal trains | whole number | at least 1 and at most 4 | 1 |');
    expect(page).toContain('| q | `side` | side of the lever | one of the words | left, right | left |');
    expect(page).toContain('- Definition of the moment of a force, 1st, p. 1 (from memory)');
  });
});
