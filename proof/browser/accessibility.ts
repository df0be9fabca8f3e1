/** The checker of accessibility, run in a page of the bench. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Fewer rules than this that applied and held mean that the checker looked at an empty page. */
const LEAST_PASSES = 10;

/** What the checker finds in the page as it stands, one line a rule; it must have had something to look at. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { passes, found } = await page.evaluate(async () => {
    const { axe: checker } = window as unknown as { axe: typeof axe };
    const result = await checker.run();
    return {
      passes: result.passes.length,
      found: result.violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html).join(' | ')}`),
    };
  });
  if (passes < LEAST_PASSES) throw new Error(`The checker of accessibility found only ${passes} rules to apply.`);
  return found;
}
