import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import type { FloorView } from '../../../display/link/floor-link.ts';
import type { Panel, Screen } from '../../../display/phone/phone-events.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What a phone is told, and what it is made to show. */
export interface Shown {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly screen: Screen;
  readonly panel?: Panel;
}

/** A phone's page in the harness, in a language, with everything that goes wrong in it. */
export async function openPhone(
  browser: Browser,
  address: string,
  language: string,
): Promise<{ readonly page: Page; readonly complaints: readonly string[] }> {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, hasTouch: true, reducedMotion: 'reduce' });
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(`${address}?language=${language}`);
  return { page, complaints };
}

/** Shows a screen, and a panel on it, as they stand a moment after they were opened. */
export async function showOn(page: Page, shown: Shown): Promise<void> {
  await page.evaluate(async ({ view, nowMs, screen, panel }) => {
    const element = document.querySelector('phone-page');
    if (element === null) throw new Error('no phone-page');
    element.screen = { kind: 'list' };
    await window.phoneHarness.show(view, nowMs);
    element.screen = screen;
    await element.updateComplete;
    if (panel !== undefined) element.dispatchEvent(Object.assign(new Event('panel-wanted'), { panel }));
    await element.updateComplete;
    await document.fonts.ready;
  }, shown);
}

/** What axe finds on the page as it stands. */
export async function axeFaultsOf(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const results = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(context: Document, options: RunOptions): Promise<AxeResults> } };
    return axe.run(document, { resultTypes: ['violations'] });
  });
  return results.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.html} ${node.failureSummary ?? ''}`),
  );
}
