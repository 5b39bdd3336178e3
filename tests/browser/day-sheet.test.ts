import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SHEET_WORDS, STATION_LIST, TRY } from '../../display/words/en/day-sheet.ts';
import type { TryResult } from '../../shared/plan/try/try-result.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { fullDay, sheetScenes, type SheetScene } from './harness-day-sheet/sheet-stage.ts';
import { sheetFaults } from './harness-day-sheet/sheet-faults.ts';
import { silhouette } from './harness-elements/silhouette.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures/', import.meta.url));
const SIZES = [
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const;
const SCENES = sheetScenes();

const RESULT: TryResult = {
  runs: 1000,
  orders: Object.keys(SCENES.busy.state.orders).map((orderId, index) => ({
    orderId,
    lateShare: index / 6,
    medianLateMin: 4 * index,
    p90LateMin: 75 * index,
  })),
  resources: [
    { kind: 'deck', id: 'bottom', share: 0.7 },
    { kind: 'dough', id: '', share: 0.3 },
  ],
  spoilShare: 0.02,
  spreads: [{ kind: 'judged', mean: 1.01, spread: 0.15, learnedFrom: 0 }],
};

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let address = '';
let page: Page;
/** With which query the page was last loaded. */
let opened = '';
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness-day-sheet', 'tests/browser/harness-day-sheet/index.html');
  served = await serveFolder(built.folder);
  address = served.origin + built.page;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  page = await browser.newPage({ reducedMotion: 'reduce' });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function show(scene: SheetScene, size: (typeof SIZES)[number], query: string): Promise<void> {
  await page.setViewportSize(size);
  if (opened !== query) await page.goto(`${address}?${query}`);
  opened = query;
  await page.evaluate(([given, result]) => window.sheetHarness.show(given, result), [scene, RESULT] as const);
}

/** What is open can be seen between the axis and the panel. */
async function expectShown(): Promise<void> {
  const bar = await page.locator('day-sheet-row .bar[aria-pressed="true"]').first().boundingBox();
  const axis = await page.locator('day-sheet .axis').boundingBox();
  const panel = await page.locator('day-sheet-details').boundingBox();
  expect(bar?.y ?? 0).toBeGreaterThanOrEqual((axis?.y ?? 0) + (axis?.height ?? 0) - 1);
  expect((bar?.y ?? Infinity) + (bar?.height ?? 0)).toBeLessThanOrEqual((panel?.y ?? 0) + 1);
}

const said = (): ReturnType<typeof heard> => heard(page);
async function heard(on: Page): Promise<readonly unknown[]> {
  return on.evaluate(() => window.sheetHarness.said.splice(0));
}

/** The name of what has the keyboard, through all shadow roots. */
function focused(): Promise<string> {
  return page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    return element?.getAttribute('aria-label') ?? element?.textContent.replace(/\s+/g, ' ').trim() ?? '';
  });
}

describe('I32 at every size', () => {
  test.each(['en', 'de', 'fr'])('nothing is clipped or runs off the page in %s', async (language) => {
    for (const size of SIZES) {
      await show(SCENES.busy, size, `language=${language}`);
      for (const grouping of [0, 1]) {
        await page.locator('day-sheet fieldset').first().getByRole('button').nth(grouping).click();
        expect(await page.evaluate(sheetFaults), `${size.width} grouped ${grouping}`).toEqual([]);
      }
      // Something open, with everything that can be fixed of it.
      await page.locator('day-sheet-row button[data-key$="|divide"].planned').first().focus();
      await page.keyboard.press('Enter');
      await page.locator('day-sheet-details').waitFor();
      await expectShown();
      if (size.width < 1920 || language === 'en') await page.screenshot({ path: `${PICTURES}day-sheet-${language}-${size.width}.png` });
      expect(await page.evaluate(sheetFaults), `${size.width} open`).toEqual([]);
    }
    expect(complaints).toEqual([]);
  });
});

