import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core has to say against a page as it stands: rule, element, and what would be right. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(context: Document, options: RunOptions): Promise<AxeResults> } };
    return axe.run(document, { resultTypes: ['violations'] });
  });
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary ?? ''}`));
}
