import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

// WCAG 2.2 AA as axe-core tests it (Deque Systems, axe-core rule tags).
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe objects to on a page as it stands, shown whole: a strip at the foot of the screen lies over whatever stands there. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  const { width } = page.viewportSize()!;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height });
  await page.evaluate(AXE);
  const results = (await page.evaluate(
    (tags) => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run({ runOnly: tags }),
    TAGS,
  )) as AxeResults;
  return results.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.target.join(' ')} – ${node.failureSummary}`),
  );
}