describe('I33 to eyes and ears that need more', () => {
  test.each(['day', 'night'])('axe has nothing to say by %s', async (look) => {
    for (const scene of [SCENES.tried, SCENES.empty]) {
      await show(scene, SIZES[1], `language=en&look=${look}`);
      const faults = await axeFaults(page);
      expect(faults).toEqual([]);
    }
  });

  test('rows have headings, steps stand in lists and say everything that their look tells', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    const heading = page.getByRole('heading', { level: 3, name: /^M1 Milk buns/ });
    await heading.waitFor();
    const names = await page
      .locator('day-sheet-row li button')
      .evaluateAll((bars) => bars.map((bar) => bar.getAttribute('aria-label') ?? ''));
    expect(names.length).toBeGreaterThan(100);
    for (const standing of ['done', 'begun', 'planned'] as const)
      expect(names.some((name) => name.includes(SHEET_WORDS.standings[standing]))).toBe(true);
    expect(names.filter((name) => /fixed at 05:24/.test(name))).toHaveLength(1);
    expect(names.filter((name) => name.startsWith('R1 weigh out') && /was 0\d:\d\d, now 25 min later/.test(name))).toHaveLength(1);
    expect(names.some((name) => /wanted, 1 there/.test(name))).toBe(true);
  });
});

describe('I34 by the keyboard alone', () => {
  test('one tab stop leads into the rows, arrows through them, and a step is fixed at a clock time', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    await page.locator('day-sheet-row button[tabindex="0"]').first().focus();
    expect(await page.locator('day-sheet-row button[tabindex="0"]').count()).toBe(1);
    expect(await focused()).toMatch(/^O1 Olive flatbread/);
    for (let row = 0; row < 3; row += 1) await page.keyboard.press('ArrowDown');
    expect(await focused()).toMatch(/^M1 Milk buns/);
    await page.keyboard.press('End');
    expect(await focused()).toMatch(/^M1 divide; 05:04–05:14/);
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('M1 divide');
    const clock = page.getByLabel(SHEET_WORDS.startsAt);
    await clock.focus();
    await clock.fill('half past four');
    await page.keyboard.press('Enter');
    expect(await page.locator('day-sheet-details .fault').innerText()).toBe(SHEET_WORDS.notAClock);
    expect(await said()).toEqual([]);
    await clock.fill('4.50');
    await page.keyboard.press('Enter');
    const dough = Object.values(SCENES.busy.state.workpieces).find(({ tag }) => tag === 'M1');
    const place = { workpieceId: dough?.id, batchKey: null, cut: null, load: null, stepId: 'divide', key: `${dough?.id}|||divide` };
    // 04:50 of the demo Saturday, which is in winter time.
    expect(await said()).toEqual([{ type: 'pin-wanted', place, startMs: Date.UTC(2026, 2, 7, 4, 50) }]);
    await page.keyboard.press('Escape');
    expect(await focused()).toMatch(/^M1 divide;/);
  });

  test('what is fixed may move again; an order is put first, and no longer', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    await page.getByRole('button', { name: /^M1 divide;/ }).focus();
    await page.keyboard.press('Enter');
    await page.locator('day-sheet-details .pins').getByRole('button', { name: SHEET_WORDS.letMove }).focus();
    await page.keyboard.press('Enter');
    const pin = Object.values(SCENES.busy.state.pins).find(({ kind }) => kind === 'startsAt');
    expect(await said()).toMatchObject([{ type: 'pin-lifted', pinId: pin?.id, orderId: null }]);
    await page.locator('day-sheet-details').getByRole('button', { name: SHEET_WORDS.first }).first().focus();
    await page.keyboard.press('Enter');
    const buns = Object.values(SCENES.busy.state.orders).find(({ productId }) => productId === 'milk-bun');
    expect(await said()).toEqual([{ type: 'first-wanted', orderId: buns?.id }]);
  });
});

