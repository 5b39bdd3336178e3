import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { TRACE } from '../../display/words/en/trace.ts';
import { keep } from '../server/random-history.ts';
import { SERVICE_DATE } from '../domain/support/harbour.ts';
import { SECOND_DAY, THIRD_DAY, threeDays } from '../server/three-days.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { tabTo } from './support/keyboard.ts';
import { startServer, type RealServer } from './support/real-server.ts';

let browser: Browser;
let server: RealServer;
let folder: string;
const opened: DevicePage[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-trace-'));
  await keep(folder, threeDays().recorded);
  [browser, server] = await Promise.all([launchForHouse(), startServer(folder, 0, 1)]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

async function open(search: string, width = 1280): Promise<Page> {
  const device = await openDevice(browser, `http://localhost:${server.port}/records${search}`, width, 900);
  opened.push(device);
  return device.page;
}

/** The cells of a table's rows, as they are read. */
function rows(page: Page, label: string): Promise<string[][]> {
  return page
    .getByRole('group', { name: label })
    .locator('tbody tr')
    .evaluateAll((all) =>
      all.map((row) => [...row.children].map((cell) => (cell instanceof HTMLElement ? cell.innerText.replaceAll(/\s+/g, ' ').trim() : ''))),
    );
}

describe('TR5 the trace of a lot on its page', () => {
  test('by keyboard alone: from a lot number to its products, to the record of a dough, and back to every lot', async () => {
    const page = await open('?view=trace');
    await page.getByText(TRACE.lastUsed).waitFor();
    await tabTo(page, TRACE.lot);
    await page.keyboard.type('FLOUR-1');
    await page.keyboard.press('Enter');
    await page.getByText(TRACE.lotHeading('FLOUR-1')).waitFor();
    const products = await rows(page, TRACE.productsHeading);
    expect(products.map(([day, , , , here, feeds]) => [day, here, feeds])).toEqual([
      [SERVICE_DATE, '20', ''],
      [SECOND_DAY, '20', ''],
      [THIRD_DAY, '20', '2'],
    ]);
    expect((await rows(page, TRACE.stillHeading)).map(([tag]) => tag)).toEqual(['L1']);
    expect((await rows(page, TRACE.way)).map(([tag]) => tag)).toEqual(['L1', 'C1', 'C1', 'C1']);
    expect(await axeFaults(page)).toEqual([]);
    await tabTo(page, 'C1');
    await page.keyboard.press('Enter');
    await page.waitForURL(/view=batch/);
    await page.goBack();
    await tabTo(page, TRACE.product);
    await page.keyboard.type('country-loaf');
    await tabTo(page, TRACE.lookBack);
    await page.keyboard.press('Enter');
    await page.getByText(TRACE.lots).waitFor();
    expect((await rows(page, TRACE.lots)).map(([lot]) => lot)).toEqual(['FLOUR-2', 'FLOUR-1']);
    expect(await axeFaults(page)).toEqual([]);
    expect(opened.flatMap(({ faults }) => faults)).toEqual([]);
  });

  test('on a phone nothing is cut off, and lots are suggested as they are typed', async () => {
    const page = await open('?view=trace', 390);
    await page.getByLabel(TRACE.lot, { exact: true }).fill('flour-2');
    await page.locator('trace-search datalist option[value="FLOUR-2"]').waitFor({ state: 'attached' });
    expect(await page.locator('trace-search datalist option').count()).toBe(1);
    await page.getByRole('link', { name: 'FLOUR-2' }).click();
    await page.getByText(TRACE.lotHeading('FLOUR-2')).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  });
});

describe('TR6 the recall sheet', () => {
  test.each(['A4', 'Letter'] as const)('on %s: products, where they went, room for who was told, the caution', async (format) => {
    const page = await open('?view=trace&lot=FLOUR-1&ingredient=wheat');
    await page.getByText(TRACE.lotHeading('FLOUR-1')).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: format === 'A4' ? 688 : 710, height: 900 });
    for (const seen of [TRACE.sheet, TRACE.told, TRACE.reportedBy, TRACE.authority, TRACE.caution])
      expect(await page.getByText(seen, { exact: true }).first().isVisible(), seen).toBe(true);
    for (const unseen of [TRACE.follow, TRACE.print, TRACE.way])
      expect(await page.getByText(unseen).first().isVisible(), unseen).toBe(false);
    // What is wider than the paper is cut off by it.
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
  });
});
