import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BATCH_RECORD } from '../../display/words/en/batch-record.ts';
import { DAY_RECORD } from '../../display/words/en/day-record.ts';
import { RECORDS } from '../../display/words/en/records.ts';
import { inventedEvents } from '../server/invented-records.ts';
import { keep } from '../server/random-history.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { tabTo } from './support/keyboard.ts';
import { startServer, type RealServer } from './support/real-server.ts';

const [FIRST, LAST] = ['2026-03-05', '2026-03-07'];

let browser: Browser;
let server: RealServer;
let folder: string;
const opened: DevicePage[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-records-'));
  await keep(folder, inventedEvents(FIRST, LAST));
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

function isNarrowEnough(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);
}

describe('RC5 the records by keyboard alone', () => {
  test('from the list, narrowed to a dough, to its record, back, and on to the day and the weeks', async () => {
    const page = await open('');
    await page.locator('batches-view tbody tr').first().waitFor();
    const all = await page.locator('batches-view tbody tr').count();
    await tabTo(page, RECORDS.tag);
    await page.keyboard.type('m1');
    await page.keyboard.press('Enter');
    await page.waitForURL(/tag=m1/);
    await page.locator('batches-view tbody tr').first().waitFor();
    const tags = await page.locator('batches-view tbody th').allInnerTexts();
    expect(tags.length).toBeLessThan(all);
    expect(new Set(tags)).toEqual(new Set(['M1']));
    expect(await axeFaults(page)).toEqual([]);
    await tabTo(page, 'M1');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: BATCH_RECORD.steps }).waitFor();
    for (const heading of [BATCH_RECORD.wentIn, BATCH_RECORD.temperatures, BATCH_RECORD.curves, BATCH_RECORD.fate, BATCH_RECORD.allLots])
      expect(await page.getByRole('heading', { name: heading }).count(), heading).toBe(1);
    expect(await page.locator('ripeness-picture').count()).toBeGreaterThan(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.goBack();
    await page.locator('batches-view tbody tr').first().waitFor();
    await tabTo(page, RECORDS.menu.days);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: LAST }).waitFor();
    expect(await page.locator('day-picture [role=img]').getAttribute('aria-label')).toMatch(/^\d+ doughs and parts from \d\d:\d\d to/);
    await page.locator('day-view summary').focus();
    await page.keyboard.press('Enter');
    expect(await page.getByRole('group', { name: DAY_RECORD.table }).locator('tbody tr').count()).toBeGreaterThan(8);
    expect(await axeFaults(page)).toEqual([]);
    await tabTo(page, RECORDS.menu.weeks);
    await page.keyboard.press('Enter');
    await page.locator('weeks-view tbody tr').first().waitFor();
    expect(await page.locator('weeks-view tbody th').allInnerTexts()).toEqual(['2026-03-02']);
    expect(await axeFaults(page)).toEqual([]);
    expect(opened.flatMap(({ faults }) => faults)).toEqual([]);
  });

  test.each(['', `?view=days&date=${LAST}`, '?view=weeks'])('on a phone nothing of %s is wider than the screen', async (search) => {
    const page = await open(search, 390);
    await page.locator('records-page tbody tr').first().waitFor({ state: 'attached' });
    expect(await isNarrowEnough(page)).toBe(true);
  });
});

describe('RC6 a batch on paper', () => {
  test.each([
    ['A4', 688],
    ['Letter', 710],
  ] as const)('%s: everything in its width, what belongs to the screen left out, and no empty page', async (format, width) => {
    const page = await open('?tag=M1');
    await page.locator('batches-view tbody a').first().click();
    await page.getByRole('heading', { name: BATCH_RECORD.steps }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width, height: 900 });
    expect(await isNarrowEnough(page)).toBe(true);
    // A table that is wider than its box would be cut off by the paper.
    const cut = await page
      .locator('batch-view .wide')
      .evaluateAll((boxes) => boxes.filter((box) => box.scrollWidth > box.clientWidth + 1).length);
    expect(cut).toBe(0);
    expect(await page.getByRole('button', { name: BATCH_RECORD.print }).isVisible()).toBe(false);
    expect(await page.getByRole('navigation').isVisible()).toBe(false);
    expect(await page.getByText(BATCH_RECORD.caution).isVisible()).toBe(true);
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(1);
    expect(pages).toBeLessThan(7);
  });
});