describe('I35 looked at closer', () => {
  test('four hours and one hour are as wide as the room, and the column of tags stays', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    const widthOf = (): Promise<number> => page.locator('day-sheet .paper').evaluate((paper) => paper.getBoundingClientRect().width);
    const room = await page.locator('day-sheet .scroller').evaluate((scroller) => scroller.clientWidth);
    expect(await widthOf()).toBeCloseTo(room, 0);
    await page.getByRole('button', { name: SHEET_WORDS.zooms.hour }).click();
    expect(await widthOf()).toBeGreaterThan(10 * room);
    const left = (): Promise<number> =>
      page
        .locator('day-sheet-row h3')
        .first()
        .evaluate((head) => head.getBoundingClientRect().left);
    const before = await left();
    await page.locator('day-sheet .scroller').evaluate((scroller) => scroller.scrollBy(3_000, 0));
    expect(await left()).toBe(before);
    // Back to NOW, a quarter into the axis.
    await page.getByRole('button', { name: SHEET_WORDS.toNow }).click();
    const now = await page.locator('day-sheet .now').evaluate((line) => line.getBoundingClientRect().left);
    const column = await page
      .locator('day-sheet-row h3')
      .first()
      .evaluate((head) => head.getBoundingClientRect().right);
    expect((now - column) / (before + room - column)).toBeCloseTo(0.25, 1);
  });

  test('the name on a bar can be read on it, whatever its shape', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    await page.getByRole('button', { name: SHEET_WORDS.zooms.hour }).click();
    const decoder = await browser.newPage();
    for (const shape of ['hands', 'judged', 'rest', 'bake']) {
      const inked = await silhouette(decoder, page, page.locator(`day-sheet-row .bar.${shape} .word`).first());
      // Letters cover a part of their ground: neither nothing nor all of it.
      expect(inked.filter(Boolean).length / inked.length, shape).toBeGreaterThan(0.08);
    }
    await decoder.close();
  });

  test('a clash leads to what clashes', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    await page.locator('day-sheet-clashes summary').click();
    for (const button of await page.locator('day-sheet-clashes li button').all()) {
      await button.click();
      await page.locator('day-sheet-details').waitFor();
      await expectShown();
    }
  });

  test('a day of forty batches is drawn whole, and every step of it is a button', async () => {
    const day = fullDay(40, 6);
    await show(day, SIZES[2], 'language=en');
    expect(await page.locator('day-sheet-row').count()).toBeGreaterThan(40);
    expect(await page.locator('day-sheet-row button.bar').count()).toBeGreaterThan(500);
    expect(complaints).toEqual([]);
  });
});

describe('I40 what is cleaned', () => {
  test('is opened like a step, in its own row and in its machine’s; nothing of it can be fixed', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    const bar = page.locator('day-sheet-row [data-key^="clean>spiral-bowl"]');
    expect(await bar.getAttribute('aria-label')).toMatch(/^Spiral and its bowl clean; .*; planned; Spiral, Mixer/);
    await bar.click();
    const panel = page.locator('day-sheet-details');
    await panel.getByText(SHEET_WORDS.with, { exact: true }).waitFor();
    expect(await panel.locator('form, .pins').count()).toBe(0);
    await page.getByRole('button', { name: SHEET_WORDS.byResource }).click();
    expect(await bar.count()).toBe(2);
  });
});

describe('I36 lists and tries', () => {
  test('one station is printed, or all, each on a page of its own; the calendar is of the station that is shown', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    const list = page.locator('station-list');
    await list.getByRole('button', { name: STATION_LIST.print }).click();
    expect(await said()).toEqual([{ type: 'print', sheets: 1 }]);
    await list.getByRole('button', { name: 'Oven' }).click();
    expect(await list.getByRole('link').getAttribute('href')).toBe('/api/plan/calendar?station=oven&date=2026-03-07');
    await list.getByRole('button', { name: STATION_LIST.all }).click();
    await list.getByRole('button', { name: STATION_LIST.printAll }).click();
    expect(await said()).toEqual([{ type: 'print', sheets: SCENES.busy.state.kitchen?.document.stations.length }]);
  });

  test('a day is tried with one press, and how often an order is late has its figure beside its bar', async () => {
    await show(SCENES.busy, SIZES[1], 'language=en');
    await page.locator('try-panel').getByRole('button', { name: TRY.again }).click();
    expect(await said()).toEqual([{ type: 'try-wanted' }]);
    const rows = await page.locator('try-panel tbody tr').allInnerTexts();
    expect(rows).toHaveLength(6);
    expect(rows[0]).toContain(TRY.lateOf('83', 833, 1000));
    expect(rows.at(-1)).toContain(TRY.never);
  });
});
